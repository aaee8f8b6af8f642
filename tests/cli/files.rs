//! Reading specs.

use std::fs;

use crate::command::{lentic, lentic_in, root};
use crate::demo;

pub(crate) const MINIMAL: &str = "[tank]\nshape = \"box\"\nsize = \"40 x 25 x 25 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n";

#[test]
fn a_spec_is_read_from_standard_input() {
    let ran = lentic(&["plan", "-"], MINIMAL);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    assert!(ran.stdout.starts_with("unnamed tank\n"));
}

#[test]
fn a_bad_spec_ends_with_2_and_writes_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("plan.json");
    let bad = MINIMAL.replace("40 mm", "40 cn");
    let ran = lentic(
        &[
            "plan",
            "-",
            "--format",
            "json",
            "--out",
            out.to_str().unwrap(),
        ],
        &bad,
    );
    assert_eq!(ran.code, 2);
    assert!(ran.stdout.is_empty());
    assert!(ran.stderr.contains("cap.depth"), "{}", ran.stderr);
    assert!(!out.exists());
}

#[test]
fn what_cannot_be_read_is_named() {
    let folder = tempfile::tempdir().unwrap();
    let latin = folder.path().join("latin.toml");
    fs::write(&latin, [b'n', b'=', 0xe9]).unwrap();
    let large = folder.path().join("large.toml");
    fs::write(&large, "# filler\n".repeat(6_000_000)).unwrap();
    let large_and_accented = folder.path().join("accented.toml");
    fs::write(&large_and_accented, "\u{e9}".repeat(6_000_000)).unwrap();
    let empty = folder.path().join("empty.toml");
    fs::write(&empty, "").unwrap();
    for (path, word) in [
        (folder.path().join("missing.toml"), "cannot read"),
        (folder.path().to_owned(), "cannot read"),
        (latin, "UTF-8"),
        (large, "1 MiB"),
        (large_and_accented, "1 MiB"),
        (empty, "tank"),
    ] {
        let ran = lentic(&["plan", path.to_str().unwrap()], "");
        assert_eq!(ran.code, 2, "{}", path.display());
        assert!(
            ran.stderr.contains(word),
            "{}: {}",
            path.display(),
            ran.stderr
        );
    }
}

#[test]
fn fail_on_ends_with_1_at_the_status_asked_and_above() {
    let thin = MINIMAL.replace("40 mm", "20 mm");
    let planted = format!("{thin}[[plants]]\nname = \"duckweed\"\namount = \"40 %\"\n");
    for (arguments, code) in [
        (vec!["check", "-"], 0),
        (vec!["check", "-", "--fail-on", "watch"], 1),
        (vec!["check", "-", "--fail-on", "act"], 0),
    ] {
        let few = [&arguments[..], &["--members", "8"]].concat();
        assert_eq!(lentic(&few, &planted).code, code, "{arguments:?}");
    }
    let few = ["plan", "-", "--fail-on", "act", "--members", "8"];
    assert_eq!(lentic(&few, MINIMAL).code, 1);
}

#[test]
fn colour_is_used_only_where_asked_for() {
    let plan = |more: &[&str]| {
        let few = ["plan", "-", "--members", "0"];
        lentic(&[&few[..], more].concat(), MINIMAL)
    };
    let plain = plan(&[]);
    assert!(!plain.stdout.contains('\u{1b}'));
    let colored = plan(&["--color", "always"]);
    assert!(colored.stdout.contains("\u{1b}["));
    let never = plan(&["--color", "never"]);
    assert_eq!(never.stdout, plain.stdout);
}

#[test]
fn units_of_the_text_follow_the_option() {
    let few = ["--members", "0", "--units"];
    let us = lentic(&[&["plan", "-"], &few[..], &["us"]].concat(), MINIMAL);
    assert!(us.stdout.contains("US gal") && us.stdout.contains(" lb"));
    let path = root().join("demo-tanks/kitchen-counter-20x10x12.toml");
    let plan = ["plan", path.to_str().unwrap()];
    let metric = lentic(&[&plan[..], &few, &["metric"]].concat(), "");
    assert!(!metric.stdout.contains("US gal"), "{}", metric.stdout);
}

#[test]
fn a_demo_tank_is_planned_from_its_own_folder() {
    for tank in demo::tanks().into_iter().step_by(9) {
        let name = tank.trim_start_matches("demo-tanks/");
        let ran = lentic_in(
            &root().join("demo-tanks"),
            &["plan", name, "--members", "0"],
            "",
        );
        assert_eq!(ran.code, 0, "{tank}: {}", ran.stderr);
    }
}
