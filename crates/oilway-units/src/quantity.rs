//! The quantity types. One macro, one line a unit, so that no conversion factor stands twice.

use crate::exact::*;
use core::cmp::Ordering;
use core::iter::Sum;
use core::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

/// What every quantity has: a dimension and a value in SI units.
pub trait Quantity: Copy + PartialOrd + core::fmt::Debug + Send + Sync + 'static {
    /// The dimension, known at run time too, for tables, files and the calculation desk.
    const DIMENSION: Dimension;
    /// The value in the SI unit of the dimension.
    fn si(self) -> f64;
    /// The quantity that has this value in the SI unit.
    fn from_si(si: f64) -> Self;
}

/// Arithmetic of the quantities that have a natural nothing. A `point` on a scale (a temperature, a pressure above
/// vacuum) has none: two of them are never added, and their difference is another quantity.
macro_rules! arithmetic {
    ($name:ident point) => {};
    ($name:ident) => {
        impl $name {
            /// Nothing of it.
            pub const ZERO: $name = $name(0.0);
            /// Without its sign.
            pub const fn abs(self) -> Self {
                $name(self.0.abs())
            }
        }
        impl Default for $name {
            fn default() -> Self {
                Self::ZERO
            }
        }
        impl Add for $name {
            type Output = Self;
            fn add(self, o: Self) -> Self {
                $name(self.0 + o.0)
            }
        }
        impl Sub for $name {
            type Output = Self;
            fn sub(self, o: Self) -> Self {
                $name(self.0 - o.0)
            }
        }
        impl AddAssign for $name {
            fn add_assign(&mut self, o: Self) {
                self.0 += o.0;
            }
        }
        impl SubAssign for $name {
            fn sub_assign(&mut self, o: Self) {
                self.0 -= o.0;
            }
        }
        impl Neg for $name {
            type Output = Self;
            fn neg(self) -> Self {
                $name(-self.0)
            }
        }
        impl Mul<f64> for $name {
            type Output = Self;
            fn mul(self, k: f64) -> Self {
                $name(self.0 * k)
            }
        }
        impl Mul<$name> for f64 {
            type Output = $name;
            fn mul(self, q: $name) -> $name {
                $name(self * q.0)
            }
        }
        impl Div<f64> for $name {
            type Output = Self;
            fn div(self, k: f64) -> Self {
                $name(self.0 / k)
            }
        }
        impl Div for $name {
            type Output = f64;
            fn div(self, o: Self) -> f64 {
                self.0 / o.0
            }
        }
        impl Sum for $name {
            fn sum<I: Iterator<Item = Self>>(i: I) -> Self {
                i.fold(Self::ZERO, Add::add)
            }
        }
    };
}

/// What a formula may give: a quantity, or a quantity that need not exist.
pub trait Outcome {
    /// The quantity.
    type Gives: Quantity;
    /// The value in SI, if there is one.
    fn outcome(self) -> Option<f64>;
}

impl<Q: Quantity> Outcome for Option<Q> {
    type Gives = Q;
    fn outcome(self) -> Option<f64> {
        self.map(Quantity::si)
    }
}

macro_rules! quantities {
    (($d:tt) $( $(#[$doc:meta])* $name:ident $([$point:ident])? { $si:ident / $from_si:ident
        $(, $get:ident / $make:ident = $factor:expr)* $(,)? } )+) => {
        /// Hands the names of all quantity types to another macro, so that nobody keeps a second list of them.
        #[macro_export]
        macro_rules! every_quantity {
            ($d callback:ident) => { $d callback! { $($name)+ } };
        }

        /// The dimensions that the project knows, one for each quantity type.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
        pub enum Dimension { $( $(#[$doc])* $name, )+ }

        impl Dimension {
            /// Every dimension, in the order of declaration.
            pub const ALL: &'static [Dimension] = &[$(Dimension::$name),+];
            /// The name of the quantity type.
            pub const fn name(self) -> &'static str { match self { $(Dimension::$name => stringify!($name)),+ } }
        }

        $(
            $(#[$doc])*
            #[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
            pub struct $name(f64);

            impl Outcome for $name {
                type Gives = $name;
                fn outcome(self) -> Option<f64> {
                    Some(self.0)
                }
            }

            impl Quantity for $name {
                const DIMENSION: Dimension = Dimension::$name;
                fn si(self) -> f64 { self.0 }
                fn from_si(si: f64) -> Self { $name(si) }
            }

            impl $name {
                #[doc = concat!("The value in ", stringify!($si), ", the SI unit.")]
                pub const fn $si(self) -> f64 { self.0 }
                #[doc = concat!("From a value in ", stringify!($si), ", the SI unit.")]
                pub const fn $from_si(value: f64) -> Self { $name(value) }
                $(
                    #[doc = concat!("The value in ", stringify!($get), ".")]
                    pub const fn $get(self) -> f64 { const UNIT: Exact = $factor; UNIT.of_si(self.0) }
                    #[doc = concat!("From a value in ", stringify!($get), ".")]
                    pub const fn $make(value: f64) -> Self { const UNIT: Exact = $factor; $name(UNIT.to_si(value)) }
                )*
                /// The smaller of two.
                pub const fn min(self, other: Self) -> Self { $name(self.0.min(other.0)) }
                /// The larger of two.
                pub const fn max(self, other: Self) -> Self { $name(self.0.max(other.0)) }
                /// False for infinities and for what is not a number.
                pub const fn is_finite(self) -> bool { self.0.is_finite() }
                /// A total order, for sorting and for largest and smallest.
                pub fn total_cmp(&self, other: &Self) -> Ordering { self.0.total_cmp(&other.0) }
            }

            arithmetic!($name $($point)?);
        )+
    };
}

quantities! { ($)
    /// A length, a bore, a height.
    Length { metres / from_metres, millimetres / from_millimetres = part(1_000), micrometres / from_micrometres = part(1_000_000), kilometres / from_kilometres = times(1_000), inches / from_inches = INCH, feet / from_feet = FOOT, yards / from_yards = FOOT.by(times(3)), centimetres / from_centimetres = part(100) }
    /// A surface.
    Area { square_metres / from_square_metres, square_millimetres / from_square_millimetres = part(1_000_000), square_centimetres / from_square_centimetres = part(10_000), square_inches / from_square_inches = INCH.by(INCH) }
    /// A volume, a dose, a displacement.
    Volume { cubic_metres / from_cubic_metres, cubic_centimetres / from_cubic_centimetres = part(1_000_000), cubic_millimetres / from_cubic_millimetres = part(1_000_000_000), litres / from_litres = part(1_000), cubic_inches / from_cubic_inches = CUBIC_INCH, fluid_ounces / from_fluid_ounces = GALLON.by(part(128)), gallons / from_gallons = GALLON }
    /// A mass.
    Mass { kilograms / from_kilograms, grams / from_grams = part(1_000), ounces / from_ounces = POUND.by(part(16)), pounds / from_pounds = POUND, milligrams / from_milligrams = part(1_000_000) }
    /// A length of time.
    Time { seconds / from_seconds, minutes / from_minutes = MINUTE, hours / from_hours = HOUR, days / from_days = DAY, weeks / from_weeks = times(7).by(DAY), milliseconds / from_milliseconds = part(1_000), years / from_years = exact(36_525, 100).by(DAY) }
    /// A difference of two temperatures.
    TemperatureDifference { kelvins / from_kelvins, fahrenheit_degrees / from_fahrenheit_degrees = exact(5, 9) }
    /// A gauge pressure, a pressure drop or a stress: zero is the surrounding atmosphere, or none.
    Pressure { pascals / from_pascals, bar / from_bar = times(100_000), millibar / from_millibar = times(100), kilopascals / from_kilopascals = times(1_000), megapascals / from_megapascals = times(1_000_000), psi / from_psi = PSI, kilograms_force_per_square_centimetre / from_kilograms_force_per_square_centimetre = KILOGRAM_FORCE.by(times(10_000)) }
    /// A pressure above vacuum.
    AbsolutePressure [point] { pascals / from_pascals, bar / from_bar = times(100_000), millibar / from_millibar = times(100), kilopascals / from_kilopascals = times(1_000), psi / from_psi = PSI, megapascals / from_megapascals = times(1_000_000) }
    /// A volume flow.
    Flow { cubic_metres_per_second / from_cubic_metres_per_second, cubic_centimetres_per_minute / from_cubic_centimetres_per_minute = part(1_000_000).per(MINUTE), cubic_centimetres_per_hour / from_cubic_centimetres_per_hour = part(1_000_000).per(HOUR), cubic_centimetres_per_second / from_cubic_centimetres_per_second = part(1_000_000), litres_per_minute / from_litres_per_minute = part(1_000).per(MINUTE), litres_per_second / from_litres_per_second = part(1_000), cubic_inches_per_minute / from_cubic_inches_per_minute = CUBIC_INCH.per(MINUTE), cubic_inches_per_hour / from_cubic_inches_per_hour = CUBIC_INCH.per(HOUR), cubic_feet_per_minute / from_cubic_feet_per_minute = CUBIC_FOOT.per(MINUTE), cubic_millimetres_per_hour / from_cubic_millimetres_per_hour = part(1_000_000_000).per(HOUR), cubic_millimetres_per_minute / from_cubic_millimetres_per_minute = part(1_000_000_000).per(MINUTE), litres_per_hour / from_litres_per_hour = part(1_000).per(HOUR), cubic_metres_per_hour / from_cubic_metres_per_hour = part(1).per(HOUR), gallons_per_minute / from_gallons_per_minute = GALLON.per(MINUTE) }
    /// A dynamic viscosity.
    Viscosity { pascal_seconds / from_pascal_seconds, millipascal_seconds / from_millipascal_seconds = part(1_000), poise / from_poise = part(10) }
    /// A kinematic viscosity.
    KinematicViscosity { square_metres_per_second / from_square_metres_per_second, square_millimetres_per_second / from_square_millimetres_per_second = part(1_000_000) }
    /// A density.
    Density { kilograms_per_cubic_metre / from_kilograms_per_cubic_metre, grams_per_cubic_centimetre / from_grams_per_cubic_centimetre = times(1_000), pounds_per_cubic_foot / from_pounds_per_cubic_foot = POUND.per(CUBIC_FOOT) }
    /// The factor K of a power-law or Herschel–Bulkley fluid, Pa·sⁿ; comparable only at the same n.
    Consistency { pascal_seconds_to_the_n / from_pascal_seconds_to_the_n }
    /// A rate of shear.
    ShearRate { per_second / from_per_second }
    /// A linear speed.
    Speed { metres_per_second / from_metres_per_second, metres_per_minute / from_metres_per_minute = part(1).per(MINUTE), feet_per_minute / from_feet_per_minute = FOOT.per(MINUTE), millimetres_per_second / from_millimetres_per_second = part(1_000), kilometres_per_hour / from_kilometres_per_hour = times(1_000).per(HOUR) }
    /// How often something happens: turns, strokes, cycles.
    Frequency { per_second / from_per_second, per_minute / from_per_minute = part(1).per(MINUTE), per_hour / from_per_hour = part(1).per(HOUR), per_day / from_per_day = part(1).per(DAY), per_week / from_per_week = part(1).per(times(7).by(DAY)) }
    /// A force.
    Force { newtons / from_newtons, pounds_force / from_pounds_force = POUND_FORCE, kilonewtons / from_kilonewtons = times(1_000) }
    /// A turning moment.
    Torque { newton_metres / from_newton_metres, pound_feet / from_pound_feet = POUND_FORCE.by(FOOT), pound_inches / from_pound_inches = POUND_FORCE.by(INCH), newton_millimetres / from_newton_millimetres = part(1_000) }
    /// A power.
    Power { watts / from_watts, kilowatts / from_kilowatts = times(1_000), horsepower / from_horsepower = times(550).by(FOOT).by(POUND_FORCE) }
    /// An angle.
    Angle { radians / from_radians }
    /// A number without a dimension: a fraction, a factor, an efficiency.
    Ratio { fraction / from_fraction, percent / from_percent = part(100) }
    /// A number of things.
    Count { number / from_number }
    /// Sonic conductance C of ISO 6358.
    Conductance { cubic_metres_per_second_pascal / from_cubic_metres_per_second_pascal, litres_per_second_bar / from_litres_per_second_bar = part(100_000_000) }
    /// A specific heat capacity.
    SpecificHeat { joules_per_kilogram_kelvin / from_joules_per_kilogram_kelvin }
    /// A relative change for each kelvin.
    PerTemperature { per_kelvin / from_per_kelvin, percent_per_kelvin / from_percent_per_kelvin = part(100), percent_per_fahrenheit_degree / from_percent_per_fahrenheit_degree = part(100).per(exact(5, 9)) }
    /// A relative change for each pascal.
    PerPressure { per_pascal / from_per_pascal, per_gigapascal / from_per_gigapascal = part(1_000_000_000), per_bar / from_per_bar = part(100_000) }
    /// A volume for each length: the growth of a hose, the content of a tube.
    VolumePerLength { cubic_metres_per_metre / from_cubic_metres_per_metre, cubic_centimetres_per_metre / from_cubic_centimetres_per_metre = part(1_000_000), cubic_inches_per_foot / from_cubic_inches_per_foot = CUBIC_INCH.per(FOOT) }
    /// Volume, pressure drop or the like along a length.
    PressurePerLength { pascals_per_metre / from_pascals_per_metre, bar_per_metre / from_bar_per_metre = times(100_000), kilopascals_per_metre / from_kilopascals_per_metre = times(1_000), psi_per_foot / from_psi_per_foot = PSI.per(FOOT) }
    /// An electric voltage.
    Voltage { volts / from_volts, millivolts / from_millivolts = part(1_000) }
    /// A point on the temperature scale, not a difference.
    Temperature [point] { kelvin / from_kelvin }
}

impl Temperature {
    /// 0 °C.
    pub const ICE_POINT: Temperature = Temperature(273.15);
    /// 0 K, below which nothing is.
    pub const ABSOLUTE_ZERO: Temperature = Temperature(0.0);
    /// The value in degrees Celsius.
    pub const fn celsius(self) -> f64 {
        self.0 - 273.15
    }
    /// From a value in degrees Celsius.
    pub const fn from_celsius(value: f64) -> Self {
        Temperature(value + 273.15)
    }
    /// The value in degrees Fahrenheit.
    pub const fn fahrenheit(self) -> f64 {
        exact(9, 5).to_si(self.celsius()) + 32.0
    }
    /// From a value in degrees Fahrenheit.
    pub const fn from_fahrenheit(value: f64) -> Self {
        Temperature(exact(5, 9).to_si(value - 32.0) + 273.15)
    }
    /// How much warmer this is than `other`.
    pub const fn above(self, other: Temperature) -> TemperatureDifference {
        TemperatureDifference(self.0 - other.0)
    }
    /// This temperature moved by a difference.
    pub const fn plus(self, difference: TemperatureDifference) -> Temperature {
        Temperature(self.0 + difference.0)
    }
}

impl Angle {
    /// The value in degrees.
    pub const fn degrees(self) -> f64 {
        self.0.to_degrees()
    }
    /// From a value in degrees.
    pub const fn from_degrees(value: f64) -> Self {
        Angle(value.to_radians())
    }
}

impl AbsolutePressure {
    /// Nothing at all, below which there is no pressure.
    pub const VACUUM: AbsolutePressure = AbsolutePressure(0.0);
    /// The standard atmosphere, 1.013 25 bar.
    pub const STANDARD_ATMOSPHERE: AbsolutePressure = AbsolutePressure(101_325.0);
    /// How much higher this is than `other`.
    pub const fn above(self, other: AbsolutePressure) -> Pressure {
        Pressure(self.0 - other.0)
    }
    /// This pressure moved by a difference.
    pub const fn plus(self, difference: Pressure) -> AbsolutePressure {
        AbsolutePressure(self.0 + difference.0)
    }
    /// The same pressure as a gauge in this surrounding atmosphere shows it.
    pub const fn gauge(self, surrounding: AbsolutePressure) -> Pressure {
        Pressure(self.0 - surrounding.0)
    }
}

impl Pressure {
    /// The same pressure above vacuum, for a gauge read in this surrounding atmosphere.
    pub const fn absolute(self, surrounding: AbsolutePressure) -> AbsolutePressure {
        AbsolutePressure(self.0 + surrounding.0)
    }
}

macro_rules! product {
    ($( $a:ident * $b:ident = $c:ident; )+) => { $(
        impl Mul<$b> for $a { type Output = $c; fn mul(self, o: $b) -> $c { $c(self.0 * o.0) } }
        impl Div<$b> for $c { type Output = $a; fn div(self, o: $b) -> $a { $a(self.0 / o.0) } }
    )+ };
}

product! {
    Flow * Time = Volume;
    Area * Length = Volume;
    Density * Volume = Mass;
    Volume * Frequency = Flow;
    PressurePerLength * Length = Pressure;
    Pressure * Area = Force;
    Speed * Time = Length;
}

impl Div<Flow> for Volume {
    type Output = Time;
    fn div(self, flow: Flow) -> Time {
        Time(self.0 / flow.0)
    }
}
impl Mul<Length> for VolumePerLength {
    type Output = Volume;
    fn mul(self, length: Length) -> Volume {
        Volume(self.0 * length.0)
    }
}
impl Mul for Length {
    type Output = Area;
    fn mul(self, o: Length) -> Area {
        Area(self.0 * o.0)
    }
}
impl Mul<Density> for KinematicViscosity {
    type Output = Viscosity;
    fn mul(self, density: Density) -> Viscosity {
        Viscosity(self.0 * density.0)
    }
}
