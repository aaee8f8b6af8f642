//! Help and wrong arguments.

use crate::command::{lentic, lentic_in};

#[test]
fn without_arguments_three_commands_to_try_are_shown() {
    let ran = lentic(&[], "");
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    let tried: Vec<&str> = ran
        .stdout
        .lines()
        .filter(|line| line.starts_with("  lentic "))
        .collect();
    assert_eq!(tried.len(), 3, "{}", ran.stdout);
    assert!(ran.stdout.lines().count() < 12, "{}", ran.stdout);
}

#[test]
fn the_commands_to_try_do_what_they_say() {
    let folder = tempfile::tempdir().unwrap();
    for line in lentic(&[], "").stdout.lines() {
        let Some(command) = line.strip_prefix("  lentic ") else {
            continue;
        };
        let (typed, _) = command.split_once("  ").expect("what it does");
        let arguments: Vec<&str> = typed.split(' ').collect();
        let ran = lentic_in(folder.path(), &arguments, "");
        assert_eq!(ran.code, 0, "{typed}: {}", ran.stderr);
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
