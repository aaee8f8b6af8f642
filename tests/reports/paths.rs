//! The JSON paths that scripts rely on, typed in, compared both ways.

use std::collections::{BTreeMap, BTreeSet};

use lentic::design::Design;
use lentic::report::dictionary::ResultCommand;
use lentic::report::json;
use serde_json::Value;

use crate::command;
use crate::demo;
use crate::designed;
use crate::typed;

/// Gathers `path type` of every value; items of a list share the path `list[]`.
fn gather(path: &str, value: &Value, found: &mut BTreeMap<String, BTreeSet<&'static str>>) {
    let mut note = |kind| {
        found.entry(path.to_owned()).or_default().insert(kind);
    };
    match value {
        Value::Null => note("null"),
        Value::Bool(_) => note("bool"),
        Value::Number(_) => note("number"),
        Value::String(_) => note("string"),
        Value::Array(items) => {
            note("list");
            for item in items {
                gather(&format!("{path}[]"), item, found);
            }
        }
        // What is varied is named by the keys of the spec.
        Value::Object(_) if path.ends_with("[].vary") => note("object"),
        Value::Object(fields) => {
            for (key, field) in fields {
                let below = if path.is_empty() {
                    key.clone()
                } else {
                    format!("{path}.{key}")
                };
                gather(&below, field, found);
            }
        }
    }
}

/// A tank that is ready in no start, for it is fed more than its bacteria reach.
const OVERFED: &str = r#"
[tank]
size = "20 x 20 x 20 cm"
[soil]
material = "sandy_loam"
depth = "10 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[feed]
mass_per_day = "400 mg"
"#;

/// A tank that is not ready in every start, for tap water brings ammonia four times a day,
/// and whose floaters run out of phosphorus.
const NEVER_READY: &str = r#"
[tank]
size = "30 x 30 x 30 cm"
[soil]
material = "sandy_loam"
depth = "10 mm"
[cap]
material = "filter_sand"
depth = "70 mm"
[[plants]]
name = "lemna_minor"
amount = "40 %"
[water]
phosphate = "0 mg/L"
ammonia = "1.2 mg/L"
change = { share = "25 %", every = "6 h", from = 1, until = 90 }
[conditioner]
label = "5 mL per 40 L"
[light]
par = "150 umol/m2/s"
hours = 12
"#;

/// A pond that needs more than bags are searched for exactly.
const IN_BULK: &str = r#"
[tank]
size = "300 x 150 x 200 cm"
[soil]
material = "sandy_loam"
depth = "60 cm"
bags = [{ size = "20.001 L", price = 9 }, { size = "50 L", price = 20 }]
[cap]
material = "filter_sand"
depth = "40 cm"
bags = [{ size = "10.001 kg", price = 6 }, { size = "25 kg", price = 14 }]
[[plants]]
name = "lemna_minor"
amount = "40 %"
"#;

/// What is nothing in a tank and has results of its own in others, by command.
const NONE_IN_SOME: [(&str, &str); 3] = [
    ("plan", "startup.ready_day"),
    ("startup", "ready_day"),
    ("check", "measure_next"),
];

/// What a command writes of a design as JSON.
fn json_of(command: ResultCommand, design: &Design) -> Value {
    let schema = command.word();
    Value::Object(match command {
        ResultCommand::Plan => json::object(schema, &designed::planned(design)),
        ResultCommand::Startup => json::object(schema, &designed::started(design).0),
        ResultCommand::Night => json::object(schema, &designed::night(design).0),
        ResultCommand::Check => json::object(schema, &designed::checked(design)),
        ResultCommand::Upkeep => json::object(schema, &designed::kept_up(design)),
        other => panic!("{} has more to it than a design", other.word()),
    })
}

/// The paths and types of a command's JSON over all demo tanks and some designs beside.
fn found_of(command: ResultCommand, beside: &[&str]) -> Vec<String> {
    let mut found = BTreeMap::new();
    let demos = demo::tanks();
    let demos = demos.iter().map(|tank| designed::demo(tank));
    for design in demos.chain(beside.iter().map(|spec| designed::design(spec))) {
        gather("", &json_of(command, &design), &mut found);
    }
    for (of, path) in NONE_IN_SOME {
        if of == command.word() {
            found.remove(path);
        }
    }
    lines(found)
}

fn lines(found: BTreeMap<String, BTreeSet<&'static str>>) -> Vec<String> {
    found
        .into_iter()
        .map(|(path, kinds)| {
            let kinds: Vec<&str> = kinds.into_iter().collect();
            format!("{path} {}", kinds.join("|"))
        })
        .collect()
}

/// Two tanks that may never be ready and a pond beside the demo tanks.
fn compare(command: ResultCommand) {
    hold(
        command,
        &found_of(command, &[NEVER_READY, OVERFED, IN_BULK]),
    );
}

/// Fails with the paths that are missing and those that are not typed in.
fn hold(command: ResultCommand, found: &[String]) {
    let typed = typed::paths(command).into_iter();
    let typed: Vec<String> = typed.map(|(path, kind)| format!("{path} {kind}")).collect();
    let missing: Vec<_> = typed.iter().filter(|line| !found.contains(line)).collect();
    let untyped: Vec<_> = found.iter().filter(|line| !typed.contains(line)).collect();
    assert!(
        missing.is_empty() && untyped.is_empty(),
        "{}: missing {missing:#?}, not typed in {untyped:#?}",
        command.word()
    );
}

#[test]
fn a_plan_has_the_paths_typed_in() {
    compare(ResultCommand::Plan);
}

#[test]
fn a_startup_has_the_paths_typed_in() {
    compare(ResultCommand::Startup);
}

#[test]
fn a_night_has_the_paths_typed_in() {
    compare(ResultCommand::Night);
}

#[test]
fn a_check_has_the_paths_typed_in() {
    compare(ResultCommand::Check);
}

/// The paths and types of what some runs print.
fn found_in(runs: &[&[&str]]) -> Vec<String> {
    let mut found = BTreeMap::new();
    for arguments in runs {
        let ran = command::lentic(
            &[*arguments, &["--format", "json", "--members", "0"]].concat(),
            "",
        );
        let value: Value = serde_json::from_str(&ran.stdout).expect("JSON");
        gather("", &value, &mut found);
    }
    lines(found)
}

const TANK: &str = "demo-tanks/reading-room-cube.toml";

#[test]
fn a_comparison_has_the_paths_typed_in() {
    let vary = ["--vary", "cap.depth=20mm,30mm,40mm,280mm"];
    let shown = ["--columns", "status", "--sensitivity", "weight.total_kg"];
    let found = found_in(&[&[&["compare", TANK][..], &vary, &shown].concat()]);
    hold(ResultCommand::Compare, &found);
}

#[test]
fn an_answer_has_the_paths_typed_in() {
    let solve = [
        "solve",
        "cap.depth",
        TANK,
        "--from",
        "20mm",
        "--to",
        "60mm",
        "--until",
    ];
    let until = |condition| [&solve[..], &[condition]].concat();
    let found = found_in(&[
        &until("weight.total_kg>=33"),
        &until("weight.total_kg>=900"),
    ]);
    hold(ResultCommand::Solve, &found);
}

/// A tank whose taps, conditioner and soft water are known.
const KNOWN_TAP: &str = r#"
[tank]
size = "30 x 30 x 30 cm"
[soil]
material = "sandy_loam"
depth = "10 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[water]
disinfectant = "chlorine"
cold = "12 C"
hot = "60 C"
goal = { hardness = "8 dGH" }
[conditioner]
label = "5 mL per 40 L"
"#;

#[test]
fn new_water_has_the_paths_typed_in() {
    let mut found = BTreeMap::new();
    for spec in [KNOWN_TAP, NEVER_READY, IN_BULK] {
        let ran = command::lentic(&["water", "-", "--format", "json"], spec);
        let value: Value = serde_json::from_str(&ran.stdout).expect("JSON");
        gather("", &value, &mut found);
    }
    hold(ResultCommand::Water, &lines(found));
}

#[test]
fn a_mended_spec_has_the_paths_typed_in() {
    let priced = "tests/practice/mend/gravel-cap.toml";
    let bowl = "tests/practice/mend/bowl.toml";
    let kept = ["--keep", "plants", "--keep", "soil", "--keep", "cap"];
    let stems = ["--keep", "soil", "--keep", "light"];
    let found = found_in(&[
        &[&["mend", priced][..], &stems].concat(),
        &[&["mend", bowl][..], &kept].concat(),
    ]);
    hold(ResultCommand::Mend, &found);
}

#[test]
fn a_running_tank_has_the_paths_typed_in() {
    hold(ResultCommand::Upkeep, &found_of(ResultCommand::Upkeep, &[]));
}
