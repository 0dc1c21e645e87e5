//! Why each choice was made: one line for each, in a fixed order, with the choice as the lock file holds it.

use std::sync::Arc;

use oilway_catalogue::Part;
use oilway_model::{
    Design, Divider, End, Job, LegWish, Mounting, OutletUse, Principle, Reason, Section, Side,
};
use oilway_text::{Message, message};

use crate::package::Power;
use crate::tree::{Metered, TreeMetering};

/// The reasons, as they are collected.
#[derive(Default)]
struct Reasons {
    all: Vec<Reason>,
}

impl Reasons {
    fn add(&mut self, at: impl Into<String>, chosen: impl Into<String>, kept: bool, why: Message) {
        let why = if kept { message!("solve-kept") } else { why };
        self.all.push(Reason { at: at.into(), chosen: chosen.into(), kept, why });
    }

    fn part(&mut self, at: &str, part: Option<&Arc<Part>>, kept: bool, why: Message) {
        if let Some(part) = part {
            self.add(at, part.id.clone(), kept, why);
        }
    }
}

/// The reasons of a design.
pub(crate) fn reasons(
    job: &Job,
    design: &Design,
    metering: &TreeMetering,
    power: &Power,
    principle: Message,
) -> Vec<Reason> {
    let mut all = Reasons::default();
    let kept = job.principle.chosen() == Some(&Principle::Progressive);
    all.add("principle", "progressive", kept, principle);
    package(&mut all, job, design, power);
    for ((divider, wish), metered) in design.dividers.iter().zip(&job.dividers).zip(&metering.dividers) {
        let at = format!("divider.{}", divider.name);
        all.add(
            format!("{at}.part"),
            divider.body.id.clone(),
            !wish.part.is_open(),
            message!("solve-why-divider"),
        );
        let why = why_sections(metered);
        all.add(format!("{at}.sections"), sections_text(design, divider), !wish.sections.is_open(), why);
    }
    for (number, node) in design.network.nodes.iter().enumerate() {
        for (leg_number, leg) in node.legs.iter().enumerate() {
            let kept = leg_wish(job, design, number, leg_number).is_some_and(|wish| !wish.conduit.is_open());
            let part = design.conduits[leg.conduit].id.clone();
            all.add(
                format!("line.{}.{}.conduit", node.name, leg_number + 1),
                part,
                kept,
                message!("solve-why-line"),
            );
        }
    }
    let pause = format!("{} min", libm::round(design.control.pause.minutes() * 1e9) / 1e9);
    all.add("pause", pause, !job.pause.is_open(), message!("solve-why-pause"));
    all.all
}

fn package(all: &mut Reasons, job: &Job, design: &Design, power: &Power) {
    let (wish, package) = (&job.package, &design.package);
    let why = || power.why.clone();
    all.part("package.pump", Some(&package.pump), !wish.pump.is_open(), why());
    all.part(
        "package.reservoir",
        Some(&package.reservoir),
        !wish.reservoir.is_open(),
        power.vessel.why.clone(),
    );
    let remote = if matches!(package.mounting, Mounting::Remote(_)) { "yes" } else { "no" };
    all.add("package.remote", remote, !wish.remote.is_open(), message!("solve-why-remote"));
    all.part("package.block", Some(&package.block), !wish.block.is_open(), message!("solve-why-block"));
    all.part("package.valve", package.valve.as_ref(), !wish.valve.is_open(), message!("solve-why-valve"));
    if let Some(setting) = package.air_setting {
        let chosen = format!("{} bar", libm::round(setting.bar() * 1e6) / 1e6);
        all.add("package.regulator", chosen, !wish.regulator.is_open(), why());
    }
    all.part("package.disc", package.disc.as_ref(), !wish.disc.is_open(), why());
    all.part("package.holder", package.holder.as_ref(), !wish.holder.is_open(), message!("solve-why-holder"));
    all.part("package.gauge", package.gauge.as_ref(), !wish.gauge.is_open(), message!("solve-why-gauge"));
    all.part(
        "package.controller",
        package.controller.as_ref(),
        !wish.controller.is_open(),
        message!("solve-why-controller"),
    );
    if let Mounting::Remote(legs) = &package.mounting {
        for (number, (leg, wish)) in legs.iter().zip(&wish.inlet).enumerate() {
            let at = format!("package.inlet.{}.conduit", number + 1);
            all.part(
                &at,
                design.conduits.get(leg.conduit),
                !wish.conduit.is_open(),
                message!("solve-why-inlet"),
            );
        }
    }
}

fn why_sections(metered: &Metered) -> Message {
    match (metered.widened > 1.0, metered.teed) {
        (true, _) => message!("solve-why-sections-widened", factor = metered.widened),
        (false, _) if !metered.proven => message!("solve-why-sections-unproven"),
        (false, true) => message!("solve-why-sections-teed"),
        (false, false) => message!("solve-why-sections"),
    }
}

fn leg_wish<'a>(job: &'a Job, design: &Design, node: usize, leg: usize) -> Option<&'a LegWish> {
    match design.network.nodes[node].end {
        End::Divider(d) => job.dividers.get(d)?.route.get(leg),
        End::Point(p) => job.points.get(p)?.route.get(leg),
        End::Pump | End::Junction => None,
    }
}

/// The sections as the lock file holds them: `10011: washer | 10010: table, stacker`.
fn sections_text(design: &Design, divider: &Divider) -> String {
    let name = |outlet: &OutletUse| outlet_name(design, divider, outlet);
    let of_section = |section: &Section| {
        let served: Vec<String> = match (&section.left, &section.right) {
            (left, OutletUse::WithOpposite) => vec![name(left)],
            (OutletUse::WithOpposite, right) => vec![name(right)],
            (left, right) => vec![name(left), name(right)],
        };
        format!("{}: {}", section.part.id, served.join(", "))
    };
    divider.sections.iter().map(of_section).collect::<Vec<_>>().join(" | ")
}

fn outlet_name(design: &Design, divider: &Divider, outlet: &OutletUse) -> String {
    match outlet {
        OutletUse::To(node) => design.network.nodes[*node].name.clone(),
        OutletUse::Bridged(section, side) => {
            let there = divider.sections.get(*section);
            let outlet = there.map(|s| if *side == Side::Left { &s.left } else { &s.right });
            match outlet {
                Some(OutletUse::To(node)) => design.network.nodes[*node].name.clone(),
                _ => String::new(),
            }
        }
        OutletUse::WithOpposite | OutletUse::Plugged | OutletUse::Open => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use oilway_model::{Choice, SectionWish};

    use crate::design;
    use crate::testing::{catalogue, dairy, hall, leg, spindle};

    use super::*;

    fn of<'a>(reasons: &'a [Reason], at: &str) -> &'a Reason {
        reasons.iter().find(|r| r.at == at).unwrap_or_else(|| panic!("no reason at {at}"))
    }

    #[test]
    fn every_open_choice_has_a_reason_and_every_place_stands_once() {
        let design = design(&dairy(), catalogue()).unwrap();
        let mut places: Vec<&str> = design.reasons.iter().map(|r| r.at.as_str()).collect();
        assert!(design.reasons.iter().all(|r| !r.kept && r.why.key != "solve-kept"));
        let all = places.len();
        places.sort_unstable();
        places.dedup();
        assert_eq!(places.len(), all);
        for at in
            ["principle", "pause", "package.pump", "package.remote", "package.regulator", "package.disc"]
        {
            of(&design.reasons, at);
        }
        let legs: usize = design.network.nodes.iter().map(|n| n.legs.len()).sum();
        assert_eq!(design.reasons.iter().filter(|r| r.at.starts_with("line.")).count(), legs);
    }

    #[test]
    fn what_was_given_is_said_to_be_kept() {
        let mut job = hall();
        job.package.disc = Choice::Given("10019".to_owned());
        job.points[2].route[0].conduit = Choice::Pinned("10083".to_owned());
        let reasons = design(&job, catalogue()).unwrap().reasons;
        for (at, chosen) in [("package.disc", "10019"), ("line.pin 3.1.conduit", "10083")] {
            let reason = of(&reasons, at);
            assert!(reason.kept && reason.why.key == "solve-kept" && reason.chosen == chosen, "{reason:?}");
        }
        assert!(!of(&reasons, "package.pump").kept);
    }

    #[test]
    fn sections_are_written_as_they_are_read() {
        let mut job = hall();
        let section = |part: &str, serves: &[&str]| SectionWish {
            part: part.to_owned(),
            serves: serves.iter().map(|s| (*s).to_owned()).collect(),
        };
        let given = vec![
            section("10057", &["pin 1"]),
            section("10057", &["pin 2", "pin 3"]),
            section("10058", &["pin 4", "pin 5"]),
            section("10058", &["pin 6", "pin 1"]),
        ];
        job.dividers[0].sections = Choice::Given(given);
        let reasons = design(&job, catalogue()).unwrap().reasons;
        let text = "10057: pin 1 | 10057: pin 2, pin 3 | 10058: pin 4, pin 5 | 10058: pin 6, pin 1";
        assert_eq!(of(&reasons, "divider.post.sections").chosen, text);
    }

    #[test]
    fn a_remote_pump_tells_its_inlet_and_a_wish_for_parallel_its_answer() {
        let mut job = spindle();
        job.package.inlet = vec![leg(0, 0.5)];
        let reasons = design(&job, catalogue()).unwrap().reasons;
        assert_eq!(of(&reasons, "package.remote").chosen, "yes");
        of(&reasons, "package.inlet.1.conduit");
        let mut job = dairy();
        job.principle = Choice::Given(Principle::Parallel);
        let reasons = design(&job, catalogue()).unwrap().reasons;
        let principle = of(&reasons, "principle");
        assert_eq!((principle.chosen.as_str(), principle.why.key), ("progressive", "solve-why-not-parallel"));
    }
}
