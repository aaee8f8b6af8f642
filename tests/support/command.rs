//! The real command, run with arguments, files and standard input.

use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// What a run printed and how it ended.
#[derive(Debug)]
pub(crate) struct Ran {
    pub(crate) stdout: String,
    pub(crate) stderr: String,
    pub(crate) code: i32,
}

/// Runs the command in the project's root with a text on standard input.
pub(crate) fn lentic(arguments: &[&str], stdin: &str) -> Ran {
    lentic_in(&root(), arguments, stdin)
}

/// Runs the command in a folder.
pub(crate) fn lentic_in(folder: &std::path::Path, arguments: &[&str], stdin: &str) -> Ran {
    let mut child = Command::new(env!("CARGO_BIN_EXE_lentic"))
        .args(arguments)
        .current_dir(folder)
        .env("NO_COLOR", "1")
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .expect("the command starts");
    // A command that fails on its arguments never reads its input.
    let _ = child
        .stdin
        .take()
        .expect("a pipe")
        .write_all(stdin.as_bytes());
    let output = child.wait_with_output().expect("the command ends");
    Ran {
        stdout: String::from_utf8(output.stdout).expect("text"),
        stderr: String::from_utf8(output.stderr).expect("text"),
        code: output.status.code().expect("an exit code"),
    }
}

/// The project's root.
pub(crate) fn root() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
}
