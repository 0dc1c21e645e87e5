//! The units in which people write quantities: symbol, accepted spellings, conversion, system.
//!
//! Each row calls the constructor and the getter of its quantity type, so that no conversion factor stands twice.
//! The first row of a dimension is the unit for files. Spellings stand in the folded form of `fold`, in which
//! `cm³ / min`, `cm^3/min` and `cm3 per min` are one.

use crate::*;
use core::fmt;
use core::str::FromStr;

/// A family of units that a reader prefers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum UnitSystem {
    /// Metric units.
    #[default]
    Metric,
    /// US customary units.
    Us,
}

impl UnitSystem {
    /// The other one.
    pub const fn other(self) -> UnitSystem {
        match self {
            UnitSystem::Metric => UnitSystem::Us,
            UnitSystem::Us => UnitSystem::Metric,
        }
    }
    /// The word that chooses it, as [`FromStr`] reads it.
    pub const fn name(self) -> &'static str {
        match self {
            UnitSystem::Metric => "metric",
            UnitSystem::Us => "us",
        }
    }
}

/// The text names no system of units; `metric` and `us` do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct UnknownUnitSystem;

impl fmt::Display for UnknownUnitSystem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("units are either `metric` or `us`")
    }
}
impl core::error::Error for UnknownUnitSystem {}

impl FromStr for UnitSystem {
    type Err = UnknownUnitSystem;
    fn from_str(text: &str) -> Result<Self, UnknownUnitSystem> {
        match text.trim().to_ascii_lowercase().as_str() {
            "metric" | "si" => Ok(UnitSystem::Metric),
            "us" | "customary" => Ok(UnitSystem::Us),
            _ => Err(UnknownUnitSystem),
        }
    }
}

/// One unit of one dimension.
#[derive(Clone, Copy)]
pub struct Unit {
    dimension: Dimension,
    symbol: &'static str,
    system: Option<UnitSystem>,
    spellings: &'static [&'static str],
    to_si: fn(f64) -> f64,
    of_si: fn(f64) -> f64,
}

impl Unit {
    /// The units of a dimension; the first is the one for files.
    pub fn of(dimension: Dimension) -> &'static [Unit] {
        rows(dimension)
    }
    /// The unit in which files keep this dimension when nobody asked for another.
    pub fn main(dimension: Dimension) -> &'static Unit {
        // Never empty: a test walks all dimensions.
        &rows(dimension)[0]
    }
    /// The unit of this dimension that is written so.
    ///
    /// ```
    /// use oilway_units::{Dimension, Unit};
    /// assert_eq!(Unit::named(Dimension::Flow, "cm^3 / min").map(|u| u.symbol()), Some("cm³/min"));
    /// assert!(Unit::named(Dimension::Flow, "mm").is_none());
    /// ```
    pub fn named(dimension: Dimension, spelling: &str) -> Option<&'static Unit> {
        let folded = fold(spelling);
        rows(dimension).iter().find(|unit| unit.is_written(&folded))
    }

    /// What it measures.
    pub const fn dimension(&self) -> Dimension {
        self.dimension
    }
    /// How it is printed; empty for a plain number.
    pub const fn symbol(&self) -> &'static str {
        self.symbol
    }
    /// The system it belongs to; `None` if both use it.
    pub const fn system(&self) -> Option<UnitSystem> {
        self.system
    }
    /// Other ways to write it, folded.
    pub const fn spellings(&self) -> &'static [&'static str] {
        self.spellings
    }
    /// The value in the SI unit of so much in this unit.
    pub fn to_si(&self, value: f64) -> f64 {
        (self.to_si)(value)
    }
    /// The value in this unit of so much in the SI unit.
    pub fn of_si(&self, si: f64) -> f64 {
        (self.of_si)(si)
    }

    /// True if this folded text means the unit. Capitals are forgiven only where no prefix hangs on them: `BAR`,
    /// `Inch` and `MM`, but never `mpa` for `MPa`.
    pub(crate) fn is_written(&self, folded: &str) -> bool {
        let exactly = |text: &str| fold(self.symbol) == text || self.spellings.contains(&text);
        exactly(folded) || (shouted(folded) && exactly(&folded.to_lowercase()))
    }
}

impl PartialEq for Unit {
    fn eq(&self, other: &Unit) -> bool {
        (self.dimension, self.symbol) == (other.dimension, other.symbol)
    }
}
impl Eq for Unit {}
impl fmt::Debug for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Unit({}: {:?})", self.dimension.name(), self.symbol)
    }
}

/// All letters large, or only the first.
fn shouted(text: &str) -> bool {
    let large = |c: char| !c.is_alphabetic() || c.is_uppercase();
    let small = |c: char| !c.is_alphabetic() || c.is_lowercase();
    text.chars().all(large) || (text.starts_with(char::is_uppercase) && text.chars().skip(1).all(small))
}

/// The form in which spellings are compared: raised figures lowered, every sign of multiplication and every space a
/// point, `per` a stroke, no point where it says nothing.
pub(crate) fn fold(text: &str) -> String {
    let mut folded = String::with_capacity(text.len());
    for c in text.trim().chars() {
        let plain = match c {
            '¹' => '1',
            '²' => '2',
            '³' => '3',
            'ⁿ' => 'n',
            '⁻' | '−' | '–' => '-',
            '·' | '⋅' | '•' | '*' | '×' => '.',
            'µ' | 'μ' => 'u',
            'º' | '˚' => '°',
            '″' | '”' | '“' => '"',
            '′' | '’' => '\'',
            '^' => continue,
            c if c.is_whitespace() => '.',
            c => c,
        };
        let silent = plain == '.' && (folded.is_empty() || folded.ends_with(['.', '/', '(']));
        if silent {
            continue;
        }
        if matches!(plain, '/' | '(' | ')') && folded.ends_with('.') {
            folded.pop();
        }
        folded.push(plain);
    }
    if folded.ends_with('.') {
        folded.pop();
    }
    let folded = folded.replace(".per.", "/");
    let folded = folded.strip_prefix("per.").map_or(folded.clone(), |rest| format!("/{rest}"));
    folded.strip_prefix("1/").map_or(folded.clone(), |rest| format!("/{rest}"))
}

macro_rules! units {
    ($( $name:ident { $( $symbol:literal $system:ident $get:ident $make:ident [$($spelling:literal)*] )+ } )+) => {
        fn rows(dimension: Dimension) -> &'static [Unit] {
            match dimension { $(
                Dimension::$name => {
                    const ROWS: &[Unit] = &[ $( Unit {
                        dimension: Dimension::$name,
                        symbol: $symbol,
                        system: $system,
                        spellings: &[$($spelling),*],
                        to_si: |value| $name::$make(value).si(),
                        of_si: |si| $name::from_si(si).$get(),
                    } ),+ ];
                    ROWS
                }
            )+ }
        }
    };
}

#[allow(non_upper_case_globals, reason = "short columns in the table below")]
const Metric: Option<UnitSystem> = Some(UnitSystem::Metric);
#[allow(non_upper_case_globals, reason = "short columns in the table below")]
const Us: Option<UnitSystem> = Some(UnitSystem::Us);
#[allow(non_upper_case_globals, reason = "short columns in the table below")]
const Both: Option<UnitSystem> = None;

units! {
    Length {
        "mm" Metric millimetres from_millimetres ["millimetre" "millimetres" "millimeter" "millimeters"]
        "m" Metric metres from_metres ["metre" "metres" "meter" "meters"]
        "cm" Metric centimetres from_centimetres ["centimetre" "centimetres" "centimeter" "centimeters"]
        "µm" Metric micrometres from_micrometres ["micron" "microns" "micrometre" "micrometres" "micrometer" "micrometers"]
        "km" Metric kilometres from_kilometres ["kilometre" "kilometres" "kilometer" "kilometers"]
        "in" Us inches from_inches ["\"" "''" "inch" "inches"]
        "ft" Us feet from_feet ["'" "foot" "feet"]
        "yd" Us yards from_yards ["yds" "yard" "yards"]
    }
    Area {
        "mm²" Metric square_millimetres from_square_millimetres ["sq.mm"]
        "cm²" Metric square_centimetres from_square_centimetres ["sq.cm"]
        "m²" Metric square_metres from_square_metres ["sq.m"]
        "in²" Us square_inches from_square_inches ["sq.in" "sqin" "square.inch" "square.inches"]
    }
    Volume {
        "cm³" Metric cubic_centimetres from_cubic_centimetres ["cc" "ccm" "ml" "mL" "millilitre" "millilitres" "milliliter" "milliliters"]
        "mm³" Metric cubic_millimetres from_cubic_millimetres ["ul" "uL" "cu.mm"]
        "L" Metric litres from_litres ["l" "dm3" "litre" "litres" "liter" "liters"]
        "m³" Metric cubic_metres from_cubic_metres ["cu.m"]
        "in³" Us cubic_inches from_cubic_inches ["cu.in" "cuin" "cubic.inch" "cubic.inches"]
        "fl oz" Us fluid_ounces from_fluid_ounces ["floz" "fluid.ounce" "fluid.ounces"]
        "gal" Us gallons from_gallons ["gallon" "gallons"]
    }
    Mass {
        "kg" Metric kilograms from_kilograms ["kilogram" "kilograms" "kilo" "kilos"]
        "g" Metric grams from_grams ["gram" "grams"]
        "mg" Metric milligrams from_milligrams ["milligram" "milligrams"]
        "oz" Us ounces from_ounces ["ounce" "ounces"]
        "lb" Us pounds from_pounds ["lbs" "pound" "pounds"]
    }
    Time {
        "s" Both seconds from_seconds ["sec" "second" "seconds"]
        "ms" Both milliseconds from_milliseconds ["millisecond" "milliseconds"]
        "min" Both minutes from_minutes ["mins" "minute" "minutes"]
        "h" Both hours from_hours ["hr" "hrs" "hour" "hours"]
        "days" Both days from_days ["d" "day"]
        "weeks" Both weeks from_weeks ["wk" "week"]
        "years" Both years from_years ["year" "yr" "yrs"]
    }
    TemperatureDifference {
        "K" Metric kelvins from_kelvins ["°C" "C" "kelvin" "kelvins" "deg.C" "degC" "degrees.C" "degrees.celsius"]
        "°F" Us fahrenheit_degrees from_fahrenheit_degrees ["F" "deg.F" "degF" "degrees.F" "degrees.fahrenheit"]
    }
    Pressure {
        "bar" Metric bar from_bar ["barg" "bar(g)" "bar.g" "bar.gauge"]
        "mbar" Metric millibar from_millibar ["hPa" "mbarg" "mbar(g)" "mbar.g" "mbar.gauge"]
        "Pa" Metric pascals from_pascals ["pascal" "pascals" "Pa(g)" "N/m2"]
        "kPa" Metric kilopascals from_kilopascals ["kPa(g)" "kPa.gauge" "kilopascal" "kilopascals"]
        "MPa" Metric megapascals from_megapascals ["MPa(g)" "MPa.gauge" "N/mm2" "megapascal" "megapascals"]
        "kgf/cm²" Metric kilograms_force_per_square_centimetre from_kilograms_force_per_square_centimetre ["kp/cm2"]
        "psi" Us psi from_psi ["psig" "psi(g)" "psi.g" "psi.gauge" "lbf/in2" "lb/in2"]
    }
    AbsolutePressure {
        "bar abs" Metric bar from_bar ["bara" "bar(a)" "bar.a" "bar(abs)" "bar.absolute"]
        "mbar abs" Metric millibar from_millibar ["mbara" "mbar(a)" "mbar.a" "mbar(abs)" "mbar.absolute" "hPa.abs" "hPa(a)"]
        "Pa abs" Metric pascals from_pascals ["Pa(a)" "Pa.a" "Pa(abs)" "Pa.absolute"]
        "kPa abs" Metric kilopascals from_kilopascals ["kPa(a)" "kPa.a" "kPa(abs)" "kPa.absolute"]
        "MPa abs" Metric megapascals from_megapascals ["MPa(a)" "MPa.a" "MPa(abs)" "MPa.absolute"]
        "psia" Us psi from_psi ["psi(a)" "psi.a" "psi.abs" "psi(abs)" "psi.absolute"]
    }
    Flow {
        "cm³/min" Metric cubic_centimetres_per_minute from_cubic_centimetres_per_minute ["cc/min" "ccm/min" "ml/min" "mL/min" "cc/minute" "cm3/minute" "ml/minute"]
        "cm³/h" Metric cubic_centimetres_per_hour from_cubic_centimetres_per_hour ["cc/h" "cc/hr" "ccm/h" "ml/h" "mL/h" "ml/hr" "cm3/hr" "cm3/hour" "cc/hour" "ml/hour"]
        "cm³/s" Metric cubic_centimetres_per_second from_cubic_centimetres_per_second ["cc/s" "ccm/s" "ml/s" "mL/s"]
        "mm³/h" Metric cubic_millimetres_per_hour from_cubic_millimetres_per_hour ["mm3/hr" "mm3/hour" "ul/h" "uL/h"]
        "mm³/min" Metric cubic_millimetres_per_minute from_cubic_millimetres_per_minute ["ul/min" "uL/min"]
        "L/min" Metric litres_per_minute from_litres_per_minute ["l/min" "dm3/min" "L/minute" "l/minute" "lpm" "litres/minute" "liters/minute"]
        "L/h" Metric litres_per_hour from_litres_per_hour ["l/h" "dm3/h" "l/hr" "L/hr"]
        "L/s" Metric litres_per_second from_litres_per_second ["l/s" "dm3/s"]
        "m³/h" Metric cubic_metres_per_hour from_cubic_metres_per_hour ["m3/hr" "m3/hour"]
        "m³/s" Metric cubic_metres_per_second from_cubic_metres_per_second []
        "in³/min" Us cubic_inches_per_minute from_cubic_inches_per_minute ["cu.in/min" "cuin/min" "in3/minute"]
        "in³/h" Us cubic_inches_per_hour from_cubic_inches_per_hour ["cu.in/h" "cu.in/hr" "cuin/hr" "in3/hr" "in3/hour"]
        "cfm" Us cubic_feet_per_minute from_cubic_feet_per_minute ["scfm" "ft3/min" "cu.ft/min"]
        "gpm" Us gallons_per_minute from_gallons_per_minute ["gal/min" "gallons/minute"]
    }
    Viscosity {
        "mPa·s" Both millipascal_seconds from_millipascal_seconds ["mPas"]
        "Pa·s" Both pascal_seconds from_pascal_seconds ["Pas" "N.s/m2" "Ns/m2"]
        "cP" Both millipascal_seconds from_millipascal_seconds ["cp" "centipoise"]
        "P" Both poise from_poise ["poise"]
    }
    KinematicViscosity {
        "mm²/s" Metric square_millimetres_per_second from_square_millimetres_per_second []
        "cSt" Us square_millimetres_per_second from_square_millimetres_per_second ["cst" "centistoke" "centistokes"]
        "m²/s" Metric square_metres_per_second from_square_metres_per_second []
    }
    Density {
        "kg/m³" Metric kilograms_per_cubic_metre from_kilograms_per_cubic_metre []
        "g/cm³" Metric grams_per_cubic_centimetre from_grams_per_cubic_centimetre ["g/cc" "g/ml" "g/mL" "kg/l" "kg/L" "kg/dm3"]
        "lb/ft³" Us pounds_per_cubic_foot from_pounds_per_cubic_foot ["lb/cu.ft" "lbs/ft3"]
    }
    Consistency {
        "Pa·sⁿ" Both pascal_seconds_to_the_n from_pascal_seconds_to_the_n ["Pasn" "Pa.s(n)"]
    }
    ShearRate {
        "s⁻¹" Both per_second from_per_second ["/s" "/sec" "/second" "reciprocal.seconds"]
    }
    Speed {
        "m/s" Metric metres_per_second from_metres_per_second ["m/sec" "m/second"]
        "mm/s" Metric millimetres_per_second from_millimetres_per_second ["mm/sec"]
        "m/min" Metric metres_per_minute from_metres_per_minute ["m/minute"]
        "km/h" Metric kilometres_per_hour from_kilometres_per_hour []
        "ft/min" Us feet_per_minute from_feet_per_minute ["fpm" "feet/min" "ft/minute" "feet/minute"]
    }
    Frequency {
        "per min" Both per_minute from_per_minute ["/minute" "rpm" "r/min" "rev/min" "min-1" "cycles/min" "cycle/min" "cycles/minute" "strokes/min" "stroke/min" "strokes/minute" "turns/min" "times/min" "times/minute"]
        "per h" Both per_hour from_per_hour ["/hr" "/hour" "h-1" "cycles/h" "cycle/h" "cycles/hr" "cycles/hour" "strokes/h" "stroke/h" "strokes/hr" "strokes/hour" "times/h" "times/hour"]
        "per day" Both per_day from_per_day ["/d" "d-1" "cycles/day" "cycle/day" "strokes/day" "times/day"]
        "per week" Both per_week from_per_week ["cycles/week" "cycle/week" "strokes/week" "times/week"]
        "Hz" Both per_second from_per_second ["/s" "/second" "s-1" "cycles/s" "strokes/s"]
    }
    Force {
        "N" Metric newtons from_newtons ["newton" "newtons"]
        "kN" Metric kilonewtons from_kilonewtons ["kilonewton" "kilonewtons"]
        "lbf" Us pounds_force from_pounds_force ["lb.force" "pounds.force"]
    }
    Torque {
        "N·m" Metric newton_metres from_newton_metres ["Nm"]
        "N·mm" Metric newton_millimetres from_newton_millimetres ["Nmm"]
        "lbf·ft" Us pound_feet from_pound_feet ["ft.lbf" "lb.ft" "ft.lb" "ft-lb" "ft-lbf" "lb-ft" "lbf-ft"]
        "lbf·in" Us pound_inches from_pound_inches ["in.lbf" "lb.in" "in.lb" "in-lb" "in-lbf" "lb-in" "lbf-in"]
    }
    Power {
        "W" Metric watts from_watts ["watt" "watts"]
        "kW" Metric kilowatts from_kilowatts ["kw" "kilowatt" "kilowatts"]
        "hp" Us horsepower from_horsepower ["horsepower"]
    }
    Angle {
        "°" Both degrees from_degrees ["deg" "degree" "degrees"]
        "rad" Both radians from_radians ["radian" "radians"]
    }
    Ratio {
        "" Both fraction from_fraction []
        "%" Both percent from_percent ["percent" "pct"]
    }
    Count {
        "" Both number from_number []
    }
    Conductance {
        "dm³/(s·bar)" Both litres_per_second_bar from_litres_per_second_bar ["L/(s.bar)" "l/(s.bar)" "dm3/s/bar" "L/s/bar" "l/s/bar"]
        "m³/(s·Pa)" Both cubic_metres_per_second_pascal from_cubic_metres_per_second_pascal ["m3/s/Pa"]
    }
    SpecificHeat {
        "J/(kg·K)" Both joules_per_kilogram_kelvin from_joules_per_kilogram_kelvin ["J/kg/K" "J/kg.K" "J/kgK" "J/(kgK)"]
    }
    PerTemperature {
        "1/K" Metric per_kelvin from_per_kelvin ["K-1" "/°C"]
        "%/K" Metric percent_per_kelvin from_percent_per_kelvin ["%/°C"]
        "%/°F" Us percent_per_fahrenheit_degree from_percent_per_fahrenheit_degree ["%/F"]
    }
    PerPressure {
        "1/GPa" Both per_gigapascal from_per_gigapascal ["GPa-1"]
        "1/Pa" Both per_pascal from_per_pascal ["Pa-1"]
        "1/bar" Both per_bar from_per_bar ["bar-1"]
    }
    VolumePerLength {
        "cm³/m" Metric cubic_centimetres_per_metre from_cubic_centimetres_per_metre ["cc/m" "ml/m" "mL/m" "ccm/m"]
        "m³/m" Metric cubic_metres_per_metre from_cubic_metres_per_metre []
        "in³/ft" Us cubic_inches_per_foot from_cubic_inches_per_foot ["cu.in/ft"]
    }
    PressurePerLength {
        "bar/m" Metric bar_per_metre from_bar_per_metre []
        "kPa/m" Metric kilopascals_per_metre from_kilopascals_per_metre []
        "Pa/m" Metric pascals_per_metre from_pascals_per_metre []
        "psi/ft" Us psi_per_foot from_psi_per_foot []
    }
    Voltage {
        "V" Both volts from_volts ["volt" "volts" "VDC" "V.DC" "VAC" "V.AC"]
        "mV" Both millivolts from_millivolts ["millivolt" "millivolts"]
    }
    Temperature {
        "°C" Metric celsius from_celsius ["C" "deg.C" "degC" "degrees.C" "degrees.celsius" "celsius"]
        "°F" Us fahrenheit from_fahrenheit ["F" "deg.F" "degF" "degrees.F" "degrees.fahrenheit" "fahrenheit"]
        "K" Metric kelvin from_kelvin ["kelvin" "kelvins"]
    }
}
