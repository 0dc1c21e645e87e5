//! A divider with too many working sections.

use oilway_model::Finding;
use oilway_text::message;
use oilway_units::Count;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    SectionsTooMany = "sections-too-many",
    title: "A divider has too many working sections",
    finds: "More working sections than inlet and end section of the divider take.",
    why: "The tie rods are too short, or the passages too long: it cannot be built, or does not meter.",
    source: "common-practice", "the divider's own data decide", CommonPractice,
    example: "Eleven sections in a divider for three to ten: split the points over two dividers.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let judge = |(number, body): (usize, &Option<oilway_catalogue::kinds::Divider>)| {
        let (body, sections) = (body.as_ref()?, facts.design.dividers[number].sections.len());
        let have = Count::from_number(sections as f64);
        if have <= body.sections_max {
            return None;
        }
        let what = message!("check-sections-too-many", have = sections, most = body.sections_max);
        Some(
            Draft::stop(rule, facts.divider_name(number), what, message!("check-sections-too-many-cure"))
                .done(),
        )
    };
    facts.views.bodies.iter().enumerate().filter_map(judge).collect()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses};

    #[test]
    fn ten_sections_fit_and_eleven_do_not() {
        let grow = |d: &mut oilway_model::Design, to: usize| {
            let section = d.dividers[1].sections[0].clone();
            d.dividers[1].sections.resize(to, section);
        };
        accepts("sections-too-many", |d| grow(d, 10));
        refuses("sections-too-many", |d| grow(d, 11));
    }
}
