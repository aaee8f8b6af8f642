//! The good specs, and their lines found by key.

use std::collections::BTreeSet;
use std::fs;
use std::path::PathBuf;

use lentic::spec::{self, Faults, Key};

/// A spec file of this folder with its text.
pub(crate) struct File {
    pub(crate) name: String,
    pub(crate) text: String,
}

/// Every file of a folder beside this one, in order of name.
pub(crate) fn files(folder: &str) -> Vec<File> {
    let path = PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/specs")
        .join(folder);
    let mut files: Vec<File> = fs::read_dir(&path)
        .expect("a folder")
        .map(|entry| {
            let path = entry.expect("an entry").path();
            File {
                name: path
                    .file_name()
                    .expect("a name")
                    .to_string_lossy()
                    .into_owned(),
                text: fs::read_to_string(&path).expect("text"),
            }
        })
        .collect();
    files.sort_by(|a, b| a.name.cmp(&b.name));
    files
}

/// The text of one good spec.
pub(crate) fn good(name: &str) -> String {
    let mut files = files("good");
    files.retain(|file| file.name == name);
    files.pop().expect("a good spec").text
}

/// The path of what stands on each line: a key's, or a section's for its heading.
pub(crate) fn paths(text: &str) -> Vec<String> {
    let mut lists = BTreeSet::new();
    let mut section = String::new();
    let mut paths = Vec::new();
    for line in text.lines() {
        let heading = line.trim_start_matches('[').trim_end_matches(']');
        if line.starts_with('[') {
            if line.starts_with("[[") {
                lists.insert(heading.to_owned());
            }
            section = pattern(heading, &lists);
            paths.push(section.trim_end_matches("[]").to_owned());
        } else if let Some((name, _)) = line.split_once(" = ") {
            let below = if section.is_empty() {
                String::new()
            } else {
                format!("{section}.")
            };
            paths.push(format!("{below}{name}"));
        } else {
            paths.push(String::new());
        }
    }
    paths
}

/// A heading with `[]` behind each part that is a list.
fn pattern(heading: &str, lists: &BTreeSet<String>) -> String {
    let parts: Vec<&str> = heading.split('.').collect();
    let marked = (1..=parts.len()).map(|end| {
        let is_list = lists.contains(&parts[..end].join("."));
        format!("{}{}", parts[end - 1], if is_list { "[]" } else { "" })
    });
    marked.collect::<Vec<_>>().join(".")
}

/// The path in the table of keys of a path in a file.
pub(crate) fn table_path(path: &str) -> String {
    let digits = |c: char| c.is_ascii_digit();
    path.split('[')
        .map(|part| part.trim_start_matches(digits))
        .collect::<Vec<_>>()
        .join("[")
}

/// A good spec that has the key, with the index of its line.
pub(crate) fn with_key<'f>(files: &'f [File], key: &Key) -> Option<(&'f File, usize)> {
    files.iter().find_map(|file| {
        let line = paths(&file.text).iter().position(|path| path == key.path)?;
        Some((file, line))
    })
}

/// A text with one line replaced by others.
pub(crate) fn replaced(text: &str, index: usize, by: &[String]) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    lines.splice(index..=index, by.iter().cloned());
    lines.join("\n") + "\n"
}

/// What is wrong with a text.
pub(crate) fn faults(text: &str) -> Faults {
    spec::parse(text).err().unwrap_or_default()
}
