//! The house range: an invented catalogue that comes with the workbench, dimensioned by open standards. Whoever sells real
//! parts puts his own files over it ([`catalogue_over`]).

use std::sync::LazyLock;

use oilway_text::Mistake;

use crate::{Catalogue, Part, catalogue_over};

macro_rules! files {
    ($($name:literal)+) => {
        /// The files of the house range: name and text.
        pub const FILES: &[(&str, &str)] = &[
            $( (concat!("parts/", $name, ".toml"), include_str!(concat!("../../../data/parts/", $name, ".toml"))) ),+
        ];
    };
}

files! {
    "pump" "reservoir" "port-block" "divider" "section" "metering-valve" "burst-disc" "disc-holder" "gauge" "tube" "hose"
    "fitting" "adapter" "plug" "check-valve" "shut-off-valve" "air-valve" "air-regulator" "air-filter" "silencer" "breather"
    "lubricant-filter" "filling-coupling" "level-switch" "pressure-switch" "cycle-switch" "controller"
}

/// The house range, read once. Its files are part of the program and free of mistakes, as the registry laws hold.
pub fn catalogue() -> &'static Catalogue {
    static HOUSE: LazyLock<Catalogue> = LazyLock::new(|| Catalogue::new(crate::catalogue_from(FILES).0));
    &HOUSE
}

/// The house range with a user's files over it, and the mistakes in those. A part of the user takes the place of the house
/// part with the same id.
pub fn with_files(files: &[(&str, &str)]) -> (Catalogue, Vec<Mistake>) {
    let (parts, mistakes) = catalogue_over(catalogue(), files);
    let house = catalogue().parts().map(|part| Part::clone(part));
    (Catalogue::new(house.chain(parts)), mistakes)
}
