//! A cold start over the telephone: whether one line of grease moves today, how cold it may get, and what would move that limit.
//!
//! Read [`ColdStart::answer`]. Every entry may be a value or a range; the ends of all of them together give the band of the answer.
//! What is counted is the yield stress along the line and what the far end asks; fittings and climbs belong into the length and
//! into the far end, and a line that has begun to move asks more than one that is about to.

use oilway_model::{FlowCurve, Lubricant, Substance, Verdict};
use oilway_physics::grease::classes::{self, Band};
use oilway_physics::{air, grease, pipe_flow};
use oilway_units::{
    AnyQuantity, Entry, Length, OpenEntry, Origin, Pressure, Ratio, Temperature, TemperatureDifference,
};

/// How far the search for the coldest start looks down and up, °C: the viscosity lines of base oils hold no further down, and nobody
/// asks for colder.
const SEARCH: (f64, f64) = (-50.0, 60.0);
/// Half a tenth of a kelvin is nearer than anybody knows the weather.
const STEP: f64 = 0.05;
/// Class ranges and told yield stresses move with temperature from here.
const REFERENCE: Temperature = Temperature::from_celsius(25.0);
/// Heat tracing holds the line at this. Common practice, no source.
pub const TRACED: Temperature = Temperature::from_celsius(10.0);
/// The plan changes to the winter grade so far above the coldest start. Common practice, no source.
const AHEAD: TemperatureDifference = TemperatureDifference::from_kelvins(3.0);
/// Nights of summer get as cold as this; a line that needs more warmth has the wrong grease all year. Judged, no source.
const SUMMER: Temperature = Temperature::from_celsius(12.0);
/// Ends of more open entries than these are not tried together: there are no more of them.
const MOST_OPEN: u32 = 12;

/// What is known of the stiffness of the grease.
#[derive(Clone, Debug)]
#[allow(clippy::large_enum_variant, reason = "there is one of it in a question")]
pub enum Stiffness {
    /// A grease of the library or of a class.
    Of(Lubricant),
    /// A yield stress that somebody measured.
    Told {
        /// The yield stress, after rest.
        yield_stress: Entry<Pressure>,
        /// Where it was measured; none where it was today.
        at: Option<Entry<Temperature>>,
        /// Warming that halves it.
        halving: Entry<TemperatureDifference>,
    },
}

/// What the pump can give.
#[derive(Clone, Debug)]
pub enum Push {
    /// Its highest pressure as told.
    Told(Entry<Pressure>),
    /// An air-driven pump.
    Air {
        /// Area of the air piston over area of the plunger.
        ratio: Entry<Ratio>,
        /// Air pressure at the motor.
        air: Entry<Pressure>,
        /// Share left by seals and spring.
        efficiency: Entry<Ratio>,
    },
}

/// The question: one line of grease on a cold morning.
#[derive(Clone, Debug)]
pub struct ColdStart {
    /// Temperature of the line.
    pub temperature: Entry<Temperature>,
    /// The grease.
    pub grease: Stiffness,
    /// Yield stress after rest over that in motion; one where the stress was measured after rest.
    pub rest: Entry<Ratio>,
    /// Length of the line.
    pub length: Entry<Length>,
    /// Its inner diameter.
    pub bore: Entry<Length>,
    /// The next wider bore that can be had.
    pub wider: Length,
    /// The pump.
    pub push: Push,
    /// Pressure that the far end asks before anything leaves the line.
    pub end: Entry<Pressure>,
    /// Pressure below which the far end recharges; none where nothing there has to.
    pub reset: Option<Entry<Pressure>>,
    /// Share of the stall pressure that a need may use and still be called sure.
    pub use_share: Ratio,
}

/// Down to where a line starts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reach {
    /// To this temperature.
    DownTo(Temperature),
    /// As cold as anybody asks: the cold is not the limit.
    Beyond,
    /// At no temperature that is looked at.
    Never,
}

/// A remedy that lasts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cure {
    /// A grease one class softer, or a synthetic one of the same class.
    Softer,
    /// The next wider bore all along.
    Wider,
    /// The line kept at [`TRACED`].
    Traced,
}

/// An entry that is not known exactly, and what that means for the answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Open {
    /// The name of the entry.
    pub name: &'static str,
    /// Its lower end.
    pub low: AnyQuantity,
    /// The value taken.
    pub typical: AnyQuantity,
    /// Its upper end.
    pub high: AnyQuantity,
    /// Where it comes from.
    pub origin: Origin,
    /// Swing of the margin over the range, as a share of what is available.
    pub weight: f64,
    /// Where start and no start meet, if that is inside.
    pub turns_at: Option<AnyQuantity>,
}

/// The answer.
#[derive(Clone, Debug)]
pub struct ColdAnswer {
    /// In a word.
    pub verdict: Verdict,
    /// Whether it starts with every entry at its typical value.
    pub starts: bool,
    /// Whether the far end recharges with every entry at its typical value; none where nothing there has to.
    pub recharges: Option<bool>,
    /// The temperature for which it is worked out.
    pub temperature: Temperature,
    /// Pressure needed before anything flows.
    pub need: Band<Pressure>,
    /// Pressure that the pump can give.
    pub have: Band<Pressure>,
    /// Down to where it starts: the easiest case, the typical, the hardest.
    pub coldest: [Reach; 3],
    /// The remedies and where each moves the typical limit.
    pub cures: [(Cure, Reach); 3],
    /// What is not known exactly, the weightiest first; before it whatever turns the answer.
    pub open: Vec<Open>,
    /// Change to the winter grade before nights below this; none where the cold is not the limit, or every season is too cold.
    pub plan: Option<Temperature>,
    /// The coldest use that the supplier states, where it comes before the pressure does.
    pub stated: Option<Temperature>,
}

/// A change that a remedy makes.
#[derive(Clone, Copy)]
struct Change {
    stress: f64,
    bore: f64,
}

const AS_IS: Change = Change { stress: 1.0, bore: 1.0 };

impl ColdStart {
    /// The answer to the question.
    pub fn answer(&self) -> ColdAnswer {
        let here = self.temperature.get();
        let corners = self.corners();
        let margins = || corners.iter().map(|case| case.margin(case.temperature.get(), AS_IS));
        let (worst, best) =
            (margins().fold(f64::INFINITY, f64::min), margins().fold(f64::NEG_INFINITY, f64::max));
        let limits: Vec<Reach> = corners.iter().map(|case| case.reach(AS_IS)).collect();
        let typical = self.reach(AS_IS);
        let pick = |best: bool| {
            let all = limits.iter().copied();
            let found = if best { all.min_by(Reach::order) } else { all.max_by(Reach::order) };
            found.unwrap_or(typical)
        };
        let coldest = [pick(true), typical, pick(false)];
        let stated = self.stated().filter(|&stated| match typical {
            Reach::DownTo(limit) => limit < stated,
            Reach::Beyond => true,
            Reach::Never => false,
        });
        let too_cold = stated.is_some_and(|stated| self.temperature.low() < stated);
        ColdAnswer {
            verdict: self.verdict(worst, best, too_cold),
            starts: self.margin(here, AS_IS) >= 0.0,
            recharges: self.recharge(here, AS_IS).map(|margin| margin >= 0.0),
            temperature: here,
            need: band(self, &corners, |case| case.need(case.temperature.get(), AS_IS)),
            have: band(self, &corners, ColdStart::have),
            coldest,
            cures: self.cures(),
            open: self.open(),
            plan: plan(typical, stated),
            stated,
        }
    }

    fn verdict(&self, worst: f64, best: f64, too_cold: bool) -> Verdict {
        if best < 0.0 {
            Verdict::WillNotWork
        } else if worst < 0.0 {
            Verdict::CannotTellYet
        } else if worst < 1.0 - self.use_share.fraction() || too_cold {
            Verdict::WorksWithCare
        } else {
            Verdict::Works
        }
    }

    /// The coldest use that the supplier of the grease states.
    fn stated(&self) -> Option<Temperature> {
        match &self.grease {
            Stiffness::Of(lubricant) => lubricant.coldest,
            Stiffness::Told { .. } => None,
        }
    }

    /// The yield stress in motion, or as told; without bound where the grease has no curve there.
    fn yield_stress(&self, temperature: Temperature) -> Pressure {
        match &self.grease {
            Stiffness::Of(lubricant) => {
                let fluid = lubricant.at(temperature);
                fluid.map_or(Pressure::from_pascals(f64::INFINITY), |fluid| fluid.yield_stress)
            }
            Stiffness::Told { yield_stress, at, halving } => {
                // Seen from the place of the measurement the law reads the same as from its own reference.
                let measured = at.as_ref().unwrap_or(&self.temperature).get();
                let shifted = REFERENCE.plus(temperature.above(measured));
                grease::yield_stress_at(yield_stress.get(), shifted, halving.get())
            }
        }
    }

    /// What stays in the line after venting, without the rest.
    fn residual(&self, temperature: Temperature, change: Change) -> Pressure {
        let stress = self.yield_stress(temperature) * change.stress;
        pipe_flow::start_pressure(self.bore.get() * change.bore, self.length.get(), stress)
    }

    fn need(&self, temperature: Temperature, change: Change) -> Pressure {
        self.residual(temperature, change) * self.rest.get().fraction() + self.end.get()
    }

    fn have(&self) -> Pressure {
        match &self.push {
            Push::Told(pressure) => pressure.get(),
            Push::Air { ratio, air, efficiency } => {
                air::stall_pressure(ratio.get(), air.get(), efficiency.get())
            }
        }
    }

    /// The room to the nearer of two limits, as a share of it: the start, and the recharge where there is one.
    fn margin(&self, temperature: Temperature, change: Change) -> f64 {
        let start = share_left(self.need(temperature, change), self.have());
        self.recharge(temperature, change).map_or(start, |recharge| recharge.min(start))
    }

    fn recharge(&self, temperature: Temperature, change: Change) -> Option<f64> {
        Some(share_left(self.residual(temperature, change), self.reset?.get()))
    }

    /// Down to where it starts: the yield stress falls with warmth, so one temperature parts start from no start.
    fn reach(&self, change: Change) -> Reach {
        let starts = |celsius: f64| self.margin(Temperature::from_celsius(celsius), change) >= 0.0;
        let (mut dead, mut alive) = SEARCH;
        if !starts(alive) {
            return Reach::Never;
        }
        if starts(dead) {
            return Reach::Beyond;
        }
        while alive - dead > STEP {
            let middle = 0.5 * (alive + dead);
            if starts(middle) { alive = middle } else { dead = middle }
        }
        Reach::DownTo(Temperature::from_celsius(alive))
    }

    fn cures(&self) -> [(Cure, Reach); 3] {
        let traced = if self.margin(TRACED, AS_IS) >= 0.0 { Reach::Beyond } else { Reach::Never };
        let wider = self.wider / self.bore.typical();
        [
            (Cure::Softer, self.reach(Change { stress: self.softer(), ..AS_IS })),
            (Cure::Wider, self.reach(Change { bore: wider, ..AS_IS })),
            (Cure::Traced, traced),
        ]
    }

    /// The share of the yield stress that the next softer class has; from class 2 to 1 where the class is not known.
    fn softer(&self) -> f64 {
        let class = match &self.grease {
            Stiffness::Of(Lubricant { substance: Substance::Grease(grease), .. }) => grease.class.as_str(),
            _ => "2",
        };
        let known = |name: &str| classes::CLASSES.iter().position(|c| c.name == name && c.design.is_some());
        let place = known(class).or_else(|| known("2")).unwrap_or(1).max(1);
        let stress =
            |place: usize| classes::CLASSES[place].design.map_or(0.0, |d| d.yield_stress.typical.pascals());
        stress(place - 1) / stress(place).max(1.0)
    }

    /// Every entry with its name, in a fixed order.
    fn entries(&mut self) -> Vec<(&'static str, &mut dyn OpenEntry)> {
        let mut all: Vec<(&'static str, &mut dyn OpenEntry)> = vec![
            ("temperature", &mut self.temperature),
            ("rest", &mut self.rest),
            ("length", &mut self.length),
            ("bore", &mut self.bore),
            ("end", &mut self.end),
        ];
        match &mut self.grease {
            Stiffness::Of(Lubricant { substance: Substance::Grease(grease), .. }) => {
                if let FlowCurve::Span(span) = &mut grease.curve {
                    all.push(("yield", &mut span.yield_stress));
                    all.push(("halving", &mut span.halving));
                }
            }
            Stiffness::Of(_) => {}
            Stiffness::Told { yield_stress, at, halving } => {
                all.push(("yield", yield_stress));
                all.push(("halving", halving));
                all.extend(at.as_mut().map(|at| ("yield_at", at as &mut dyn OpenEntry)));
            }
        }
        match &mut self.push {
            Push::Told(pressure) => all.push(("pressure", pressure)),
            Push::Air { ratio, air, efficiency } => {
                all.push(("ratio", ratio));
                all.push(("air", air));
                all.push(("efficiency", efficiency));
            }
        }
        all.extend(self.reset.as_mut().map(|reset| ("reset", reset as &mut dyn OpenEntry)));
        all
    }

    /// The same question with one entry at a value.
    fn with(&self, name: &str, si: f64) -> ColdStart {
        let mut case = self.clone();
        case.entries()
            .into_iter()
            .filter(|(known, _)| *known == name)
            .for_each(|(_, entry)| entry.put_si(si));
        case
    }

    /// Every way to put all open entries at their ends. Need, stall and limit rise or fall with each entry alone, so no case between
    /// them is easier or harder than all of these.
    fn corners(&self) -> Vec<ColdStart> {
        let mut case = self.clone();
        let open = case.entries().iter().filter(|(_, entry)| entry.is_open()).count();
        let open = u32::try_from(open).unwrap_or(MOST_OPEN).min(MOST_OPEN);
        let corner = |ends: u32| {
            let mut case = self.clone();
            let entries = case.entries().into_iter().filter(|(_, entry)| entry.is_open());
            for (place, (_, entry)) in entries.enumerate() {
                let end = if (ends >> place) & 1 == 1 { entry.high_si() } else { entry.low_si() };
                entry.put_si(end);
            }
            case
        };
        (0..1u32 << open).map(corner).collect()
    }

    fn open(&self) -> Vec<Open> {
        let mut copy = self.clone();
        let mut all: Vec<Open> = Vec::new();
        for (name, entry) in copy.entries().into_iter().filter(|(_, entry)| entry.is_open()) {
            all.push(self.opened(name, entry));
        }
        all.sort_by(|a, b| {
            let turns = |open: &Open| open.turns_at.is_none();
            turns(a).cmp(&turns(b)).then(b.weight.total_cmp(&a.weight)).then(a.name.cmp(b.name))
        });
        all
    }

    fn opened(&self, name: &'static str, entry: &dyn OpenEntry) -> Open {
        let margin = |si: f64| {
            let case = self.with(name, si);
            case.margin(case.temperature.get(), AS_IS)
        };
        let (mut low, mut high) = (entry.low_si(), entry.high_si());
        let (at_low, at_high) = (margin(low), margin(high));
        let turns = (at_low >= 0.0) != (at_high >= 0.0);
        let of = |si: f64| AnyQuantity::new(entry.dimension(), si);
        if turns {
            // A double holds no more halvings than these.
            for _ in 0..60 {
                let middle = 0.5 * (low + high);
                if (margin(middle) >= 0.0) == (at_low >= 0.0) { low = middle } else { high = middle }
            }
        }
        Open {
            name,
            low: of(entry.low_si()),
            typical: of(entry.typical_si()),
            high: of(entry.high_si()),
            origin: entry.origin(),
            weight: (at_high - at_low).abs(),
            turns_at: turns.then(|| of(0.5 * (low + high))),
        }
    }
}

impl Reach {
    /// From the coldest to the warmest; what never starts comes last.
    fn order(&self, other: &Reach) -> core::cmp::Ordering {
        let kelvin = |reach: &Reach| match reach {
            Reach::Beyond => f64::NEG_INFINITY,
            Reach::DownTo(limit) => limit.kelvin(),
            Reach::Never => f64::INFINITY,
        };
        kelvin(self).total_cmp(&kelvin(other))
    }
}

/// What is left of a limit, as a share of it.
fn share_left(used: Pressure, limit: Pressure) -> f64 {
    1.0 - used / limit.max(Pressure::from_pascals(1.0))
}

/// Ahead of the coldest start and of what the supplier states; no rule for a winter where summer nights are too cold.
fn plan(typical: Reach, stated: Option<Temperature>) -> Option<Temperature> {
    let Reach::DownTo(limit) = typical else { return None };
    let ahead = limit.plus(AHEAD);
    let plan = stated.map_or(ahead, |stated| ahead.max(stated));
    (plan <= SUMMER).then_some(plan)
}

fn band(typical: &ColdStart, corners: &[ColdStart], of: impl Fn(&ColdStart) -> Pressure) -> Band<Pressure> {
    let middle = of(typical);
    let ends = || corners.iter().map(&of);
    Band {
        low: ends().fold(middle, Pressure::min),
        typical: middle,
        high: ends().fold(middle, Pressure::max),
    }
}

#[cfg(test)]
mod tests;
