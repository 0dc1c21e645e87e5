//! Why each choice was made.

use oilway_model::{Answer, Design, Finding};
use oilway_text::message;

use crate::sheet::{Block, Column, Sheet, Table};

/// The choices and their reasons.
pub fn reasons(design: &Design, _: &Answer, _: &[Finding]) -> Sheet {
    let mut table = Table::new([
        Column::words(message!("documents-column-where")),
        Column::words(message!("documents-column-chosen")),
        Column::words(message!("documents-column-why")),
    ]);
    for reason in &design.reasons {
        table.rows.push(vec![
            reason.at.as_str().into(),
            reason.chosen.as_str().into(),
            reason.why.clone().into(),
        ]);
    }
    let title = message!("documents-title-reasons", job = design.name.as_str());
    Sheet { title, blocks: vec![Block::Table(table)] }
}
