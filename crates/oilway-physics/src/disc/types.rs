//! The kinds of discs: how near to bursting each may be worked, whether it opens on liquid, whether it throws pieces.

use std::sync::LazyLock;

use oilway_text::Message;
use oilway_units::Ratio;

use crate::Standing;

/// Whether a disc opens in a system that is full of liquid.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Liquid {
    /// It does.
    Yes,
    /// Only if the disc maker certifies it.
    IfCertified,
    /// It needs the energy of gas to open.
    No,
}

/// Whether pieces of the disc go down the line.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fragments {
    /// They do: mind the check valve and the indicator behind it.
    Yes,
    /// They may.
    Possible,
    /// They do not.
    No,
}

/// One type of burst disc with its defaults; the certificate of the disc in hand wins.
#[derive(Clone, Debug, PartialEq)]
pub struct DiscType {
    /// The lasting name, `forward-solid` for example.
    pub id: &'static str,
    /// The key of its name in the catalogues.
    name: &'static str,
    /// The largest working peak as a share of the lowest burst pressure.
    pub operating_ratio: Ratio,
    /// How far that ratio can be trusted.
    pub standing: Standing,
    /// Where it comes from: a key of `data/sources.toml`.
    pub source: &'static str,
    /// Whether it serves a line full of liquid.
    pub liquid: Liquid,
    /// Whether it throws pieces.
    pub fragments: Fragments,
}

impl DiscType {
    /// What the type is called.
    ///
    /// ```
    /// use oilway_physics::disc::types::disc_type;
    ///
    /// let plain = disc_type("forward-solid").unwrap();
    /// assert_eq!(plain.operating_ratio.fraction(), 0.7);
    /// assert_eq!(plain.name().key, "physics-disc-forward-solid");
    /// ```
    pub const fn name(&self) -> Message {
        Message::new(self.name)
    }
}

/// All types of discs, in the order of the table.
pub fn disc_types() -> &'static [DiscType] {
    static TYPES: LazyLock<Vec<DiscType>> = LazyLock::new(|| TABLE.lines().filter_map(read).collect());
    &TYPES
}

/// The type of this lasting name.
pub fn disc_type(id: &str) -> Option<&'static DiscType> {
    disc_types().iter().find(|kind| kind.id == id)
}

/// Built in, and guarded by the tests below: a row that did not read would be missed there.
const TABLE: &str = include_str!("../../../../data/relief/disc_types.csv");

/// One row, or nothing for a comment and the head of the table.
fn read(row: &'static str) -> Option<DiscType> {
    let cells: Vec<&'static str> = row.split(',').collect();
    let [id, name, ratio, liquid, fragments, source, mark, ..] = cells[..] else { return None };
    Some(DiscType {
        id,
        name,
        operating_ratio: Ratio::from_fraction(ratio.parse().ok()?),
        standing: standing(mark)?,
        source,
        liquid: match liquid {
            "yes" => Liquid::Yes,
            "if certified" => Liquid::IfCertified,
            "no" => Liquid::No,
            _ => return None,
        },
        fragments: match fragments {
            "yes" => Fragments::Yes,
            "possible" => Fragments::Possible,
            "no" => Fragments::No,
            _ => return None,
        },
    })
}

/// The standing that this word names.
pub(super) fn standing(word: &str) -> Option<Standing> {
    [Standing::Seen, Standing::SecondHand, Standing::Memory, Standing::CommonPractice, Standing::Own]
        .into_iter()
        .find(|standing| standing.word() == word)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_is_whole() {
        let sum: f64 = disc_types().iter().map(|t| t.operating_ratio.fraction()).sum();
        assert_eq!(disc_types().len(), 8);
        assert!((sum - 6.15).abs() < 1e-12, "{sum}");
    }

    #[test]
    fn ids_are_unique_and_names_follow_them() {
        for (i, kind) in disc_types().iter().enumerate() {
            assert!(disc_types()[..i].iter().all(|other| other.id != kind.id));
            assert_eq!(kind.name().key, format!("physics-disc-{}", kind.id));
        }
    }

    #[test]
    fn only_the_knife_disc_refuses_liquid() {
        let refusing: Vec<_> = disc_types().iter().filter(|t| t.liquid == Liquid::No).map(|t| t.id).collect();
        assert_eq!(refusing, ["reverse-cross-scored"]);
        assert!(disc_type("cork").is_none());
    }
}
