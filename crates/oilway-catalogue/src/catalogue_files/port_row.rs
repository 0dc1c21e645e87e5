//! The ports of a part.

use oilway_text::message;

use crate::reading::Table;
use crate::{Internal, Port, Role, Sex, Thread};

/// The ports of a part, and whether all of them could be read.
pub(super) fn ports(part: &Table<'_>) -> (Vec<Port>, bool) {
    let Some(item) = part.item("port") else { return (Vec::new(), true) };
    let Some(rows) = item.list() else { return (Vec::new(), false) };
    let read: Vec<Option<Port>> = rows.iter().map(|row| port(&row.table()?)).collect();
    let mut sound = read.iter().all(Option::is_some);
    let ports: Vec<Port> = read.into_iter().flatten().collect();
    for (index, port) in ports.iter().enumerate() {
        if ports[..index].iter().any(|other| other.mark == port.mark) {
            item.wrong(
                message!("catalogue-doubled-mark", mark = port.mark.as_str()),
                message!("catalogue-doubled-mark-cure"),
            );
            sound = false;
        }
    }
    (ports, sound)
}

fn port(row: &Table<'_>) -> Option<Port> {
    // Every key is asked for before any is missed, so that all mistakes of a port come out together.
    let mark = row.needed_text("mark");
    let role = row.needed("role").and_then(|item| item.word(Role::WORDS));
    let sex = row.needed("sex").and_then(|item| item.word(Sex::WORDS));
    let internal = row.needed("internal").and_then(|item| item.word(Internal::WORDS));
    let thread = thread(row);
    let face = text(row, "face");
    let shipped_with = text(row, "shipped_with");
    let bore = row.item("bore").map(|item| item.exact());
    Some(Port {
        mark: mark?.value.to_owned(),
        role: Role::of(role?.value)?,
        thread: thread?,
        sex: Sex::of(sex?.value)?,
        face: face?,
        internal: Internal::of(internal?.value)?,
        shipped_with: shipped_with?,
        bore: match bore {
            Some(bore) => Some(bore?.value),
            None => None,
        },
    })
}

/// A text that may be left out.
fn text(row: &Table<'_>, key: &str) -> Option<String> {
    match row.item(key) {
        Some(item) => Some(item.text()?.value.to_owned()),
        None => Some(String::new()),
    }
}

fn thread(row: &Table<'_>) -> Option<String> {
    let item = row.needed("thread")?;
    let text = item.text()?;
    match Thread::read(text.value) {
        Ok(thread) => Some(thread.to_string()),
        Err(no) => {
            item.wrong(message!("catalogue-unknown-thread", thread = text.value), no.cure());
            None
        }
    }
}
