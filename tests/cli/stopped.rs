//! A command that is stopped at any moment, and several that write one file at once.

use std::fs;
use std::os::unix::process::ExitStatusExt;
use std::path::Path;
use std::process::{Child, Command, ExitStatus, Stdio};
use std::time::{Duration, Instant};

use crate::command::root;

const OLD: &str = "what stood there before\n";

/// Rows that take their time, and are put in place once the last one is there.
fn rows(out: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_lentic"));
    command
        .args(["compare", "demo-tanks/reading-room-cube.toml"])
        .args(["--members", "0", "--columns", "weight.total_kg"])
        .args(["--vary", "cap.depth=20..60mm/5000", "--format", "csv"])
        .arg("--out")
        .arg(out)
        .current_dir(root())
        .stdin(Stdio::null())
        .stderr(Stdio::null());
    command
}

fn send(signal: &str, child: &Child) {
    let line = format!("kill -{signal} {}", child.id());
    // One that has ended takes no signal.
    let _ = Command::new("sh")
        .args(["-c", &line])
        .stderr(Stdio::null())
        .status();
}

/// Starts the rows and sends a signal after a while.
fn stopped(out: &Path, signal: &str, after: Duration) -> ExitStatus {
    let mut child = rows(out).spawn().unwrap();
    std::thread::sleep(after);
    send(signal, &child);
    child.wait().unwrap()
}

/// The rows, and how long they take.
fn whole(folder: &Path) -> (String, Duration) {
    let out = folder.join("whole.csv");
    let start = Instant::now();
    assert!(rows(&out).status().unwrap().success());
    let took = start.elapsed();
    let text = fs::read_to_string(&out).unwrap();
    fs::remove_file(out).unwrap();
    (text, took)
}

/// Every file of a folder but one.
fn others(folder: &Path, one: &Path) -> Vec<std::path::PathBuf> {
    let files = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path());
    files.filter(|path| path != one).collect()
}

/// Nothing can be done about KILL: it may leave its scratch file, yet never half a result.
#[test]
fn fifty_kills_leave_the_old_file_or_the_whole_one_and_no_other() {
    const SIGNALS: [(&str, i32); 4] = [("INT", 2), ("TERM", 15), ("HUP", 1), ("KILL", 9)];
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("rows.csv");
    let (rows, mut took) = whole(folder.path());
    let (mut cut, mut left_by_kill) = (0, 0);
    for round in 0..50_u32 {
        if round % 10 == 9 {
            // others may have begun or ceased to work beside it
            took = whole(folder.path()).1;
        }
        let (signal, number) = SIGNALS[round as usize % SIGNALS.len()];
        let was_there = round % 3 != 0;
        if was_there {
            fs::write(&out, OLD).unwrap();
        }
        // multiples of the golden section fall evenly into the time that the run takes
        let share = (f64::from(round) * 0.618_034).fract() * 1.1;
        let status = stopped(&out, signal, took.mul_f64(share));
        let says = format!("round {round}, {signal}: {status}");
        assert!(
            status.signal() == Some(number) || status.success(),
            "{says}"
        );
        match fs::read_to_string(&out) {
            Ok(text) if text == rows => {}
            Ok(text) => assert!(was_there && text == OLD, "{says}: {} bytes", text.len()),
            Err(_) => assert!(!was_there, "{says}"),
        }
        let others = others(folder.path(), &out);
        assert!(others.is_empty() || signal == "KILL", "{says}: {others:?}");
        cut += u32::from(!status.success());
        left_by_kill += others.len();
        for path in others {
            fs::remove_file(path).unwrap();
        }
        let _ = fs::remove_file(&out);
    }
    // The moments have to be those of the writing.
    assert!(cut >= 12, "{cut} of 50 were stopped");
    assert!(
        left_by_kill > 0,
        "no scratch file was ever there to be left"
    );
}

#[test]
fn a_signal_that_is_ignored_from_outside_stops_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("rows.csv");
    let (rows_text, took) = whole(folder.path());
    let line = rows(&out);
    let mut shell = Command::new("sh");
    shell.args(["-c", "trap '' HUP; exec \"$0\" \"$@\""]);
    shell.arg(line.get_program()).args(line.get_args());
    let mut child = shell
        .current_dir(root())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    std::thread::sleep(took.mul_f64(0.5));
    send("HUP", &child);
    assert!(child.wait().unwrap().success());
    assert_eq!(fs::read_to_string(&out).unwrap(), rows_text);
}

#[test]
fn three_writers_at_once_leave_the_whole_text_of_one() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("list.txt");
    let list = |format: &str| {
        let mut command = Command::new(env!("CARGO_BIN_EXE_lentic"));
        command.args(["list", "plants", "--format", format]);
        command
    };
    let formats = ["text", "json", "csv"];
    let texts = formats.map(|format| {
        let output = list(format).output().unwrap();
        String::from_utf8(output.stdout).unwrap()
    });
    for round in 0..20 {
        let start = |format| list(format).arg("--out").arg(&out).spawn().unwrap();
        for mut writer in formats.map(start) {
            assert!(writer.wait().unwrap().success(), "round {round}");
        }
        let text = fs::read_to_string(&out).unwrap();
        assert!(texts.contains(&text), "round {round}: {text}");
        assert_eq!(others(folder.path(), &out).len(), 0, "round {round}");
    }
}
