//! The files of the project.

use std::fs;
use std::path::{Path, PathBuf};

/// The project's root.
pub(crate) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}

/// A file's text.
pub(crate) fn text(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Whether this is the unpacked package, which leaves out what is a package of its own.
pub(crate) fn is_packed() -> bool {
    root().join("Cargo.toml.orig").exists()
}

/// Every file below a folder of the project with this extension, in order of path.
pub(crate) fn files(folder: &str, extension: &str) -> Vec<PathBuf> {
    below(&root().join(folder), extension)
}

/// Every file below any folder with this extension, in order of path.
pub(crate) fn below(folder: &Path, extension: &str) -> Vec<PathBuf> {
    let mut found = Vec::new();
    collect(folder, extension, &mut found);
    found.sort();
    found
}

fn collect(folder: &Path, extension: &str, found: &mut Vec<PathBuf>) {
    let entries =
        fs::read_dir(folder).unwrap_or_else(|error| panic!("{}: {error}", folder.display()));
    for entry in entries {
        let path = entry.unwrap().path();
        if path.is_dir() {
            collect(&path, extension, found);
        } else if path.extension().is_some_and(|found| found == extension) {
            found.push(path);
        }
    }
}

/// A path below the root, for messages.
pub(crate) fn short(path: &Path) -> String {
    path.strip_prefix(root())
        .unwrap_or(path)
        .display()
        .to_string()
}
