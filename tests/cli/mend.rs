//! `lentic mend`.

use std::fs;

use serde_json::Value;

use crate::command::{lentic, lentic_in};

/// A bed that no planting is asked to make up for.
const GRAVEL: &str = "\
[tank]
size = \"30 x 20 x 25 cm\"

[soil]
material = \"loamy_sand\"
depth = \"15 mm\"

[cap]
material = \"pea_gravel\" # from the yard
depth = \"40 mm\"

[[plants]]
name = \"lemna_minor\"
amount = \"40 %\" # enough

[[plants]]
name = \"hygrophila_difformis\"
amount = \"20 stems\"
";

const FEW: [&str; 2] = ["--members", "12"];

fn mend(text: &str, arguments: &[&str]) -> crate::command::Ran {
    lentic(&[&["mend", "-"][..], &FEW, arguments].concat(), text)
}

fn json(text: &str, arguments: &[&str]) -> Value {
    let ran = mend(text, &[&["--format", "json"][..], arguments].concat());
    serde_json::from_str(&ran.stdout).expect("JSON")
}

#[test]
fn a_cap_too_coarse_is_changed_and_nothing_else() {
    let ran = mend(GRAVEL, &["--format", "toml"]);
    assert_eq!((ran.code, ran.stderr.as_str()), (0, ""));
    assert_eq!(ran.stdout, GRAVEL.replace("pea_gravel", "filter_sand"));
    let told = json(GRAVEL, &[]);
    assert_eq!(told["schema"], "lentic/mend/1");
    assert_eq!(
        (&told["holds"], &told["unmet"]),
        (&true.into(), &Value::Array(vec![]))
    );
    assert_eq!(
        (&told["status_before"], &told["status_after"]),
        (&"act".into(), &"note".into())
    );
    let changes = told["changes"].as_array().unwrap();
    let change = &changes[0];
    assert_eq!((changes.len(), &change["key"]), (1, &"cap.material".into()));
    assert_eq!(
        (&change["from"], &change["to"]),
        (&"pea_gravel".into(), &"filter_sand".into())
    );
    let why = change["why"].as_str().unwrap();
    assert!(why.contains("act cap.coarse"), "{why}");
}

#[test]
fn the_report_tells_what_was_why_and_how_the_starts_go() {
    let ran = mend(GRAVEL, &[]);
    assert_eq!(ran.code, 0);
    for part in [
        "holds with 1 key changed",
        "of 100 starts",
        "pea_gravel",
        "act cap.coarse",
    ] {
        assert!(ran.stdout.contains(part), "{part}: {}", ran.stdout);
    }
}

#[test]
fn a_plan_that_holds_is_left_alone() {
    let sound = GRAVEL.replace("pea_gravel", "filter_sand");
    let ran = mend(&sound, &["--format", "toml"]);
    assert_eq!((ran.code, ran.stdout.as_str()), (0, sound.as_str()));
    let ran = mend(&sound, &[]);
    assert!(ran.stdout.contains("holds as it is"), "{}", ran.stdout);
}

#[test]
fn the_new_spec_goes_to_a_file_of_its_own() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    fs::write(at("tank.toml"), GRAVEL).unwrap();
    let run = |out: &str| {
        let typed = ["mend", "tank.toml", "--out", out];
        lentic_in(folder.path(), &[&typed[..], &FEW].concat(), "")
    };
    let ran = run("new.toml");
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    assert!(ran.stdout.contains("holds with"), "{}", ran.stdout);
    let new = fs::read_to_string(at("new.toml")).unwrap();
    assert_eq!(new, GRAVEL.replace("pea_gravel", "filter_sand"));
    let ran = run("tank.toml");
    assert_eq!(ran.code, 2);
    assert!(
        ran.stderr.contains("would be written over"),
        "{}",
        ran.stderr
    );
    assert_eq!(fs::read_to_string(at("tank.toml")).unwrap(), GRAVEL);
}

/// Nothing but another cap helps against gravel, and that is kept.
#[test]
fn where_no_plan_holds_the_limit_and_the_kept_key_are_named_and_nothing_is_written() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("tank.toml"), GRAVEL).unwrap();
    let typed = [
        "mend",
        "tank.toml",
        "--keep",
        "cap",
        "--out",
        "new.toml",
        "--format",
        "json",
    ];
    let ran = lentic_in(folder.path(), &[&typed[..], &FEW].concat(), "");
    assert_eq!((ran.code, ran.stderr.as_str()), (1, ""));
    assert!(!folder.path().join("new.toml").exists());
    let told: Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(told["holds"], false);
    let unmet = &told["unmet"][0];
    assert_eq!(unmet["code"], "cap.coarse");
    let why = unmet["why"].as_str().unwrap();
    assert!(why.contains("cap is kept"), "{why}");
}

#[test]
fn odds_that_no_tank_reaches_are_named() {
    let asked = format!("{GRAVEL}\n[goal]\nnitrite = \"0.001 mg/L\"\nprobability = \"99 %\"\n");
    let mut kept = vec!["--format", "json"];
    kept.extend(
        ["plants", "soil", "cap", "light"]
            .map(|key| ["--keep", key])
            .as_flattened(),
    );
    let ran = mend(&asked, &kept);
    assert_eq!(ran.code, 1);
    let told: Value = serde_json::from_str(&ran.stdout).unwrap();
    let codes: Vec<&Value> = told["unmet"]
        .as_array()
        .unwrap()
        .iter()
        .map(|unmet| &unmet["code"])
        .collect();
    assert!(codes.contains(&&"flush.chance".into()), "{told}");
}

#[test]
fn a_kept_key_that_is_none_is_refused_with_the_nearest() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("tank.toml"), GRAVEL).unwrap();
    for (key, help) in [
        ("cap.materiel", "did you mean cap.material?"),
        ("plants[7].amount", "plants[7] is not there"),
    ] {
        let typed = ["mend", "tank.toml", "--keep", key, "--out", "new.toml"];
        let ran = lentic_in(folder.path(), &typed, "");
        assert_eq!((ran.code, ran.stdout.as_str()), (2, ""));
        assert!(
            ran.stderr.contains(key) && ran.stderr.contains(help),
            "{}",
            ran.stderr
        );
        assert!(!folder.path().join("new.toml").exists());
    }
}

#[test]
fn a_spec_with_faults_is_refused_as_by_plan() {
    let folder = tempfile::tempdir().unwrap();
    let faulty = GRAVEL.replace("depth = \"40 mm\"", "depth = 4");
    fs::write(folder.path().join("tank.toml"), faulty).unwrap();
    let mended = lentic_in(
        folder.path(),
        &["mend", "tank.toml", "--out", "new.toml"],
        "",
    );
    let planned = lentic_in(folder.path(), &["plan", "tank.toml"], "");
    assert_eq!((mended.code, planned.code), (2, 2));
    assert_eq!(mended.stderr, planned.stderr);
    assert!(!folder.path().join("new.toml").exists());
}
