//! The weather of a walk: how much colder than the job's own days, and with which remedy.

use oilway_model::{Conditions, Fluid, Season};
use oilway_units::{Consistency, Ratio, Temperature, TemperatureDifference};

/// A change of circumstances under which a design is looked at again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weather {
    /// Added to the temperature of every place outdoors, or of all places where none is.
    pub shift: TemperatureDifference,
    /// Yield stress of the lubricant, of what it is.
    pub yield_stress: f64,
    /// Consistency of the lubricant, of what it is.
    pub consistency: f64,
    /// Bore of every line, of what it is.
    pub bore: f64,
    /// Lines are kept at least this warm.
    pub traced_to: Option<Temperature>,
}

impl Weather {
    /// The job's own days.
    pub const AS_IS: Weather = Weather {
        shift: TemperatureDifference::ZERO,
        yield_stress: 1.0,
        consistency: 1.0,
        bore: 1.0,
        traced_to: None,
    };

    /// The same, colder by a difference.
    pub fn colder(self, by: TemperatureDifference) -> Self {
        Weather { shift: -by, ..self }
    }

    /// The temperature of a place.
    pub fn temperature(&self, conditions: &Conditions, place: usize, season: Season) -> Temperature {
        let none_outdoors = !conditions.places.iter().any(|p| p.outdoors);
        let Some(here) = conditions.places.get(place) else { return Temperature::from_celsius(20.0) };
        let own = here.temperature(season);
        let shifted = if here.outdoors || none_outdoors { own.plus(self.shift) } else { own };
        self.traced_to.map_or(shifted, |t| shifted.max(t))
    }

    /// The lubricant of a place in a season.
    pub fn fluid(&self, conditions: &Conditions, place: usize, season: Season) -> Option<Fluid> {
        let fluid = conditions.lubricant.at(self.temperature(conditions, place, season))?;
        Some(Fluid {
            yield_stress: fluid.yield_stress * self.yield_stress,
            consistency: Consistency::from_pascal_seconds_to_the_n(
                fluid.consistency.pascal_seconds_to_the_n() * self.consistency,
            ),
            index: Ratio::from_fraction(fluid.index.fraction()),
            ..fluid
        })
    }
}
