//! The night on the command line.

use serde_json::Value;

use crate::command::lentic;
use crate::files::MINIMAL;

const TANK: &str = "demo-tanks/living-room-180.toml";

fn night(arguments: &[&str]) -> Value {
    let all = [
        &["night", TANK, "--format", "json", "--members", "8"],
        arguments,
    ]
    .concat();
    serde_json::from_str(&lentic(&all, "").stdout).unwrap()
}

#[test]
fn a_night_is_told_with_its_oxygen_hour_by_hour() {
    let text = lentic(&["night", TANK, "--members", "8"], "");
    assert_eq!(text.code, 0, "{}", text.stderr);
    for word in [
        "dawn oxygen",
        "air needed",
        "power cut",
        "oxygen, mg/L",
        "hour 0",
    ] {
        assert!(text.stdout.contains(word), "{word}");
    }
    let json = night(&[]);
    let hours = json["hours"].as_array().unwrap();
    assert_eq!(hours.len(), 25);
    let low = json["dawn_oxygen_mg_l"]["typical"].as_f64().unwrap();
    let least = hours
        .iter()
        .map(|hour| hour["oxygen_mg_l"]["typical"].as_f64().unwrap())
        .fold(f64::INFINITY, f64::min);
    assert!((least - low).abs() < 0.2, "{least} {low}");
    let csv = ["night", TANK, "--format", "csv", "--members", "8"];
    let csv = lentic(&csv, "").stdout;
    assert!(csv.starts_with("hour,oxygen_mg_l.low,"));
    assert_eq!(csv.lines().count(), 26);
}

#[test]
fn any_day_of_the_start_may_be_asked_for() {
    let day = |asked: &str| night(&["--day", asked])["day"].as_f64().unwrap() as u32;
    for (asked, found) in [("filling", 0), ("30", 30), ("grown-in", 90), ("120", 120)] {
        assert_eq!(day(asked), found);
    }
    assert!(day("flush-peak") < 90);
    let dawn = |asked: &str| {
        night(&["--day", asked])["dawn_oxygen_mg_l"]["typical"]
            .as_f64()
            .unwrap()
    };
    // fish come on day 42
    for other in ["42", "63", "grown-in"] {
        assert!(dawn("leanest") <= dawn(other));
    }
    for wrong in ["dawn", "-1", "1826", "1.5"] {
        let ran = lentic(&["night", TANK, &format!("--day={wrong}")], "");
        assert_eq!(ran.code, 2);
        assert!(ran.stderr.contains("flush-peak"), "{}", ran.stderr);
    }
}

/// The air that a remedy asks for is put into the spec: the finding is gone.
#[test]
fn the_air_advised_keeps_oxygen_at_its_limit() {
    let spec =
        std::fs::read_to_string(crate::command::root().join("demo-tanks/hexagon-stand.toml"));
    let spec = spec.unwrap();
    let plan = |spec: &str| -> Value {
        let ran = lentic(&["plan", "-", "--format", "json", "--members", "32"], spec);
        serde_json::from_str(&ran.stdout).unwrap()
    };
    let dawn = |plan: &Value| {
        let findings = plan["findings"].as_array().unwrap();
        let found = findings
            .iter()
            .find(|finding| finding["code"] == "air.dawn");
        found.unwrap().clone()
    };
    let before = dawn(&plan(&spec));
    assert_eq!(before["status"], "act");
    let says = before["remedy"]["says"].as_str().unwrap();
    let l_min = before["remedy"]["quantity"].as_f64().unwrap();
    let deep = says
        .split(" deep")
        .next()
        .unwrap()
        .rsplit("stone ")
        .next()
        .unwrap();
    let hours = if says.contains("deep, while the lamp is off") {
        "night"
    } else {
        "always"
    };
    let mended = format!(
        "{spec}\n[air]\ndevice = \"air_stone\"\nflow = \"{l_min} L/min\"\ndepth = \"{deep}\"\nhours = \"{hours}\"\n"
    );
    let after = dawn(&plan(&mended));
    assert_eq!(after["status"], "ok", "{mended}\n{after}");
}

#[test]
fn vapour_that_settles_on_cold_water_is_told_as_condensation() {
    // A cellar at 26 C and 95 % holds 32 hPa of vapour, water at 16 C asks for 18 (Buck 1981).
    let damp = format!(
        "{MINIMAL}[water]\ntemperature = \"16 C\"\n[room]\ntemperature = \"26 C\"\nhumidity = \"95 %\"\n"
    );
    let ran = lentic(&["night", "-", "--members", "0"], &damp);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    assert!(ran.stdout.contains("condensation"), "{}", ran.stdout);
    assert!(!ran.stdout.contains("evaporation"), "{}", ran.stdout);
    let json = lentic(&["night", "-", "--members", "0", "--format", "json"], &damp);
    let night: Value = serde_json::from_str(&json.stdout).unwrap();
    assert!(night["heat"]["evaporation_l_per_week"].as_f64().unwrap() < 0.0);
    let working = lentic(&["explain", "heat.balance", "-", "--members", "0"], &damp).stdout;
    assert!(working.contains("condenses on the water"), "{working}");
}

#[test]
fn a_ph_outside_the_model_is_said_to_be() {
    for (ph, alkalinity) in [("3", "0 dKH"), ("11", "20 dKH")] {
        let spec = format!("{MINIMAL}[water]\nph = {ph}\nalkalinity = \"{alkalinity}\"\n");
        for command in ["plan", "startup", "night"] {
            let ran = lentic(&[command, "-", "--members", "0"], &spec);
            let json = lentic(&["night", "-", "--members", "0", "--format", "json"], &spec);
            let night: Value = serde_json::from_str(&json.stdout).unwrap();
            let leaves = night["hours"].as_array().unwrap().iter().any(|hour| {
                let value = &hour["ph"];
                let ph = value.as_f64().or(value["typical"].as_f64()).unwrap();
                !(4.0..=11.0).contains(&ph)
            });
            if command != "night" || leaves {
                assert!(
                    ran.stdout.contains("Range: pH"),
                    "{command} {ph}: {}",
                    ran.stdout
                );
            }
        }
    }
}
