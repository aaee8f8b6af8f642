//! The README shows what the program really prints.
//!
//! `UPDATE_README=1 cargo test --test tidy` writes the true outputs into it.

use std::path::Path;
use std::process::Command;

use crate::tree;

/// One command of a `console` block with the output that follows it.
struct Shown {
    command: String,
    output: String,
}

/// The text of the README cut at its `console` fences: prose at even places,
/// blocks at odd ones.
fn parts(text: &str) -> Vec<&str> {
    let mut parts = Vec::new();
    let mut rest = text;
    while let Some((prose, after)) = rest.split_once("```console\n") {
        let (block, after) = after.split_once("```").expect("a closed block");
        parts.extend([prose, block]);
        rest = after;
    }
    parts.push(rest);
    parts
}

fn commands(block: &str) -> Vec<Shown> {
    let mut shown: Vec<Shown> = Vec::new();
    for line in block.lines() {
        if let Some(command) = line.strip_prefix("$ ") {
            shown.push(Shown {
                command: command.to_owned(),
                output: String::new(),
            });
        } else if let Some(last) = shown.last_mut() {
            last.output.push_str(line);
            last.output.push('\n');
        }
    }
    shown
}

/// Runs a shell line, with the real command as `lentic`, in a folder that holds the
/// demo tanks alone.
fn run(line: &str, folder: &Path) -> String {
    let program = Path::new(env!("CARGO_BIN_EXE_lentic"));
    let search = std::env::join_paths(program.parent().map(Path::to_owned).into_iter().chain(
        std::env::split_paths(&std::env::var_os("PATH").unwrap_or_default()),
    ));
    let output = Command::new("sh")
        .args(["-c", &format!("{{ {line}; }} 2>&1")])
        .current_dir(folder)
        .env("PATH", search.expect("a search path"))
        .env("NO_COLOR", "1")
        .env("LC_ALL", "C.UTF-8")
        .output()
        .expect("a shell");
    String::from_utf8(output.stdout).expect("text")
}

fn folder_with_demo_tanks() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let tanks = folder.path().join("demo-tanks");
    std::fs::create_dir(&tanks).expect("a folder");
    for path in tree::files("demo-tanks", "toml") {
        let name = path.file_name().expect("a name");
        std::fs::copy(&path, tanks.join(name)).expect("a copy");
    }
    folder
}

#[test]
fn readme_outputs_are_true() {
    let path = tree::root().join("README.md");
    let text = tree::text(&path);
    let folder = folder_with_demo_tanks();
    let mut written = String::new();
    let mut count = 0;
    for (index, part) in parts(&text).into_iter().enumerate() {
        if index % 2 == 0 {
            written.push_str(part);
            continue;
        }
        written.push_str("```console\n");
        for shown in commands(part) {
            count += 1;
            let output = run(&shown.command, folder.path());
            if std::env::var_os("UPDATE_README").is_none() {
                assert_eq!(output, shown.output, "output of {}", shown.command);
            }
            written.extend(["$ ", &shown.command, "\n", &output]);
        }
        written.push_str("```");
    }
    assert!(count > 0, "the README shows no command");
    if std::env::var_os("UPDATE_README").is_some() {
        std::fs::write(&path, written).expect("the README is written");
    }
}
