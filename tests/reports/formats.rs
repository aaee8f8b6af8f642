//! Every demo tank in every format holds what people and scripts read.

use serde_json::Value;

use crate::command;
use crate::demo;

#[test]
fn text_fits_eighty_columns_and_promises_nothing() {
    for tank in demo::tanks() {
        for name in ["plan", "check"] {
            let ran = command::lentic_once(&[name, &tank, "--members", "8"]);
            assert_eq!(ran.code, 0, "{tank}: {}", ran.stderr);
            for line in ran.stdout.lines() {
                assert!(line.chars().count() <= 80, "{tank}: {line}");
            }
            let words = ran.stdout.to_lowercase();
            for word in words.split(|c: char| !c.is_alphanumeric()) {
                assert!(
                    word != "safe" && word != "legal" && word != "nan" && word != "inf",
                    "{tank}: {word}"
                );
            }
        }
    }
}

#[test]
fn no_number_of_any_demo_is_missing_or_infinite() {
    for tank in demo::tanks() {
        let ran = command::lentic_once(&["plan", &tank, "--format", "json", "--members", "8"]);
        let plan: Value = serde_json::from_str(&ran.stdout).expect("JSON");
        for section in ["tank", "soil", "cap", "bed", "weight", "planting"] {
            for (key, value) in plan[section].as_object().expect("a section") {
                assert!(!value.is_null(), "{tank}: {section}.{key}");
            }
        }
    }
}

#[test]
fn csv_names_its_columns_by_the_json_path() {
    for tank in demo::tanks() {
        let json = command::lentic_once(&["plan", &tank, "--format", "json", "--members", "8"]);
        let plan: Value = serde_json::from_str(&json.stdout).expect("JSON");
        let csv = command::lentic_once(&["plan", &tank, "--format", "csv", "--members", "8"]);
        let mut reader = csv::Reader::from_reader(csv.stdout.as_bytes());
        let heads = reader.headers().expect("heads").clone();
        let row = reader.records().next().expect("a row").expect("a record");
        for (head, cell) in heads.iter().zip(&row) {
            let pointer = format!("/{}", head.replace('.', "/"));
            let value = plan
                .pointer(&pointer)
                .unwrap_or_else(|| panic!("{tank}: {head}"));
            match value {
                Value::String(text) => assert!(cell.ends_with(text.as_str()), "{tank}: {head}"),
                Value::Null => assert_eq!(cell, "", "{tank}: {head}"),
                other => assert_eq!(cell, other.to_string(), "{tank}: {head}"),
            }
        }
    }
}

#[test]
fn text_and_json_show_the_same_figures() {
    for tank in demo::tanks() {
        let json = command::lentic_once(&["plan", &tank, "--format", "json", "--members", "8"]);
        let plan: Value = serde_json::from_str(&json.stdout).expect("JSON");
        let text = command::lentic_once(&["plan", &tank, "--units", "metric", "--members", "0"]);
        for (path, unit) in [
            ("/tank/water_l", "L"),
            ("/weight/total_kg", "kg"),
            ("/cap/buy_kg", "kg"),
        ] {
            let value = plan
                .pointer(path)
                .and_then(Value::as_f64)
                .expect("a number");
            let shown = format!("{} {unit}", lentic::units::show::significant(value, 3));
            assert!(text.stdout.contains(&shown), "{tank}: {path}: no {shown}");
        }
    }
}
