//! Nothing of a keeper's text drives a terminal, a spreadsheet or a page.

use std::fs;
use std::process::{Command, Output};

use crate::command::{lentic, root};
use crate::files::MINIMAL;

/// Turns the line, clears the screen, rings, breaks the line.
const HOSTILE: &str = "a\u{202e}b\u{1b}[2Jc\u{7}d\u{9b}31me\u{2066}f\u{2028}g\u{200f}h";

fn is_tame(text: &str) -> bool {
    text.chars()
        .all(|c| c == '\n' || lentic::units::is_printable(c))
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

/// Runs the command where colour is forced, as a terminal would have it.
fn colored(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_lentic"))
        .args(arguments)
        .env_remove("NO_COLOR")
        .env("CLICOLOR_FORCE", "1")
        .current_dir(root())
        .output()
        .unwrap()
}

/// Tame once whole colour sequences are taken out, which the hostile text holds none of.
fn is_tame_beside_colours(text: &str) -> bool {
    let mut pieces = text.split("\u{1b}[");
    let mut left = pieces.next().unwrap_or_default().to_owned();
    for piece in pieces {
        let end = piece.trim_start_matches(|c: char| c.is_ascii_digit() || c == ';');
        let Some(end) = end.strip_prefix('m') else {
            return false;
        };
        left += end;
    }
    is_tame(&left)
}

const TANK: &str = "demo-tanks/reading-room-cube.toml";

/// Command lines in which X stands for a hostile text.
const CALLS: &[&[&str]] = &[
    &["X"],
    &["plan", "X"],
    &["plan", TANK, "--X"],
    &["plan", TANK, "--format", "X"],
    &["plan", TANK, "--members", "X"],
    &["check", TANK, "--readings", "X"],
    &["compare", "X"],
    &["compare", TANK, "--columns", "X"],
    &["compare", TANK, "--subject-to", "X"],
    &["compare", TANK, "--subject-to", "weight.total_kg>=X"],
    &["compare", TANK, "--shard", "X"],
    &["compare", TANK, "--sort", "X"],
    &[
        "solve",
        "X",
        TANK,
        "--from=1mm",
        "--to=2mm",
        "--until=weight.total_kg<=1",
    ],
    &[
        "solve",
        "cap.depth",
        TANK,
        "--from=X",
        "--to=2mm",
        "--until=weight.total_kg<=1",
    ],
    &["explain", "X"],
    &["list", "X"],
    &["new", "--size", "X"],
    &["new", "--size", "60 x 30 x 36 cmX"],
    &["man", "--folder", "X"],
];

/// What is varied, with X as above.
const VARIED: &[&str] = &[
    "X",
    "X=1",
    "cap.depth=X",
    "cap.depth=1..2X/3",
    "cap.depth=20Xmm,30mm",
    "cap.material=X",
    "cap.material=play_sandX",
    "cap.material=play\u{1b}sand",
    "cap.material=play\u{202e}sand",
    "cap.material=play\u{2028}sand, filter_sand",
    "soil.depth=20\u{1b}mm",
    "soil.depth=20\u{2028}mm",
];

#[test]
fn no_argument_comes_back_raw() {
    let varied = VARIED.iter().map(|text| {
        vec![
            "compare",
            TANK,
            "--members=0",
            "--columns=weight",
            "--vary",
            *text,
        ]
    });
    for call in CALLS.iter().map(|call| call.to_vec()).chain(varied) {
        let typed: Vec<String> = call.iter().map(|part| part.replace('X', HOSTILE)).collect();
        let typed: Vec<&str> = typed.iter().map(String::as_str).collect();
        let ran = colored(&typed);
        let text = String::from_utf8([ran.stdout, ran.stderr].concat()).unwrap();
        assert!(is_tame_beside_colours(&text), "{call:?}: {text:?}");
    }
}

#[test]
fn an_excerpt_of_what_is_no_toml_is_drawn_tame() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("bad.toml");
    for text in [
        format!("name = \"{HOSTILE}\"\n"),
        format!("a {HOSTILE} = 1\n"),
        format!("[tank\nx = '''{HOSTILE}\n"),
        format!("name = {HOSTILE}\n{MINIMAL}"),
        format!("{MINIMAL}[cap]\n# {HOSTILE}\n"),
    ] {
        fs::write(&path, &text).unwrap();
        for color in ["always", "never"] {
            let ran = colored(&["plan", path.to_str().unwrap(), "--color", color]);
            assert_eq!(ran.status.code(), Some(2), "{text:?}");
            let stderr = String::from_utf8(ran.stderr).unwrap();
            assert!(is_tame_beside_colours(&stderr), "{text:?}: {stderr:?}");
        }
    }
}

/// However long a keeper's text is, what is said of it fits on a screen or two.
#[test]
fn a_long_text_is_cut_where_it_is_quoted() {
    let long = "x".repeat(300_000);
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("bad.toml");
    for text in [
        format!("{long} = 1\n{MINIMAL}"),
        format!("name = \"{long}\"\n{MINIMAL}"),
        MINIMAL.replace("25 mm", &long),
        MINIMAL.replace("loam_topsoil", &long),
        MINIMAL.replace("\"box\"", &format!("\"{long}\"")),
        format!("[{long}]\n{MINIMAL}"),
        long.clone(),
    ] {
        fs::write(&path, &text).unwrap();
        let ran = lentic(&["plan", path.to_str().unwrap()], "");
        assert_eq!(ran.code, 2, "{}", ran.stdout);
        let start: String = text.chars().take(30).collect();
        assert!(
            ran.stderr.len() < 5_000,
            "{} bytes of {start}",
            ran.stderr.len()
        );
    }
    let log = folder.path().join("log.csv");
    for text in [
        format!("day,{long}\n1,2\n"),
        format!("day,ammonia\n{long},2\n"),
        format!("day,ammonia\n1,{long}\n"),
    ] {
        fs::write(&log, text).unwrap();
        let ran = lentic(&["check", TANK, "--readings", log.to_str().unwrap()], "");
        assert_eq!(ran.code, 2, "{}", ran.stdout);
        assert!(ran.stderr.len() < 5_000, "{} bytes", ran.stderr.len());
    }
}

#[test]
fn a_formula_is_text_in_csv_and_a_number_below_zero_is_a_number() {
    let cold = "room.temperature=-5..-4C/2";
    let quick = ["--members", "0", "--format", "csv"];
    for name in [
        "=1+1",
        "+1+1",
        "-1+1",
        "@A1",
        "\t=1+1",
        "\r=1+1",
        "\u{2028}=1+1",
    ] {
        let spec = format!("name = {}\n{MINIMAL}", toml::Value::from(name));
        for call in [&["plan", "-"][..], &["compare", "-", "--vary", cold]] {
            let ran = lentic(&[call, &quick].concat(), &spec);
            assert_eq!(ran.code, 0, "{}", ran.stderr);
            let marked = ran.stdout.contains("'=1") || ran.stdout.contains(&format!("'{name}"));
            assert!(
                marked || ran.stdout.contains("' =1"),
                "{name:?}: {}",
                ran.stdout
            );
        }
    }
    let call = [
        "compare",
        TANK,
        "--columns",
        "weight.total_kg",
        "--vary",
        cold,
    ];
    let ran = lentic(&[&call[..], &quick].concat(), "");
    let rows: Vec<&str> = ran.stdout.lines().skip(1).collect();
    assert!(
        rows[0].contains(",-5.0,") && rows[1].contains(",-4.0,"),
        "{rows:?}"
    );
}

/// Marks that turn the line stay in a page, which keeps each text to itself.
#[test]
fn a_name_is_no_markup_in_a_page() {
    let name = format!("{HOSTILE}</title><script>alert(1)</script>&\"'");
    let spec = format!("name = {}\n{MINIMAL}", toml::Value::from(name.as_str()));
    for command in ["plan", "compare", "night", "startup", "check"] {
        let ran = lentic(&[command, "-", "--members", "0", "--format", "html"], &spec);
        assert_eq!(ran.code, 0, "{}", ran.stderr);
        assert!(!ran.stdout.contains("<script"), "{command}");
        let is_control = |c: char| c.is_control() && c != '\n';
        assert!(!ran.stdout.contains(is_control), "{command}");
        assert!(ran.stdout.contains("alert(1)"), "{command}");
    }
}
