//! Every source file says what it is about and leaves nothing for later.

use std::collections::HashMap;

use crate::tree;

#[test]
fn every_source_file_starts_with_a_module_doc() {
    for path in ["src", "tests", "examples", "benches"]
        .iter()
        .flat_map(|folder| tree::files(folder, "rs"))
    {
        assert!(
            tree::text(&path).starts_with("//! "),
            "{} does not start with a module doc",
            tree::short(&path)
        );
    }
}

#[test]
fn no_file_holds_a_mark_for_later() {
    let marks = [
        ["TO", "DO"],
        ["FIX", "ME"],
        ["unimplemen", "ted!"],
        ["XX", "X"],
    ]
    .map(|parts| parts.concat());
    for path in ["src", "tests", "examples", "benches"]
        .iter()
        .flat_map(|folder| tree::files(folder, "rs"))
    {
        let text = tree::text(&path);
        for mark in &marks {
            assert!(
                !text.contains(mark.as_str()),
                "{} holds {mark}",
                tree::short(&path)
            );
        }
    }
}

/// A path in JSON that scripts rely on, and no promise.
const NAMED: &str = "safe_share_pct";

#[test]
fn no_text_for_people_promises_safety_or_law() {
    for path in tree::files("src", "rs")
        .into_iter()
        .chain(tree::files("src", "toml"))
    {
        let text = tree::text(&path).to_lowercase().replace(NAMED, "");
        for word in text.split(|c: char| !c.is_alphanumeric()) {
            assert!(
                word != "safe" && word != "legal" && word != "safely" && word != "legally",
                "{} says \"{word}\"",
                tree::short(&path)
            );
        }
    }
}

#[test]
fn no_type_seen_beyond_its_file_shares_its_name_with_another() {
    let mut homes: HashMap<String, String> = HashMap::new();
    for path in tree::files("src", "rs") {
        let home = tree::short(&path);
        for line in tree::text(&path).lines() {
            let Some(seen) = line.trim_start().strip_prefix("pub") else {
                continue;
            };
            let mut words = seen
                .split_whitespace()
                .skip_while(|word| !["struct", "enum", "trait", "type"].contains(word));
            let name = words.nth(1).unwrap_or_default();
            let name = name.split(|c: char| !c.is_alphanumeric()).next();
            let Some(name) = name.filter(|name| !name.is_empty()) else {
                continue;
            };
            if let Some(other) = homes.insert(name.to_owned(), home.clone()) {
                panic!("{name} stands in {other} and in {home}");
            }
        }
    }
    assert!(homes.len() > 500, "{} types were found", homes.len());
}

/// Past this a file has a second subject.
const LONGEST: usize = 450;

#[test]
fn no_file_of_the_program_is_too_long_for_one_subject() {
    for path in tree::files("src", "rs") {
        let lines = tree::text(&path).lines().count();
        assert!(lines <= LONGEST, "{}: {lines} lines", tree::short(&path));
    }
}
