//! The catalogue on the command line.

use serde_json::Value;

use crate::command::lentic;

const LISTS: [&str; 11] = [
    "soils", "caps", "stones", "plants", "animals", "devices", "sizes", "signs", "sources",
    "rules", "results",
];

#[test]
fn every_list_prints_in_every_format() {
    for what in LISTS {
        let text = lentic(&["list", what], "");
        assert_eq!(text.code, 0, "{what}: {}", text.stderr);
        for line in text.stdout.lines() {
            assert!(line.chars().count() <= 80, "{what}: {line}");
        }
        let json = lentic(&["list", what, "--format", "json"], "");
        let value: Value = serde_json::from_str(&json.stdout).unwrap();
        assert_eq!(value["schema"], "lentic/list/1");
        let rows = value["rows"].as_array().unwrap();
        assert!(!rows.is_empty(), "{what}");
        let csv = lentic(&["list", what, "--format", "csv"], "");
        let mut reader = csv::Reader::from_reader(csv.stdout.as_bytes());
        assert_eq!(reader.records().count(), rows.len(), "{what}");
    }
}

#[test]
fn rows_say_what_they_rest_on() {
    for what in &LISTS[..8] {
        let json = lentic(&["list", what, "--format", "json"], "");
        let value: Value = serde_json::from_str(&json.stdout).unwrap();
        for row in value["rows"].as_array().unwrap() {
            let basis = row["basis"].as_str().unwrap();
            let sources = row["source"].as_array().unwrap();
            assert!(basis != "published" || !sources.is_empty(), "{what}: {row}");
        }
    }
}
