//! `lentic check` and its log of readings.

use std::fmt::Write as _;

use serde_json::Value;

use crate::command::{Ran, lentic};

const TANK: &str = "demo-tanks/third-week-nitrite.toml";

/// Checks a tank with a log, few members.
fn check(log: &str, more: &[&str]) -> Ran {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("log.csv");
    std::fs::write(&path, log).unwrap();
    let mut arguments = vec![
        "check",
        TANK,
        "--readings",
        path.to_str().unwrap(),
        "--members",
        "8",
    ];
    arguments.extend(more);
    lentic(&arguments, "")
}

#[test]
fn a_log_joins_the_readings_of_the_spec() {
    let log = "date,NH3/NH4 (ppm),NO2,NO3,pH,temp (C)\n2027-02-06,<0.25,1,20,7.1,24\n";
    let ran = check(log, &["--format", "json"]);
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    let found: Value = serde_json::from_str(&ran.stdout).unwrap();
    // 2027-02-06 is 28 days after the start of 2027-01-09
    assert_eq!(found["day"], 28.0);
    assert_eq!(found["forecast"][0]["day"], 28.0);
    assert_eq!(found["forecast"].as_array().unwrap().len(), 29);
}

#[test]
fn bad_rows_are_named_by_line_and_the_rest_is_used() {
    let log =
        "day,ammonia,temp\n-3,1,24 C\n22,x,24 C\n23,0.5,75\n24,-1,\n25,0.25,24 C\n25,0.25,24 C\n";
    let ran = check(log, &[]);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    for told in [
        ":2: day -3 lies before",
        ":3: ammonia: ",
        ":4: temp: ",
        ":5: ammonia: ",
        ":7: the row repeats",
    ] {
        assert!(ran.stderr.contains(told), "{told}: {}", ran.stderr);
    }
}

#[test]
fn a_log_without_a_reading_is_bad_input() {
    for log in [
        "",
        "day,ammonia\n",
        "colour,taste\n1,2\n",
        "day,ammonia\nx,1\n",
    ] {
        let ran = check(log, &[]);
        assert_eq!(ran.code, 2, "{log:?}: {}", ran.stderr);
        assert!(ran.stderr.contains("help: "), "{log:?}: {}", ran.stderr);
        assert_eq!(ran.stdout, "");
    }
    let missing = lentic(&["check", TANK, "--readings", "no-such.csv"], "");
    assert_eq!(missing.code, 2);
}

#[test]
fn ten_thousand_rows_are_read_and_all_are_counted() {
    let mut log = "day,ammonia,nitrite,nitrate\n".to_owned();
    for row in 0..10_000_u32 {
        let day = f64::from(row) * 0.01;
        let _ = writeln!(log, "{day:.2},0.{:02},0.1,{}", row % 50, row % 40);
    }
    let read = lentic::spec::log::parse(&log, None);
    assert_eq!((read.measurements.len(), read.faults.len()), (30_000, 0));
    let ran = check(&log, &["--format", "json"]);
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    let found: Value = serde_json::from_str(&ran.stdout).unwrap();
    let says = |caution: &Value| caution["says"].as_str().unwrap().contains("30006 readings");
    assert!(found["cautions"].as_array().unwrap().iter().any(says));
}

#[test]
fn a_danger_counts_for_fail_on_and_a_sound_tank_does_not() {
    let danger = [
        "check",
        "demo-tanks/pits-every-morning.toml",
        "--members",
        "8",
        "--fail-on",
        "act",
    ];
    assert_eq!(lentic(&danger, "").code, 1);
    let sound = [
        "check",
        "demo-tanks/dense-and-quiet.toml",
        "--members",
        "8",
        "--fail-on",
        "watch",
    ];
    assert_eq!(lentic(&sound, "").code, 0);
}

#[test]
fn central_numbers_alone_are_weighed_too() {
    let ran = lentic(&["check", TANK, "--members", "0", "--format", "json"], "");
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let found: Value = serde_json::from_str(&ran.stdout).unwrap();
    let sum: f64 = found["causes"]
        .as_array()
        .unwrap()
        .iter()
        .map(|cause| cause["probability"].as_f64().unwrap())
        .sum();
    assert!((sum - 1.0).abs() < 1e-6, "{sum}");
}

#[test]
fn no_remedy_asks_for_more_water_than_a_keeper_would_change() {
    let tank = "demo-tanks/nine-stems.toml";
    let ran = lentic(&["check", tank, "--format", "json", "--members", "16"], "");
    let check: Value = serde_json::from_str(&ran.stdout).unwrap();
    let causes = check["causes"].as_array().unwrap();
    let remedies = causes
        .iter()
        .filter_map(|cause| cause["remedy"]["says"].as_str());
    let remedies: Vec<&str> = remedies.collect();
    assert!(remedies.len() > 1, "{remedies:?}");
    for says in remedies {
        assert!(!says.contains("80 % of the water"), "{says}");
        if says.contains("even so") {
            assert!(says.contains("50 % of the water every day"), "{says}");
        }
    }
}
