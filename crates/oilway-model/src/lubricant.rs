//! The lubricant: what is known of it, and the state in which it flows at a temperature.

use oilway_physics::{grease, oil, pipe_flow};
use oilway_units::{
    Consistency, Density, Entry, Flow, KinematicViscosity, Length, PerPressure, Pressure, Ratio, Temperature,
    TemperatureDifference, Viscosity,
};

/// An oil, or the base oil of a grease.
#[derive(Clone, Debug)]
pub struct Oil {
    /// Kinematic viscosity at 40 °C.
    pub at_40: Entry<KinematicViscosity>,
    /// Kinematic viscosity at 100 °C.
    pub at_100: Entry<KinematicViscosity>,
    /// Density at 15 °C.
    pub density_15: Entry<Density>,
    /// Rise of viscosity with pressure.
    pub pressure_coefficient: Entry<PerPressure>,
    /// Pour point, if known: below it and 10 K above it the viscosity line no longer holds.
    pub pour_point: Option<Temperature>,
}

/// One measured or fitted state of a grease.
#[derive(Clone, Debug)]
pub struct GreaseRow {
    /// Temperature of the measurement.
    pub temperature: Temperature,
    /// Yield stress.
    pub yield_stress: Pressure,
    /// Consistency.
    pub consistency: Consistency,
    /// Flow index n.
    pub index: Ratio,
}

/// A grease known by its class only: literature ranges at 25 °C and the laws that move them with temperature.
#[derive(Clone, Debug)]
pub struct GreaseSpan {
    /// Yield stress at 25 °C.
    pub yield_stress: Entry<Pressure>,
    /// Consistency at 25 °C.
    pub consistency: Entry<Consistency>,
    /// Flow index.
    pub index: Entry<Ratio>,
    /// Temperature step that halves the yield stress.
    pub halving: Entry<TemperatureDifference>,
}

/// How the flow of a grease is known.
#[derive(Clone, Debug)]
#[allow(
    clippy::large_enum_variant,
    reason = "a job holds one lubricant, and a box would cost every reader a dereference"
)]
pub enum FlowCurve {
    /// Measured rows, in rising order of temperature; between them yield stress and consistency go with the exponential, the
    /// index in a straight line. One row alone moves with temperature by the laws of [`GreaseSpan`].
    Rows(Vec<GreaseRow>),
    /// Ranges by class.
    Span(GreaseSpan),
}

/// A grease.
#[derive(Clone, Debug)]
pub struct Grease {
    /// NLGI class as written: `2`, `00`.
    pub class: String,
    /// Thickener in plain words.
    pub thickener: String,
    /// Its base oil.
    pub base_oil: Oil,
    /// How it flows.
    pub curve: FlowCurve,
    /// Density of the grease.
    pub density: Entry<Density>,
}

/// Oil or grease.
#[derive(Clone, Debug)]
#[allow(clippy::large_enum_variant, reason = "there is one of it in a job")]
pub enum Substance {
    /// An oil.
    Oil(Oil),
    /// A grease.
    Grease(Grease),
}

/// The lubricant of a job.
#[derive(Clone, Debug)]
pub struct Lubricant {
    /// Its name in the job.
    pub name: String,
    /// A sentence about it.
    pub description: String,
    /// What it is.
    pub substance: Substance,
    /// Whether it may touch food by accident.
    pub food: bool,
    /// Coldest use that its supplier states.
    pub coldest: Option<Temperature>,
    /// Hottest use that its supplier states.
    pub hottest: Option<Temperature>,
}

/// A lubricant at one temperature: a Herschel–Bulkley fluid, of which an oil is the case without yield stress and with n = 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fluid {
    /// Density.
    pub density: Density,
    /// Yield stress in motion.
    pub yield_stress: Pressure,
    /// Consistency; for an oil its dynamic viscosity.
    pub consistency: Consistency,
    /// Flow index.
    pub index: Ratio,
    /// Rise of viscosity with pressure; zero for greases, whose rows are taken as they are.
    pub pressure_coefficient: PerPressure,
}

impl Fluid {
    /// Whether it is a plain viscous liquid.
    pub fn is_newtonian(&self) -> bool {
        self.yield_stress.pascals() == 0.0 && self.index.fraction() == 1.0
    }
    /// The dynamic viscosity of a plain viscous liquid.
    pub fn viscosity(&self) -> Viscosity {
        Viscosity::from_pascal_seconds(self.consistency.pascal_seconds_to_the_n())
    }
    /// The flow that a pressure drop moves through a round line, laminar; an inverse of the drop for tests and supply lines.
    pub fn flow(&self, bore: Length, length: Length, drop: Pressure) -> Flow {
        if self.is_newtonian() {
            pipe_flow::newtonian_flow(bore, length, drop, self.viscosity())
        } else {
            pipe_flow::herschel_bulkley_flow(
                bore,
                length,
                drop,
                self.yield_stress,
                self.consistency,
                self.index,
            )
        }
    }
}

/// Steel tube as drawn; from memory of handbook tables, of no weight in laminar flow.
pub const ROUGHNESS: Length = Length::from_millimetres(0.0015);

impl Fluid {
    /// The pressure lost along a round line, exact for laminar flow; an oil that leaves laminar flow goes by Darcy–Weisbach.
    pub fn drop(&self, bore: Length, length: Length, flow: Flow) -> Pressure {
        if !self.is_newtonian() {
            return pipe_flow::herschel_bulkley_drop(
                bore,
                length,
                flow,
                self.yield_stress,
                self.consistency,
                self.index,
            );
        }
        let reynolds = pipe_flow::reynolds(bore, flow, self.density, self.viscosity());
        if reynolds.fraction() <= pipe_flow::TRANSITION {
            pipe_flow::newtonian_drop(bore, length, flow, self.viscosity())
        } else {
            pipe_flow::darcy_drop(bore, length, flow, self.density, self.viscosity(), ROUGHNESS)
        }
    }
}

impl Oil {
    /// Kinematic viscosity at a temperature, none where the two points make no viscosity line.
    pub fn kinematic(&self, temperature: Temperature) -> Option<KinematicViscosity> {
        oil::walther_viscosity(
            temperature,
            Temperature::from_celsius(40.0),
            self.at_40.get(),
            Temperature::from_celsius(100.0),
            self.at_100.get(),
        )
    }
    /// Density at a temperature; that at 15 °C where the volume correction does not reach.
    pub fn density(&self, temperature: Temperature) -> Density {
        oil::oil_density(self.density_15.get(), temperature).unwrap_or(self.density_15.get())
    }
    /// Dynamic viscosity at a temperature.
    pub fn dynamic(&self, temperature: Temperature) -> Option<Viscosity> {
        Some(oil::dynamic_viscosity(self.kinematic(temperature)?, self.density(temperature)))
    }
}

impl Lubricant {
    /// Whether it is a grease.
    pub fn is_grease(&self) -> bool {
        matches!(self.substance, Substance::Grease(_))
    }
    /// The oil, or the base oil.
    pub fn oil(&self) -> &Oil {
        match &self.substance {
            Substance::Oil(oil) => oil,
            Substance::Grease(grease) => &grease.base_oil,
        }
    }
    /// The density at a temperature.
    pub fn density(&self, temperature: Temperature) -> Density {
        match &self.substance {
            Substance::Oil(oil) => oil.density(temperature),
            Substance::Grease(grease) => grease.density.get(),
        }
    }
    /// The state in which it flows at a temperature; none where its oil has no viscosity line.
    pub fn at(&self, temperature: Temperature) -> Option<Fluid> {
        match &self.substance {
            Substance::Oil(oil) => Some(Fluid {
                density: oil.density(temperature),
                yield_stress: Pressure::ZERO,
                consistency: Consistency::from_pascal_seconds_to_the_n(
                    oil.dynamic(temperature)?.pascal_seconds(),
                ),
                index: Ratio::from_fraction(1.0),
                pressure_coefficient: oil.pressure_coefficient.get(),
            }),
            Substance::Grease(grease) => grease.at(temperature),
        }
    }
}

/// Room temperature, to which the class ranges refer.
const REFERENCE: Temperature = Temperature::from_celsius(25.0);
/// Halving step of the yield stress where a single row must do (`lubricants`, 20 K, range 15 to 40 K; memory).
const HALVING: TemperatureDifference = TemperatureDifference::from_kelvins(20.0);

impl Grease {
    fn at(&self, temperature: Temperature) -> Option<Fluid> {
        let (yield_stress, consistency, index) = match &self.curve {
            FlowCurve::Span(span) => (
                grease::yield_stress_at(span.yield_stress.get(), temperature, span.halving.get()),
                self.consistency_from(span.consistency.get(), REFERENCE, temperature)?,
                span.index.get(),
            ),
            FlowCurve::Rows(rows) => self.between_rows(rows, temperature)?,
        };
        Some(Fluid {
            density: self.density.get(),
            yield_stress,
            consistency,
            index,
            pressure_coefficient: PerPressure::ZERO,
        })
    }

    fn consistency_from(
        &self,
        known: Consistency,
        at: Temperature,
        wanted: Temperature,
    ) -> Option<Consistency> {
        Some(grease::consistency_at(known, self.base_oil.dynamic(wanted)?, self.base_oil.dynamic(at)?))
    }

    fn between_rows(
        &self,
        rows: &[GreaseRow],
        temperature: Temperature,
    ) -> Option<(Pressure, Consistency, Ratio)> {
        let (first, last) = (rows.first()?, rows.last()?);
        if rows.len() == 1 {
            // Seen from the row's own temperature the law reads the same as from 25 °C.
            let shifted = REFERENCE.plus(temperature.above(first.temperature));
            return Some((
                grease::yield_stress_at(first.yield_stress, shifted, HALVING),
                self.consistency_from(first.consistency, first.temperature, temperature)?,
                first.index,
            ));
        }
        // Beyond the ends the nearest pair is extended; the caller marks that as an assumption.
        let upper = rows.iter().position(|r| r.temperature >= temperature).unwrap_or(rows.len() - 1).max(1);
        let (a, b) = (&rows[upper - 1], &rows[upper]);
        let t = temperature.above(a.temperature) / b.temperature.above(a.temperature);
        let between = |x: f64, y: f64| {
            if x > 0.0 && y > 0.0 { x * libm::pow(y / x, t) } else { (x + (y - x) * t).max(0.0) }
        };
        let index = a.index.fraction() + (b.index.fraction() - a.index.fraction()) * t;
        let edge = (
            first.index.fraction().min(last.index.fraction()),
            first.index.fraction().max(last.index.fraction()),
        );
        Some((
            Pressure::from_pascals(between(a.yield_stress.pascals(), b.yield_stress.pascals())),
            Consistency::from_pascal_seconds_to_the_n(between(
                a.consistency.pascal_seconds_to_the_n(),
                b.consistency.pascal_seconds_to_the_n(),
            )),
            // The index is not extended beyond what was measured: it is a shape, not a strength.
            Ratio::from_fraction(index.clamp(edge.0, edge.1)),
        ))
    }
}
