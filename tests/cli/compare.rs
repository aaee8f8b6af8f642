//! Several tanks side by side.

use std::fs;

use serde_json::Value;

use crate::command::{lentic, root};
use crate::demo;

#[test]
fn a_bad_file_is_named_and_the_others_are_compared() {
    let folder = tempfile::tempdir().unwrap();
    let bad = folder.path().join("bad.toml");
    fs::write(&bad, "[tank]\nshape = \"box\"\n").unwrap();
    let missing = folder.path().join("missing.toml");
    let good = root().join("demo-tanks/first-tank.toml");
    let paths = [&good, &bad, &missing, &good].map(|path| path.to_str().unwrap());
    let ran = lentic(&[&["compare", "--format", "json"], &paths[..]].concat(), "");
    assert_eq!(ran.code, 2);
    let value: Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(value["schema"], "lentic/compare/1");
    assert_eq!(value["rows"].as_array().unwrap().len(), 2);
    let failed = value["failed"].as_array().unwrap();
    assert_eq!(failed.len(), 2);
    assert!(failed[0]["file"].as_str().unwrap().ends_with("bad.toml"));
    assert!(
        failed[1]["error"]
            .as_str()
            .unwrap()
            .contains("missing.toml")
    );
    assert!(ran.stderr.contains("bad.toml") && ran.stderr.contains("missing.toml"));
}

#[test]
fn rows_carry_the_numbers_of_the_plan() {
    let tanks = demo::tanks();
    let paths: Vec<&str> = tanks.iter().map(String::as_str).collect();
    let ran = lentic(
        &[
            &["compare", "--members", "8", "--format", "jsonl"],
            &paths[..],
        ]
        .concat(),
        "",
    );
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let rows: Vec<Value> = ran
        .stdout
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(rows.len(), tanks.len());
    for (tank, row) in tanks.iter().zip(&rows) {
        assert_eq!(row["file"], tank.as_str());
        let plan = lentic(&["plan", tank, "--format", "json", "--members", "8"], "");
        let plan: Value = serde_json::from_str(&plan.stdout).unwrap();
        for path in [
            "tank.water_l",
            "weight.total_kg",
            "bed.gas_ratio",
            "planting.index",
        ] {
            assert_eq!(
                &row[path],
                plan.pointer(&format!("/{}", path.replace('.', "/")))
                    .unwrap(),
                "{tank}: {path}"
            );
        }
    }
}

#[test]
fn csv_has_one_row_a_tank_under_one_header() {
    let tanks = demo::tanks();
    let paths: Vec<&str> = tanks.iter().map(String::as_str).collect();
    let ran = lentic(
        &[
            &["compare", "--members", "8", "--format", "csv"],
            &paths[..],
        ]
        .concat(),
        "",
    );
    let mut reader = csv::Reader::from_reader(ran.stdout.as_bytes());
    let heads = reader.headers().unwrap().clone();
    assert_eq!(&heads[0], "name");
    assert!(
        heads
            .iter()
            .any(|head| head == "weight.footprint_pressure_kpa")
    );
    assert_eq!(reader.records().count(), tanks.len());
}

#[test]
fn a_name_that_a_spreadsheet_would_run_is_marked_as_text() {
    let spec = fs::read_to_string(root().join("demo-tanks/first-tank.toml")).unwrap();
    let ran = lentic(
        &["compare", "-", "--format", "csv"],
        &format!("name = \"=1+1\"\n{spec}"),
    );
    assert!(ran.stdout.contains("'=1+1"), "{}", ran.stdout);
}
