//! No two parts of a folder of `src` lean on each other.

use std::collections::{BTreeMap, BTreeSet};
use std::path::PathBuf;

use crate::tree;

/// A path of names, below the crate.
type Path = Vec<String>;

/// Pairs that are one thing in two files: a quantity and how its text is read, the model and
/// its slopes, a case and its facts.
const ONE_THING: [[&str; 2]; 3] = [
    ["units::parse", "units::quantity"],
    ["startup::model", "startup::slopes"],
    ["diagnosis::case", "diagnosis::fact"],
];

/// The module of a file.
fn module(short: &str) -> Path {
    let inner = short.trim_start_matches("src/").trim_end_matches(".rs");
    let names = inner
        .split('/')
        .filter(|name| !["mod", "lib"].contains(name));
    names.map(str::to_owned).collect()
}

/// Every path that a list of uses names: `a::{b, c::d}` are two.
fn flattened(text: &str, before: &Path, found: &mut Vec<Path>) {
    let (mut depth, mut start) = (0, 0);
    for (at, c) in text.char_indices().chain([(text.len(), ',')]) {
        match c {
            '{' => depth += 1,
            '}' => depth -= 1,
            ',' if depth == 0 => {
                one(text[start..at].trim(), before, found);
                start = at + 1;
            }
            _ => {}
        }
    }
}

fn one(text: &str, before: &Path, found: &mut Vec<Path>) {
    let (head, list) = text.split_once('{').unwrap_or((text, ""));
    let head = head.split(" as ").next().unwrap_or_default();
    let names = head.split("::").map(str::trim);
    let names = names.filter(|name| !name.is_empty() && *name != "self");
    let path: Path = before
        .iter()
        .cloned()
        .chain(names.map(str::to_owned))
        .collect();
    match list.strip_suffix('}') {
        Some(list) => flattened(list, &path, found),
        None if !text.is_empty() => found.push(path),
        None => {}
    }
}

/// What a file outside its tests uses of this crate, from the root.
fn uses(text: &str, own: &Path) -> Vec<Path> {
    let code = text.split("#[cfg(test)]\nmod ").next().unwrap_or_default();
    let mut found = Vec::new();
    let statements = ["\nuse ", "pub use ", ") use "].map(|word| code.split(word).skip(1));
    for statement in statements.into_iter().flatten() {
        let list = statement.split(';').next().unwrap_or_default();
        flattened(list, &Vec::new(), &mut found);
    }
    let from_root = |path: Path| {
        let supers = path.iter().take_while(|name| *name == "super").count();
        let (above, rest) = match path.first().map(String::as_str) {
            Some("crate") => (0, 1),
            Some("super") => (own.len().checked_sub(supers)?, supers),
            _ => (own.len(), 0),
        };
        Some(own[..above].iter().chain(&path[rest..]).cloned().collect())
    };
    found.into_iter().filter_map(from_root).collect()
}

/// The modules of the library with what each uses.
fn modules() -> BTreeMap<Path, Vec<Path>> {
    let files = tree::files("src", "rs").into_iter();
    let of_file = |path: PathBuf| {
        let own = module(&tree::short(&path));
        let used = uses(&tree::text(&path), &own);
        (own, used)
    };
    files.map(of_file).collect()
}

/// The module that a path leads to, through what modules name again.
fn home(path: &Path, modules: &BTreeMap<Path, Vec<Path>>) -> Path {
    let (mut home, mut seen) = (path.clone(), BTreeSet::new());
    while !modules.contains_key(&home) && seen.insert(home.clone()) {
        let Some((name, above)) = home.split_last() else {
            break;
        };
        let again = modules.get(above).into_iter().flatten();
        let again = again.filter(|used| used.starts_with(above) && used.last() == Some(name));
        home = again
            .max_by_key(|used| used.len())
            .cloned()
            .unwrap_or_else(|| above.to_vec());
    }
    home
}

#[test]
fn no_parts_of_a_folder_lean_on_each_other() {
    let modules = modules();
    let mut leans: BTreeMap<(Path, String), BTreeSet<String>> = BTreeMap::new();
    for (own, used) in &modules {
        for other in used.iter().map(|path| home(path, &modules)) {
            let shared = own.iter().zip(&other).take_while(|(a, b)| a == b).count();
            if let (Some(part), Some(leant_on)) = (own.get(shared), other.get(shared)) {
                let folder = own[..shared].to_vec();
                leans
                    .entry((folder, part.clone()))
                    .or_default()
                    .insert(leant_on.clone());
            }
        }
    }
    assert!(leans.len() > 300, "{} parts lean on others", leans.len());
    let mut circles = BTreeSet::new();
    for (folder, part) in leans.keys() {
        let (mut reached, mut next) = (BTreeSet::new(), vec![part.clone()]);
        while let Some(at) = next.pop() {
            let onwards = leans
                .get(&(folder.clone(), at.clone()))
                .into_iter()
                .flatten();
            for on in onwards.filter(|on| !is_one_thing(folder, &at, on)) {
                if on == part {
                    circles.insert(format!("{}: {part} by way of {at}", folder.join("::")));
                } else if reached.insert(on.clone()) {
                    next.push(on.clone());
                }
            }
        }
    }
    assert!(
        circles.is_empty(),
        "parts that lean on themselves: {circles:#?}"
    );
}

/// Whether two parts are one thing in two files; the second then leans on the first freely.
fn is_one_thing(folder: &Path, first: &str, second: &str) -> bool {
    let named = |part: &str| [folder.as_slice(), &[part.to_owned()]].concat().join("::");
    ONE_THING.contains(&[named(first).as_str(), named(second).as_str()])
}
