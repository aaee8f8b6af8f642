//! Help and wrong arguments.

use crate::command::lentic;

#[test]
fn without_arguments_the_first_steps_are_shown() {
    let ran = lentic(&[], "");
    let help = format!("{}{}", ran.stdout, ran.stderr);
    assert_eq!(ran.code, 2);
    for command in ["lentic new", "lentic plan", "lentic explain"] {
        assert!(help.contains(command), "{help}");
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
