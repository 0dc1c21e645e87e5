//! Which principle can serve. Here: whether a parallel single line would recharge, and if not, what would make it.

use oilway_catalogue::Catalogue;
use oilway_catalogue::kinds::{Medium, MeteringValve};
use oilway_model::{Design, Season};
use oilway_text::{Message, message};
use oilway_units::{Flow, Length, Pressure, Temperature, TemperatureDifference};

use crate::evaluate::point_nodes;
use crate::hydraulics::{Hydraulics, bore_of};
use crate::weather::Weather;

/// What stands against a parallel single line.
#[derive(Clone, Debug, PartialEq)]
pub struct ParallelVerdict {
    /// The point whose line keeps most pressure after venting.
    pub point: String,
    /// What remains there.
    pub residual: Pressure,
    /// Below this a valve of the catalogue recharges.
    pub resets_below: Pressure,
    /// Whether it would work.
    pub works: bool,
    /// Temperature of the coldest leg at which it would; none if no temperature of the search does.
    pub works_from: Option<Temperature>,
    /// How much wider all lines would have to be.
    pub wider: f64,
    /// The narrowest bore of the path, wider by that.
    pub bore: Length,
    /// The sentence.
    pub says: Message,
}

/// Judges a parallel single line along the lines of a design: a valve at the end of each tail's line must see less than its reset
/// pressure after the pump side has been let down, and lubricant with a yield stress keeps 4 τ0 L / D for good.
pub fn parallel(design: &Design, catalogue: &Catalogue) -> Option<ParallelVerdict> {
    let medium = if design.conditions.lubricant.is_grease() { Medium::Grease } else { Medium::Oil };
    let resets_below = catalogue
        .of_kind("metering valve")
        .filter_map(|part| MeteringValve::of(part))
        .filter(|valve| valve.lubricants.contains(&medium))
        .map(|valve| valve.resets_below)
        .max_by(Pressure::total_cmp)?;
    let nodes = point_nodes(design);
    let residual_at = |weather: &Weather| {
        let hydraulics = Hydraulics::under(design, weather, &[Season::Cold]);
        // The valve sits where the divider sits: the main up to it must recharge, the tail behind it need not.
        let of = |&node: &usize| {
            let main = design.network.nodes[node].parent?;
            Some((hydraulics.path(Season::Cold, main, Flow::ZERO)?.yielding, node))
        };
        nodes.iter().filter_map(of).max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1)))
    };
    let (residual, node) = residual_at(&Weather::AS_IS)?;
    let works = residual < resets_below;
    let works_from = if works { None } else { works_from(design, resets_below, &residual_at) };
    let wider = (residual / resets_below).max(1.0);
    let narrowest = design.network.upstream(node).skip(1).flat_map(|n| &design.network.nodes[n].legs)
        .filter_map(|leg| bore_of(design.conduits.get(leg.conduit)?)).min_by(Length::total_cmp)?;
    let bore = narrowest * wider;
    let point = design.network.nodes[node].name.clone();
    let says = match (works, works_from) {
        (true, _) => message!("solve-parallel-works", residual = residual, reset = resets_below),
        (false, Some(from)) => {
            message!("solve-parallel-refused", point = point.as_str(), residual = residual, reset = resets_below, bore = bore, temperature = from)
        }
        (false, None) => {
            message!("solve-parallel-refused-always", point = point.as_str(), residual = residual, reset = resets_below, bore = bore)
        }
    };
    Some(ParallelVerdict { point, residual, resets_below, works, works_from, wider, bore, says })
}

/// The temperature of the coldest place on the way from which the line recharges, all places warmed alike.
fn works_from(
    design: &Design, resets_below: Pressure, residual_at: &dyn Fn(&Weather) -> Option<(Pressure, usize)>,
) -> Option<Temperature> {
    let traced = |celsius: f64| Weather { traced_to: Some(Temperature::from_celsius(celsius)), ..Weather::AS_IS };
    let recharges = |celsius: f64| residual_at(&traced(celsius)).is_some_and(|(p, _)| p < resets_below);
    let coldest = design.conditions.places.iter().map(|p| p.temperature(Season::Cold).celsius()).fold(f64::INFINITY, f64::min);
    let (mut fails, mut works) = (coldest, HOTTEST);
    if !recharges(works) {
        return None;
    }
    while works - fails > 0.1 {
        let middle = 0.5 * (works + fails);
        if recharges(middle) { works = middle } else { fails = middle }
    }
    Some(Temperature::ICE_POINT.plus(TemperatureDifference::from_kelvins(works)))
}

/// No line is heated beyond this for the sake of venting.
const HOTTEST: f64 = 80.0;
