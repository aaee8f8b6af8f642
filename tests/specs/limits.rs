//! A spec is the spec of one tank: longer lists and deeper nests are refused by name.

use lentic::spec::{self, KEYS, Key, Kind};

use crate::base;

/// A minimal spec whose list at a key has so many sections, each as in its example.
fn with_list(key: &Key, count: usize) -> String {
    if let Kind::Names(_) = key.kind {
        let names = vec![format!("\"{}\"", key.example); count].join(", ");
        let section = format!("[{}]\n{} = [{names}]\n", key.section(), key.leaf());
        return base::good("minimal.toml") + &section;
    }
    let example = key.example.trim_start_matches('[').trim_end_matches(']');
    // A hundred of the example's stones or plants would fill the tank.
    let example = example
        .replace("2 kg", "10 g")
        .replace("30 %", "1 %")
        .replace("10 %", "0.1 %");
    let items = vec![example.as_str(); count].join(", ");
    let list = format!("{} = [{items}]\n", key.leaf());
    let minimal = base::good("minimal.toml");
    match key.section() {
        "" => list + &minimal,
        "events[]" => format!("{minimal}[[events]]\nday = 1\n{list}"),
        section => {
            let heading = format!("[{section}]\n");
            minimal.replace(&heading, &format!("{heading}{list}"))
        }
    }
}

#[test]
fn every_list_has_a_limit_that_is_kept() {
    let is_list = |key: &&Key| matches!(key.kind, Kind::Sections | Kind::Names(_));
    for key in KEYS.iter().filter(is_list) {
        let most = key.most.expect("a limit") as usize;
        let full = with_list(key, most);
        assert_eq!(base::faults(&full).0, [], "{}", key.path);
        let faults = base::faults(&with_list(key, most + 1)).0;
        assert_eq!(faults.len(), 1, "{}", key.path);
        assert_eq!(base::table_path(&faults[0].key), key.path);
        assert!(faults[0].rule.ends_with(&format!("at most {most}")));
    }
}

#[test]
fn the_limits_of_lists_are_those_documented() {
    for (path, most) in [
        ("plants", 100),
        ("animals", 100),
        ("hardscape", 100),
        ("events", 500),
        ("readings", 1000),
        ("soil.bags", 12),
        ("cap.bags", 12),
    ] {
        let key = KEYS.iter().find(|key| key.path == path).expect("a key");
        assert_eq!(key.most, Some(most), "{path}");
    }
}

#[test]
fn a_tank_with_every_list_full_is_planned() {
    let mut text = base::good("minimal.toml");
    for path in ["events", "plants", "animals", "readings", "hardscape"] {
        let key = KEYS.iter().find(|key| key.path == path).expect("a key");
        let item = key.example.trim_matches(['[', ']', '{', '}', ' ']);
        let section = format!("[[{path}]]\n{}\n", item.replace(", ", "\n"));
        // All the stones of the world do not fit into the tank.
        let count = if path == "hardscape" {
            1
        } else {
            key.most.expect("a limit")
        };
        text += &section.repeat(count as usize);
    }
    let text = text.replace("\"30 %\"", "\"1 %\"");
    let design = spec::parse(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let options = lentic::plan::Options {
        members: 0,
        ..Default::default()
    };
    assert!(lentic::plan::plan(&design, options).is_ok());
}

#[test]
fn a_deep_nest_is_refused_with_the_depth() {
    for text in [
        format!("a = {}", "[".repeat(100_000)),
        format!("a = {}", "{ b = ".repeat(10_000)),
        format!("{}b = 1", "a.".repeat(100_000)),
        format!("[{}b]", "a.".repeat(100_000)),
    ] {
        let faults = base::faults(&text).0;
        let deep = faults.iter().find(|fault| fault.rule.contains("80 deep"));
        assert!(deep.is_some(), "{:?}", faults.first());
    }
}
