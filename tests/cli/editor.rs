//! What editors, shells and manuals are given.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::command::{lentic, lentic_in};

/// Every command that the help names.
fn commands() -> Vec<String> {
    let help = lentic(&["--help"], "").stdout;
    let after = help.split_once("Commands:\n").expect("a list").1;
    after
        .lines()
        .take_while(|line| line.starts_with("  "))
        .filter_map(|line| line[2..].split(' ').next().map(str::to_owned))
        .filter(|name| !name.is_empty() && name != "help")
        .collect()
}

#[test]
fn the_schema_is_the_one_kept_in_the_tree() {
    let ran = lentic(&["schema"], "");
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    let kept = fs::read_to_string(
        Path::new(env!("CARGO_MANIFEST_DIR")).join("src/spec/lentic.schema.json"),
    );
    assert_eq!(Some(ran.stdout), kept.ok());
}

#[test]
fn the_starter_names_the_schema_that_it_says_how_to_write() {
    let starter = lentic(&["new"], "").stdout;
    let named = starter
        .lines()
        .next()
        .and_then(|line| line.strip_prefix("#:schema ./"));
    let named = named.expect("a schema in the first line");
    let says = starter
        .lines()
        .find_map(|line| line.strip_prefix("#   lentic "))
        .expect("the command that writes it");
    let folder = tempfile::tempdir().unwrap();
    let arguments: Vec<&str> = says.split_whitespace().collect();
    let ran = lentic_in(folder.path(), &arguments, "");
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    assert!(folder.path().join(named).is_file(), "{named}");
}

#[test]
fn completions_know_every_command_and_are_scripts_of_their_shell() {
    let commands = commands();
    assert!(commands.len() >= 10, "{commands:?}");
    for shell in ["bash", "zsh", "fish"] {
        let ran = lentic(&["completions", shell], "");
        assert_eq!((ran.code, ran.stderr.as_str()), (0, ""), "{shell}");
        for name in &commands {
            assert!(ran.stdout.contains(name.as_str()), "{shell}: {name}");
        }
        for word in [
            "fail-on",
            "cap.thin",
            "weight.total_kg",
            "cap.depth",
            "boudreau_1996",
            "play_sand",
        ] {
            assert!(ran.stdout.contains(word), "{shell}: {word}");
        }
    }
    assert_eq!(lentic(&["completions", "abacus"], "").code, 2);
}

#[test]
fn bash_completes_a_command_and_an_option() {
    let folder = tempfile::tempdir().unwrap();
    let script = folder.path().join("lentic.bash");
    fs::write(&script, lentic(&["completions", "bash"], "").stdout).unwrap();
    for (words, expected) in [
        ("lentic sta", "startup"),
        ("lentic plan --fo", "--format"),
        // the shell's own names of files, and no dash
        ("lentic plan ''", ""),
        ("lentic list so", "soils\nsources"),
        ("lentic explain cap.lea", "cap.leak"),
        ("lentic explain weight.tot", "weight.total_kg"),
        ("lentic explain boudreau_1996", "boudreau_1996"),
        ("lentic solve water.alk", "water.alkalinity"),
        ("lentic compare --sort weight.tot", "weight.total_kg"),
        ("lentic mend --keep soil.mat", "soil.material"),
        ("lentic compare --vary light.ho", "light.hours="),
        ("lentic compare --vary cap.material = pla", "play_sand"),
    ] {
        let words: Vec<&str> = words.split(' ').collect();
        let (last, before) = (words[words.len() - 1], words[words.len() - 2]);
        let line = format!(
            "source '{}'; COMP_WORDS=({}); COMP_CWORD={}; __lentic_complete lentic {last} '{before}'; printf '%s\\n' \"${{COMPREPLY[@]}}\"",
            script.display(),
            words.join(" "),
            words.len() - 1,
        );
        let output = Command::new("bash").args(["-c", &line]).output().unwrap();
        let completed = String::from_utf8_lossy(&output.stdout);
        assert_eq!(completed.trim(), expected, "{output:?}");
    }
}

#[test]
fn the_folder_of_completions_is_made() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join(".config/fish/completions/lentic.fish");
    let ran = lentic(&["completions", "fish", "--out", out.to_str().unwrap()], "");
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let written = fs::read_to_string(&out).unwrap();
    assert_eq!(written, lentic(&["completions", "fish"], "").stdout);
}

#[test]
fn each_command_has_a_manual_page_with_its_options() {
    let main = lentic(&["man"], "");
    assert_eq!((main.code, main.stderr.as_str()), (0, ""));
    assert!(main.stdout.contains(".TH lentic 1"), "{}", main.stdout);
    let folder = tempfile::tempdir().unwrap();
    let ran = lentic(&["man", "--folder", folder.path().to_str().unwrap()], "");
    assert_eq!((ran.code, ran.stdout.as_str()), (0, ""), "{}", ran.stderr);
    let pages = fs::read_dir(folder.path()).unwrap().count();
    assert_eq!(pages, commands().len() + 1);
    let written = fs::read_to_string(folder.path().join("lentic.1")).unwrap();
    assert_eq!(written, main.stdout);
    for name in commands() {
        let page = fs::read_to_string(folder.path().join(format!("lentic-{name}.1"))).unwrap();
        assert!(page.contains(".SH SYNOPSIS"), "{name}");
        assert!(page.contains(".SH EXAMPLES"), "{name}");
        assert!(!page.contains(".SH EXTRA"), "{name}");
        assert!(
            main.stdout.contains(&format!("lentic\\-{name}(1)")),
            "{name}"
        );
    }
    let missing = folder.path().join("missing");
    let ran = lentic(&["man", "--folder", missing.to_str().unwrap()], "");
    assert_eq!(ran.code, 2);
    assert!(ran.stderr.contains("cannot write"), "{}", ran.stderr);
}
