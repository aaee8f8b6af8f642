//! Every range that a formula states is looked at for every design.

use crate::tree;

/// Where the ranges are held against a design.
const LIST: &str = "src/plan/range.rs";

/// The names of the ranges that a file states, as the list names them.
fn stated(path: &std::path::Path, text: &str) -> Vec<String> {
    let module = path
        .file_stem()
        .and_then(|stem| stem.to_str())
        .unwrap_or_default();
    let code = text
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"));
    let constants = code.filter_map(|line| {
        let (_, declared) = line.split_once("const ")?;
        let name = declared.split_once(": Validity =")?.0;
        Some(if path.ends_with(LIST) {
            format!(", {name},")
        } else {
            format!("{module}::{name},")
        })
    });
    constants.collect()
}

/// How often code outside comments and tests makes a range.
fn made(text: &str) -> usize {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    let lines = code
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"));
    lines
        .map(|line| line.matches("Validity::new(").count())
        .sum()
}

#[test]
fn every_range_stands_in_the_list_and_is_checked() {
    let list = tree::text(&tree::root().join(LIST));
    let mut ranges = 0;
    for path in tree::files("src", "rs") {
        let text = tree::text(&path);
        let stated = stated(&path, &text);
        assert_eq!(
            made(&text),
            stated.len(),
            "{}: a range without a name",
            tree::short(&path)
        );
        for name in &stated {
            assert!(
                list.contains(name),
                "{}: {name} is never checked",
                tree::short(&path)
            );
        }
        ranges += stated.len();
    }
    assert_eq!(ranges, lentic::plan::range::RANGES.len());
}
