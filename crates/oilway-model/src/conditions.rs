//! Under what conditions the system must work: site, places, air, duty, limits, and the practice that the tool assumes.

use oilway_units::{
    Count, Entry, Length, Pressure, Ratio, Temperature, TemperatureDifference, Time, Voltage,
};

use crate::Lubricant;

/// A part of the year. Each design is judged in all three.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Season {
    /// The coldest that each place knows.
    Cold,
    /// The usual day.
    Normal,
    /// The hottest that each place knows.
    Hot,
}

impl Season {
    /// All three, coldest first.
    pub const ALL: [Season; 3] = [Season::Cold, Season::Normal, Season::Hot];
}

/// The site as a whole.
#[derive(Clone, Debug)]
pub struct Site {
    /// Height above the sea; it sets the atmosphere that feeds the pump.
    pub altitude: Entry<Length>,
    /// Where in the world the system is used; thread customs and papers depend on it.
    pub region: Option<String>,
    /// The customer's thread family: `G`, `NPT`, `metric`, `R`.
    pub threads: Option<String>,
}

/// What the surroundings do to a point or a line.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Surroundings {
    /// The words of the job, as written.
    pub words: Vec<String>,
    /// How severe they are.
    pub severity: oilway_physics::points::Severity,
}

/// A place with its own temperatures: a hall, a cold room, the wall outside.
#[derive(Clone, Debug)]
pub struct Place {
    /// Its name in the job.
    pub name: String,
    /// The coldest day.
    pub coldest: Entry<Temperature>,
    /// The usual day.
    pub normal: Entry<Temperature>,
    /// The hottest day.
    pub hottest: Entry<Temperature>,
    /// Whether weather cools it: a heated or process-cooled place does not get colder with the winter.
    pub outdoors: bool,
    /// What else is there.
    pub surroundings: Surroundings,
}

impl Place {
    /// The temperature in a season.
    pub fn temperature(&self, season: Season) -> Temperature {
        match season {
            Season::Cold => self.coldest.get(),
            Season::Normal => self.normal.get(),
            Season::Hot => self.hottest.get(),
        }
    }
}

/// Compressed air at the pump.
#[derive(Clone, Debug)]
pub struct Air {
    /// Lowest pressure while the pump must work.
    pub lowest: Entry<Pressure>,
    /// Highest pressure on an ordinary day.
    pub highest: Entry<Pressure>,
    /// Highest pressure that can ever reach the pump: the compressor's relief, not a regulator.
    pub possible: Entry<Pressure>,
    /// Pressure dew point.
    pub dew_point: Option<Entry<Temperature>>,
}

/// Direct or alternating current.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CurrentKind {
    /// Direct current.
    Direct,
    /// Alternating current.
    Alternating,
}

/// The electric supply.
#[derive(Clone, Debug)]
pub struct Electric {
    /// Its voltage.
    pub voltage: Voltage,
    /// Direct or alternating.
    pub kind: CurrentKind,
    /// Free inputs of the machine's controller, if said.
    pub inputs: Option<u32>,
    /// Free outputs of the machine's controller, if said.
    pub outputs: Option<u32>,
}

/// When the machine runs.
#[derive(Clone, Debug)]
pub struct Duty {
    /// Running hours of a working day.
    pub hours_per_day: Entry<Time>,
    /// Working days of a week.
    pub days_per_week: Entry<Count>,
}

/// What the customer will not accept.
#[derive(Clone, Debug)]
pub struct Limits {
    /// Shortest time between two refills that he accepts.
    pub refill_at_least: Option<Time>,
    /// Longest time that lubricant may take to reach its point.
    pub age: Entry<Time>,
    /// Longest time that one lubrication event may take.
    pub event_time: Entry<Time>,
    /// Whether a blocked line must be noticed.
    pub blockage_noticed: bool,
    /// Whether only food-grade lubricant may be used.
    pub food: bool,
}

/// Named assumptions of practice, each of which a job may replace.
#[derive(Clone, Debug)]
pub struct Practice {
    /// Yield stress after rest over yield stress in motion.
    pub rest_factor: Entry<Ratio>,
    /// Share of the stall pressure that the highest need may use.
    pub stall_use: Entry<Ratio>,
    /// Lower edge of the delivery band, of demand.
    pub band_low: Entry<Ratio>,
    /// Upper edge of the delivery band, of demand.
    pub band_high: Entry<Ratio>,
    /// Least rate of any point in an automatic system.
    pub floor: Entry<oilway_units::Flow>,
    /// Pressure that a bearing holds against its line.
    pub back_pressure: Entry<Pressure>,
    /// Loss in fittings, as a share of the length of the line.
    pub fittings: Entry<Ratio>,
    /// Absolute pressure below which a cylinder fills with void.
    pub inlet_lowest: Entry<oilway_units::AbsolutePressure>,
    /// Air stirred into the lubricant, at atmospheric pressure.
    pub entrained_air: Entry<Ratio>,
    /// Highest temperature that the disc can reach above the hottest place of the package.
    pub disc_warmer: Entry<TemperatureDifference>,
}

/// Everything that surrounds the system.
#[derive(Clone, Debug)]
pub struct Conditions {
    /// The site.
    pub site: Site,
    /// Its places; every point and leg names one by index.
    pub places: Vec<Place>,
    /// Compressed air, if there is any.
    pub air: Option<Air>,
    /// Electric supply, if there is any.
    pub electric: Option<Electric>,
    /// Running hours.
    pub duty: Duty,
    /// The customer's limits.
    pub limits: Limits,
    /// Named assumptions.
    pub practice: Practice,
    /// What flows.
    pub lubricant: Lubricant,
}

impl Conditions {
    /// Share of calendar time in which the machine runs.
    pub fn running_share(&self) -> f64 {
        let hours = self.duty.hours_per_day.get().hours() * self.duty.days_per_week.get().number();
        (hours / 168.0).clamp(0.0, 1.0)
    }
}
