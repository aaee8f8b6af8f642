//! The paths that scripts rely on, as they are typed in.

use lentic::report::dictionary::ResultCommand;

/// What ends the path of a value of a band.
pub(crate) const ENDS: [&str; 3] = [".low", ".typical", ".high"];

/// The paths of a command's JSON, each with what stands there.
pub(crate) fn paths(command: ResultCommand) -> Vec<(String, &'static str)> {
    let lines = include_str!("paths.txt").lines();
    let rows = lines.filter(|line| !line.is_empty() && !line.starts_with('#'));
    rows.flat_map(|row| {
        let mut words = row.split(' ');
        let (path, kind) = words.next().zip(words.next()).expect("path and kind");
        if words.any(|word| word == command.word()) {
            of_one(own(command, path), kind)
        } else {
            Vec::new()
        }
    })
    .collect()
}

/// A path of the list as the command has it.
fn own(command: ResultCommand, path: &str) -> &str {
    let rest = path.strip_prefix(command.word());
    rest.and_then(|rest| rest.strip_prefix('.')).unwrap_or(path)
}

/// A band stands for its three numbers.
fn of_one(path: &str, kind: &'static str) -> Vec<(String, &'static str)> {
    if kind == "band" {
        ENDS.map(|end| (format!("{path}{end}"), "number")).to_vec()
    } else {
        vec![(path.to_owned(), kind)]
    }
}
