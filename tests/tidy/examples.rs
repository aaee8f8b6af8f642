//! Every example program runs, and shows one idea.

use std::path::PathBuf;
use std::process::Command;

use crate::tree;

/// Builds every example beside this test binary, where it is not built yet, and says where.
fn built() -> PathBuf {
    let own = std::env::current_exe().expect("the path of this test");
    let folder = own.parent().and_then(|deps| deps.parent());
    let folder = folder.expect("a build folder").to_owned();
    let mut build = Command::new(env!("CARGO"));
    build.args(["build", "--examples", "--offline", "--locked", "--quiet"]);
    if folder.ends_with("release") {
        build.arg("--release");
    }
    let status = build.current_dir(tree::root()).status().expect("cargo");
    assert!(status.success(), "the examples cannot be built");
    folder.join("examples")
}

#[test]
fn every_example_runs_and_says_something() {
    let examples = tree::files("examples", "rs");
    assert!(!examples.is_empty());
    let built = built();
    for path in examples {
        let name = path
            .file_stem()
            .and_then(|stem| stem.to_str())
            .expect("a name");
        let output = Command::new(built.join(name))
            .current_dir(tree::root())
            .output()
            .unwrap_or_else(|error| panic!("{name}: {error}"));
        assert!(output.status.success(), "{name} failed: {output:?}");
        assert!(!output.stdout.is_empty(), "{name} printed nothing");
    }
}

#[test]
fn every_example_is_short() {
    for path in tree::files("examples", "rs") {
        let lines = tree::text(&path).lines().count();
        assert!(lines <= 60, "{} has {lines} lines", tree::short(&path));
    }
}
