//! What in a design brings a caution up. Nothing switches one off.

use oilway_catalogue::kinds::{CheckValve, Hose, Pump, Reservoir};
use oilway_model::{Design, Filling, Season};
use oilway_units::{Temperature, Volume};

use super::{Caution, cautions};

/// Something in a design, and the cautions that it brings.
#[derive(Clone, Copy)]
pub struct Trigger {
    /// What it is, in words.
    pub what: &'static str,
    /// Whether a design holds it.
    pub holds: fn(&Design) -> bool,
    /// The ids of its cautions.
    pub brings: &'static [&'static str],
}

impl core::fmt::Debug for Trigger {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.debug_struct("Trigger")
            .field("what", &self.what)
            .field("brings", &self.brings)
            .finish_non_exhaustive()
    }
}

const TRIGGERS: &[Trigger] = &[
    Trigger {
        what: "lubricant under pressure",
        holds: |_| true,
        brings: &[
            "S01", "S02", "S03", "S04", "S05", "S06", "S20", "S24", "S25", "S30", "S31", "S32", "S62", "S92",
            "S90", "S94",
        ],
    },
    Trigger {
        what: "grease",
        holds: |design| design.conditions.lubricant.is_grease(),
        brings: &["S21", "S33", "S91", "S95"],
    },
    Trigger {
        what: "check valves in series, or a dead end",
        holds: holds_pressure_in,
        brings: &["S21", "S22"],
    },
    Trigger {
        what: "a burst disc",
        holds: |design| design.package.disc.is_some() || design.package.holder.is_some(),
        brings: &["S04", "S05", "S50", "S51", "S52"],
    },
    Trigger {
        what: "an air-driven pump",
        holds: by_air,
        brings: &["S07", "S12", "S40", "S41", "S42", "S43", "S44", "S45"],
    },
    Trigger { what: "a timer, a switch or an electric pump", holds: |_| true, brings: &["S08", "S73"] },
    Trigger {
        what: "new tubes and fittings",
        holds: |design| {
            !design.joints.is_empty() || design.network.nodes.iter().any(|node| !node.legs.is_empty())
        },
        brings: &["S60", "S61", "S62", "S63", "S64"],
    },
    Trigger {
        what: "a hose",
        holds: |design| design.conduits.iter().any(|part| Hose::of(part).is_some()),
        brings: &["S41", "S63"],
    },
    Trigger {
        what: "a first fill and a pressure test",
        holds: |_| true,
        brings: &["S27", "S70", "S71", "S72", "S95"],
    },
    Trigger {
        what: "parts above 43 °C",
        holds: |design| hottest(design) >= Temperature::from_celsius(43.0),
        brings: &["S11", "S80", "S81"],
    },
    Trigger {
        what: "an explosive atmosphere, dust, a mine, paint or solvent",
        holds: |design| speaks_of(design, &["zone", "dust", "mine", "paint", "solvent", "explos"]),
        brings: &["S10", "S98"],
    },
    Trigger {
        what: "a reservoir of 55 gallons and more",
        holds: |design| large_store(design),
        brings: &["S93"],
    },
    Trigger {
        what: "food, water or animals",
        holds: |design| {
            design.conditions.limits.food || speaks_of(design, &["food", "water", "animal", "spray", "wash"])
        },
        brings: &["S13"],
    },
    Trigger {
        what: "kiln, crusher, height, tank",
        holds: |design| speaks_of(design, &["kiln", "crusher", "height", "tank", "silo", "mine"]),
        brings: &["S26", "S74"],
    },
    Trigger {
        what: "delivery to the European Union, or nobody said where",
        holds: may_go_to_the_union,
        brings: &["S09"],
    },
    Trigger { what: "oxygen", holds: |design| speaks_of(design, &["oxygen", "oxidis"]), brings: &["S96"] },
    Trigger {
        what: "drums and follower plates",
        holds: |design| Reservoir::of(&design.package.reservoir).is_some_and(|r| r.follower),
        brings: &["S97"],
    },
];

/// The table of what brings which cautions.
pub fn triggers() -> &'static [Trigger] {
    TRIGGERS
}

/// The cautions that a design brings up, in the order of the file, each once.
pub fn triggered(design: &Design) -> Vec<&'static Caution> {
    let brought: Vec<&str> =
        TRIGGERS.iter().filter(|t| (t.holds)(design)).flat_map(|t| t.brings.iter().copied()).collect();
    cautions().iter().filter(|caution| brought.contains(&caution.id.as_str())).collect()
}

fn by_air(design: &Design) -> bool {
    Pump::of(&design.package.pump).is_none_or(|pump| pump.drive.is_air())
}

/// Two check valves shut a line in between them; a shut-off makes a dead end.
fn holds_pressure_in(design: &Design) -> bool {
    let held =
        design.package.devices.iter().flat_map(|device| &device.holds).filter_map(|filling| match filling {
            Filling::Part(part) => Some(part),
            _ => None,
        });
    let parts = || held.clone().chain(design.joints.iter().flat_map(|joint| &joint.parts));
    let checks = parts().filter(|part| CheckValve::of(part).is_some()).count();
    checks >= 2 || design.package.devices.iter().any(|device| device.behind_shut_off)
}

fn hottest(design: &Design) -> Temperature {
    let places = design.conditions.places.iter().map(|place| place.temperature(Season::Hot));
    places.fold(Temperature::ABSOLUTE_ZERO, Temperature::max)
}

fn large_store(design: &Design) -> bool {
    Reservoir::of(&design.package.reservoir)
        .is_some_and(|reservoir| reservoir.gross >= Volume::from_gallons(55.0))
}

/// Whether the words about points and places hold one of these. A word too many brings a caution too many, which hurts nobody.
fn speaks_of(design: &Design, words: &[&str]) -> bool {
    let places = design.conditions.places.iter().flat_map(|p| p.surroundings.words.iter().chain([&p.name]));
    let points = design.points.iter().flat_map(|p| p.surroundings.words.iter().chain([&p.part]));
    places.chain(points).any(|text| {
        let text = text.to_lowercase();
        words.iter().any(|word| text.contains(word))
    })
}

/// The member states and those that take over their law on machines; from memory, so that a name too many is no harm.
const UNION: &[&str] = &[
    "eu",
    "europe",
    "european union",
    "eea",
    "austria",
    "belgium",
    "bulgaria",
    "croatia",
    "cyprus",
    "czechia",
    "denmark",
    "estonia",
    "finland",
    "france",
    "germany",
    "greece",
    "hungary",
    "ireland",
    "italy",
    "latvia",
    "lithuania",
    "luxembourg",
    "malta",
    "netherlands",
    "poland",
    "portugal",
    "romania",
    "slovakia",
    "slovenia",
    "spain",
    "sweden",
    "norway",
    "iceland",
    "liechtenstein",
    "switzerland",
    "türkiye",
    "turkey",
];

fn may_go_to_the_union(design: &Design) -> bool {
    design
        .conditions
        .site
        .region
        .as_ref()
        .is_none_or(|region| UNION.contains(&region.trim().to_lowercase().as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::small_design;

    fn ids(design: &Design) -> Vec<&str> {
        triggered(design).iter().map(|caution| caution.id.as_str()).collect()
    }

    #[test]
    fn every_caution_named_by_the_table_is_in_the_file() {
        for trigger in triggers() {
            for id in trigger.brings {
                assert!(super::super::caution(id).is_some(), "{id} of {}", trigger.what);
            }
        }
    }

    #[test]
    fn grease_brings_the_grease_cautions_and_a_cold_dry_hall_no_burns() {
        let design = small_design();
        let found = ids(&design);
        for id in ["S01", "S20", "S21", "S31", "S50", "S51", "S42", "S97", "S09"] {
            assert!(found.contains(&id), "{id}");
        }
        for id in ["S10", "S93", "S96", "S74"] {
            assert!(!found.contains(&id), "{id}");
        }
    }

    #[test]
    fn heat_dust_and_an_order_from_overseas_change_the_list() {
        let mut design = small_design();
        design.conditions.places[0].hottest = Temperature::from_celsius(42.0).into();
        design.conditions.places[1].hottest = Temperature::from_celsius(42.0).into();
        assert!(!ids(&design).contains(&"S80"));
        design.conditions.places[1].hottest = Temperature::from_celsius(43.0).into();
        assert!(ids(&design).contains(&"S80"));
        assert!(!ids(&design).contains(&"S10"));
        design.conditions.places[1].surroundings.words.push("Dusty".to_owned());
        assert!(ids(&design).contains(&"S10"));
        design.conditions.site.region = Some("overseas".to_owned());
        assert!(!ids(&design).contains(&"S09"));
        design.conditions.site.region = Some("Germany".to_owned());
        assert!(ids(&design).contains(&"S09"));
    }
}
