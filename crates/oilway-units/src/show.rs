//! Printing quantities: for people with few figures in the units of their system ([`show`], [`show_both`]), for files
//! with every figure ([`show_exact`]).

use crate::{AnyQuantity, Dimension, Unit, UnitSystem};

/// Significant figures on a screen and in a sentence; what the trade measures is not better known.
const FIGURES: usize = 3;

/// The quantity in three significant figures, in the unit of this system that suits its size.
///
/// ```
/// use oilway_units::{Length, Pressure, UnitSystem, show};
/// assert_eq!(show(Pressure::from_bar(59.3), UnitSystem::Metric), "59.3 bar");
/// assert_eq!(show(Pressure::from_bar(59.3), UnitSystem::Us), "860 psi");
/// assert_eq!(show(Length::from_millimetres(8.0), UnitSystem::Us), "0.315 in");
/// ```
pub fn show(quantity: impl Into<AnyQuantity>, system: UnitSystem) -> String {
    let quantity = quantity.into();
    let unit = suitable(quantity, system);
    with_unit(&figures(unit.of_si(quantity.si), quantity.dimension), unit)
}

/// The quantity in this system, and in brackets in the other one where that says something else.
///
/// ```
/// use oilway_units::{Pressure, Time, UnitSystem, show_both};
/// assert_eq!(show_both(Pressure::from_bar(59.3), UnitSystem::Metric), "59.3 bar (860 psi)");
/// assert_eq!(show_both(Time::from_hours(8.0), UnitSystem::Metric), "8 h");
/// ```
pub fn show_both(quantity: impl Into<AnyQuantity>, system: UnitSystem) -> String {
    let quantity = quantity.into();
    let (first, second) = (suitable(quantity, system), suitable(quantity, system.other()));
    let [one, two] = [first, second].map(|unit| figures(unit.of_si(quantity.si), quantity.dimension));
    if first == second || (one == two && quantity.si != 0.0) {
        return with_unit(&one, first);
    }
    format!("{} ({})", with_unit(&one, first), with_unit(&two, second))
}

/// The two ends of a range in one unit that suits both: the lower as a bare number, the upper with the unit. Equal
/// texts at both ends mean that the range is narrower than the figures shown.
///
/// ```
/// use oilway_units::{Length, UnitSystem, show_span};
/// let [low, high] = show_span(Length::from_metres(0.6), Length::from_metres(8.0), UnitSystem::Metric);
/// assert_eq!(format!("{low} to {high}"), "0.6 to 8 m");
/// ```
pub fn show_span(
    low: impl Into<AnyQuantity>,
    high: impl Into<AnyQuantity>,
    system: UnitSystem,
) -> [String; 2] {
    let (low, high) = (low.into(), high.into());
    if low.dimension != high.dimension {
        return [show(low, system), show(high, system)];
    }
    let larger = if low.si.abs() > high.si.abs() { low } else { high };
    let unit = suitable(larger, system);
    let [low, high] = [low, high].map(|end| figures(unit.of_si(end.si), end.dimension));
    let high = with_unit(&high, unit);
    [low, high]
}

/// The quantity in one unit with as few figures as [`crate::read_any`] needs to give the same quantity again.
///
/// Where no number in this unit gives exactly the same value in SI (the conversion rounds once), the result reads
/// back to a neighbour: within one unit in the last place of the SI value, and printing that one gives the same text.
///
/// A unit of another dimension is no use here; the main unit of the quantity's dimension takes its place.
pub fn show_exact(quantity: impl Into<AnyQuantity>, unit: &Unit) -> String {
    let quantity = quantity.into();
    let unit = if unit.dimension() == quantity.dimension { unit } else { Unit::main(quantity.dimension) };
    with_unit(&shortest(quantity.si, unit), unit)
}

/// The value in this unit with as few figures as needed.
fn shortest(si: f64, unit: &Unit) -> String {
    let near = unit.of_si(si);
    if !near.is_finite() {
        return plain(near);
    }
    let steps_off = |value: &f64| ulps(unit.to_si(*value), si);
    let nearest = || neighbours(near).into_iter().min_by_key(steps_off).unwrap_or(near);
    let found = exactly(si, unit).unwrap_or_else(|| {
        // No number in this unit converts to the value itself: write the nearest one that does, as it would be written.
        let nearest = nearest();
        exactly(unit.to_si(nearest), unit).unwrap_or(nearest)
    });
    plain(found)
}

/// The number with the fewest figures that converts to exactly this value in SI.
fn exactly(si: f64, unit: &Unit) -> Option<f64> {
    let near = unit.of_si(si);
    // Fewer figures first: what was typed as 0.7 comes back as 0.7.
    let short = (0..16).map(|places| rounded(near, places));
    short.chain(neighbours(near)).find(|value| ulps(unit.to_si(*value), si) == 0)
}

/// A number and the two doubles to either side of it.
fn neighbours(value: f64) -> [f64; 5] {
    let (up, down) = (value.next_up(), value.next_down());
    [value, up, down, up.next_up(), down.next_down()]
}

/// How many steps of a double lie between two finite numbers of the same sign; other pairs are far apart.
fn ulps(a: f64, b: f64) -> u64 {
    if a == b {
        0
    } else if !a.is_finite() || !b.is_finite() || a.is_sign_negative() != b.is_sign_negative() {
        u64::MAX
    } else {
        a.to_bits().abs_diff(b.to_bits())
    }
}

/// The number rounded to so many figures behind the first.
fn rounded(value: f64, places: usize) -> f64 {
    // What the formatter writes, the parser reads.
    format!("{value:.places$e}").parse().unwrap_or(value)
}

/// A number in as few figures as tell it from its neighbours; powers of ten only far from 1.
fn plain(value: f64) -> String {
    if value == 0.0 {
        return "0".to_owned();
    }
    if (1e-6..1e15).contains(&value.abs()) { value.to_string() } else { format!("{value:e}") }
}

/// The number as people read it: three significant figures, all figures of a count.
fn figures(value: f64, dimension: Dimension) -> String {
    if !value.is_finite() {
        return if value.is_nan() { "no number of".to_owned() } else { "endless".to_owned() };
    }
    let whole = dimension == Dimension::Count && value.abs() < 1e15 && value == value.trunc();
    let value = match dimension {
        _ if whole => value,
        // No thermometer of a plant tells hundredths of a degree.
        Dimension::Temperature if value.abs() < 100.0 => (value * 10.0).round() / 10.0,
        _ => rounded(value, FIGURES - 1),
    };
    if value == 0.0 {
        return "0".to_owned();
    }
    if (1e-4..1e7).contains(&value.abs()) || whole { value.to_string() } else { format!("{value:e}") }
}

fn with_unit(number: &str, unit: &Unit) -> String {
    match unit.symbol() {
        "" => number.to_owned(),
        "°" => format!("{number}°"),
        "days" | "weeks" | "years" if number == "1" => format!("1 {}", unit.symbol().trim_end_matches('s')),
        symbol => format!("{number} {symbol}"),
    }
}

/// The unit in which a quantity of this size is said.
fn suitable(quantity: AnyQuantity, system: UnitSystem) -> &'static Unit {
    let ladder = ladder(quantity.dimension, system);
    let fits = |(symbol, from): &(&str, f64)| {
        let unit = Unit::named(quantity.dimension, symbol)?;
        let large_enough = rounded(unit.of_si(quantity.si).abs(), FIGURES - 1) >= *from;
        large_enough.then_some(unit)
    };
    let smallest = || ladder.last().and_then(|(symbol, _)| Unit::named(quantity.dimension, symbol));
    let main = Unit::main(quantity.dimension);
    if quantity.si == 0.0 && system == UnitSystem::Metric {
        return main;
    }
    ladder.iter().find_map(fits).or_else(smallest).unwrap_or(main)
}

/// The units in use, the largest first, each with the value from which it is taken.
fn ladder(dimension: Dimension, system: UnitSystem) -> &'static [(&'static str, f64)] {
    use Dimension::*;
    let us = system == UnitSystem::Us;
    match dimension {
        Length if us => &[("ft", 3.0), ("in", 0.0)],
        Length => &[("m", 1.0), ("mm", 0.1), ("µm", 0.0)],
        Area if us => &[("in²", 0.0)],
        Area => &[("m²", 0.1), ("mm²", 0.0)],
        Volume if us => &[("gal", 1.0), ("in³", 0.0)],
        Volume => &[("L", 1.0), ("cm³", 0.001), ("mm³", 0.0)],
        Mass if us => &[("lb", 1.0), ("oz", 0.0)],
        Mass => &[("kg", 1.0), ("g", 0.01), ("mg", 0.0)],
        Time => &[
            ("years", 2.0),
            ("weeks", 4.0),
            ("days", 2.0),
            ("h", 2.0),
            ("min", 2.0),
            ("s", 0.1),
            ("ms", 0.0),
        ],
        TemperatureDifference if us => &[("°F", 0.0)],
        TemperatureDifference => &[("K", 0.0)],
        Pressure if us => &[("psi", 0.0)],
        // Every pressure of a lubrication system is said in bar, so that two of them can be compared at a glance; below
        // 0.05 bar it is the yield stress of a grease, above 10 000 bar no pressure that a line could hold.
        Pressure => &[("MPa", 1000.0), ("bar", 0.05), ("Pa", 0.0)],
        AbsolutePressure if us => &[("psia", 0.0)],
        AbsolutePressure => &[("bar abs", 0.0)],
        Flow if us => &[("gpm", 1.0), ("in³/min", 1.0), ("in³/h", 0.0)],
        Flow => &[("L/min", 1.0), ("cm³/min", 1.0), ("cm³/h", 0.01), ("mm³/h", 0.0)],
        Viscosity if us => &[("Pa·s", 1.0), ("cP", 0.0)],
        Viscosity => &[("Pa·s", 1.0), ("mPa·s", 0.0)],
        KinematicViscosity if us => &[("cSt", 0.0)],
        KinematicViscosity => &[("mm²/s", 0.0)],
        Density if us => &[("lb/ft³", 0.0)],
        Density => &[("kg/m³", 0.0)],
        Consistency => &[("Pa·sⁿ", 0.0)],
        ShearRate => &[("s⁻¹", 0.0)],
        Speed if us => &[("ft/min", 0.0)],
        Speed => &[("m/s", 0.1), ("mm/s", 0.0)],
        Frequency => &[("per min", 1.0), ("per h", 1.0), ("per day", 1.0), ("per week", 0.0)],
        Force if us => &[("lbf", 0.0)],
        Force => &[("kN", 10.0), ("N", 0.0)],
        Torque if us => &[("lbf·ft", 5.0), ("lbf·in", 0.0)],
        Torque => &[("N·m", 0.0)],
        Power if us => &[("hp", 0.1), ("W", 0.0)],
        Power => &[("kW", 1.0), ("W", 0.0)],
        Angle => &[("°", 0.0)],
        // From 2 on it is a factor, below a share.
        Ratio => &[("", 2.0), ("%", 0.0)],
        Count => &[("", 0.0)],
        Conductance => &[("dm³/(s·bar)", 0.0)],
        SpecificHeat => &[("J/(kg·K)", 0.0)],
        PerTemperature if us => &[("%/°F", 0.0)],
        PerTemperature => &[("%/K", 0.0)],
        PerPressure => &[("1/GPa", 0.0)],
        VolumePerLength if us => &[("in³/ft", 0.0)],
        VolumePerLength => &[("cm³/m", 0.0)],
        PressurePerLength if us => &[("psi/ft", 0.0)],
        PressurePerLength => &[("bar/m", 0.01), ("Pa/m", 0.0)],
        Voltage => &[("V", 0.1), ("mV", 0.0)],
        Temperature if us => &[("°F", 0.0)],
        Temperature => &[("°C", 0.0)],
    }
}
