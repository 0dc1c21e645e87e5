//! What the checker found: the gravest first, what one rule says of many things in one entry, each with its numbers, its cure, its source and its cautions.

use oilway_model::{Answer, Design, Finding, Severity};
use oilway_text::{Arg, Message, message};

use crate::cautions::{Caution, caution};
use crate::entries::{Entry, entries};
use crate::sheet::{Block, Sheet};
use crate::words;

/// All findings.
pub fn findings(design: &Design, answer: &Answer, findings: &[Finding]) -> Sheet {
    let mut blocks = vec![Block::Say(words::verdict(answer.verdict))];
    let mut said: Vec<&'static Caution> = Vec::new();
    let entries = entries(findings);
    for severity in [Severity::Stop, Severity::Caution, Severity::Note] {
        let here: Vec<&Entry<'_>> = entries.iter().filter(|entry| entry.severity() == severity).collect();
        if here.is_empty() {
            continue;
        }
        blocks.push(Block::Heading(heading(severity, here.len())));
        here.into_iter().for_each(|entry| entry_blocks(design, entry, &mut said, &mut blocks));
    }
    if findings.is_empty() {
        blocks.push(Block::Say(message!("documents-no-findings")));
    }
    Sheet { title: message!("documents-title-findings", job = design.name.as_str()), blocks }
}

fn heading(severity: Severity, number: usize) -> Message {
    match severity {
        Severity::Stop => message!("documents-head-stops", number = number),
        Severity::Caution => message!("documents-head-cautions", number = number),
        Severity::Note => message!("documents-head-findings-notes", number = number),
    }
}

/// The cautions stand before the finding whose cure they belong to, each once on the sheet.
fn entry_blocks(
    design: &Design,
    entry: &Entry<'_>,
    said: &mut Vec<&'static Caution>,
    blocks: &mut Vec<Block>,
) {
    for id in entry.cautions() {
        match caution(id) {
            Some(caution) if said.contains(&caution) => {}
            Some(caution) => {
                said.push(caution);
                blocks.push(Block::Caution(caution));
            }
            None => blocks.push(Block::Stop(message!("documents-unknown-caution", id = id))),
        }
    }
    let text = super::answer::said(design, entry);
    blocks.push(if entry.severity() == Severity::Stop { Block::Stop(text) } else { Block::Say(text) });
    let mut list = vec![message!("documents-finding-cure", cure = entry.cure())];
    list.extend(entry.turns().map(|turns| message!("documents-finding-turns", turns = turns)));
    let evidence = entry.evidence();
    if !evidence.is_empty() {
        list.push(Message::new("documents-finding-evidence").with("evidence", Arg::List(evidence)));
    }
    list.extend(entry.rule().map(|(rule, source)| {
        message!(
            "documents-finding-source",
            rule = rule,
            source = source.key,
            place = source.place,
            standing = source.standing.word(),
        )
    }));
    blocks.push(Block::List(list));
}
