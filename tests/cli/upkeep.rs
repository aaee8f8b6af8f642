//! `lentic upkeep`.

use serde_json::Value;

use crate::command::lentic;
use crate::files::MINIMAL;

const TANK: &str = "demo-tanks/two-winters.toml";
const OLD: &str = "demo-tanks/five-years-on.toml";

fn json(arguments: &[&str], spec: &str) -> Value {
    let all = [
        &["upkeep"],
        arguments,
        &["--format", "json", "--members", "4"],
    ]
    .concat();
    let ran = lentic(&all, spec);
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    serde_json::from_str(&ran.stdout).expect("JSON")
}

#[test]
fn a_week_is_told_in_what_a_person_measures() {
    let ran = lentic(&["upkeep", TANK, "--members", "4"], "");
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    for part in [
        "Two winters",
        "a week about day 730",
        "thin floaters",
        "of a loose handful",
        "% of the surface",
        "trim stems",
        "top up",
        "change water",
        "power cut",
        "Mind ",
    ] {
        assert!(ran.stdout.contains(part), "{part}: {}", ran.stdout);
    }
    let lines = ran.stdout.lines().count();
    assert!(lines <= 40, "{lines} lines");
    let full = lentic(&["upkeep", TANK, "--members", "4", "--full"], "").stdout;
    for part in [
        "nitrogen in",
        "after years",
        "If the power fails",
        "Electricity: ",
    ] {
        assert!(full.contains(part) && !ran.stdout.contains(part), "{part}");
    }
}

#[test]
fn prunings_that_were_weighed_are_the_rate() {
    // 11, 8, 10 and 9 g in the four weeks after the first
    let found = json(&[TANK], "");
    let thinned = found["upkeep"]["floaters_thin_g"]["typical"]
        .as_f64()
        .unwrap();
    assert!((thinned - 9.5).abs() < 1e-9, "{thinned}");
    assert_eq!(found["schema"], "lentic/upkeep/1");
    assert_eq!(found["day"], 730);
}

#[test]
fn a_tank_in_us_units_is_told_in_them() {
    let asked = [
        "--away", "14d", "--move", "--bucket", "2 us_gal", "--stir", "20%",
    ];
    let all = [&["upkeep", OLD, "--members", "0"], &asked[..]].concat();
    let ran = lentic(&all, "");
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    for unit in ["US gal", " in,", "lb"] {
        assert!(ran.stdout.contains(unit), "{unit}: {}", ran.stdout);
    }
    for metric in [" L ", " kg", " mm"] {
        assert!(!ran.stdout.contains(metric), "{metric}: {}", ran.stdout);
    }
}

#[test]
fn what_is_not_in_the_spec_is_not_given_and_never_nothing() {
    let found = json(&["-", "--bucket", "8L"], MINIMAL);
    let week = found["upkeep"].as_object().unwrap();
    for absent in [
        "floaters_thin_g",
        "floaters_thin_pct",
        "stems_trim_g",
        "feed_share_pct",
        "nitrate_steady_mg_l",
        "hardness_steady_dgh",
        "conductivity_steady_us_cm",
    ] {
        assert!(!week.contains_key(absent), "{absent}");
    }
    assert!(week["supply"].get("feed_n_mg_per_week").is_none());
    assert!(found["bucket"].get("lasts_h").is_none());
    for what_if in ["stir", "move", "away"] {
        assert!(found.get(what_if).is_none(), "{what_if}");
    }
    let text = lentic(
        &["upkeep", "-", "--bucket", "8L", "--members", "0"],
        MINIMAL,
    )
    .stdout;
    assert!(text.matches("not given").count() >= 4, "{text}");
}

#[test]
fn answers_are_given_to_what_is_asked() {
    let asked = ["--stir", "20%", "--away", "14d", "--move", "--bucket", "8L"];
    let found = json(&[&[TANK], &asked[..]].concat(), "");
    let number = |path: &str| {
        let value = found.pointer(path).unwrap_or_else(|| panic!("{path}"));
        value.as_f64().unwrap_or_else(|| panic!("{path}: {value}"))
    };
    assert!((number("/stir/share_pct") - 20.0).abs() < 1e-9);
    assert!(number("/stir/sessions") >= 1.0 && number("/stir/safe_share_pct") <= 25.0);
    // two weeks of what evaporates in one
    let per_week = number("/upkeep/top_up_l_per_week");
    assert!((number("/away/top_up_l") - 2.0 * per_week).abs() < 1e-4);
    assert!(number("/away/hardness_factor") > 1.0 && number("/away/lamp_hours") <= 6.0);
    assert!(number("/move/carried_kg") > 10.0 && number("/bucket/lasts_h") > 1.0);
    assert_eq!(found["move"]["bed_out"], true);
    assert!(number("/power/pour_l_h") > 0.0);
}

#[test]
fn what_cannot_be_is_refused_with_the_range() {
    for (wrong, says) in [
        (&["--day", "1826"][..], "1825"),
        (&["--day", "6"], "7"),
        (&["--day", "soon"], "--day"),
        (&["--stir", "120%"], "0 % to 100 %"),
        (&["--stir", "a lot"], "--stir"),
        (&["--stir", "20"], "30 %"),
        (&["--away", "0d"], "1 h to 365 d"),
        (&["--away", "2 years"], "--away"),
        (&["--bucket", "0L"], "0.1 L to 1000 L"),
        (&["--bucket", "8"], "--bucket"),
    ] {
        let ran = lentic(&[&["upkeep", TANK], wrong].concat(), "");
        assert_eq!((ran.code, ran.stdout.as_str()), (2, ""), "{wrong:?}");
        assert!(ran.stderr.contains(says), "{wrong:?}: {}", ran.stderr);
    }
    let pruned = format!("{MINIMAL}\n[harvest]\ntaken = [{{ day = 60 }}]\n");
    let ran = lentic(&["upkeep", "-"], &pruned);
    assert_eq!(ran.code, 2);
    assert!(
        ran.stderr.contains("nothing was taken out"),
        "{}",
        ran.stderr
    );
}

#[test]
fn the_year_is_a_row_a_week_and_a_page_with_charts() {
    let csv = lentic(&["upkeep", TANK, "--format", "csv", "--members", "0"], "").stdout;
    assert!(csv.starts_with("day,nitrate_mg_l,hardness_dgh,"), "{csv}");
    assert_eq!(csv.lines().count(), 54);
    let days: Vec<u32> = csv
        .lines()
        .skip(1)
        .filter_map(|line| line.split(',').next()?.parse().ok())
        .collect();
    assert_eq!((days.first(), days.last()), (Some(&366), Some(&730)));
    let page = lentic(&["upkeep", TANK, "--format", "html", "--members", "4"], "").stdout;
    for part in [
        "nitrate, mg NO3/L",
        "hardness, dGH",
        "plants, g fresh",
        "<svg",
    ] {
        assert!(page.contains(part), "{part}");
    }
}

#[test]
fn a_result_of_upkeep_is_explained_and_worked() {
    let ran = lentic(
        &[
            "explain",
            "upkeep.hardness_rise_dgh_per_month",
            TANK,
            "--members",
            "0",
        ],
        "",
    );
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    assert!(ran.stdout.contains("dGH/month"), "{}", ran.stdout);
    let section = lentic(&["explain", "upkeep"], "");
    assert_eq!(section.code, 0, "{}", section.stderr);
    assert!(
        section.stdout.contains("upkeep.top_up_l_per_week"),
        "{}",
        section.stdout
    );
}

/// What a topic is worked through with, and a line of it.
#[test]
fn every_topic_of_upkeep_and_new_water_is_worked_through() {
    for (topic, line) in [
        ("upkeep.harvest", "cover that floaters are thinned to"),
        ("upkeep.nitrogen", "out of the soil"),
        ("upkeep.potassium", "potassium taken out"),
        ("upkeep.nitrate", "before a change, in the end"),
        ("upkeep.creep", "hardness of what is topped up"),
        ("upkeep.alkalinity", "less what nitrogen uses"),
        ("upkeep.ageing", "set free after 5 years"),
        ("upkeep.pouring", "poured back from 30 cm"),
        ("upkeep.stir", "share that is borne at once"),
        ("upkeep.settling", "clears in"),
        ("upkeep.away", "the level falls by"),
        ("upkeep.move", "highest nitrite after"),
        ("upkeep.bucket", "lasts for"),
        ("water.mixture", "share of tap water"),
        ("water.salts", "dissolved in"),
        ("water.pace", "pH once it has taken"),
        ("water.chlorine", "ammonia left"),
        ("water.warmth", "tank"),
    ] {
        let ran = lentic(&["explain", topic, TANK, "--members", "0"], "");
        assert_eq!(ran.code, 0, "{topic}: {}", ran.stderr);
        let working = ran.stdout.split("Working").nth(1);
        assert!(
            working.is_some_and(|working| working.contains(line)),
            "{topic}: {}",
            ran.stdout
        );
    }
    let hungry = "demo-tanks/pale-in-the-second-year.toml";
    for (topic, line) in [
        ("water.dosing", "iron chelate: each"),
        ("water.root_zone", "spots"),
    ] {
        let ran = lentic(&["explain", topic, hungry, "--members", "0"], "");
        assert!(ran.stdout.contains(line), "{topic}: {}", ran.stdout);
    }
}

#[test]
fn a_tank_to_watch_ends_with_one_where_it_is_asked_for() {
    let rising = format!(
        "{MINIMAL}\n[water]\nnitrate = \"200 mg/L\"\nchange = {{ share = \"25 %\", every = \"7 d\" }}\n"
    );
    for (fail_on, code) in [("watch", 1), ("act", 0)] {
        let ran = lentic(
            &["upkeep", "-", "--members", "0", "--fail-on", fail_on],
            &rising,
        );
        assert_eq!(ran.code, code, "{}{}", ran.stdout, ran.stderr);
    }
    assert_eq!(
        lentic(
            &["upkeep", TANK, "--members", "0", "--fail-on", "watch"],
            ""
        )
        .code,
        0
    );
}
