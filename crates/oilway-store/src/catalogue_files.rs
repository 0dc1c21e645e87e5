//! A folder of catalogue files over the house range.

use std::path::Path;

use oilway_catalogue::{Catalogue, house};
use oilway_text::Mistake;

use crate::files::{FileProblem, files_in, load_text};

/// A catalogue read from a folder, with the text of each file so that its mistakes can be shown in place.
#[derive(Clone, Debug, Default)]
pub struct CatalogueFolder {
    /// The house range with the parts of the folder over it: a part of the folder takes the place of a house part of the same id.
    pub catalogue: Catalogue,
    /// What is wrong in the files; parts with a mistake are left out.
    pub mistakes: Vec<Mistake>,
    /// Name and text of each file, in the order of the names.
    pub texts: Vec<(String, String)>,
    /// Files that could not be read at all.
    pub problems: Vec<FileProblem>,
}

/// Reads every `.toml` file of a folder, in the order of their names, over the house range.
///
/// # Errors
/// [`FileProblem`] if the folder itself cannot be read.
pub fn read_catalogue(folder: &Path) -> Result<CatalogueFolder, FileProblem> {
    let mut read = CatalogueFolder::default();
    for path in files_in(folder, "toml")? {
        match load_text(&path) {
            Ok(text) => read.texts.push((path.display().to_string(), text)),
            Err(problem) => read.problems.push(problem),
        }
    }
    let files: Vec<(&str, &str)> =
        read.texts.iter().map(|(name, text)| (name.as_str(), text.as_str())).collect();
    (read.catalogue, read.mistakes) = house::with_files(&files);
    Ok(read)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::fs;

    const GAUGE: &str = r#"
        kind = "gauge"
        source = "from its dial"
        [[part]]
        id = "mine-7"
        description = "Gauge to 100 bar."
        full_scale = "100 bar"
        port = [ { mark = "stem", role = "joint", thread = "G 1/4", sex = "male", internal = "pressure" } ]
    "#;

    #[test]
    fn a_folder_lies_over_the_house_range_and_one_bad_file_does_not_hide_the_others() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("a.toml"), GAUGE).unwrap();
        fs::write(
            folder.path().join("b.toml"),
            GAUGE.replace("\"mine-7\"", "\"mine-8\"").replace("100 bar\"", "100\""),
        )
        .unwrap();
        fs::write(folder.path().join("c.toml"), b"\xff").unwrap();
        fs::write(folder.path().join("notes.txt"), "no catalogue").unwrap();
        let read = read_catalogue(folder.path()).unwrap();
        assert!(read.catalogue.part("mine-7").is_some() && read.catalogue.part("mine-8").is_none());
        assert!(read.catalogue.parts().count() > house::catalogue().parts().count());
        assert_eq!((read.texts.len(), read.mistakes.len(), read.problems.len()), (2, 1, 1));
        assert!(read.mistakes[0].file.ends_with("b.toml"));
    }

    #[test]
    fn a_part_of_the_folder_takes_the_place_of_a_house_part_of_the_same_id() {
        let folder = tempfile::tempdir().unwrap();
        let id = house::catalogue().of_kind("gauge").next().unwrap().id.clone();
        fs::write(folder.path().join("a.toml"), GAUGE.replace("mine-7", &id)).unwrap();
        let read = read_catalogue(folder.path()).unwrap();
        assert_eq!(read.catalogue.part(&id).unwrap().source, "from its dial");
        assert!(read_catalogue(&folder.path().join("missing")).is_err());
    }
}
