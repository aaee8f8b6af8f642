//! Several tanks side by side.

use std::fs;

use lentic::plan::{Options, PlanPart, partial};
use lentic::report::json;
use serde_json::Value;

use crate::command::{lentic, root};
use crate::demo;

/// The central numbers alone.
const CENTRAL: Options = Options {
    members: 0,
    seed: 1,
    days: 90,
};

#[test]
fn a_bad_file_is_named_and_the_others_are_compared() {
    let folder = tempfile::tempdir().unwrap();
    let bad = folder.path().join("bad.toml");
    fs::write(&bad, "[tank]\nshape = \"box\"\n").unwrap();
    let missing = folder.path().join("missing.toml");
    let good = root().join("demo-tanks/first-tank.toml");
    let paths = [&good, &bad, &missing, &good].map(|path| path.to_str().unwrap());
    let asked = ["compare", "--format", "json", "--members", "2"];
    let ran = lentic(&[&asked[..], &paths].concat(), "");
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
    const PATHS: [&str; 4] = [
        "tank.water_l",
        "weight.total_kg",
        "bed.gas_ratio",
        "planting.index",
    ];
    let tanks = demo::tanks();
    let paths: Vec<&str> = tanks.iter().map(String::as_str).collect();
    let shown = PATHS.join(",");
    let asked = ["compare", "--members", "0", "--format", "jsonl"];
    let columns = ["--columns", &shown];
    let ran = lentic(&[&asked[..], &columns, &paths].concat(), "");
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let rows: Vec<Value> = ran
        .stdout
        .lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect();
    assert_eq!(rows.len(), tanks.len());
    for (tank, row) in tanks.iter().zip(&rows) {
        assert_eq!(row["file"], tank.as_str());
        let spec = fs::read_to_string(root().join(tank)).unwrap();
        let design = lentic::spec::parse(&spec).unwrap();
        let plan = partial(&design, CENTRAL, &[PlanPart::Measures, PlanPart::Load]).unwrap();
        let plan = Value::Object(json::object("lentic/plan/1", &plan));
        for path in PATHS {
            let pointer = format!("/{}", path.replace('.', "/"));
            assert_eq!(
                &row[path],
                plan.pointer(&pointer).unwrap(),
                "{tank}: {path}"
            );
        }
    }
}

#[test]
fn csv_has_one_row_a_tank_under_one_header() {
    let tanks: Vec<String> = demo::tanks().into_iter().step_by(9).collect();
    let paths: Vec<&str> = tanks.iter().map(String::as_str).collect();
    let asked = ["compare", "--members", "8", "--format", "csv"];
    let ran = lentic(&[&asked[..], &paths].concat(), "");
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
        &["compare", "-", "--format", "csv", "--members", "0"],
        &format!("name = \"=1+1\"\n{spec}"),
    );
    assert!(ran.stdout.contains("'=1+1"), "{}", ran.stdout);
}

#[test]
fn a_name_that_looks_like_a_formula_is_text_and_a_number_below_zero_a_number() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("tank.toml");
    let spec = fs::read_to_string(root().join("demo-tanks/first-tank.toml")).unwrap();
    for name in ["=1+1", "+cmd", "-tank", "@sum", "plain"] {
        let named = format!("name = {}\n", toml::Value::from(name));
        fs::write(&path, named + &spec).unwrap();
        for command in ["compare", "plan"] {
            let arguments = [
                command,
                path.to_str().unwrap(),
                "--format",
                "csv",
                "--members",
                "0",
            ];
            let ran = lentic(&arguments, "");
            assert_eq!(ran.code, 0, "{}", ran.stderr);
            let mut reader = csv::Reader::from_reader(ran.stdout.as_bytes());
            let record = reader.records().next().unwrap().unwrap();
            for cell in &record {
                let formula = cell.starts_with(['=', '+', '-', '@']);
                assert!(!formula || cell.parse::<f64>().is_ok(), "{name}: {cell}");
            }
            let shown = format!("'{name}");
            let expected = if name == "plain" { name } else { &shown };
            assert!(
                record.iter().any(|cell| cell == expected),
                "{name}: {record:?}"
            );
        }
    }
    let cell = ("number".to_owned(), Value::from(-1.5));
    assert_eq!(lentic::report::csv::table(&[vec![cell]]), "number\n-1.5\n");
}

#[test]
fn a_table_shows_all_tanks_in_the_units_of_the_first() {
    let folder = tempfile::tempdir().unwrap();
    let text = fs::read_to_string(root().join("demo-tanks/first-tank.toml")).unwrap();
    let bare: Vec<&str> = text
        .lines()
        .filter(|line| !line.starts_with("units = "))
        .collect();
    let written = ["metric", "us"].map(|units| {
        let path = folder.path().join(format!("{units}.toml"));
        fs::write(&path, format!("units = \"{units}\"\n{}\n", bare.join("\n"))).unwrap();
        path.to_str().unwrap().to_owned()
    });
    let table = |more: &[&str]| {
        let ran = lentic(&[&["compare", "--members", "0"], more].concat(), "");
        assert_eq!(ran.code, 0, "{}", ran.stderr);
        ran.stdout
    };
    let [metric, us] = [written[0].as_str(), written[1].as_str()];
    for (shown, in_kilograms) in [
        (table(&[metric, us]), true),
        (table(&[us, metric]), false),
        (table(&[us, metric, "--sort", "tank.water_l"]), false),
        (table(&[us, metric, "--units", "metric"]), true),
    ] {
        assert_eq!(shown.contains(" kg "), in_kilograms, "{shown}");
        assert_eq!(shown.contains(" lb "), !in_kilograms, "{shown}");
    }
}
