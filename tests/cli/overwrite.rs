//! `--out` never writes over what it is made from.

use std::fs;
use std::os::unix::fs::symlink;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use crate::command::{Ran, lentic_in};
use crate::files::MINIMAL;

const LOG: &str = "day,ammonia\n3,0.5\n";

/// A folder with a spec and a log, and another with links to both.
struct Inputs {
    folder: tempfile::TempDir,
    links: tempfile::TempDir,
}

impl Inputs {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let links = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("tanks")).unwrap();
        for (name, text) in [
            ("tank.toml", MINIMAL),
            ("log.csv", LOG),
            ("tanks/one.toml", MINIMAL),
        ] {
            let path = folder.path().join(name);
            fs::write(&path, text).unwrap();
            let plain = name.replace('/', "-");
            symlink(&path, links.path().join(format!("soft-{plain}"))).unwrap();
            fs::hard_link(&path, links.path().join(format!("hard-{plain}"))).unwrap();
        }
        Self { folder, links }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// Every way to a file: by its name, a longer path, a soft and a hard link.
    fn ways_to(&self, name: &str) -> Vec<PathBuf> {
        let plain = name.replace('/', "-");
        vec![
            PathBuf::from(name),
            self.path(&format!("tanks/../{name}")),
            self.links.path().join(format!("soft-{plain}")),
            self.links.path().join(format!("hard-{plain}")),
        ]
    }

    fn run(&self, arguments: &[&str], out: &Path) -> Ran {
        let out = out.to_str().unwrap();
        lentic_in(
            self.folder.path(),
            &[arguments, &["--out", out]].concat(),
            "",
        )
    }

    fn refuses(&self, arguments: &[&str], input: &str) {
        for out in self.ways_to(input) {
            let ran = self.run(arguments, &out);
            assert_eq!(ran.code, 2, "{arguments:?} {}", out.display());
            assert!(
                ran.stderr.contains("would be written over"),
                "{}",
                ran.stderr
            );
            assert!(ran.stderr.contains(input), "{}", ran.stderr);
            assert!(ran.stderr.contains("nothing was written"), "{}", ran.stderr);
        }
        for (name, text) in [
            ("tank.toml", MINIMAL),
            ("log.csv", LOG),
            ("tanks/one.toml", MINIMAL),
        ] {
            assert_eq!(fs::read_to_string(self.path(name)).unwrap(), text, "{name}");
        }
    }
}

#[test]
fn no_command_writes_over_its_spec() {
    let inputs = Inputs::new();
    for arguments in [
        &["plan", "tank.toml"][..],
        &["mend", "tank.toml", "--members", "4"],
        &["startup", "tank.toml"],
        &["startup", "tank.toml", "--format", "csv"],
        &["night", "tank.toml"],
        &["upkeep", "tank.toml", "--members", "0"],
        &["check", "tank.toml"],
        &["compare", "tank.toml"],
        &["compare", "tanks/one.toml", "tank.toml", "--format", "csv"],
        &[
            "solve",
            "cap.depth",
            "tank.toml",
            "--from",
            "20 mm",
            "--to",
            "60 mm",
            "--until",
            "cap.thin=ok",
        ],
        &["explain", "cap.thin", "tank.toml"],
    ] {
        inputs.refuses(arguments, "tank.toml");
    }
}

#[test]
fn no_command_writes_over_a_log_or_a_spec_of_a_folder() {
    let inputs = Inputs::new();
    inputs.refuses(&["check", "tank.toml", "--readings", "log.csv"], "log.csv");
    inputs.refuses(&["compare", "tanks"], "tanks/one.toml");
    inputs.refuses(&["compare", "tanks", "--format", "json"], "tanks/one.toml");
}

#[test]
fn no_command_writes_over_the_file_at_standard_input() {
    let inputs = Inputs::new();
    let tank = inputs.path("tank.toml");
    let output = Command::new(env!("CARGO_BIN_EXE_lentic"))
        .args(["plan", "-", "--members", "0", "--out"])
        .arg(&tank)
        .stdin(fs::File::open(&tank).unwrap())
        .stdout(Stdio::piped())
        .output()
        .unwrap();
    assert_eq!(output.status.code(), Some(2));
    assert_eq!(fs::read_to_string(&tank).unwrap(), MINIMAL);
}

#[test]
fn what_stands_beside_the_inputs_is_written() {
    let inputs = Inputs::new();
    let out = inputs.path("tanks/result.txt");
    fs::write(&out, "old").unwrap();
    let ran = inputs.run(&["compare", "tanks", "--members", "0"], &out);
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    assert_ne!(fs::read_to_string(&out).unwrap(), "old");
}
