//! Where results go: a file whole or not at all, a pipe, a device, or nobody who reads.

use std::fs::{self, Permissions};
use std::os::unix::fs::{PermissionsExt, symlink};
use std::path::Path;
use std::process::{Command, Output, Stdio};

use crate::command::{Ran, lentic, root};
use crate::files::MINIMAL;

/// Plans the smallest tank into a file.
fn plan_into(out: &Path) -> Ran {
    let out = out.to_str().unwrap();
    lentic(&["plan", "-", "--members", "0", "--out", out], MINIMAL)
}

fn plan() -> String {
    lentic(&["plan", "-", "--members", "0"], MINIMAL).stdout
}

fn mode(path: &Path) -> u32 {
    fs::metadata(path).unwrap().permissions().mode() & 0o777
}

fn count(folder: &Path) -> usize {
    fs::read_dir(folder).unwrap().count()
}

#[test]
fn out_is_written_whole_and_keeps_permissions() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("plan.txt");
    fs::write(&out, "old").unwrap();
    for kept in [0o640, 0o666, 0o755] {
        fs::set_permissions(&out, Permissions::from_mode(kept)).unwrap();
        let ran = plan_into(&out);
        assert_eq!((ran.code, ran.stdout.as_str()), (0, ""), "{}", ran.stderr);
        assert_eq!(fs::read_to_string(&out).unwrap(), plan());
        assert_eq!(mode(&out), kept, "{kept:o}");
    }
    assert_eq!(count(folder.path()), 1);
}

#[test]
fn a_link_stays_a_link_and_what_it_leads_to_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let elsewhere = tempfile::tempdir().unwrap();
    for there in [true, false] {
        let end = elsewhere.path().join(format!("{there}.txt"));
        if there {
            fs::write(&end, "old").unwrap();
        }
        let (near, far) = (folder.path().join("near"), folder.path().join("far"));
        symlink(&end, &far).unwrap();
        symlink("far", &near).unwrap();
        let ran = plan_into(&near);
        assert_eq!(ran.code, 0, "{}", ran.stderr);
        assert_eq!(fs::read_to_string(&end).unwrap(), plan());
        for link in [near, far] {
            assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
            fs::remove_file(link).unwrap();
        }
    }
    let circle = folder.path().join("circle");
    symlink("circle", &circle).unwrap();
    let ran = plan_into(&circle);
    assert_eq!(ran.code, 2);
    assert!(ran.stderr.contains("links"), "{}", ran.stderr);
    assert!(fs::symlink_metadata(&circle).unwrap().is_symlink());
}

#[test]
fn what_cannot_be_written_is_said_and_leaves_nothing_behind() {
    let folder = tempfile::tempdir().unwrap();
    let guarded = folder.path().join("guarded.txt");
    fs::write(&guarded, "mine").unwrap();
    fs::set_permissions(&guarded, Permissions::from_mode(0o444)).unwrap();
    for (out, word) in [
        (folder.path().to_owned(), "directory"),
        (
            folder.path().join("missing/plan.txt"),
            "its folder is not there",
        ),
        (guarded.join("plan.txt"), "its folder is not there"),
        (guarded.clone(), "read-only"),
    ] {
        let ran = plan_into(&out);
        assert_eq!(ran.code, 2, "{}", out.display());
        assert!(ran.stderr.contains(word), "{word}: {}", ran.stderr);
        assert!(ran.stderr.contains("nothing was written"), "{}", ran.stderr);
        assert!(!ran.stderr.contains("at path"), "{}", ran.stderr);
    }
    assert_eq!(fs::read_to_string(&guarded).unwrap(), "mine");
    assert_eq!(count(folder.path()), 1);
}

/// The system's administrator may write anywhere: then there is nothing to be seen.
#[test]
fn a_read_only_folder_is_named() {
    let folder = tempfile::tempdir().unwrap();
    fs::set_permissions(folder.path(), Permissions::from_mode(0o555)).unwrap();
    let ran = plan_into(&folder.path().join("plan.txt"));
    if fs::write(folder.path().join("probe"), "").is_err() {
        assert_eq!(ran.code, 2);
        assert!(
            ran.stderr.contains("its folder is read-only"),
            "{}",
            ran.stderr
        );
    }
    fs::set_permissions(folder.path(), Permissions::from_mode(0o755)).unwrap();
}

/// Rows are written as they come, and are shown once the last one is there.
#[test]
fn rows_that_end_early_leave_the_old_file() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("rows.csv");
    fs::write(&out, "old").unwrap();
    let mut run = Command::new(env!("CARGO_BIN_EXE_lentic"))
        .args([
            "compare",
            "demo-tanks/reading-room-cube.toml",
            "--format",
            "csv",
            "--members",
            "64",
        ])
        .args([
            "--vary",
            "cap.depth=20..60mm/100000",
            "--out",
            out.to_str().unwrap(),
        ])
        .current_dir(root())
        .spawn()
        .unwrap();
    std::thread::sleep(std::time::Duration::from_millis(300));
    assert_eq!(fs::read_to_string(&out).unwrap(), "old");
    run.kill().unwrap();
    run.wait().unwrap();
    assert_eq!(fs::read_to_string(&out).unwrap(), "old");
}

#[test]
fn a_device_and_a_pipe_take_the_text_as_it_is() {
    assert_eq!(plan_into(Path::new("/dev/null")).code, 0);
    let onward = plan_into(Path::new("/dev/stdout"));
    assert_eq!((onward.code, onward.stdout), (0, plan()));
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe");
    assert!(
        Command::new("mkfifo")
            .arg(&pipe)
            .status()
            .unwrap()
            .success()
    );
    let reader = Command::new("cat")
        .arg(&pipe)
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let ran = plan_into(&pipe);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let read = reader.wait_with_output().unwrap();
    assert_eq!(String::from_utf8(read.stdout).unwrap(), plan());
    let full = plan_into(Path::new("/dev/full"));
    assert_eq!(full.code, 2);
    assert!(full.stderr.contains("/dev/full"), "{}", full.stderr);
}

/// Runs the command with one of its outputs to a pipe that nobody reads.
fn unread(arguments: &[&str], errors: bool) -> Output {
    let (reader, writer) = std::io::pipe().unwrap();
    drop(reader);
    let mut command = Command::new(env!("CARGO_BIN_EXE_lentic"));
    command
        .args(arguments)
        .stdin(Stdio::null())
        .current_dir(root());
    if errors {
        command.stderr(writer).stdout(Stdio::piped());
    } else {
        command.stdout(writer).stderr(Stdio::piped());
    }
    command.spawn().unwrap().wait_with_output().unwrap()
}

#[test]
fn nobody_who_reads_is_no_fault_in_any_format() {
    let tank = "demo-tanks/third-week-nitrite.toml";
    let mut calls: Vec<Vec<&str>> = Vec::new();
    for format in ["text", "json", "csv", "html"] {
        for command in ["plan", "startup", "night", "check", "compare"] {
            calls.push(vec![command, tank, "--members", "0", "--format", format]);
        }
        calls.push(vec!["list", "sources", "--format", format]);
        calls.push(vec!["explain", "cap.thin", "--format", format]);
    }
    let rows = [
        "compare",
        tank,
        "--members",
        "0",
        "--format",
        "jsonl",
        "--vary",
    ];
    calls.push([&rows[..], &["cap.depth=20..60mm/50"]].concat());
    calls.extend([
        vec!["schema"],
        vec!["man"],
        vec!["completions", "bash"],
        vec!["new"],
        vec!["--help"],
        vec![],
    ]);
    for call in calls {
        let output = unread(&call, false);
        assert_eq!(String::from_utf8_lossy(&output.stderr), "", "{call:?}");
        assert_eq!(output.status.code(), Some(0), "{call:?}");
    }
}

#[test]
fn an_error_that_nobody_reads_still_ends_with_2() {
    for call in [
        &["plan", "missing.toml"][..],
        &["plan", "tests/specs/bad/decimal-comma.toml"],
        &["nothing"],
        &["compare", "missing.toml", "--members", "0"],
    ] {
        assert_eq!(unread(call, true).status.code(), Some(2), "{call:?}");
    }
}

#[test]
fn a_full_disk_behind_standard_output_is_a_fault() {
    let full = fs::File::options().write(true).open("/dev/full").unwrap();
    let output = Command::new(env!("CARGO_BIN_EXE_lentic"))
        .args(["list", "sources", "--format", "json"])
        .stdout(full)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    let stderr = String::from_utf8_lossy(&output.stderr);
    assert!(
        stderr.contains("cannot write the result to standard output"),
        "{stderr}"
    );
}

/// A limit on the size of files stands for a disk that fills up while the file is written.
#[test]
fn a_disk_that_fills_up_is_said_of_the_file_asked_for() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("sources.json");
    let output = Command::new("sh")
        .args(["-c", "trap '' XFSZ; ulimit -f 1; exec \"$0\" \"$@\""])
        .arg(env!("CARGO_BIN_EXE_lentic"))
        .args(["list", "sources", "--format", "json", "--out"])
        .arg(&out)
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    let stderr = String::from_utf8_lossy(&output.stderr);
    let says = format!("cannot write {}: ", out.display());
    assert!(stderr.contains(&says), "{stderr}");
    assert!(!stderr.contains("at path"), "{stderr}");
    assert_eq!(count(folder.path()), 0);
}

/// Of many that make the same file at once, one makes it.
#[test]
fn a_new_spec_is_made_by_one_alone() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("tank.toml");
    let start = || {
        Command::new(env!("CARGO_BIN_EXE_lentic"))
            .args(["new", "--out", path.to_str().unwrap()])
            .stderr(Stdio::null())
            .spawn()
            .unwrap()
    };
    let runs: Vec<_> = (0..8).map(|_| start()).collect();
    let codes = runs.into_iter().map(|mut run| run.wait().unwrap().code());
    let codes: Vec<_> = codes.collect();
    let made = codes.iter().filter(|code| **code == Some(0)).count();
    assert_eq!(made, 1, "{codes:?}");
    assert_eq!(
        fs::read_to_string(&path).unwrap(),
        lentic(&["new"], "").stdout
    );
    assert_eq!(count(folder.path()), 1);
}
