//! What people read: messages kept as data, and the catalogues that turn them into sentences.
//!
//! Code makes a [`Message`], a key with typed arguments, by [`message!`]; whoever prints it calls [`say`] with the
//! [`Reader`]'s units and language. The sentences stand in `data/messages/en/*.ftl`, one file for each area, and each
//! key begins with the name of its area.

mod catalogues;
mod message;
mod mistake;
mod read_error;
mod reader;
mod say;

pub use message::{Arg, Message};
pub use mistake::Mistake;
pub use read_error::name_of;
pub use reader::{Language, Reader};
pub use say::say;
