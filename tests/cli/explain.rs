//! Rules and sources explained.

use lentic::finding::Code;
use serde_json::Value;

use crate::command::lentic;

#[test]
fn every_code_is_explained_with_and_without_a_spec() {
    for code in Code::ALL {
        for tank in [None, Some("demo-tanks/living-room-180.toml")] {
            let mut arguments = vec!["explain", code.text(), "--members", "8"];
            arguments.extend(tank);
            let ran = lentic(&arguments, "");
            assert_eq!(ran.code, 0, "{}: {}", code.text(), ran.stderr);
            assert!(ran.stdout.starts_with(code.text()));
            assert!(ran.stdout.contains("Rests on"));
        }
    }
}

#[test]
fn the_working_ends_at_the_value_of_the_finding() {
    let tank = "demo-tanks/living-room-180.toml";
    let plan = lentic(&["plan", tank, "--format", "json", "--members", "8"], "");
    let plan: Value = serde_json::from_str(&plan.stdout).unwrap();
    for finding in plan["findings"].as_array().unwrap() {
        let code = finding["code"].as_str().unwrap();
        let Some(value) = finding["value"].as_f64() else {
            continue;
        };
        let ran = lentic(
            &["explain", code, tank, "--format", "json", "--members", "8"],
            "",
        );
        let explained: Value = serde_json::from_str(&ran.stdout).unwrap();
        let steps = explained["working"]["steps"].as_array().unwrap();
        let shows = steps.iter().any(|step| {
            let step = step["value"].as_f64().unwrap();
            (step - value).abs() <= 1e-6 * value.abs().max(1.0)
        });
        assert!(
            shows || code == "plants.mix",
            "{code}: {value} in {steps:#?}"
        );
    }
}

/// Free diffusion of ammonium at 25 C, 1.71e-4 m2/d: Li and Gregory (1974), from memory.
/// Tortuosity 1 - ln(0.4^2) = 2.8326: Boudreau (1996). The parts of a cap: Palermo et
/// al. (1998).
#[test]
fn the_leak_is_worked_through_with_its_resistances_and_the_parts_of_a_cap() {
    let spec = "[tank]\nshape = 'box'\nsize = '60 x 30 x 36 cm'\n[soil]\nmaterial = 'loam_topsoil'\ndepth = '25 mm'\n[cap]\nmaterial = 'filter_sand'\ndepth = '40 mm'\nproperties = { porosity = '40 %' }\n[water]\ntemperature = '25 C'\n[[plants]]\nname = 'duckweed'\namount = '30 %'\n";
    let arguments = [
        "explain",
        "cap.leak",
        "-",
        "--format",
        "json",
        "--members",
        "0",
    ];
    let explained: Value = serde_json::from_str(&lentic(&arguments, spec).stdout).unwrap();
    let steps = explained["working"]["steps"].as_array().unwrap();
    let value = |end: &str| {
        let named = |step: &&Value| step["name"].as_str().unwrap().ends_with(end);
        steps.iter().find(named).unwrap()["value"].as_f64().unwrap()
    };
    let near = |value: f64, expected: f64| {
        assert!(
            (value / expected - 1.0).abs() < 1e-3,
            "{value} for {expected}"
        );
    };
    let effective_m2_d = 0.4 * 1.71e-4 / 2.8326;
    near(value("of the cap"), 0.040 / effective_m2_d);
    near(value("still film"), 0.001 / 1.71e-4);
    let isolating_mm = 1e3 * effective_m2_d * value("Cs") * 1e3 / value("K / 21");
    near(value("Ti"), isolating_mm);
    near(value("To + Tb + Ti"), 5.0 + isolating_mm);
}

#[test]
fn an_explained_finding_counts_for_the_exit_code() {
    let explain = |code: &str, fail_on: &str| {
        let tank = "demo-tanks/cap-too-deep.toml";
        let members = ["--members", "0", "--fail-on", fail_on];
        lentic(&[&["explain", code, tank][..], &members[..]].concat(), "").code
    };
    assert_eq!(explain("cap.deep", "act"), 1);
    assert_eq!(explain("cap.fine", "act"), 0);
    assert_eq!(explain("cap.fine", "watch"), 1);
}

#[test]
fn a_source_is_explained_and_an_unknown_word_gets_a_suggestion() {
    let source = lentic(&["explain", "larson_2007"], "");
    assert!(source.stdout.contains("Larson"), "{}", source.stdout);
    let wrong = lentic(&["explain", "cap.thn"], "");
    assert_eq!(wrong.code, 2);
    assert!(
        wrong.stderr.contains("did you mean cap.thin?"),
        "{}",
        wrong.stderr
    );
}
