//! Whether a chain of ends goes together: a thread of one writing, a male in a female, all the way.

use oilway_catalogue::Part;
use oilway_model::JointEnd;

/// Where a chain does not go together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Break {
    /// The end that is offered.
    pub(crate) offered: JointEnd,
    /// The ends of which one should take it.
    pub(crate) met: Vec<JointEnd>,
}

/// Whether two ends go together as they are.
pub(crate) fn mates(one: &JointEnd, other: &JointEnd) -> bool {
    one.thread.is_some() && one.thread == other.thread && one.sex != other.sex
}

/// The first place at which a chain from one end over these parts to another end does not go together; none if it does.
pub(crate) fn broken(from: &JointEnd, parts: &[&Part], to: Option<&JointEnd>) -> Option<Break> {
    let Some((part, rest)) = parts.split_first() else {
        let far = to?;
        return (!mates(from, far)).then(|| Break { offered: from.clone(), met: vec![far.clone()] });
    };
    let ends = ends(part);
    let mut deepest = None;
    for (number, _) in ends.iter().enumerate().filter(|(_, end)| mates(from, end)) {
        if rest.is_empty() && to.is_none() {
            return None;
        }
        for (_, leaving) in ends.iter().enumerate().filter(|(other, _)| *other != number) {
            // A tee has more than one way on; the first that goes through will do.
            deepest = Some(broken(leaving, rest, to)?);
        }
    }
    deepest.or_else(|| Some(Break { offered: from.clone(), met: ends }))
}

/// The ends of a part.
pub(crate) fn ends(part: &Part) -> Vec<JointEnd> {
    part.ports.iter().map(|port| JointEnd { thread: Some(port.thread.clone()), sex: port.sex }).collect()
}

/// An end in words: `G 1/4 female`.
pub(crate) fn said(end: &JointEnd) -> String {
    let thread = end.thread.as_deref().unwrap_or("?");
    format!("{thread} {}", end.sex.word())
}

/// Whether an end takes a tube or hose.
pub(crate) fn is_line(end: &JointEnd) -> bool {
    end.thread.as_deref().is_some_and(|thread| thread.starts_with("tube ") || thread.starts_with("hose "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::part;
    use oilway_catalogue::Sex;

    fn end(thread: &str, sex: Sex) -> JointEnd {
        JointEnd { thread: Some(thread.to_owned()), sex }
    }

    #[test]
    fn a_male_goes_into_a_female_of_the_same_writing_only() {
        let port = end("G 1/4", Sex::Female);
        assert!(mates(&port, &end("G 1/4", Sex::Male)));
        assert!(!mates(&port, &end("G 1/4", Sex::Female)));
        assert!(!mates(&port, &end("1/4-18 NPT", Sex::Male)));
        let nobody = JointEnd { thread: None, sex: Sex::Male };
        assert!(!mates(&JointEnd { thread: None, sex: Sex::Female }, &nobody));
    }

    #[test]
    fn a_chain_is_followed_over_its_parts_and_its_break_is_named() {
        let gauge = part("10074");
        assert_eq!(broken(&end("G 1/4", Sex::Female), &[&gauge], None), None);
        let wrong = broken(&end("1/4-18 NPT", Sex::Female), &[&gauge], None);
        assert_eq!(wrong.map(|b| said(&b.met[0])), Some("G 1/4 male".to_owned()));
    }

    #[test]
    fn two_ends_without_parts_must_mate_themselves() {
        let (port, stem) = (end("M10x1", Sex::Female), end("M10x1", Sex::Male));
        assert_eq!(broken(&port, &[], Some(&stem)), None);
        assert!(broken(&port, &[], Some(&port)).is_some());
    }
}
