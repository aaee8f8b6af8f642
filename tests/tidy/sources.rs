//! Every source is cited. That every cited one exists, the compiler and the tables see to.

use std::collections::BTreeSet;

use lentic::source::Source;

use crate::tree;

/// Every word of the tree that could cite a source, outside the list of sources.
fn words() -> BTreeSet<String> {
    tree::files("src", "rs")
        .into_iter()
        .chain(tree::files("src", "toml"))
        .filter(|path| {
            !path
                .parent()
                .is_some_and(|folder| folder.ends_with("src/source"))
        })
        .flat_map(|path| {
            tree::text(&path)
                .split(|c: char| !(c.is_ascii_alphanumeric() || c == '_'))
                .map(str::to_owned)
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn every_source_is_cited() {
    let words = words();
    for source in Source::ALL {
        let is_cited = words.contains(source.key()) || words.contains(&format!("{source:?}"));
        assert!(is_cited, "{source} is cited nowhere");
    }
}
