//! Mistakes with the lines of the file, a mark under what is wrong, and the cure as the line that would be right.

use annotate_snippets::{AnnotationKind, Group, Level, Patch, Renderer, Snippet};
use oilway_text::{Message, Mistake, message, say};

use crate::desk::Desk;
use crate::page::{Page, clean};

/// More than this in one run tells nobody anything; the rest is counted.
const MOST: usize = 30;

/// All mistakes of some files, each file given by name and text.
pub(crate) fn mistakes(texts: &[(String, String)], mistakes: &[Mistake], desk: &Desk) -> String {
    let most = if desk.all { usize::MAX } else { MOST };
    let mut out = String::new();
    for mistake in mistakes.iter().take(most) {
        let text = texts.iter().find(|(file, _)| *file == mistake.file).map_or("", |(_, text)| text.as_str());
        out.push_str(&one(text, mistake, desk));
        out.push_str("\n\n");
    }
    let mut page = Page::new(desk.reader(None), desk.paint_beside);
    if mistakes.len() > most {
        page.say(&message!("oilway-more-mistakes", more = mistakes.len() - most));
    }
    page.loud(&message!("oilway-mistakes-count", count = mistakes.len()));
    out.push_str(&page.finish());
    out
}

fn one(text: &str, mistake: &Mistake, desk: &Desk) -> String {
    let reader = desk.reader(None);
    let (what, cure) = (clean(&say(&mistake.what, &reader)), clean(&say(&mistake.cure, &reader)));
    let renderer = if desk.paint_beside { Renderer::styled() } else { Renderer::plain() };
    let span = within(text, mistake.at.start, mistake.at.end);
    let fix = mistake.fix.as_ref().filter(|(at, _)| within(text, at.start, at.end) == *at);
    let snippet = || Snippet::source(text).path(mistake.file.as_str());
    let mark = AnnotationKind::Primary.span(span);
    let mut groups = vec![Level::ERROR.primary_title(what).element(snippet().annotation(mark))];
    let help = Level::HELP.secondary_title(cure);
    groups.push(match fix {
        Some((at, with)) => help.element(Snippet::source(text).patch(Patch::new(at.clone(), with.as_str()))),
        None => Group::with_title(help),
    });
    renderer.render(&groups)
}

/// The place, moved to the ends of characters of this text.
fn within(text: &str, start: usize, end: usize) -> core::ops::Range<usize> {
    let fit = |at: usize| (0..=at.min(text.len())).rev().find(|&at| text.is_char_boundary(at)).unwrap_or(0);
    let (start, end) = (fit(start), fit(end));
    start..end.max(start)
}

/// Problems that stand in no file.
pub(crate) fn told(list: &[(Message, Message)], desk: &Desk) -> String {
    let mut page = Page::new(desk.reader(None), desk.paint_beside);
    for (what, cure) in list {
        page.loud(what);
        page.item("  ", cure);
    }
    page.finish()
}
