//! Modules use only what stands below them in the layer table of DEVELOPERS.md.

use std::collections::BTreeMap;

use crate::tree;

/// Layer numbers by module.
type Table = BTreeMap<String, usize>;

/// Reads the rows `| 5 | substrate, plants, water | ... |` under the heading "Layers".
fn table() -> Table {
    let text = tree::text(&tree::root().join("DEVELOPERS.md"));
    let section = text.split("## Layers").nth(1).expect("a section on layers");
    let mut layer = BTreeMap::new();
    for line in section.lines().take_while(|line| !line.starts_with("## ")) {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let [_, number, modules, ..] = cells.as_slice() else {
            continue;
        };
        let Ok(number) = number.parse() else { continue };
        for module in modules.split(',').map(|name| name.trim().trim_matches('`')) {
            layer.insert(module.to_owned(), number);
        }
    }
    layer
}

/// The modules that a file names after `crate::`.
fn used_modules(text: &str) -> Vec<String> {
    text.lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(|line| line.split("crate::").skip(1))
        .flat_map(|rest| match rest.strip_prefix('{') {
            Some(list) => list
                .split(',')
                .map(|item| item.trim().to_owned())
                .collect::<Vec<_>>(),
            None => vec![rest.to_owned()],
        })
        .map(|path| {
            path.chars()
                .take_while(|c| c.is_alphanumeric() || *c == '_')
                .collect()
        })
        .collect()
}

#[test]
fn the_table_names_every_module() {
    let table = table();
    let library = tree::text(&tree::root().join("src/lib.rs"));
    let declared: Vec<&str> = library
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'))
        .collect();
    for module in &declared {
        assert!(table.contains_key(*module), "{module} is in no layer");
    }
    for module in table.keys().filter(|name| *name != "main") {
        assert!(
            declared.contains(&module.as_str()),
            "{module} is not in lib.rs"
        );
    }
}

/// The modules of each row of the table in the text of the library.
fn rows_of_the_library() -> Vec<Vec<String>> {
    let library = tree::text(&tree::root().join("src/lib.rs"));
    let section = library.split("# Layers").nth(1).expect("a section");
    let rows = section
        .lines()
        .take_while(|line| line.starts_with("//!") || line.is_empty());
    rows.filter_map(|line| {
        let modules = line.strip_prefix("//! | [")?.split(" | ").next()?;
        let plain = |name: &str| name.trim_matches(['`', '[', ']', ' ']).to_owned();
        Some(modules.split(',').map(plain).collect())
    })
    .collect()
}

#[test]
fn the_library_shows_the_same_layers() {
    let mut layers: BTreeMap<usize, Vec<String>> = BTreeMap::new();
    for (module, layer) in table() {
        if module != "cli" && module != "main" {
            layers.entry(layer).or_default().push(module);
        }
    }
    let mut rows = rows_of_the_library();
    for row in &mut rows {
        row.sort();
    }
    assert_eq!(rows, layers.into_values().collect::<Vec<_>>());
}

#[test]
fn modules_use_only_lower_layers() {
    let table = table();
    for path in tree::files("src", "rs") {
        let short = tree::short(&path);
        let module = short
            .trim_start_matches("src/")
            .split(['/', '.'])
            .next()
            .unwrap_or_default()
            .to_owned();
        let Some(own) = table.get(&module) else {
            assert!(module == "lib", "{short} is in no layer");
            continue;
        };
        for used in used_modules(&tree::text(&path)) {
            let Some(other) = table.get(&used) else {
                continue;
            };
            let allowed = used == module || other < own;
            assert!(allowed, "{short} (layer {own}) uses {used} (layer {other})");
        }
    }
}

#[test]
fn only_the_outer_layers_know_formats_files_and_terminals() {
    let rules: [(&str, &[&str]); 5] = [
        ("toml::", &["source", "catalogue", "spec"]),
        ("serde_json", &["spec", "report", "cli"]),
        ("std::fs", &["cli"]),
        ("std::env", &["cli", "main"]),
        ("std::io", &["cli"]),
    ];
    for path in tree::files("src", "rs") {
        let short = tree::short(&path);
        let module = short
            .trim_start_matches("src/")
            .split(['/', '.'])
            .next()
            .unwrap_or_default();
        if short.contains("/tests/") {
            continue;
        }
        let text = tree::text(&path);
        let code = text
            .lines()
            .filter(|line| !line.trim_start().starts_with("//"));
        for line in code {
            for (word, homes) in rules {
                assert!(
                    !line.contains(word) || homes.contains(&module),
                    "{short} names {word}: {line}"
                );
            }
        }
    }
}
