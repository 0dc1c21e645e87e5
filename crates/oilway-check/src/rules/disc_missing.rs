//! A system that nothing protects.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DiscMissing = "disc-missing",
    title: "Nothing protects the weakest part",
    finds: "A pump that can push higher than the weakest part stands, without a burst disc; or a disc and holder that sit in no relief port.",
    why: "One blocked bearing is enough: the pump goes up until something gives, and that is where somebody stands.",
    source: "iso-4413", "every part of the system protected against excess pressure", SecondHand,
    example: "Forty to one on air that can reach 8 bar: 320 bar on hoses of 160. Fit a disc that bursts below 160 at its strongest.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    if shield.in_place {
        return Vec::new();
    }
    let package = &facts.design.package;
    if package.disc.is_some() && package.holder.is_some() {
        // Behind a shut-off it sits in its port, which is a finding of its own.
        let holder = package.holder.as_deref();
        let sits = crate::shield::relief_ports(facts.design)
            .any(|d| holder.is_some_and(|h| crate::shield::holds(d, h)));
        let what = message!("check-disc-in-no-port");
        let draft = Draft::stop(rule, "package.disc", what, message!("check-disc-in-no-port-cure"));
        return if sits { Vec::new() } else { draft.cautions(&["S04", "S50"]).alone() };
    }
    let Some(weakest) = shield.weakest() else { return Vec::new() };
    if package.disc.is_some() || shield.possible <= weakest.rated {
        return Vec::new();
    }
    let what = message!(
        "check-disc-missing",
        possible = shield.possible,
        weakest = weakest.what.as_str(),
        rated = weakest.rated
    );
    Draft::stop(rule, "package.disc", what, message!("check-disc-missing-cure"))
        .turns(message!("check-turns-highest-below", highest = weakest.rated))
        .number(message!("check-number-possible"), shield.possible)
        .number(message!("check-number-weakest"), weakest.rated)
        .cautions(&["S04", "S31"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn a_pump_that_can_burst_something_needs_a_disc_in_its_port() {
        accepts("disc-missing", |_| {});
        refuses("disc-missing", |d| {
            d.package.disc = None;
            swap(&mut d.package.pump, "10030");
        });
        refuses("disc-missing", |d| d.package.devices.retain(|device| device.mark != "burst disc"));
    }
}
