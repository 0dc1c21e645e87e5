//! Outlets of one divider that work against very different pressures.

use oilway_model::{Finding, Season};
use oilway_text::message;
use oilway_units::Pressure;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    BackPressureDifference = "back-pressure-difference",
    title: "The outlets of a divider work against very different pressures",
    finds: "A divider whose outlets, on the coldest day and at the flow of an event, stand against pressures that differ by more than its data allow.",
    why: "Pistons leak from the high side to the low one: one point gets more, the other less than its share.",
    source: "own-derivation", "pressure of each outlet walked from its points", Own,
    example: "One tail of 20 m in the cold room beside tails of 1 m: 120 bar against 20, 100 allowed. A wider tail, or a divider of its own in the cold room.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let spans = spans(facts);
    let judge = |(number, span): (usize, &Option<(Pressure, Pressure)>)| {
        let (low, high) = (*span)?;
        let most = facts.views.bodies[number].as_ref()?.outlet_difference_max?;
        let difference = high - low;
        if difference <= most {
            return None;
        }
        let what = message!("check-back-pressure-difference", low = low, high = high, most = most);
        let draft = Draft::caution(
            rule,
            facts.divider_name(number),
            what,
            message!("check-back-pressure-difference-cure"),
        )
        .number(message!("check-number-difference"), difference)
        .number(message!("check-number-limit"), most);
        Some(draft.done())
    };
    spans.iter().enumerate().filter_map(judge).collect()
}

/// For each divider the lowest and the highest pressure against which an outlet works.
fn spans(facts: &Facts<'_>) -> Vec<Option<(Pressure, Pressure)>> {
    let nodes = facts.design.network.nodes.len();
    // What the hardest way beyond each node's own line takes, seen from the outlet.
    let mut at_outlet: Vec<Option<Pressure>> = vec![None; nodes];
    let Some(flow) = facts.event_flow else { return vec![None; facts.design.dividers.len()] };
    for way in facts.ways.iter().flatten() {
        let mut before = None;
        facts.walk.watched(Season::Cold, way, flow, |node, beyond| {
            if let Some(below) = before {
                let slot: &mut Option<Pressure> = &mut at_outlet[below];
                *slot = Some(slot.map_or(beyond, |most| most.max(beyond)));
            }
            before = Some(node);
        });
    }
    let of_divider = |number: usize| {
        let pressures = facts.meters[number].fed().filter_map(|node| at_outlet[node]);
        pressures.fold(None, |span, p| match span {
            None => Some((p, p)),
            Some((low, high)) => Some((p.min(low), p.max(high))),
        })
    };
    (0..facts.design.dividers.len()).map(of_divider).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, node_of_point, refuses};
    use oilway_units::{Entry, Length};

    #[test]
    fn one_long_tail_beside_short_ones_is_named() {
        accepts("back-pressure-difference", |_| {});
        refuses("back-pressure-difference", |d| {
            let node = node_of_point(d, 0);
            d.network.nodes[node].legs[0].length = Entry::known(Length::from_metres(120.0));
        });
    }
}
