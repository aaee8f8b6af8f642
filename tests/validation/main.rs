//! Predictions against published observations: the score may not change unseen. A miss
//! fails nothing; it stands in the table.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod case;
mod score;
mod suite;

/// How far a logarithm may lie from the recorded one: another machine rounds otherwise.
const LOG10: f64 = 0.01;

#[test]
fn the_score_is_the_recorded_one() {
    let all = suite::compared();
    let found = score::Score::of(&all);
    println!("{}", score::table(&all));
    let path = suite::folder().join("score.toml");
    if std::env::var_os("UPDATE_SCORE").is_some() {
        std::fs::write(&path, found.recorded()).unwrap();
    }
    let recorded = score::Score::read(&std::fs::read_to_string(&path).unwrap());
    let near = |found: f64, recorded: f64| (found - recorded).abs() <= LOG10;
    let same = found.points == recorded.points
        && found.inside == recorded.inside
        && found.overlapping == recorded.overlapping
        && near(found.median_log10, recorded.median_log10)
        && near(found.rms_log10, recorded.rms_log10)
        && near(found.width_log10, recorded.width_log10);
    assert!(
        same,
        "found {found:?}, recorded {recorded:?}; UPDATE_SCORE=1 records it\n{}",
        score::table(&all)
    );
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
