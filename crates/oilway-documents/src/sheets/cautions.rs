//! Every caution that the design brings up, by the step at which it stands. None can be switched off.

use oilway_model::{Answer, Design, Finding};
use oilway_text::{Message, message};

use crate::cautions::{Caution, Step, triggered};
use crate::sheet::{Block, Sheet};

/// The cautions.
pub fn cautions(design: &Design, _: &Answer, _: &[Finding]) -> Sheet {
    let mut waiting: Vec<&'static Caution> = triggered(design);
    let mut blocks = Vec::new();
    for (step, head) in steps() {
        // One that stands at several steps is printed at the first of them.
        let (here, later): (Vec<_>, Vec<_>) =
            waiting.into_iter().partition(|caution| caution.stands_at(step));
        waiting = later;
        if !here.is_empty() {
            blocks.push(Block::Heading(head));
            blocks.extend(here.into_iter().map(Block::Caution));
        }
    }
    Sheet { title: message!("documents-title-cautions", job = design.name.as_str()), blocks }
}

fn steps() -> [(Step, Message); 7] {
    [
        (Step::Always, message!("documents-step-of-always")),
        (Step::Design, message!("documents-step-of-design")),
        (Step::Assembly, message!("documents-step-of-assembly")),
        (Step::Commissioning, message!("documents-step-of-commissioning")),
        (Step::Handling, message!("documents-step-of-handling")),
        (Step::Service, message!("documents-step-of-service")),
        (Step::Document, message!("documents-step-of-document")),
    ]
}
