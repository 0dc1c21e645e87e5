//! The catalogues of sentences, one for each area of the house, kept in `data/messages` and built in.

/// The English catalogues: name of the file and its text.
pub(crate) const ENGLISH: &[(&str, &str)] = &[
    ("units.ftl", include_str!("../../../data/messages/en/units.ftl")),
    ("physics.ftl", include_str!("../../../data/messages/en/physics.ftl")),
    ("catalogue.ftl", include_str!("../../../data/messages/en/catalogue.ftl")),
    ("model.ftl", include_str!("../../../data/messages/en/model.ftl")),
    ("solve.ftl", include_str!("../../../data/messages/en/solve.ftl")),
    ("check.ftl", include_str!("../../../data/messages/en/check.ftl")),
    ("documents.ftl", include_str!("../../../data/messages/en/documents.ftl")),
    ("store.ftl", include_str!("../../../data/messages/en/store.ftl")),
    ("oilway.ftl", include_str!("../../../data/messages/en/oilway.ftl")),
];

#[cfg(test)]
mod tests {
    use super::ENGLISH;
    use crate::name_of;
    use fluent_bundle::FluentResource;
    use oilway_units::Dimension;
    use std::collections::BTreeSet;
    use std::fs;
    use std::path::{Path, PathBuf};

    fn root() -> PathBuf {
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
    }

    /// The keys of all catalogues, with the file of each.
    fn keys() -> Vec<(String, &'static str)> {
        let of_file = |(file, text): &(&'static str, &'static str)| {
            let file = *file;
            let begins = |line: &&str| line.starts_with(|c: char| c.is_ascii_alphabetic());
            let key = |line: &str| line.split_once('=').map(|(key, _)| key.trim().to_owned());
            text.lines().filter(begins).filter_map(key).map(move |key| (key, file)).collect::<Vec<_>>()
        };
        ENGLISH.iter().flat_map(of_file).collect()
    }

    /// The texts of all source files of the crates.
    fn sources() -> Vec<(PathBuf, String)> {
        let crates = fs::read_dir(root().join("crates")).unwrap();
        files(crates.map(|entry| entry.unwrap().path().join("src")).collect(), &["rs"])
    }

    /// The texts of the files below these folders whose names end so.
    fn files(mut folders: Vec<PathBuf>, ends: &[&str]) -> Vec<(PathBuf, String)> {
        let mut found = Vec::new();
        while let Some(folder) = folders.pop() {
            for entry in fs::read_dir(&folder).unwrap() {
                let path = entry.unwrap().path();
                if path.is_dir() {
                    folders.push(path);
                } else if path.extension().is_some_and(|end| ends.iter().any(|wanted| end == *wanted)) {
                    let text = fs::read_to_string(&path).unwrap();
                    found.push((path, text));
                }
            }
        }
        found.sort();
        found
    }

    /// The key in quotes behind each of these openings. What has other signs in it is no key: this file is read too.
    fn quoted_behind<'a>(text: &'a str, opening: &str) -> Vec<&'a str> {
        let quoted = |(at, _): (usize, &str)| {
            let inside = text[at + opening.len()..].trim_start().strip_prefix('"')?;
            let is_key = |key: &&str| key.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
            inside.split_once('"').map(|(key, _)| key).filter(is_key)
        };
        text.match_indices(opening).filter_map(quoted).collect()
    }

    #[test]
    fn every_catalogue_reads_without_an_error() {
        for (file, text) in ENGLISH {
            let errors = FluentResource::try_new((*text).to_owned()).map_err(|(_, errors)| errors).err();
            assert_eq!(errors, None, "{file}");
        }
    }

    #[test]
    fn every_file_of_the_folder_is_listed() {
        let listed: BTreeSet<String> = ENGLISH.iter().map(|(file, _)| (*file).to_owned()).collect();
        let folder = fs::read_dir(root().join("data/messages/en")).unwrap();
        let there: BTreeSet<String> =
            folder.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        assert_eq!(listed, there);
    }

    #[test]
    fn no_key_stands_twice() {
        let mut seen = BTreeSet::new();
        let twice: Vec<_> = keys().into_iter().filter(|(key, _)| !seen.insert(key.clone())).collect();
        assert_eq!(twice, []);
    }

    #[test]
    fn every_key_used_in_the_code_has_a_sentence() {
        let known: BTreeSet<String> = keys().into_iter().map(|(key, _)| key).collect();
        let mut missing = BTreeSet::new();
        for (path, text) in sources() {
            let file = path.strip_prefix(root().join("crates")).unwrap_or(&path).display().to_string();
            let wanted = ["message!(", "Message::new("].map(|opening| quoted_behind(&text, opening)).concat();
            let lacking = wanted.into_iter().filter(|key| !known.contains(*key));
            missing.extend(lacking.map(|key| format!("{key} in {file}")));
        }
        for dimension in Dimension::ALL {
            assert!(known.contains(name_of(*dimension).key), "{dimension:?} has no name");
        }
        assert!(missing.is_empty(), "{missing:#?}");
    }

    /// Every run of letters, figures and hyphens: the keys that tables of data name are among them.
    fn words(text: &str) -> impl Iterator<Item = &str> {
        text.split(|c: char| !c.is_ascii_alphanumeric() && c != '-')
    }

    #[test]
    fn every_sentence_is_used_by_the_code_or_by_a_table() {
        let code: String = sources().into_iter().map(|(_, text)| text).collect();
        let tables = files(vec![root().join("data")], &["csv", "toml"]);
        let mut named: BTreeSet<&str> = tables.iter().flat_map(|(_, text)| words(text)).collect();
        named.extend(Dimension::ALL.iter().map(|dimension| name_of(*dimension).key));
        let used = |key: &str| code.contains(&format!("\"{key}\"")) || named.contains(key);
        let idle: Vec<_> = keys().into_iter().filter(|(key, _)| !used(key)).collect();
        assert!(idle.is_empty(), "{idle:#?}");
    }

    #[test]
    fn the_scan_for_keys_finds_what_it_should() {
        let code = "let m = message!(\n    \"check-a\", x = 1); other!(\"no\"); Message::new(\"b\")";
        assert_eq!(quoted_behind(code, "message!("), ["check-a"]);
        assert_eq!(quoted_behind(code, "Message::new("), ["b"]);
        assert_eq!(quoted_behind("message!(\"a key of words\")", "message!("), [""; 0]);
    }
}
