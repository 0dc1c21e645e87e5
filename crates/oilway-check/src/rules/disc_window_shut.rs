//! No disc at all would serve.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DiscWindowShut = "disc-window-shut",
    title: "No disc can both live and protect",
    finds: "A lowest nominal that would live, from the working pressure, the operating ratio and the tolerance, above the highest nominal that would protect, from the weakest part.",
    why: "Whatever disc is chosen either wears out or comes too late. The cure is not a disc but a lower working pressure or a stronger part.",
    source: "own-derivation", "window of set pressures; at ratio 0.70 and 5 % it opens at 1.58 times the working pressure", Own,
    example: "Working 142 bar, ratio 0.80: at least 187. Weakest part 160: at most 152. Bring the stall down to 115 bar, or fit lines for 197.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let shield = &facts.shield;
    let Some(weakest) = shield.weakest() else { return Vec::new() };
    let (low, high) = (shield.window_low, shield.window_high);
    if facts.design.package.disc.is_none() || low <= high || high <= Pressure::ZERO {
        return Vec::new();
    }
    // Both edges are in proportion to what sets them.
    let opening = shield.working * (high / low);
    let needed = weakest.rated * (low / high);
    let what = message!(
        "check-disc-window-shut",
        working = shield.working,
        low = low,
        weakest = weakest.what.as_str(),
        rated = weakest.rated,
        high = high
    );
    let draft =
        Draft::stop(rule, "package.disc", what, message!("check-disc-window-shut-cure", needed = needed));
    super::turned_down(draft, facts, opening, shield.working)
        .number(message!("check-number-window-low"), low)
        .number(message!("check-number-window-high"), high)
        .cautions(&["S04"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;
    use oilway_units::{Pressure, Ratio};

    #[test]
    fn a_disc_that_may_only_work_at_half_its_burst_leaves_no_window() {
        accepts("disc-window-shut", |_| {});
        refuses("disc-window-shut", |d| {
            let disc = d.package.disc.as_mut().unwrap();
            *disc = altered(disc, "ratio", Value::Quantity(Ratio::from_percent(50.0).into()));
        });
        refuses("disc-window-shut", |d| d.package.air_setting = Some(Pressure::from_bar(9.5)));
    }
}
