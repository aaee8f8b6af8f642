//! Predictions against published observations: none may change unseen. A miss fails nothing;
//! it stands in the table.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod case;
mod score;
mod suite;

use std::fmt::Write;
use std::path::{Path, PathBuf};

use lentic::catalogue::{ObservedComparison, comparisons};
use serde::Serialize;

/// How far a prediction may lie from the recorded one: another machine rounds otherwise.
const WITHIN: f64 = 0.02;

/// What stands before the score in the documentation.
const SCORE: &str = "Score: ";

#[derive(Serialize)]
struct Recorded<'a> {
    row: &'a [ObservedComparison],
}

fn in_repository(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

/// `UPDATE_OBSERVED=1` records what was found.
#[test]
fn predictions_are_those_recorded() {
    let found = suite::compared();
    println!("{}{}", score::table(&found), score::Score::of(&found));
    if std::env::var_os("UPDATE_OBSERVED").is_some() {
        let rows = toml::to_string(&Recorded { row: &found }).unwrap();
        let text = format!(
            "# What was observed and what was predicted, with 10 and 90 %, as\n# UPDATE_OBSERVED=1 cargo test --test validation records it. In the order low, value, high.\n\n{rows}"
        );
        std::fs::write(in_repository("src/catalogue/data/observed.toml"), text).unwrap();
        return;
    }
    let near = |found: f64, recorded: f64| (found - recorded).abs() <= WITHIN * recorded.abs();
    let mut changed = String::new();
    for (now, then) in found.iter().zip(comparisons()) {
        let same = now.predicted.iter().zip(then.predicted);
        let is_same = same.into_iter().all(|(now, then)| near(*now, then));
        let now_with_old = ObservedComparison {
            predicted: then.predicted,
            ..now.clone()
        };
        if !is_same || now_with_old != *then {
            let _ = writeln!(changed, "found {now:?}\nrecorded {then:?}");
        }
    }
    assert!(
        changed.is_empty() && found.len() == comparisons().len(),
        "{changed}UPDATE_OBSERVED=1 records what was found"
    );
}

/// `UPDATE_OBSERVED=1`, once recorded, writes score and table.
#[test]
fn the_documentation_has_score_and_table() {
    let path = in_repository("DEVELOPERS.md");
    let text = std::fs::read_to_string(&path).unwrap();
    let told = format!(
        "{SCORE}{}.\n\n{}",
        score::Score::of(comparisons()),
        score::table(comparisons())
    );
    let start = text.find(SCORE).expect("the score");
    let table = start + text[start..].find("\n\n").expect("a table") + 2;
    let end = table + text[table..].find("\n\n").expect("its end") + 1;
    if std::env::var_os("UPDATE_OBSERVED").is_some() {
        std::fs::write(&path, format!("{}{told}{}", &text[..start], &text[end..])).unwrap();
    } else {
        assert_eq!(&text[start..end], told);
    }
}

#[test]
fn the_readme_tells_the_score() {
    let score = score::Score::of(comparisons());
    let told = format!(
        "{} of {} measurements that no number was set with",
        score.inside, score.points
    );
    let readme = std::fs::read_to_string(in_repository("README.md")).unwrap();
    assert!(readme.contains(&told), "{told}");
}

/// 7 of 21, 95 %: 0.146 to 0.570 (the exact interval of Clopper and Pearson, from memory).
#[test]
fn the_interval_of_a_share_is_the_exact_one() {
    let (low, high) = score::Score::interval(7, 21);
    assert!(
        (low - 0.146).abs() < 0.003 && (high - 0.570).abs() < 0.003,
        "{low} {high}"
    );
    assert_eq!(score::Score::interval(0, 0), (0.0, 1.0));
}

#[test]
fn every_case_says_where_each_of_its_inputs_comes_from() {
    for case in suite::cases() {
        let silent = case.silent_keys();
        assert!(silent.is_empty(), "{}: {silent:?}", case.name);
        assert!(!case.observations.is_empty(), "{}", case.name);
    }
}

/// Twelve set-ups at the least that no number was set with.
#[test]
fn enough_cases_count() {
    let mut counted: Vec<&str> = comparisons()
        .iter()
        .filter(|one| !one.in_view)
        .map(|one| one.case.as_str())
        .collect();
    counted.dedup();
    assert!(counted.len() >= 12, "{counted:?}");
}
