//! Every source key that is cited exists, and every source is cited.

use std::collections::BTreeSet;

use crate::tree;

/// Every word of the tree that could be a source key, outside the list of sources.
fn words() -> BTreeSet<String> {
    tree::files("src", "rs")
        .into_iter()
        .chain(tree::files("src", "toml"))
        .filter(|path| !path.ends_with("source/sources.toml"))
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
    for source in lentic::source::all() {
        assert!(
            words.contains(&source.key),
            "{} is cited nowhere",
            source.key
        );
    }
}

#[test]
fn every_cited_key_resolves() {
    for key in cited_in_code().into_iter().chain(cited_in_tables()) {
        assert!(lentic::source::find(&key).is_some(), "{key} is no source");
    }
}

/// Keys in `Some("author_year")` of findings, cautions and ranges: `source: Some("...")`.
fn cited_in_code() -> Vec<String> {
    tree::files("src", "rs")
        .iter()
        .flat_map(|path| {
            let text = tree::text(path);
            text.split("source: Some(\"")
                .skip(1)
                .filter_map(|rest| rest.split('"').next().map(str::to_owned))
                .collect::<Vec<_>>()
        })
        .collect()
}

fn cited_in_tables() -> Vec<String> {
    tree::files("src/catalogue/data", "toml")
        .iter()
        .flat_map(|path| {
            let table: toml::Table = tree::text(path).parse().expect("a table");
            let mut keys = Vec::new();
            gather(&toml::Value::Table(table), &mut keys);
            keys
        })
        .collect()
}

fn gather(value: &toml::Value, keys: &mut Vec<String>) {
    match value {
        toml::Value::Table(table) => {
            for (key, value) in table {
                match (key.as_str(), value) {
                    ("source", toml::Value::String(one)) => keys.push(one.clone()),
                    ("source", toml::Value::Array(several)) => {
                        keys.extend(
                            several
                                .iter()
                                .filter_map(|one| one.as_str().map(str::to_owned)),
                        );
                    }
                    _ => gather(value, keys),
                }
            }
        }
        toml::Value::Array(items) => items.iter().for_each(|item| gather(item, keys)),
        _ => {}
    }
}
