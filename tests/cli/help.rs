//! Help and wrong arguments.

use std::fs::Permissions;
use std::os::unix::fs::PermissionsExt;
use std::path::Path;
use std::process::Command;

use crate::command::{lentic, root};

#[test]
fn without_arguments_commands_to_try_are_shown() {
    let ran = lentic(&[], "");
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    let tried: Vec<&str> = ran
        .stdout
        .lines()
        .filter(|line| line.starts_with("  lentic "))
        .collect();
    assert_eq!(tried.len(), 4, "{}", ran.stdout);
    assert!(ran.stdout.lines().count() < 12, "{}", ran.stdout);
}

#[test]
fn the_commands_to_try_do_what_they_say() {
    let (folder, program) = (tempfile::tempdir().unwrap(), with_few_members());
    for line in lentic(&[], "").stdout.lines() {
        let Some(command) = line.strip_prefix("  ") else {
            continue;
        };
        let (typed, _) = command.split_once("  ").expect("what it does");
        assert_eq!(
            complaint(folder.path(), program.path(), typed),
            "",
            "{typed}"
        );
    }
}

#[test]
fn help_and_version_are_no_errors() {
    for arguments in [vec!["--help"], vec!["plan", "--help"], vec!["--version"]] {
        let ran = lentic(&arguments, "");
        assert_eq!((ran.code, ran.stderr.as_str()), (0, ""), "{arguments:?}");
        assert!(!ran.stdout.is_empty());
    }
}

#[test]
fn a_wrong_option_ends_with_2() {
    let ran = lentic(&["plan", "x.toml", "--formt", "json"], "");
    assert_eq!(ran.code, 2);
    assert!(ran.stderr.contains("--format"), "{}", ran.stderr);
}

/// The commands that the help shows examples for.
const COMMANDS: [&str; 15] = [
    "new",
    "plan",
    "mend",
    "startup",
    "night",
    "upkeep",
    "water",
    "check",
    "compare",
    "solve",
    "list",
    "explain",
    "schema",
    "completions",
    "man",
];

/// The example lines of a help text, those that go on joined.
fn examples(help: &str) -> Vec<String> {
    let mut examples: Vec<String> = Vec::new();
    let mut goes_on = false;
    for line in help.lines() {
        let Some(line) = line.strip_prefix("    ") else {
            continue;
        };
        let (text, more) = match line.strip_suffix('\\') {
            Some(text) => (text.trim(), true),
            None => (line.trim(), false),
        };
        match examples.last_mut() {
            Some(last) if goes_on => *last = format!("{last} {text}"),
            _ if ["lentic ", "seq ", "printf ", "mkdir "]
                .iter()
                .any(|start| text.starts_with(start)) =>
            {
                examples.push(text.to_owned());
            }
            _ => continue,
        }
        goes_on = more;
    }
    examples
}

/// A folder with a tank under every name that the examples use.
fn folder_of_examples() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let cube = root().join("demo-tanks/reading-room-cube.toml");
    for name in [
        "tanks",
        ".local/share/bash-completion/completions",
        ".config/fish/completions",
    ] {
        std::fs::create_dir_all(folder.path().join(name)).unwrap();
    }
    for name in ["cube.toml", "shelf.toml", "hall.toml", "tanks/one.toml"] {
        std::fs::copy(&cube, folder.path().join(name)).unwrap();
    }
    folder
}

/// A folder with the real command as `lentic`, which follows a tank a few times where its
/// line does not say how often.
fn with_few_members() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let program = env!("CARGO_BIN_EXE_lentic");
    let script = format!(
        "#!/bin/sh\ncase $1 in\nplan|mend|startup|night|upkeep|check|compare|solve|explain) exec '{program}' \"$@\" --members 2 ;;\n*) exec '{program}' \"$@\" ;;\nesac\n"
    );
    let path = folder.path().join("lentic");
    std::fs::write(&path, script).unwrap();
    std::fs::set_permissions(&path, Permissions::from_mode(0o755)).unwrap();
    folder
}

/// Runs a shell line at home in a folder, with the command of another as `lentic`; gives
/// what it complains of.
fn complaint(folder: &Path, program: &Path, line: &str) -> String {
    let path = std::env::var_os("PATH").unwrap_or_default();
    let search = [program.to_owned()]
        .into_iter()
        .chain(std::env::split_paths(&path));
    let ran = Command::new("sh")
        .args(["-c", line])
        .current_dir(folder)
        .env("PATH", std::env::join_paths(search).unwrap())
        .env("HOME", folder)
        .output()
        .unwrap();
    let code = match ran.status.code() {
        Some(0) => String::new(),
        code => format!("exit code {code:?}"),
    };
    format!("{}{code}", String::from_utf8(ran.stderr).unwrap())
}

/// What a shell line writes, as seen from home; of shards the first.
fn written(line: &str) -> Vec<String> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let named = words
        .windows(2)
        .filter(|pair| ["--out", "--folder", ">"].contains(&pair[0]));
    named
        .map(|pair| pair[1].trim_matches([';', '\'', '"']))
        .map(|path| path.trim_start_matches("~/").replace("{}", "1"))
        .collect()
}

/// Whether a file is not empty, or a folder has an entry.
fn holds_something(path: &Path) -> bool {
    match std::fs::read_dir(path) {
        Ok(mut entries) => entries.next().is_some(),
        Err(_) => std::fs::metadata(path).is_ok_and(|file| file.len() > 0),
    }
}

#[test]
fn every_example_of_the_help_runs_and_writes_what_it_names() {
    let program = with_few_members();
    for command in COMMANDS {
        let help = lentic(&[command, "--help"], "").stdout;
        let examples = examples(&help);
        assert!(!examples.is_empty(), "{command} shows no example");
        let folder = folder_of_examples();
        if command == "new" {
            // it keeps what is there
            std::fs::remove_file(folder.path().join("shelf.toml")).unwrap();
        }
        for example in examples {
            let line = example.replace("in a folder of $fpath", "");
            assert_eq!(
                complaint(folder.path(), program.path(), &line),
                "",
                "{example}"
            );
            for path in written(&line) {
                assert!(
                    holds_something(&folder.path().join(&path)),
                    "{example}: {path}"
                );
            }
        }
    }
}

#[test]
fn short_help_stays_short_and_shows_the_examples() {
    for command in COMMANDS {
        let help = lentic(&[command, "-h"], "").stdout;
        assert!(help.contains("    lentic "), "{command}: {help}");
        assert!(help.lines().count() <= 65, "{command}: {help}");
    }
}
