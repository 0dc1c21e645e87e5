//! The typed views of the parts of a design, read once. A part of the wrong kind has no view; the rules say so.

use oilway_catalogue::Part;
use oilway_catalogue::kinds::{
    AirRegulator, AirValve, BurstDisc, Controller, DiscHolder, Divider, Gauge, Hose, Pump, Reservoir,
    Section, Tube, TubeMaterial,
};
use oilway_model::Design;
use oilway_units::{Length, Pressure, Temperature};

/// A tube or hose as the checker sees it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Conduit {
    /// Inner diameter; none if the part is neither tube nor hose.
    pub(crate) bore: Option<Length>,
    /// Highest steady pressure.
    pub(crate) rated: Option<Pressure>,
    /// Coldest use.
    pub(crate) coldest: Option<Temperature>,
    /// Hottest use.
    pub(crate) hottest: Option<Temperature>,
    /// Whether warmth takes its strength away.
    pub(crate) plastic: bool,
}

/// The parts of a design.
#[derive(Clone, Debug)]
pub(crate) struct Views {
    pub(crate) pump: Option<Pump>,
    pub(crate) reservoir: Option<Reservoir>,
    pub(crate) valve: Option<AirValve>,
    pub(crate) regulator: Option<AirRegulator>,
    pub(crate) disc: Option<BurstDisc>,
    pub(crate) holder: Option<DiscHolder>,
    pub(crate) gauge: Option<Gauge>,
    pub(crate) controller: Option<Controller>,
    /// Inlet and end section of each divider.
    pub(crate) bodies: Vec<Option<Divider>>,
    /// The working sections of each divider.
    pub(crate) sections: Vec<Vec<Option<Section>>>,
    /// Tubes and hoses.
    pub(crate) conduits: Vec<Conduit>,
}

impl Views {
    pub(crate) fn of(design: &Design) -> Self {
        let package = &design.package;
        Views {
            pump: Pump::of(&package.pump),
            reservoir: Reservoir::of(&package.reservoir),
            valve: package.valve.as_deref().and_then(AirValve::of),
            regulator: package.regulator.as_deref().and_then(AirRegulator::of),
            disc: package.disc.as_deref().and_then(BurstDisc::of),
            holder: package.holder.as_deref().and_then(DiscHolder::of),
            gauge: package.gauge.as_deref().and_then(Gauge::of),
            controller: package.controller.as_deref().and_then(Controller::of),
            bodies: design.dividers.iter().map(|d| Divider::of(&d.body)).collect(),
            sections: design
                .dividers
                .iter()
                .map(|d| d.sections.iter().map(|s| Section::of(&s.part)).collect())
                .collect(),
            conduits: design.conduits.iter().map(|part| conduit(part)).collect(),
        }
    }
}

fn conduit(part: &Part) -> Conduit {
    if let Some(tube) = Tube::of(part) {
        return Conduit {
            bore: Some(tube.bore()),
            rated: tube.rated,
            coldest: tube.coldest,
            hottest: tube.hottest,
            plastic: tube.material == TubeMaterial::Polyamide,
        };
    }
    if let Some(hose) = Hose::of(part) {
        return Conduit {
            bore: Some(hose.bore),
            rated: Some(hose.rated),
            coldest: Some(hose.coldest),
            hottest: Some(hose.hottest),
            plastic: false,
        };
    }
    Conduit::default()
}
