//! Reading specs and writing results.

use std::fs;

use crate::command::{lentic, lentic_in, root};
use crate::demo;

const MINIMAL: &str = "[tank]\nshape = \"box\"\nsize = \"40 x 25 x 25 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n";

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
fn out_is_written_whole_and_keeps_permissions() {
    use std::os::unix::fs::PermissionsExt;
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("plan.txt");
    fs::write(&out, "old").unwrap();
    fs::set_permissions(&out, fs::Permissions::from_mode(0o640)).unwrap();
    let ran = lentic(&["plan", "-", "--out", out.to_str().unwrap()], MINIMAL);
    assert_eq!((ran.code, ran.stdout.as_str()), (0, ""));
    assert_eq!(
        fs::read_to_string(&out).unwrap(),
        lentic(&["plan", "-"], MINIMAL).stdout
    );
    assert_eq!(
        fs::metadata(&out).unwrap().permissions().mode() & 0o777,
        0o640
    );
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
fn out_refuses_a_directory_and_a_missing_folder() {
    let folder = tempfile::tempdir().unwrap();
    for out in [
        folder.path().to_owned(),
        folder.path().join("missing/plan.txt"),
    ] {
        let ran = lentic(&["plan", "-", "--out", out.to_str().unwrap()], MINIMAL);
        assert_eq!(ran.code, 2, "{}", out.display());
        assert!(ran.stderr.contains("nothing was written"), "{}", ran.stderr);
    }
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
        assert_eq!(lentic(&arguments, &planted).code, code, "{arguments:?}");
    }
    assert_eq!(lentic(&["plan", "-", "--fail-on", "act"], MINIMAL).code, 1);
}

#[test]
fn colour_is_used_only_where_asked_for() {
    let plain = lentic(&["plan", "-"], MINIMAL);
    assert!(!plain.stdout.contains('\u{1b}'));
    let colored = lentic(&["plan", "-", "--color", "always"], MINIMAL);
    assert!(colored.stdout.contains("\u{1b}["));
    let never = lentic(&["plan", "-", "--color", "never"], MINIMAL);
    assert_eq!(never.stdout, plain.stdout);
}

#[test]
fn a_name_cannot_drive_the_terminal() {
    let hostile = format!("name = \"x\\u001b[31mred\\u0007\"\n{MINIMAL}");
    let ran = lentic(&["plan", "-"], &hostile);
    assert!(!ran.stdout.contains(['\u{1b}', '\u{7}']), "{}", ran.stdout);
    let misspelt = MINIMAL.replace("loam_topsoil", "loam\\u001b[31m");
    let ran = lentic(&["plan", "-"], &misspelt);
    assert_eq!(ran.code, 2);
    assert!(!ran.stderr.contains('\u{1b}'), "{}", ran.stderr);
}

/// Turns the line, clears the screen, rings, breaks the line.
const HOSTILE: &str = "a\u{202e}b\u{1b}[2Jc\u{7}d\u{9b}31me\u{2066}f\u{2028}g\u{200f}h";

fn is_tame(text: &str) -> bool {
    text.chars()
        .all(|c| c == '\n' || lentic::units::is_printable(c))
}

#[test]
fn no_format_shows_a_hostile_name_raw_and_json_keeps_it() {
    let toml = toml::Value::from(HOSTILE).to_string();
    let spec = format!("name = {toml}\n{MINIMAL}");
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(format!("{HOSTILE}.toml"));
    fs::write(&path, spec).unwrap();
    let path = path.to_str().unwrap();
    for command in ["plan", "check", "compare", "startup"] {
        for format in ["text", "json", "csv"] {
            let ran = lentic(&[command, path, "--format", format, "--members", "0"], "");
            assert_eq!(ran.code, 0, "{}", ran.stderr);
            assert!(is_tame(&ran.stdout), "{command} {format}: {:?}", ran.stdout);
        }
    }
    let json = lentic(&["plan", path, "--format", "json", "--members", "0"], "");
    let plan: serde_json::Value = serde_json::from_str(&json.stdout).unwrap();
    assert_eq!(plan["name"], HOSTILE);
}

#[test]
fn no_message_shows_a_hostile_text_raw() {
    let folder = tempfile::tempdir().unwrap();
    let bad = folder.path().join(format!("{HOSTILE}.toml"));
    let toml = toml::Value::from(HOSTILE).to_string();
    let name = toml.trim_matches('"');
    for text in [
        MINIMAL.replace("loam_topsoil", name),
        MINIMAL.replace("25 mm", name),
        MINIMAL.replace("\"box\"", &toml),
        MINIMAL.replace("depth", &toml),
        MINIMAL.replace("[cap]", &format!("[cap.{toml}]")),
        MINIMAL.replace("25 mm", HOSTILE),
        format!("# {HOSTILE}\nname = 3\n{MINIMAL}"),
        HOSTILE.to_owned(),
    ] {
        fs::write(&bad, text).unwrap();
        for command in ["plan", "compare"] {
            let ran = lentic(&[command, bad.to_str().unwrap()], "");
            assert_eq!(ran.code, 2, "{}", ran.stdout);
            assert!(is_tame(&ran.stdout), "{:?}", ran.stdout);
            assert!(is_tame(&ran.stderr), "{:?}", ran.stderr);
        }
    }
    let missing = folder.path().join(format!("{HOSTILE}/missing.toml"));
    let ran = lentic(&["plan", missing.to_str().unwrap()], "");
    assert!(is_tame(&ran.stderr), "{:?}", ran.stderr);
    let ran = lentic(&["plan", "-", "--out", missing.to_str().unwrap()], MINIMAL);
    assert!(ran.code == 2 && is_tame(&ran.stderr), "{:?}", ran.stderr);
    let ran = lentic(&["new", "--out", bad.to_str().unwrap()], "");
    assert!(ran.code == 2 && is_tame(&ran.stderr), "{:?}", ran.stderr);
}

#[test]
fn a_closed_pipe_ends_quietly() {
    let program = env!("CARGO_BIN_EXE_lentic");
    let script = format!("'{program}' list sources --format json | head -n 1");
    let output = std::process::Command::new("sh")
        .args(["-c", &script])
        .output()
        .unwrap();
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
}

#[test]
fn units_of_the_text_follow_the_option() {
    let us = lentic(&["plan", "-", "--units", "us"], MINIMAL);
    assert!(us.stdout.contains("US gal") && us.stdout.contains(" lb"));
    let path = root().join("demo-tanks/kitchen-counter-20x10x12.toml");
    let metric = lentic(&["plan", path.to_str().unwrap(), "--units", "metric"], "");
    assert!(!metric.stdout.contains("US gal"), "{}", metric.stdout);
}

#[test]
fn every_demo_tank_is_planned_from_its_own_folder() {
    for tank in demo::tanks() {
        let name = tank.trim_start_matches("demo-tanks/");
        let ran = lentic_in(
            &root().join("demo-tanks"),
            &["plan", name, "--members", "0"],
            "",
        );
        assert_eq!(ran.code, 0, "{tank}: {}", ran.stderr);
    }
}
