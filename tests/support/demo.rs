//! The demo tanks.

use crate::command;

/// The demo tanks' paths from the root, in order.
pub(crate) fn tanks() -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(command::root().join("demo-tanks"))
        .expect("a folder")
        .map(|entry| {
            format!(
                "demo-tanks/{}",
                entry.expect("an entry").file_name().to_string_lossy()
            )
        })
        .collect();
    names.sort();
    names
}
