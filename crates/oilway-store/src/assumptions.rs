//! What the tool takes where nobody said, each with its span and its standing. Nothing is assumed that is not in this list; the
//! sentence of an assumption stands in `store.ftl` under its key and says where it comes from.

use oilway_physics::grease::{classes::Band, defaults};
use oilway_physics::{Source, Standing};
use oilway_units::{Dimension, Entry, Quantity};

/// One thing that the tool takes where nobody said.
#[derive(Clone, Copy, Debug)]
pub struct Assumption {
    /// The key of its sentence and of its origin in an entry: `assume-air-possible`.
    pub key: &'static str,
    /// What it measures.
    pub dimension: Dimension,
    /// Its lowest value, SI.
    pub low: f64,
    /// The value taken, SI.
    pub typical: f64,
    /// Its highest value, SI.
    pub high: f64,
    /// Where it comes from.
    pub source: Source,
}

impl Assumption {
    /// The entry that stands in a job for it.
    pub fn entry<T: Quantity>(&self) -> Entry<T> {
        Entry::assumed(T::from_si(self.low), T::from_si(self.typical), T::from_si(self.high), self.key)
    }

    /// The same, no higher than this: what is already known of a neighbour bounds it.
    pub(crate) fn at_most<T: Quantity>(&self, most: T) -> Entry<T> {
        let clip = |si: f64| T::from_si(si.min(most.si()));
        Entry::assumed(clip(self.low), clip(self.typical), clip(self.high), self.key)
    }

    /// The same, no lower than this.
    pub(crate) fn at_least<T: Quantity>(&self, least: T) -> Entry<T> {
        let clip = |si: f64| T::from_si(si.max(least.si()));
        Entry::assumed(clip(self.low), clip(self.typical), clip(self.high), self.key)
    }
}

const fn common(place: &'static str) -> Source {
    Source { key: "common-practice", place, standing: Standing::CommonPractice }
}
const JUDGED: Source = common("judged");
const PRACTICE: Source = common("practice of the trade, no source");

const fn of(key: &'static str, dimension: Dimension, span: [f64; 3], source: Source) -> Assumption {
    let [low, typical, high] = span;
    Assumption { key, dimension, low, typical, high, source }
}

const fn celsius(span: [f64; 3]) -> [f64; 3] {
    [span[0] + 273.15, span[1] + 273.15, span[2] + 273.15]
}

const HOUR: f64 = 3600.0;
const WEEK: f64 = 168.0 * HOUR;
const BAR: f64 = 1e5;

use Dimension as D;

/// Height above the sea.
pub static ALTITUDE: Assumption = of("assume-altitude", D::Length, [0.0, 200.0, 1000.0], JUDGED);
/// Coldest day of a place indoors.
pub static COLDEST_INDOORS: Assumption =
    of("assume-coldest-indoors", D::Temperature, celsius([5.0, 10.0, 15.0]), JUDGED);
/// Coldest day of a place outdoors.
pub static COLDEST_OUTDOORS: Assumption =
    of("assume-coldest-outdoors", D::Temperature, celsius([-25.0, -10.0, 0.0]), JUDGED);
/// Usual day of a place indoors.
pub static NORMAL_INDOORS: Assumption =
    of("assume-normal-indoors", D::Temperature, celsius([15.0, 20.0, 25.0]), JUDGED);
/// Usual day of a place outdoors.
pub static NORMAL_OUTDOORS: Assumption =
    of("assume-normal-outdoors", D::Temperature, celsius([0.0, 10.0, 20.0]), JUDGED);
/// Hottest day of a place.
pub static HOTTEST: Assumption = of("assume-hottest", D::Temperature, celsius([25.0, 35.0, 45.0]), JUDGED);
/// Usual day of a place between a coldest and a hottest that are known.
pub(crate) const NORMAL_BETWEEN: &str = "assume-normal-between";
/// Lowest air pressure at the pump.
pub static AIR_LOWEST: Assumption =
    of("assume-air-lowest", D::Pressure, [4.0 * BAR, 5.0 * BAR, 6.0 * BAR], PRACTICE);
/// Highest air pressure on an ordinary day.
pub static AIR_HIGHEST: Assumption =
    of("assume-air-highest", D::Pressure, [6.0 * BAR, 7.0 * BAR, 8.0 * BAR], PRACTICE);
/// Highest air pressure that can ever reach the pump.
pub static AIR_POSSIBLE: Assumption =
    of("assume-air-possible", D::Pressure, [8.0 * BAR, 10.0 * BAR, 11.0 * BAR], PRACTICE);
/// Pressure dew point.
pub static DEW_POINT: Assumption =
    of("assume-dew-point", D::Temperature, celsius([-20.0, 3.0, 15.0]), PRACTICE);
/// Running hours of a working day.
pub static HOURS_PER_DAY: Assumption =
    of("assume-hours-per-day", D::Time, [8.0 * HOUR, 16.0 * HOUR, 24.0 * HOUR], JUDGED);
/// Working days of a week.
pub static DAYS_PER_WEEK: Assumption = of("assume-days-per-week", D::Count, [5.0, 5.0, 7.0], JUDGED);
/// Longest time that lubricant may take to reach its point.
pub static AGE: Assumption = of("assume-age", D::Time, [26.0 * WEEK, 52.0 * WEEK, 104.0 * WEEK], PRACTICE);
/// Longest time of one lubrication event.
pub static EVENT_TIME: Assumption = of("assume-event-time", D::Time, [HOUR / 6.0, HOUR / 2.0, HOUR], JUDGED);

/// Yield stress after rest over yield stress in motion.
pub static REST_FACTOR: Assumption = of(
    "assume-rest-factor",
    D::Ratio,
    [
        defaults::AFTER_REST.low.fraction(),
        defaults::AFTER_REST.typical.fraction(),
        defaults::AFTER_REST.high.fraction(),
    ],
    defaults::AFTER_REST_SOURCE,
);
/// Share of the stall pressure that the highest need may use.
pub static STALL_USE: Assumption = of("assume-stall-use", D::Ratio, [0.8, 0.9, 1.0], PRACTICE);
/// Lower edge of the delivery band.
pub static BAND_LOW: Assumption = of("assume-band-low", D::Ratio, [0.9, 0.9, 0.9], PRACTICE);
/// Upper edge of the delivery band.
pub static BAND_HIGH: Assumption = of("assume-band-high", D::Ratio, [1.5, 1.5, 1.5], PRACTICE);
/// Least rate of any point in an automatic system.
pub static FLOOR: Assumption =
    of("assume-floor", D::Flow, [0.005e-6 / HOUR, 0.01e-6 / HOUR, 0.02e-6 / HOUR], PRACTICE);
/// Pressure that a bearing holds against its line.
pub static BACK_PRESSURE: Assumption =
    of("assume-back-pressure", D::Pressure, [2.0 * BAR, 5.0 * BAR, 15.0 * BAR], PRACTICE);
/// Loss in fittings, as a share of the length of the line.
pub static FITTINGS: Assumption = of("assume-fittings", D::Ratio, [0.0, 0.1, 0.3], JUDGED);
/// Absolute pressure below which a cylinder fills with void.
pub static INLET_LOWEST: Assumption =
    of("assume-inlet-lowest", D::AbsolutePressure, [0.2 * BAR, 0.2 * BAR, 0.5 * BAR], JUDGED);
/// Air stirred into the lubricant.
pub static ENTRAINED_AIR: Assumption = of(
    "assume-entrained-air",
    D::Ratio,
    [defaults::AIR.low.fraction(), defaults::AIR.typical.fraction(), defaults::AIR.high.fraction()],
    defaults::AIR_SOURCE,
);
/// How much warmer than the hottest place of the package the disc can get.
pub static DISC_WARMER: Assumption =
    of("assume-disc-warmer", D::TemperatureDifference, [0.0, 0.0, 10.0], JUDGED);

/// Length of a stretch of line.
pub static LEG_LENGTH: Assumption = of("assume-leg-length", D::Length, [1.0, 3.0, 10.0], JUDGED);
/// Rise of a stretch of line that nobody mentions.
pub static LEG_LEVEL: Assumption = of("assume-leg-level", D::Length, [0.0, 0.0, 0.0], JUDGED);
/// Rise of a stretch of line that is said to be unknown.
pub static LEG_RISE: Assumption = of("assume-leg-rise", D::Length, [-2.0, 0.0, 2.0], JUDGED);
/// Length of a piped discharge behind the disc.
pub static DISCHARGE: Assumption = of("assume-discharge", D::Length, [1.0, 2.0, 5.0], JUDGED);
/// Share of the running time in which a point moves, where nobody mentions it.
pub static DUTY_FULL: Assumption = of("assume-duty-full", D::Ratio, [1.0, 1.0, 1.0], PRACTICE);
/// The same where it is said to be unknown.
pub static DUTY: Assumption = of("assume-duty", D::Ratio, [0.3, 1.0, 1.0], JUDGED);
/// A field of a point's kind; the span is the kind's own.
pub(crate) const POINT_FIELD: &str = "assume-point-field";

/// Viscosity of an oil at 40 °C of which only that it is an oil is known.
pub static OIL_AT_40: Assumption =
    of("assume-oil-at-40", D::KinematicViscosity, [68e-6, 220e-6, 460e-6], PRACTICE);
/// Viscosity of a base oil at 40 °C.
pub static BASE_OIL_AT_40: Assumption =
    of("assume-base-oil-at-40", D::KinematicViscosity, [68e-6, 150e-6, 460e-6], PRACTICE);
/// Viscosity index from which the viscosity at 100 °C is taken.
pub static VISCOSITY_INDEX: Assumption = of("assume-at-100", D::Count, [80.0, 95.0, 120.0], PRACTICE);
/// Density of an oil at 15 °C.
pub static OIL_DENSITY: Assumption = of("assume-oil-density", D::Density, [860.0, 880.0, 900.0], JUDGED);
/// Rise of viscosity with pressure.
pub static PRESSURE_COEFFICIENT: Assumption =
    of("assume-pressure-coefficient", D::PerPressure, [15e-9, 20e-9, 30e-9], JUDGED);
/// Density of a grease.
pub static GREASE_DENSITY: Assumption = of(
    "assume-grease-density",
    D::Density,
    [
        defaults::DENSITY.low.kilograms_per_cubic_metre(),
        defaults::DENSITY.typical.kilograms_per_cubic_metre(),
        defaults::DENSITY.high.kilograms_per_cubic_metre(),
    ],
    defaults::DENSITY_SOURCE,
);
/// Temperature step that halves the yield stress.
pub static HALVING: Assumption = of(
    "assume-halving",
    D::TemperatureDifference,
    [defaults::HALVING.low.kelvins(), defaults::HALVING.typical.kelvins(), defaults::HALVING.high.kelvins()],
    defaults::HALVING_SOURCE,
);

/// Length of a line of which a telephone call tells nothing.
pub static COLD_LENGTH: Assumption = of("assume-cold-length", D::Length, [5.0, 20.0, 60.0], JUDGED);
/// Its bore.
pub static COLD_BORE: Assumption = of("assume-cold-bore", D::Length, [0.004, 0.008, 0.013], JUDGED);
/// Wall of a tube of which only the outside is known.
pub static TUBE_WALL: Assumption = of("assume-tube-wall", D::Length, [0.0009, 0.00125, 0.00165], JUDGED);
/// Ratio of an air-driven pump whose plate nobody has read.
pub static PUMP_RATIO: Assumption = of("assume-pump-ratio", D::Ratio, [20.0, 40.0, 65.0], JUDGED);
/// Share of ratio times air that a pump keeps at rest; the band of `air/stall`.
pub static STALL_EFFICIENCY: Assumption =
    of("assume-stall-efficiency", D::Ratio, [0.85, 0.9, 0.95], PRACTICE);
/// What dividers and bearings ask at the far end of a progressive main.
pub static COLD_END: Assumption =
    of("assume-cold-end", D::Pressure, [5.0 * BAR, 20.0 * BAR, 50.0 * BAR], JUDGED);

/// The band of a property of a grease class as an assumption.
pub(crate) fn of_class<T: Quantity>(key: &'static str, band: Band<T>) -> Assumption {
    let span = [band.low.si(), band.typical.si(), band.high.si()];
    of(key, T::DIMENSION, span, oilway_physics::grease::classes::DESIGN_SOURCE)
}

/// Every assumption with a fixed span, in the order in which a job tells of them.
pub static ALL: &[&Assumption] = &[
    &ALTITUDE,
    &COLDEST_INDOORS,
    &COLDEST_OUTDOORS,
    &NORMAL_INDOORS,
    &NORMAL_OUTDOORS,
    &HOTTEST,
    &AIR_LOWEST,
    &AIR_HIGHEST,
    &AIR_POSSIBLE,
    &DEW_POINT,
    &HOURS_PER_DAY,
    &DAYS_PER_WEEK,
    &AGE,
    &EVENT_TIME,
    &REST_FACTOR,
    &STALL_USE,
    &BAND_LOW,
    &BAND_HIGH,
    &FLOOR,
    &BACK_PRESSURE,
    &FITTINGS,
    &INLET_LOWEST,
    &ENTRAINED_AIR,
    &DISC_WARMER,
    &LEG_LENGTH,
    &LEG_LEVEL,
    &LEG_RISE,
    &DISCHARGE,
    &DUTY_FULL,
    &DUTY,
    &OIL_AT_40,
    &BASE_OIL_AT_40,
    &VISCOSITY_INDEX,
    &OIL_DENSITY,
    &PRESSURE_COEFFICIENT,
    &GREASE_DENSITY,
    &HALVING,
    &COLD_LENGTH,
    &COLD_BORE,
    &TUBE_WALL,
    &PUMP_RATIO,
    &STALL_EFFICIENCY,
    &COLD_END,
];

#[cfg(test)]
mod tests {
    use super::*;
    use oilway_text::{Message, Reader, say};
    use std::collections::BTreeSet;

    #[test]
    fn every_assumption_has_its_own_key_a_sentence_and_an_ordered_span() {
        let mut keys = BTreeSet::new();
        for assumption in ALL {
            assert!(keys.insert(assumption.key), "{} stands twice", assumption.key);
            let sentence = say(&Message::new(assumption.key), &Reader::default());
            assert!(!sentence.starts_with('['), "{sentence}");
            assert!(
                assumption.low <= assumption.typical && assumption.typical <= assumption.high,
                "{assumption:?}"
            );
        }
    }

    #[test]
    fn a_neighbour_that_is_known_bounds_an_assumption() {
        use oilway_units::Pressure;
        let possible = AIR_POSSIBLE.at_least(Pressure::from_bar(10.5));
        assert_eq!(
            (possible.low().bar(), possible.typical().bar(), possible.high().bar()),
            (10.5, 10.5, 11.0)
        );
        let lowest = AIR_LOWEST.at_most(Pressure::from_bar(4.5));
        assert_eq!((lowest.low().bar(), lowest.typical().bar(), lowest.high().bar()), (4.0, 4.5, 4.5));
    }
}
