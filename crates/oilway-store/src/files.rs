//! Files on the disk: saved whole or not at all, and loaded up to a bound.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};

use oilway_text::{Message, message};

/// More than any job, catalogue or survey needs.
pub const MOST_BYTES: u64 = 20 * 1024 * 1024;

/// Why a file could not be saved or loaded.
#[derive(Clone, Debug, PartialEq)]
pub struct FileProblem {
    /// The file or folder.
    pub path: PathBuf,
    /// What went wrong, with the reason that the system names.
    pub what: Message,
    /// What to do about it.
    pub cure: Message,
}

/// Saves a file so that a crash, a full disk or a second writer leaves either the old file or the new one, never a part: the bytes
/// go to a neighbour, which takes the place of the file when it is safe on the disk.
///
/// # Errors
/// [`FileProblem`] with the reason that the system names; the old file is then untouched.
pub fn save(path: &Path, bytes: &[u8]) -> Result<(), FileProblem> {
    let problem = |error: io::Error| problem(path, &error, message!("store-cannot-save", file = shown(path)));
    let (temporary, file) = neighbour(path).map_err(problem)?;
    let written = fill(file, bytes).and_then(|()| fs::rename(&temporary, path));
    if let Err(error) = written {
        // What is left of the neighbour is of no use; that it may stay behind as well changes nothing for the user.
        let _ = fs::remove_file(&temporary);
        return Err(problem(error));
    }
    settle_folder(folder(path)).map_err(problem)
}

/// A new file beside the other, under a name that nobody has.
fn neighbour(path: &Path) -> io::Result<(PathBuf, File)> {
    let name = path.file_name().ok_or_else(|| io::Error::from(io::ErrorKind::InvalidFilename))?;
    for number in 0..1000 {
        let mut beside = name.to_owned();
        beside.push(format!(".{number}.tmp"));
        let temporary = path.with_file_name(beside);
        match OpenOptions::new().write(true).create_new(true).open(&temporary) {
            Ok(file) => return Ok((temporary, file)),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists => {}
            Err(error) => return Err(error),
        }
    }
    Err(io::Error::from(io::ErrorKind::AlreadyExists))
}

fn fill(mut file: File, bytes: &[u8]) -> io::Result<()> {
    file.write_all(bytes)?;
    file.sync_all()
}

fn folder(path: &Path) -> &Path {
    path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."))
}

/// Makes the new name of the file last through a loss of power.
#[cfg(unix)]
fn settle_folder(folder: &Path) -> io::Result<()> {
    File::open(folder)?.sync_all()
}

/// Elsewhere the system does not open folders; the rename is as lasting as it makes it.
#[cfg(not(unix))]
fn settle_folder(_folder: &Path) -> io::Result<()> {
    Ok(())
}

/// Loads a file whole.
///
/// # Errors
/// [`FileProblem`] if it is not there, cannot be read, or is larger than [`MOST_BYTES`].
pub fn load(path: &Path) -> Result<Vec<u8>, FileProblem> {
    let problem = |error: io::Error| problem(path, &error, message!("store-cannot-load", file = shown(path)));
    let mut bytes = Vec::new();
    // One byte more than allowed tells a large file from one that just fits, whatever its length claims to be.
    File::open(path).and_then(|file| file.take(MOST_BYTES + 1).read_to_end(&mut bytes)).map_err(problem)?;
    if bytes.len() as u64 > MOST_BYTES {
        return Err(FileProblem {
            path: path.to_owned(),
            what: message!("store-too-large", file = shown(path), most = MOST_BYTES / 1024 / 1024),
            cure: message!("store-too-large-cure"),
        });
    }
    Ok(bytes)
}

/// Loads a text file. A mark of byte order at its beginning is passed over.
///
/// # Errors
/// [`FileProblem`] as for [`load`], or if the file is no text in UTF-8.
pub fn load_text(path: &Path) -> Result<String, FileProblem> {
    let bytes = load(path)?;
    let text = String::from_utf8(bytes).map_err(|error| FileProblem {
        path: path.to_owned(),
        what: message!("store-no-text", file = shown(path), byte = error.utf8_error().valid_up_to()),
        cure: message!("store-no-text-cure"),
    })?;
    Ok(text.strip_prefix('\u{feff}').map(str::to_owned).unwrap_or(text))
}

/// The files of a folder whose names end so, in the order of their names.
///
/// # Errors
/// [`FileProblem`] if the folder cannot be read.
pub fn files_in(folder: &Path, ending: &str) -> Result<Vec<PathBuf>, FileProblem> {
    let problem =
        |error: io::Error| problem(folder, &error, message!("store-cannot-load", file = shown(folder)));
    let mut found = Vec::new();
    for entry in fs::read_dir(folder).map_err(problem)? {
        let path = entry.map_err(problem)?.path();
        if path.is_file() && path.extension().is_some_and(|extension| extension == ending) {
            found.push(path);
        }
    }
    found.sort();
    Ok(found)
}

fn shown(path: &Path) -> String {
    path.display().to_string()
}

fn problem(path: &Path, error: &io::Error, what: Message) -> FileProblem {
    let cure = match error.kind() {
        io::ErrorKind::NotFound => message!("store-cure-not-found"),
        io::ErrorKind::PermissionDenied | io::ErrorKind::ReadOnlyFilesystem => {
            message!("store-cure-not-allowed")
        }
        io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded => message!("store-cure-full"),
        io::ErrorKind::IsADirectory | io::ErrorKind::NotADirectory | io::ErrorKind::InvalidFilename => {
            message!("store-cure-path")
        }
        _ => message!("store-cure-other"),
    };
    FileProblem { path: path.to_owned(), what: what.with("reason", error.to_string()), cure }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_saved_file_is_loaded_as_it_was_and_leaves_no_neighbour() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("job.toml");
        save(&path, b"first").unwrap();
        save(&path, b"second").unwrap();
        assert_eq!(load_text(&path).unwrap(), "second");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
    }

    #[test]
    fn a_file_that_cannot_be_replaced_names_place_reason_and_cure_and_leaves_no_neighbour() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("taken");
        fs::create_dir(&path).unwrap();
        fs::write(path.join("inside"), b"x").unwrap();
        let problem = save(&path, b"new").unwrap_err();
        assert_eq!(problem.path, path);
        assert_eq!(problem.what.key, "store-cannot-save");
        assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
        let missing = folder.path().join("no folder").join("job.toml");
        assert_eq!(save(&missing, b"new").unwrap_err().cure.key, "store-cure-not-found");
    }

    #[test]
    fn what_a_crash_left_beside_a_file_does_not_hinder_the_next_save() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("job.toml");
        fs::write(folder.path().join("job.toml.0.tmp"), b"half").unwrap();
        save(&path, b"whole").unwrap();
        assert_eq!(load(&path).unwrap(), b"whole");
    }

    #[test]
    fn a_file_at_the_bound_is_loaded_and_one_byte_more_is_not() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("large");
        let file = File::create(&path).unwrap();
        file.set_len(MOST_BYTES).unwrap();
        assert_eq!(load(&path).unwrap().len() as u64, MOST_BYTES);
        file.set_len(MOST_BYTES + 1).unwrap();
        assert_eq!(load(&path).unwrap_err().what.key, "store-too-large");
    }

    #[test]
    fn text_in_another_encoding_is_refused_with_its_first_bad_byte() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("latin.toml");
        fs::write(&path, b"name = \"M\xfchle\"").unwrap();
        let problem = load_text(&path).unwrap_err();
        assert_eq!(problem.what.key, "store-no-text");
        fs::write(&path, "\u{feff}name").unwrap();
        assert_eq!(load_text(&path).unwrap(), "name");
    }
}
