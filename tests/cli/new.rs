//! The starter spec.

use crate::command::lentic;

#[test]
fn the_starter_plans_well_in_both_systems() {
    for units in ["metric", "us"] {
        let starter = lentic(&["new", "--units", units], "");
        assert_eq!(starter.code, 0, "{}", starter.stderr);
        let plan = lentic(&["plan", "-", "--fail-on", "watch"], &starter.stdout);
        assert_eq!(plan.code, 0, "{units}: {}{}", plan.stdout, plan.stderr);
    }
}

/// Inside sizes that are common in the trade, from 10 to 200 L, flat to tall.
const SIZES: [&str; 12] = [
    "30 x 20 x 17 cm",
    "22 x 22 x 22 cm",
    "20 x 20 x 26 cm",
    "16 x 8 x 10 in",
    "40 x 25 x 25 cm",
    "45 x 30 x 30 cm",
    "30 x 30 x 60 cm",
    "30 x 12 x 12 in",
    "80 x 35 x 40 cm",
    "36 x 18 x 16 in",
    "100 x 50 x 40 cm",
    "120 x 40 x 41 cm",
];

#[test]
fn the_starter_of_any_usual_size_plans_well() {
    for size in SIZES {
        for units in ["metric", "us"] {
            let starter = lentic(&["new", "--size", size, "--units", units], "");
            assert_eq!(starter.code, 0, "{}", starter.stderr);
            assert!(starter.stdout.contains(size), "{size}");
            let plan = lentic(
                &["plan", "-", "--fail-on", "watch", "--members", "8"],
                &starter.stdout,
            );
            assert_eq!(
                plan.code, 0,
                "{size} {units}: {}{}",
                plan.stdout, plan.stderr
            );
        }
    }
}

#[test]
fn the_starter_of_every_size_as_sold_is_that_tank_and_plans_well() {
    for sold in lentic::catalogue::sizes() {
        let starter = lentic(&["new", "--size", &sold.name], "");
        assert_eq!(starter.code, 0, "{}: {}", sold.name, starter.stderr);
        let design = lentic::spec::parse(&starter.stdout).unwrap();
        let brimful = design.vessel().brimful().litres();
        assert!(
            (brimful - sold.inside_volume().litres()).abs() < 1e-6,
            "{}",
            sold.name
        );
        let plan = lentic(
            &["plan", "-", "--fail-on", "watch", "--members", "8"],
            &starter.stdout,
        );
        assert_eq!(plan.code, 0, "{}: {}", sold.name, plan.stdout);
    }
}

#[test]
fn a_size_that_cannot_be_a_tank_is_refused_with_the_rule() {
    for (size, word) in [
        ("60 x 30 cm", "3 dimensions"),
        ("60 x 30 x 36", "unit"),
        ("60 x 30 x 36 parsec", "parsec"),
        ("5 x 5 x 5 cm", "12 cm"),
        ("60 x 30 x 900 cm", "300 cm"),
        ("", "size"),
    ] {
        let ran = lentic(&["new", "--size", size], "");
        assert_eq!((ran.code, ran.stdout.as_str()), (2, ""), "{size}");
        assert!(ran.stderr.contains(word), "{size}: {}", ran.stderr);
    }
}

#[test]
fn inch_marks_in_a_size_do_not_break_the_spec() {
    let starter = lentic(&["new", "--size", "16\" x 8\" x 10\""], "");
    let plan = lentic(&["plan", "-", "--members", "0"], &starter.stdout);
    assert_eq!(plan.code, 0, "{}", plan.stderr);
}

#[test]
fn an_existing_file_is_kept() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("tank.toml");
    std::fs::write(&path, "mine").unwrap();
    for taken in [path.as_path(), folder.path()] {
        let ran = lentic(&["new", "--out", taken.to_str().unwrap()], "");
        assert_eq!(ran.code, 2);
        assert!(ran.stderr.contains("was kept"), "{}", ran.stderr);
    }
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}
