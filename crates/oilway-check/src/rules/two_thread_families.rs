//! Two families of pipe threads in one package.

use std::collections::BTreeSet;

use oilway_catalogue::{Thread, ThreadFamily};
use oilway_model::Finding;
use oilway_text::message;

use crate::draft::Draft;
use crate::rule::rule;
use crate::{Facts, Rule};

rule! {
    TwoThreadFamilies = "two-thread-families",
    title: "Two families of threads that are easily mixed up meet in one package",
    finds: "Pipe threads of the ISO families, G or R, together with NPT in the ports of one package; or metric together with unified threads.",
    why: "They look alike, some start in each other, and the wrong plug holds until full pressure.",
    source: "asme-b1-20-1", "NPT beside ISO 228-1 and ISO 7-1, from memory", Memory,
    example: "A block with G 1/4 and a reservoir with 1/4-18 NPT: mark each port, or order both in one family.",
}

fn run(rule: &dyn Rule, facts: &Facts<'_>) -> Vec<Finding> {
    let ports = super::hosts(facts.design).flat_map(|host| &host.ports);
    let families: BTreeSet<ThreadFamily> =
        ports.filter_map(|port| Some(Thread::read(&port.thread).ok()?.family())).collect();
    let has = |wanted: &[ThreadFamily]| wanted.iter().any(|family| families.contains(family));
    use ThreadFamily::{G, Metric, Npt, Nptf, R, Rc, Rp, Unified};
    let pipe = has(&[G, R, Rc, Rp]) && has(&[Npt, Nptf]);
    let straight = has(&[Metric]) && has(&[Unified]);
    if !pipe && !straight {
        return Vec::new();
    }
    let what = if pipe { message!("check-two-pipe-families") } else { message!("check-metric-and-unified") };
    Draft::caution(rule, "package", what, message!("check-two-thread-families-cure"))
        .cautions(&["S60"])
        .alone()
}

#[cfg(test)]
mod tests {
    use crate::testing::{accepts, refuses, swap};

    #[test]
    fn a_taper_block_on_a_parallel_reservoir_is_named() {
        accepts("two-thread-families", |_| {});
        refuses("two-thread-families", |d| swap(&mut d.package.block, "10053"));
    }
}
