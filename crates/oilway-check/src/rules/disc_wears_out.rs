//! A disc that works too near its burst.

use oilway_model::Finding;
use oilway_physics::disc::operating_ratio;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DiscWearsOut = "disc-wears-out",
    title: "The working pressure wears the disc out",
    finds: "A highest working pressure above the operating ratio of the disc times its lowest burst, at the warmest and for the weakest of the lot.",
    why: "The disc tires and bursts on an ordinary day, somebody fits a stronger one or a plug, and the protection is gone.",
    source: "zappe", "ch. 6, pages 216 and 223, working over minimum burst pressure", Seen,
    example: "Stall 118 bar, disc of 130 with 0.80: steady maximum 98 bar. A disc of 150 if the lines stand 160, or the regulator down to the setting named.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let (Some(disc), Some(data)) = (&shield.disc, &facts.views.disc) else { return Vec::new() };
    if shield.working <= disc.steady * (1.0 + 1e-9) {
        return Vec::new();
    }
    let ratio = operating_ratio(shield.working, Pressure::ZERO, disc.lowest);
    let what = message!(
        "check-disc-wears-out",
        working = shield.working,
        lowest = disc.lowest,
        ratio = ratio,
        allowed = data.ratio,
        steady = disc.steady
    );
    let draft = Draft::stop(rule, "package.disc", what, message!("check-disc-wears-out-cure"));
    super::turned_down(draft, facts, disc.steady, shield.working)
        .number(message!("check-number-working"), shield.working)
        .number(message!("check-number-lowest-burst"), disc.lowest)
        .number(message!("check-number-steady"), disc.steady)
        .cautions(&["S50", "S52"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};
    use oilway_units::Pressure;

    #[test]
    fn a_lower_disc_or_a_higher_setting_wears_it_out() {
        accepts("disc-wears-out", |_| {});
        refuses("disc-wears-out", |d| swap(d.package.disc.as_mut().unwrap(), "10017"));
        refuses("disc-wears-out", |d| d.package.air_setting = Some(Pressure::from_bar(6.4)));
    }
}
