//! The starter spec.

use crate::command::lentic;

#[test]
fn the_starter_plans_well_in_both_systems() {
    for units in ["metric", "us"] {
        let starter = lentic(&["new", "--units", units], "");
        assert_eq!(starter.code, 0, "{}", starter.stderr);
        let plan = lentic(&["plan", "-", "--fail-on", "watch"], &starter.stdout);
        assert_eq!(plan.code, 0, "{units}: {}{}", plan.stdout, plan.stderr);
    }
}

#[test]
fn an_existing_file_is_kept() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("tank.toml");
    std::fs::write(&path, "mine").unwrap();
    for taken in [path.as_path(), folder.path()] {
        let ran = lentic(&["new", "--out", taken.to_str().unwrap()], "");
        assert_eq!(ran.code, 2);
        assert!(ran.stderr.contains("was kept"), "{}", ran.stderr);
    }
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}
