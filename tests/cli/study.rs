//! Varied tanks, streams of rows, choices and answers.

use std::fs;
use std::process::{Command, Stdio};

use serde_json::Value;

use crate::command::{lentic, lentic_in, root};

const TANK: &str = "demo-tanks/reading-room-cube.toml";

fn rows(text: &str) -> Vec<Value> {
    text.lines()
        .map(|line| serde_json::from_str(line).unwrap())
        .collect()
}

#[test]
fn a_grid_is_every_combination_with_what_was_varied() {
    let ran = lentic(
        &[
            "compare",
            TANK,
            "--vary",
            "cap.depth=20..60mm/3",
            "--vary",
            "cap.material=play_sand,pool filter sand",
            "--columns",
            "weight.total_kg",
            "--format",
            "jsonl",
        ],
        "",
    );
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let rows = rows(&ran.stdout);
    let varied: Vec<(f64, &str)> = rows
        .iter()
        .map(|row| {
            let vary = &row["vary"];
            (
                vary["cap.depth_mm"].as_f64().unwrap(),
                vary["cap.material"].as_str().unwrap(),
            )
        })
        .collect();
    let (play, filter) = ("play_sand", "pool filter sand");
    assert_eq!(
        varied,
        [
            (20.0, play),
            (20.0, filter),
            (40.0, play),
            (40.0, filter),
            (60.0, play),
            (60.0, filter)
        ]
    );
    assert!(rows.iter().all(|row| row.as_object().unwrap().len() == 4));
}

#[test]
fn log_ranges_step_by_equal_ratios() {
    let ran = lentic(
        &[
            "compare",
            TANK,
            "--vary",
            "light.par=20..180umol/m2/s/3 log",
            "--columns",
            "tank.water_l",
            "--format",
            "csv",
        ],
        "",
    );
    let mut reader = csv::Reader::from_reader(ran.stdout.as_bytes());
    assert_eq!(&reader.headers().unwrap()[2], "vary.light.par_umol_m2_s");
    let column: Vec<String> = reader
        .records()
        .map(|record| record.unwrap()[2].to_owned())
        .collect();
    assert_eq!(column, ["20.0", "60.0", "180.0"]);
}

#[test]
fn a_wrong_key_value_or_result_is_refused_at_once_with_a_way_out() {
    for (arguments, help) in [
        (["--vary", "cap.dpeth=1..2mm/2"], "did you mean cap.depth?"),
        (["--vary", "cap.material=filtersnd"], "did you mean"),
        (["--vary", "cap.depth=20..60mm"], "say how many points"),
        (["--vary", "cap.depth=20..60 kg/3"], "mm"),
        (["--vary", "plants.amount=1..2%/2"], "plants[0].amount"),
        (
            ["--columns", "weight.totl_kg"],
            "did you mean weight.total_kg?",
        ),
        (["--minimise", "cost.totl"], "did you mean cost.total?"),
        (["--subject-to", "status<=fine"], "ok, note, watch or act"),
        (["--subject-to", "cost.total<=10 EUR"], "plain number"),
        (["--shard", "3/2"], "I from 1 to N"),
    ] {
        let ran = lentic(&[&["compare", TANK], &arguments[..]].concat(), "");
        assert_eq!(ran.code, 2, "{arguments:?}");
        assert!(ran.stdout.is_empty(), "{arguments:?}");
        assert!(ran.stderr.contains(help), "{arguments:?}: {}", ran.stderr);
    }
}

#[test]
fn a_point_that_is_no_tank_is_told_at_the_end_and_the_others_stand() {
    let ran = lentic(
        &[
            "compare",
            TANK,
            "--vary",
            "cap.depth=40mm,400mm,50mm",
            "--columns",
            "weight.total_kg",
            "--format",
            "json",
        ],
        "",
    );
    assert_eq!(ran.code, 0);
    let value: Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(value["rows"].as_array().unwrap().len(), 2);
    let failed = value["failed"].as_array().unwrap();
    assert_eq!(failed.len(), 1);
    assert_eq!(failed[0]["vary"]["cap.depth_mm"], 400.0);
    assert!(ran.stderr.contains("inner height"), "{}", ran.stderr);
}

#[test]
fn rows_that_no_other_beats_are_kept() {
    let ran = lentic(
        &[
            "compare",
            TANK,
            "--vary",
            "cap.depth=20..60mm/5",
            "--vary",
            "soil.depth=15..45mm/4",
            "--columns",
            "weight.total_kg",
            "--subject-to",
            "bed.release_peak_mg_n_m2_d<=25",
            "--minimise",
            "weight.total_kg",
            "--format",
            "jsonl",
        ],
        "",
    );
    assert_eq!(ran.code, 0, "{}", ran.stderr);
    let best = rows(&ran.stdout);
    let all = lentic(
        &[
            "compare",
            TANK,
            "--vary",
            "cap.depth=20..60mm/5",
            "--vary",
            "soil.depth=15..45mm/4",
            "--columns",
            "weight.total_kg,bed.release_peak_mg_n_m2_d",
            "--format",
            "jsonl",
        ],
        "",
    );
    let least = rows(&all.stdout)
        .iter()
        .filter(|row| row["bed.release_peak_mg_n_m2_d"].as_f64().unwrap() <= 25.0)
        .map(|row| row["weight.total_kg"].as_f64().unwrap())
        .fold(f64::INFINITY, f64::min);
    assert!(!best.is_empty());
    assert!(
        best.iter()
            .all(|row| row["weight.total_kg"].as_f64() == Some(least))
    );
}

#[test]
fn a_folder_of_a_thousand_good_and_ten_bad_files_compares_the_good_and_names_the_bad() {
    let folder = tempfile::tempdir().unwrap();
    let good = fs::read_to_string(root().join("demo-tanks/first-tank.toml")).unwrap();
    for index in 0..1010 {
        let text = if index % 101 == 7 {
            good.replace("[cap]", "[cup]")
        } else {
            good.clone()
        };
        fs::write(folder.path().join(format!("tank-{index:04}.toml")), text).unwrap();
    }
    fs::write(folder.path().join("notes.txt"), "no spec").unwrap();
    let ran = lentic_in(
        folder.path(),
        &[
            "compare",
            ".",
            "--columns",
            "tank,weight",
            "--format",
            "jsonl",
        ],
        "",
    );
    assert_eq!(ran.code, 2);
    let rows = rows(&ran.stdout);
    assert_eq!(rows.len(), 1000);
    let files: Vec<&str> = rows
        .iter()
        .map(|row| row["file"].as_str().unwrap())
        .collect();
    assert!(files.is_sorted());
    for index in (0..1010).filter(|index| index % 101 == 7) {
        assert!(ran.stderr.contains(&format!("tank-{index:04}.toml")));
    }
}

#[test]
fn a_reader_that_leaves_early_ends_it_quietly() {
    for format in ["csv", "jsonl", "json"] {
        let mut child = Command::new(env!("CARGO_BIN_EXE_lentic"))
            .args([
                "compare",
                TANK,
                "--vary",
                "cap.depth=20..60mm/200000",
                "--columns",
                "weight.total_kg",
                "--format",
                format,
            ])
            .current_dir(root())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let mut first = [0; 64];
        std::io::Read::read_exact(child.stdout.as_mut().unwrap(), &mut first).unwrap();
        drop(child.stdout.take());
        let ended = child.wait_with_output().unwrap();
        assert_eq!(ended.status.code(), Some(0), "{format}");
        assert!(ended.stderr.is_empty(), "{format}");
    }
}

#[test]
fn out_holds_every_row_or_is_not_there() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("rows.csv");
    let out_text = out.to_str().unwrap();
    let arguments = [
        "compare",
        TANK,
        "--vary",
        "cap.depth=20..60mm/50",
        "--columns",
        "weight",
        "--format",
        "csv",
    ];
    let ran = lentic(&[&arguments[..], &["--out", out_text]].concat(), "");
    assert_eq!((ran.code, ran.stdout.as_str()), (0, ""));
    assert_eq!(
        fs::read_to_string(&out).unwrap(),
        lentic(&arguments, "").stdout
    );
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);

    // Ended half-way, it leaves nothing at the path.
    let other = folder.path().join("other.csv");
    let mut child = Command::new(env!("CARGO_BIN_EXE_lentic"))
        .args([
            "compare",
            TANK,
            "--vary",
            "cap.depth=20..60mm/4000000",
            "--columns",
            "weight",
            "--format",
            "csv",
            "--out",
        ])
        .arg(&other)
        .current_dir(root())
        .spawn()
        .unwrap();
    std::thread::sleep(std::time::Duration::from_millis(300));
    child.kill().unwrap();
    child.wait().unwrap();
    assert!(!other.exists());
}

#[test]
fn shares_of_the_rows_are_disjoint_and_complete() {
    let share = |shard: &str| {
        let ran = lentic(
            &[
                "compare",
                "demo-tanks",
                "--vary",
                "cap.depth=20..60mm/7",
                "--columns",
                "weight.total_kg",
                "--format",
                "jsonl",
                "--shard",
                shard,
            ],
            "",
        );
        ran.stdout.lines().map(str::to_owned).collect::<Vec<_>>()
    };
    let whole = share("1/1");
    let mut dealt: Vec<std::vec::IntoIter<String>> = ["1/3", "2/3", "3/3"]
        .map(|shard| share(shard).into_iter())
        .into();
    let lengths: usize = dealt.iter().map(ExactSizeIterator::len).sum();
    assert_eq!(lengths, whole.len());
    let mut seen: Vec<String> = dealt.iter_mut().flatten().collect();
    let mut expected = whole;
    seen.sort();
    expected.sort();
    assert_eq!(seen, expected);
}

#[test]
fn sensitivity_tells_what_moves_a_result() {
    // Weight is linear in both depths, so on a full grid the shares add up to one.
    let ran = lentic(
        &[
            "compare",
            TANK,
            "--vary",
            "cap.depth=20..60mm/5",
            "--vary",
            "soil.depth=15..45mm/4",
            "--columns",
            "weight.total_kg",
            "--sensitivity",
            "weight.total_kg",
            "--format",
            "json",
        ],
        "",
    );
    let value: Value = serde_json::from_str(&ran.stdout).unwrap();
    let moved = value["sensitivity"].as_array().unwrap();
    let shares: Vec<f64> = moved
        .iter()
        .map(|moved| moved["variance_share"].as_f64().unwrap())
        .collect();
    assert_eq!(moved[0]["key"], "cap.depth_mm");
    assert!(
        (shares.iter().sum::<f64>() - 1.0).abs() < 1e-6,
        "{shares:?}"
    );
    assert!(shares[0] > 0.9 && moved[0]["rank_correlation"].as_f64().unwrap() > 0.9);
}

#[test]
fn solve_finds_the_value_says_never_and_tells_of_turns() {
    let ask = |key: &str, from: &str, to: &str, until: &str| {
        let ran = lentic(
            &[
                "solve",
                key,
                TANK,
                "--from",
                from,
                "--to",
                to,
                "--until",
                until,
                "--format",
                "json",
                "--members",
                "0",
            ],
            "",
        );
        assert_eq!(ran.code, 0, "{}", ran.stderr);
        serde_json::from_str::<Value>(&ran.stdout).unwrap()
    };
    let found = ask("tank.height", "60cm", "20cm", "tank.brimful_l<=27");
    assert_eq!(found["schema"], "lentic/solve/1");
    assert_eq!(
        (&found["key"], &found["unit"]),
        (&"tank.height".into(), &"cm".into())
    );
    assert!(found["reached"].as_f64().unwrap() <= 27.0);
    assert_eq!(
        (&found["monotone"], &found["turns"]),
        (&true.into(), &1.into())
    );

    let never = ask("cap.depth", "20mm", "60mm", "weight.total_kg<=1");
    assert!(never["value"].is_null() && never.get("reached").is_none());
    assert!(
        never["notes"][0]
            .as_str()
            .unwrap()
            .contains("no value from 20 mm to 60 mm")
    );

    // A cap can be too thin and too deep.
    let band = ask("cap.depth", "5mm", "120mm", "cap.verdict=sound");
    assert!(
        (band["value"].as_f64().unwrap() - 25.0).abs() < 0.02,
        "{band}"
    );
    assert_eq!(band["turns"], 2, "{band}");
    assert!(
        band["notes"][0]
            .as_str()
            .unwrap()
            .contains("comes and goes")
    );
    let words = lentic(
        &[
            "solve",
            "cap.depth",
            TANK,
            "--from",
            "5mm",
            "--to",
            "60mm",
            "--until",
            "findings.cap.thin<=ok",
        ],
        "",
    );
    assert!(words.stdout.contains("\ncap.depth = "), "{}", words.stdout);
}

#[test]
fn a_table_fits_the_terminal() {
    let ran = lentic(
        &[
            "compare",
            "demo-tanks",
            "--columns",
            "startup,weight",
            "--members",
            "2",
        ],
        "",
    );
    assert!(ran.stdout.lines().count() > 20);
    for line in ran.stdout.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}

/// A field of 3 x 3, some of which meets what is asked, all of it, or none: every square has
/// its value, and the edge stands where it parts them.
#[test]
fn a_field_shows_where_what_is_asked_is_met() {
    let page = |condition: &str| {
        let mut arguments = vec!["compare", TANK, "--format", "html"];
        for vary in ["cap.depth=20..60mm/3", "soil.depth=15..45mm/3"] {
            arguments.extend(["--vary", vary]);
        }
        arguments.extend(["--columns", "weight.total_kg", "--subject-to", condition]);
        lentic(&arguments, "").stdout
    };
    let title = "<h1><bdi>Reading-room cube: weight total over cap depth and soil depth</bdi></h1>";
    for (condition, words, has_edge) in [
        (
            "weight.total_kg<=34",
            "Bold within the line: weight total at most 34 kg.",
            true,
        ),
        (
            "weight.total_kg<=90",
            "All meet weight total at most 90 kg.",
            false,
        ),
    ] {
        let page = page(condition);
        for part in [title, words] {
            assert!(page.contains(part), "{part}: {page}");
        }
        assert_eq!(page.matches("class=\"tint tint-").count(), 9, "{page}");
        assert_eq!(page.contains("class=\"brink\""), has_edge);
    }
}
