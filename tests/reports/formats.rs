//! Every demo tank in every format holds what people and scripts read.

use lentic::design::Design;
use lentic::report::{compose, csv, json};
use lentic::units::UnitSystem;
use serde_json::Value;

use crate::demo;
use crate::designed::{checked, demo as demo_tank, night, on_terminal, planned};

/// A plan as scripts read it.
fn plan_in_json(design: &Design) -> Value {
    Value::Object(json::object("lentic/plan/1", &planned(design)))
}

#[test]
fn text_fits_eighty_columns_and_promises_nothing() {
    for tank in demo::tanks() {
        let design = demo_tank(&tank);
        for document in [
            compose::plan_in_short(&design, &planned(&design)),
            compose::check_in_short(&design, &checked(&design)),
        ] {
            let text = on_terminal(&document);
            for line in text.lines() {
                assert!(line.chars().count() <= 80, "{tank}: {line}");
            }
            let words = text.to_lowercase();
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
        let plan = plan_in_json(&demo_tank(&tank));
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
        let plan = plan_in_json(&demo_tank(&tank));
        let object = plan.as_object().expect("an object");
        let csv = csv::table(&[csv::flattened(object, csv::Lists::Numbered)]);
        let mut reader = ::csv::Reader::from_reader(csv.as_bytes());
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
        let mut draft = demo_tank(&tank).into_draft();
        draft.units = UnitSystem::Metric;
        let design = draft.check().expect("the same tank");
        let plan = plan_in_json(&design);
        let text = on_terminal(&compose::plan_in_short(&design, &planned(&design)));
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
            assert!(text.contains(&shown), "{tank}: {path}: no {shown}");
        }
    }
}

/// The night of a plan is that by itself, and so is what is read off it.
#[test]
fn the_night_of_a_plan_is_the_night_by_itself() {
    for tank in demo::tanks() {
        let design = demo_tank(&tank);
        let plan = plan_in_json(&design);
        let night = Value::Object(json::object("lentic/night/1", &night(&design).0));
        for (path, value) in plan["night"].as_object().expect("a night") {
            assert_eq!(&night[path], value, "{tank} {path}");
        }
        for section in ["flow", "light", "animals", "heat"] {
            assert_eq!(night[section], plan[section], "{tank} {section}");
        }
    }
}
