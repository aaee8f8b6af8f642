//! Every key of the spec slipped in every way it can be, each fault drawn.

use lentic::spec::{self, Fault, KEYS, Key, KeyKind};

use crate::base::{self, File};

/// A way to get a key wrong.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Slip {
    Missing,
    WrongType,
    WrongUnit,
    TooLow,
    TooHigh,
    Misspelt,
    Twice,
}

/// The lines that stand where a key's line stood; none where the key cannot slip so.
pub(crate) fn slipped(slip: Slip, key: &Key, line: &str) -> Option<Vec<String>> {
    let with = |value: String| Some(vec![format!("{} = {value}", key.leaf())]);
    match slip {
        Slip::Missing => key.needed.then(Vec::new),
        Slip::WrongType => with(wrong_type(key.kind).to_owned()),
        Slip::WrongUnit => wrong_unit(key.kind).and_then(|value| with(value.to_owned())),
        Slip::TooLow => too_low(key).and_then(with),
        Slip::TooHigh => too_high(key).and_then(with),
        Slip::Misspelt => line
            .split_once(" = ")
            .map(|(name, value)| vec![format!("{name}x = {value}")]),
        Slip::Twice => Some(vec![line.to_owned(), line.to_owned()]),
    }
}

fn wrong_type(kind: KeyKind) -> &'static str {
    match kind {
        KeyKind::Date => "\"yesterday\"",
        KeyKind::Flag => "1",
        KeyKind::Number | KeyKind::Count | KeyKind::Names(_) | KeyKind::Numbers => "\"7\"",
        _ => "7",
    }
}

fn wrong_unit(kind: KeyKind) -> Option<&'static str> {
    match kind {
        KeyKind::Quantity(_)
        | KeyKind::Span(_)
        | KeyKind::Depth
        | KeyKind::BagSize
        | KeyKind::Amount
        | KeyKind::WordOrShare(_) => Some("\"7 parsec\""),
        KeyKind::Dose => Some("\"7 parsec per 40 L\""),
        KeyKind::Size => Some("\"7 x 7 x 7 parsec\""),
        _ => None,
    }
}

/// One less than the least value, or the least value itself where it is refused.
fn too_low(key: &Key) -> Option<String> {
    let step = if key.limits.open { 0.0 } else { -1.0 };
    match (key.kind, key.limits.low) {
        (KeyKind::Amount, _) => Some("\"0 %\"".to_owned()),
        (KeyKind::BagSize, _) => Some("\"0 L\"".to_owned()),
        (KeyKind::Dose, _) => Some("\"0 mL per 40 L\"".to_owned()),
        (KeyKind::Size, _) => Some("\"60 x 0 x 36 cm\"".to_owned()),
        (_, Some(low)) => Some(moved(key, low, step)),
        (KeyKind::Quantity(_) | KeyKind::Span(_) | KeyKind::Depth, None) => {
            key.limits.high.map(|high| {
                let (_, unit) = high.split_once(' ').expect("a unit");
                format!("\"-1 {unit}\"")
            })
        }
        (KeyKind::Count, None) => Some("-1".to_owned()),
        _ => None,
    }
}

/// One more than the greatest value.
fn too_high(key: &Key) -> Option<String> {
    match key.kind {
        KeyKind::Amount => Some("\"101 %\"".to_owned()),
        KeyKind::BagSize => Some("\"1001 L\"".to_owned()),
        KeyKind::Dose => Some("\"5 L per 40 L\"".to_owned()),
        KeyKind::Size => Some("\"60 x 30 x 3600 m\"".to_owned()),
        _ => key.limits.high.map(|high| moved(key, high, 1.0)),
    }
}

/// A limit moved by a step, as TOML.
fn moved(key: &Key, limit: &str, step: f64) -> String {
    let (number, unit) = limit.split_once(' ').unwrap_or((limit, ""));
    let number: f64 = number.parse().expect("a number");
    if key.kind.is_quoted() {
        format!("\"{} {unit}\"", number + step)
    } else if key.kind == KeyKind::Numbers {
        format!("[{}]", number + step)
    } else {
        format!("{}", number + step)
    }
}

/// What a slip of a key brings up: its file, the slipped text, the faults.
fn brought_up(slip: Slip, key: &Key, files: &[File]) -> Option<(String, Vec<Fault>)> {
    let (file, index) = base::with_key(files, key).expect("a good spec");
    let line = file.text.lines().nth(index).expect("a line");
    if line.starts_with('[') {
        return None;
    }
    let text = base::replaced(&file.text, index, &slipped(slip, key, line)?);
    let faults = base::faults(&text);
    Some((text, faults.0))
}

/// Slips every key in one way, claims something of what that brings up, and draws it.
fn slip_all(slip: Slip, claim: impl Fn(&Key, &[Fault]) -> bool) {
    let files = base::files("good");
    let mut drawn = Vec::new();
    let mut slips = 0;
    for key in KEYS {
        let Some((text, faults)) = brought_up(slip, key, &files) else {
            continue;
        };
        slips += 1;
        let picture = spec::draw(&spec::Faults(faults.clone()), &text, "tank.toml", false);
        assert!(claim(key, &faults), "{slip:?} {}: {picture}", key.path);
        drawn.push(format!("## {}\n{picture}\n", key.path));
    }
    assert!(slips > 0);
    insta::assert_snapshot!(format!("{slip:?}").to_lowercase(), drawn.concat());
}

fn at_key(key: &Key, faults: &[Fault], holds: impl Fn(&Fault) -> bool) -> bool {
    faults.iter().any(|fault| {
        base::table_path(&fault.key).trim_end_matches("[]") == key.path && holds(fault)
    })
}

#[test]
fn a_needed_key_left_out_is_missed() {
    slip_all(Slip::Missing, |key, faults| {
        at_key(key, faults, |fault| {
            fault.found == "missing" && fault.help.contains(key.leaf())
        })
    });
}

#[test]
fn a_value_of_another_type_is_refused_with_an_example() {
    slip_all(Slip::WrongType, |key, faults| {
        at_key(key, faults, |fault| fault.help.contains(&key.written()))
    });
}

#[test]
fn a_unit_of_something_else_is_refused_by_name() {
    slip_all(Slip::WrongUnit, |key, faults| {
        at_key(key, faults, |fault| fault.found.contains("parsec"))
    });
}

#[test]
fn a_value_below_the_limit_is_refused_with_the_limit() {
    slip_all(Slip::TooLow, |key, faults| {
        at_key(key, faults, |fault| {
            let limit = fault.rule.contains(&key.limits.words());
            limit || fault.found.contains("below zero") || fault.rule.contains("from 0")
        })
    });
}

#[test]
fn a_value_above_the_limit_is_refused_with_the_limit() {
    slip_all(Slip::TooHigh, |key, faults| {
        at_key(key, faults, |fault| {
            fault.rule.contains(&key.limits.words()) || fault.rule.contains("at most 100 %")
        })
    });
}

#[test]
fn a_misspelt_key_gets_a_suggestion() {
    slip_all(Slip::Misspelt, |key, faults| {
        faults.iter().any(|fault| {
            let misspelt = base::table_path(&fault.key) == format!("{}x", key.path);
            misspelt && fault.help.starts_with("did you mean ")
        })
    });
}

#[test]
fn a_key_given_twice_shows_both_places() {
    slip_all(Slip::Twice, |key, faults| {
        at_key(key, faults, |fault| {
            fault.found == "given twice" && fault.related.is_some()
        })
    });
}

#[test]
fn a_value_where_a_section_belongs_is_refused() {
    let minimal = base::good("minimal.toml");
    let mut drawn = Vec::new();
    for key in KEYS
        .iter()
        .filter(|key| matches!(key.kind, KeyKind::Section | KeyKind::Sections))
    {
        if !key.section().is_empty() {
            continue;
        }
        let heading = format!("[{}]", key.path);
        let text = match minimal.split_once(&heading) {
            None => format!("{} = 7\n{minimal}", key.path),
            Some((before, after)) => {
                let rest = after.find("\n[").map_or("", |next| &after[next..]);
                format!("{} = 7\n{before}{rest}", key.path)
            }
        };
        let faults = base::faults(&text);
        assert!(
            at_key(key, &faults.0, |fault| fault.found == "found 7"),
            "{}: {faults}",
            key.path
        );
        let picture = spec::draw(&faults, &text, "tank.toml", false);
        drawn.push(format!("## {}\n{picture}\n", key.path));
    }
    insta::assert_snapshot!("no_section", drawn.concat());
}
