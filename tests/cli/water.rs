//! New water: mixtures, salts, chlorine, warmth, and what is refused.

use serde_json::Value;

use crate::command::{Ran, lentic};

/// A tank of 30 x 30 x 30 cm with lines of its own under `[water]`.
fn tank(water: &str) -> String {
    format!(
        "[tank]\nsize = \"30 x 30 x 30 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"20 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n[water]\n{water}"
    )
}

fn made(spec: &str, options: &[&str]) -> Value {
    let ran = run(spec, &[options, &["--format", "json"]].concat());
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    serde_json::from_str(&ran.stdout).unwrap()
}

fn run(spec: &str, options: &[&str]) -> Ran {
    lentic(&[&["water", "-"], options].concat(), spec)
}

#[track_caller]
fn near(value: &Value, expected: f64, within: f64) {
    let value = value.as_f64().unwrap();
    assert!(
        (value - expected).abs() <= within,
        "{value}, not {expected}"
    );
}

/// 6 of 14 degrees: 42.9 % of the water.
#[test]
fn tap_and_soft_water_make_what_is_asked_for() {
    let spec =
        tank("hardness = \"14 dGH\"\nalkalinity = \"10 dKH\"\ngoal = { hardness = \"6 dGH\" }\n");
    let water = made(&spec, &["--litres", "10"]);
    assert_eq!(water["schema"], "lentic/water/1");
    near(&water["total_l"], 10.0, 1e-9);
    near(&water["tap_l"], 4.2857, 1e-4);
    near(&water["soft_l"], 5.7143, 1e-4);
    near(&water["hardness_dgh"], 6.0, 1e-9);
    near(&water["alkalinity_dkh"], 4.2857, 1e-4);
    assert!(water["salts"].as_array().unwrap().is_empty());
}

/// Of two goals the one that bears less tap water counts, and salts bring the rest.
#[test]
fn salts_bring_what_the_mixture_lacks() {
    let spec = tank(
        "hardness = \"14 dGH\"\nalkalinity = \"10 dKH\"\ngoal = { hardness = \"7 dGH\", alkalinity = \"2 dKH\" }\n",
    );
    let water = made(&spec, &["--litres", "10 L"]);
    near(&water["tap_l"], 2.0, 1e-9);
    near(&water["hardness_dgh"], 7.0, 1e-9);
    near(&water["alkalinity_dkh"], 2.0, 1e-9);
    let salts: Vec<&str> = water["salts"]
        .as_array()
        .unwrap()
        .iter()
        .map(|salt| salt["name"].as_str().unwrap())
        .collect();
    assert_eq!(salts, ["gypsum", "Epsom salt"]);
}

#[test]
fn a_goal_that_no_mixture_reaches_is_refused_with_a_way_out() {
    let spec = tank(
        "hardness = \"14 dGH\"\nsoftened = { hardness = \"3 dGH\" }\ngoal = { hardness = \"2 dGH\" }\n",
    );
    let ran = run(&spec, &[]);
    assert_eq!((ran.code, ran.stdout.as_str()), (2, ""));
    assert!(
        ran.stderr.contains("no mixture has 2 dGH"),
        "{}",
        ran.stderr
    );
    assert!(ran.stderr.contains("help: "), "{}", ran.stderr);
}

#[test]
fn no_water_and_more_than_the_tank_holds_are_refused() {
    for (litres, says) in [
        ("0", "no water is asked for"),
        ("500", "is more than the"),
        ("-3", "below zero"),
        ("2 gal", "us_gal"),
        ("many", "does not start with a number"),
        ("NaN", "finite"),
    ] {
        let ran = run(&tank(""), &["--litres", litres]);
        assert_eq!((ran.code, ran.stdout.as_str()), (2, ""), "{litres}");
        assert!(ran.stderr.contains(says), "{litres}: {}", ran.stderr);
    }
    let both = run(&tank(""), &["--litres", "3", "--fill"]);
    assert_eq!(both.code, 2);
}

#[test]
fn softened_water_that_is_harder_than_the_tap_is_a_fault_of_the_spec() {
    let ran = run(&tank("softened = { hardness = \"9 dGH\" }\n"), &[]);
    assert_eq!(ran.code, 2);
    assert!(
        ran.stderr.contains("no harder than the tap"),
        "{}",
        ran.stderr
    );
}

/// 2.5 mg/L of chloramine hold 0.494 mg of nitrogen, of which half the water brings half.
#[test]
fn chloramine_leaves_ammonia_and_chlorine_none() {
    let with = |disinfectant: &str| {
        let spec = tank(&format!(
            "chlorine = \"2.5 mg/L\"\ndisinfectant = \"{disinfectant}\"\nchange = {{ share = \"50 %\", every = \"7 d\" }}\n"
        ));
        made(&spec, &[])
    };
    let bound = with("chloramine");
    near(&bound["ammonia_left_mg_l"]["typical"], 0.494, 0.001);
    near(&bound["ammonia_rise_mg_l"]["typical"], 0.247, 0.001);
    assert!(bound.get("stand_h").is_none());
    let free = with("chlorine");
    near(&free["ammonia_left_mg_l"]["high"], 0.0, 0.0);
    assert!(free["stand_h"]["typical"].as_f64() > free["stand_aerated_h"]["typical"].as_f64());
    let none = with("none");
    near(&none["chlorine_mg_l"]["high"], 0.0, 0.0);
    assert!(none["conditioner_ml"].is_null());
}

/// What is not said is a range, never nothing.
#[test]
fn an_unknown_tap_has_bands() {
    let water = made(&tank(""), &["--fill"]);
    for path in ["chlorine_mg_l", "ammonia_left_mg_l", "conductivity_us_cm"] {
        assert!(
            water[path]["high"].as_f64() > water[path]["low"].as_f64(),
            "{path}"
        );
        assert!(water[path]["typical"].as_f64().unwrap() > 0.0, "{path}");
    }
    assert!(water["hot_l"].is_null() && water["tank_change_c"].is_null());
    let order = water["order"].to_string();
    assert!(order.contains("taken as chloramine"), "{order}");
}

/// A quarter of 60 C in 12 C makes 24 C; 12 C alone may be a twelfth of the tank.
#[test]
fn both_taps_make_the_warmth_of_the_tank() {
    let taps = "temperature = \"24 C\"\ncold = \"12 C\"\n";
    let water = made(
        &tank(&format!("{taps}hot = \"60 C\"\n")),
        &["--litres", "8"],
    );
    near(&water["hot_l"], 2.0, 1e-9);
    near(&water["cold_l"], 6.0, 1e-9);
    near(&water["tank_change_c"], 0.0, 1e-9);
    assert!(water["cautions"].to_string().contains("hazard.scald"));
    let cold = run(&tank(taps), &["--litres", "8"]).stdout;
    assert!(cold.contains("at most 8 %"), "{cold}");
}

/// 5 mL to 40 L are 1.25 mL to 10 L.
#[test]
fn conditioner_goes_by_its_label_and_by_tap_water() {
    let spec = tank("chlorine = \"1 mg/L\"\n[conditioner]\nlabel = \"5 mL per 40 L\"\n");
    let water = made(&spec, &["--litres", "10"]);
    near(&water["conditioner_ml"], 1.25, 1e-9);
    assert!(water["conditioner_tank_ml"].as_f64() > Some(1.25));
}

/// From 2 to 6 degrees by a half: two degrees in the tank, a day each, but only with animals.
#[test]
fn water_follows_over_days_where_animals_live() {
    let water = "hardness = \"6 dGH\"\nalkalinity = \"2 dKH\"\nconductivity = \"205 uS/cm\"\nchange = { share = \"50 %\", every = \"7 d\" }\n";
    let read = "[[readings]]\nday = 90\nhardness = \"2 dGH\"\nalkalinity = \"2 dKH\"\nconductivity = \"200 uS/cm\"\n";
    let empty = made(&tank(&format!("{water}{read}")), &[]);
    assert_eq!(empty["steps"], 1);
    let animals = "[[animals]]\nname = \"small_shrimp\"\ncount = 5\n";
    let stocked = made(&tank(&format!("{water}{read}{animals}")), &[]);
    assert_eq!(stocked["steps"], 2);
    near(
        &stocked["step_l"],
        stocked["total_l"].as_f64().unwrap() / 2.0,
        1e-9,
    );
    let filled = made(&tank(&format!("{water}{read}{animals}")), &["--fill"]);
    assert_eq!(filled["steps"], 1);
}

#[test]
fn harder_water_waits_for_ammonia() {
    let read = "[[readings]]\nday = 9\nammonia = \"0.5 mg/L\"\nalkalinity = \"1 dKH\"\n";
    let text = run(&tank(read), &[]).stdout;
    assert!(text.contains("wait: ammonia reads 0.5 mg/L"), "{text}");
    let calm = run(&tank(&read.replace("0.5 mg/L", "0.2 mg/L")), &[]).stdout;
    assert!(!calm.contains("wait: "), "{calm}");
}

#[test]
fn pages_csv_and_explanations_follow() {
    let page = run(&tank(""), &["--format", "html"]).stdout;
    assert!(page.contains("water.chlorine"), "{page}");
    let csv = run(&tank(""), &["--format", "csv"]).stdout;
    assert!(csv.starts_with("name,") || csv.contains(",tap_l,"), "{csv}");
    let explained = lentic(&["explain", "water.tap_l", "-"], &tank(""));
    assert_eq!(explained.code, 0, "{}", explained.stderr);
    assert!(
        explained.stdout.contains("water.mixture"),
        "{}",
        explained.stdout
    );
    let text = run(&tank(""), &[]).stdout;
    assert!(text.lines().count() <= 40, "{text}");
}
