//! [`Rule`]: one thing that the checker looks for, with the words that explain it.
//!
//! The same words are the doc comment of the rule, the answer to `oilway explain <id>` and the page of the handbook.

use oilway_model::Finding;
use oilway_physics::Source;

use crate::Facts;

/// A rule of the checker.
pub trait Rule: Sync + core::fmt::Debug {
    /// The lasting id in plain words: `stall-below-start`. It never changes its meaning.
    fn id(&self) -> &'static str;
    /// One line that says what is wrong.
    fn title(&self) -> &'static str;
    /// What it finds.
    fn finds(&self) -> &'static str;
    /// What happens where nobody heeds it.
    fn why_it_matters(&self) -> &'static str;
    /// Where it comes from.
    fn source(&self) -> Source;
    /// A worked example with its cure.
    fn example(&self) -> &'static str;
    /// Whether a finding of this rule leaves the verdict open: a number that is needed is not known.
    fn leaves_open(&self) -> bool;
    /// Looks for it.
    fn run(&self, facts: &Facts<'_>) -> Vec<Finding>;
}

/// Declares a rule from its words; the function `run` of the same file does the work.
macro_rules! rule {
    (
        $name:ident = $id:literal,
        title: $title:literal,
        finds: $finds:literal,
        why: $why:literal,
        source: $key:literal, $place:literal, $standing:ident,
        example: $example:literal
        $(, leaves_open: $open:literal)? $(,)?
    ) => {
        #[doc = $title]
        #[doc = ""]
        #[doc = "# What it finds"]
        #[doc = $finds]
        #[doc = "# Why it matters"]
        #[doc = $why]
        #[doc = "# Source"]
        #[doc = concat!("`", $key, "`, ", $place, " (", stringify!($standing), ")")]
        #[doc = "# Example"]
        #[doc = $example]
        #[derive(Debug)]
        pub(crate) struct $name;

        impl $crate::Rule for $name {
            fn id(&self) -> &'static str {
                $id
            }
            fn title(&self) -> &'static str {
                $title
            }
            fn finds(&self) -> &'static str {
                $finds
            }
            fn why_it_matters(&self) -> &'static str {
                $why
            }
            fn source(&self) -> oilway_physics::Source {
                oilway_physics::Source {
                    key: $key,
                    place: $place,
                    standing: oilway_physics::Standing::$standing,
                }
            }
            fn example(&self) -> &'static str {
                $example
            }
            fn leaves_open(&self) -> bool {
                false $( || $open )?
            }
            fn run(&self, facts: &$crate::Facts<'_>) -> Vec<oilway_model::Finding> {
                run(self, facts)
            }
        }
    };
}

pub(crate) use rule;
