//! A divider with too few working sections.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Count;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    SectionsTooFew = "sections-too-few",
    title: "A divider has too few working sections",
    finds: "Fewer working sections than the divider needs to keep its order of strokes.",
    why: "Each piston opens the way for the next; with too few of them the circle does not close and the divider stands.",
    source: "own-derivation", "order of strokes; fewer than three pistons do not keep it going (memory)", Memory,
    example: "Two sections in a divider for three to ten: add a section with both outlets joined to a point that can use it.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(number, body): (usize, &Option<oilway_catalogue::kinds::Divider>)| {
        let (body, sections) = (body.as_ref()?, facts.design.dividers[number].sections.len());
        let have = Count::from_number(sections as f64);
        if have >= body.sections_min {
            return None;
        }
        let what = message!("check-sections-too-few", have = sections, least = body.sections_min);
        Some(
            Draft::stop(rule, facts.divider_name(number), what, message!("check-sections-too-few-cure"))
                .done(),
        )
    };
    facts.views.bodies.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn three_sections_turn_and_two_do_not() {
        accepts("sections-too-few", |d| d.dividers[1].sections.truncate(3));
        refuses("sections-too-few", |d| d.dividers[1].sections.truncate(2));
    }
}
