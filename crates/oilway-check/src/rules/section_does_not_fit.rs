//! A working section in a divider that does not take it.

use oilway_model::{Finding, OutletUse};
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::shield::named;
use crate::{Facts, Rule};

rule! {
    SectionDoesNotFit = "section-does-not-fit",
    title: "A working section does not fit its divider, or is used as it cannot be",
    finds: "A part that is no section, a section of another range, or two outlets joined inside a section that cannot be joined.",
    why: "It cannot be screwed together; or the joined outlets are not joined at all and one of them is blind.",
    source: "common-practice", "the section's own data decide", CommonPractice,
    example: "A large section between small ones: take the sections that the divider's data name.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for (number, divider) in facts.design.dividers.iter().enumerate() {
        for (at, section) in divider.sections.iter().enumerate() {
            let joined = section.left == OutletUse::WithOpposite || section.right == OutletUse::WithOpposite;
            let part = named(&section.part);
            let what = match &facts.views.sections[number][at] {
                None => message!("check-section-is-none", section = at + 1, part = part),
                Some(data) if !data.fits.contains(&divider.body.id) => {
                    message!("check-section-does-not-fit", section = at + 1, part = part)
                }
                Some(data) if joined && !data.joinable => {
                    message!("check-section-cannot-be-joined", section = at + 1, part = part)
                }
                Some(_) => continue,
            };
            let cure = message!("check-section-does-not-fit-cure");
            found.push(Draft::stop(rule, facts.divider_name(number), what, cure).done());
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, altered, refuses, swap};
    use oilway_catalogue::Value;
    use std::sync::Arc;

    #[test]
    fn only_sections_of_the_same_range_fit() {
        accepts("section-does-not-fit", |_| {});
        refuses("section-does-not-fit", |d| swap(&mut d.dividers[0].sections[0].part, "10063"));
        refuses("section-does-not-fit", |d| swap(&mut d.dividers[0].sections[0].part, "10074"));
    }

    #[test]
    fn a_section_that_cannot_be_joined_must_not_be() {
        refuses("section-does-not-fit", |d| {
            let part = altered(&d.dividers[0].sections[0].part, "joinable", Value::Flag(false));
            for section in &mut d.dividers[0].sections {
                section.part = Arc::clone(&part);
            }
        });
    }
}
