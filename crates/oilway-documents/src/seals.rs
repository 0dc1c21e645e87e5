//! How a joint of each family of threads is made tight, in words.
//!
//! From the scopes and handbook texts of the standards named: ISO 228-1 (seen as published scope: tight by two faces with a seal
//! between), ISO 7-1 and ASME B1.20.1 (on the thread, with sealant; B1.20.1 seen second-hand), ASME B1.20.3 (dry; seen
//! second-hand), ISO 6149, ISO 9974, ASME B1.1 with SAE J1926 (memory). The maker of the part has the last word.

use oilway_catalogue::{Thread, ThreadFamily};
use oilway_text::{Message, message};

/// The words for a thread as a catalogue writes it; none if nobody knows the thread.
pub fn seal(thread: &str) -> Option<Message> {
    let thread = Thread::read(thread).ok()?;
    Some(match thread.family() {
        ThreadFamily::G => message!("documents-seal-face"),
        ThreadFamily::R | ThreadFamily::Rc | ThreadFamily::Rp => message!("documents-seal-taper"),
        ThreadFamily::Npt => message!("documents-seal-npt"),
        ThreadFamily::Nptf => message!("documents-seal-dry"),
        ThreadFamily::Metric => message!("documents-seal-metric"),
        ThreadFamily::Unified => message!("documents-seal-unified"),
        ThreadFamily::Tube => message!("documents-seal-tube"),
        ThreadFamily::Hose => message!("documents-seal-hose"),
    })
}

/// Whether the joint is closed by a ring that is bought and replaced.
pub fn takes_a_ring(thread: &str) -> bool {
    let family = Thread::read(thread).map(|thread| thread.family());
    matches!(family, Ok(ThreadFamily::G | ThreadFamily::Metric | ThreadFamily::Unified))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(thread: &str) -> &'static str {
        seal(thread).map_or("", |message| message.key)
    }

    #[test]
    fn a_parallel_thread_seals_on_its_face_and_a_taper_on_itself() {
        assert_eq!(key("G 1/4"), "documents-seal-face");
        assert_eq!(key("R 1/4"), "documents-seal-taper");
        assert_eq!(key("1/4-18 NPT"), "documents-seal-npt");
        assert_eq!(key("1/4-18 NPTF"), "documents-seal-dry");
        assert_eq!(key("M10x1"), "documents-seal-metric");
        assert_eq!(key("tube 8"), "documents-seal-tube");
        assert_eq!(key("something"), "");
    }

    #[test]
    fn only_faces_take_rings() {
        assert!(takes_a_ring("G 1/4") && takes_a_ring("M10x1") && takes_a_ring("7/16-20 UNF"));
        assert!(
            !takes_a_ring("R 1/4")
                && !takes_a_ring("1/4-18 NPT")
                && !takes_a_ring("tube 6")
                && !takes_a_ring("")
        );
    }
}
