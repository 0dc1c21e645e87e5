//! A disc made for gas.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    DiscNotForLiquid = "disc-not-for-liquid",
    title: "The disc is not made for a system full of liquid",
    finds: "A disc whose data do not say that it opens in full liquid.",
    why: "A disc that needs the push of expanding gas only tears in liquid, and lets through less than the pump gives.",
    source: "asme-viii-ug127", "UG-125(f), relief devices of liquid-full vessels", Seen,
    example: "A cross-scored reverse disc on a grease main: take a forward disc or one certified for liquid.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let Some(disc) = facts.views.disc.as_ref().filter(|disc| !disc.liquid) else { return Vec::new() };
    let what = message!("check-disc-not-for-liquid", nominal = disc.nominal);
    Draft::stop(rule, "package.disc", what, message!("check-disc-not-for-liquid-cure"))
        .cautions(&["S50"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses};
    use oilway_catalogue::Value;

    #[test]
    fn a_gas_disc_is_refused() {
        accepts("disc-not-for-liquid", |_| {});
        refuses("disc-not-for-liquid", |d| {
            let disc = d.package.disc.as_mut().unwrap();
            *disc = altered(disc, "liquid", Value::Flag(false));
        });
    }
}
