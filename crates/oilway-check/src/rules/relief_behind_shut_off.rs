//! A relief device that somebody can shut off.

use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::{is_shut_off, port_name, relief_ports};
use crate::{Facts, Rule};

rule! {
    ReliefBehindShutOff = "relief-behind-shut-off",
    title: "A shut-off stands between the pump and its relief device",
    finds: "A relief port behind a shut-off, or a shut-off valve in it.",
    why: "Whoever closes it for five minutes takes the protection away, and nothing shows it.",
    source: "asme-viii-ug127", "UG-125(g)(2), no stop valve between vessel and device", Seen,
    example: "A ball valve under the disc so that it can be changed under pressure: take it out, and change discs with the package let down.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let report = |device: &oilway_model::Device| {
        let what = message!("check-relief-behind-shut-off");
        let draft = Draft::stop(rule, port_name(device), what, message!("check-relief-behind-shut-off-cure"));
        draft.cautions(&["S04"]).done()
    };
    relief_ports(facts.design).filter(|device| is_shut_off(device)).map(report).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, device, part, refuses};
    use oilway_model::Filling;

    #[test]
    fn nothing_that_shuts_may_stand_under_the_disc() {
        accepts("relief-behind-shut-off", |d| device(d, "gauge").behind_shut_off = true);
        refuses("relief-behind-shut-off", |d| device(d, "burst disc").behind_shut_off = true);
        refuses("relief-behind-shut-off", |d| {
            let valve =
                oilway_catalogue::house::catalogue().of_kind("shut-off valve").next().unwrap().id.clone();
            device(d, "burst disc").holds.insert(0, Filling::Part(part(&valve)));
        });
    }
}
