//! Rules and sources explained.

use lentic::finding::Code;
use lentic::report::dictionary;
use serde_json::Value;

use crate::command::lentic;

#[test]
fn every_code_is_explained_with_and_without_a_spec() {
    for code in Code::ALL {
        for tank in [None, Some("demo-tanks/living-room-180.toml")] {
            let mut arguments = vec!["explain", code.text(), "--members", "0"];
            arguments.extend(tank);
            let ran = lentic(&arguments, "");
            assert_eq!(ran.code, 0, "{}: {}", code.text(), ran.stderr);
            assert!(ran.stdout.starts_with(code.text()));
            assert!(ran.stdout.contains("Rests on"));
        }
    }
}

#[test]
fn the_working_ends_at_the_value_of_the_finding() {
    let tank = "demo-tanks/living-room-180.toml";
    let plan = lentic(&["plan", tank, "--format", "json", "--members", "0"], "");
    let plan: Value = serde_json::from_str(&plan.stdout).unwrap();
    for finding in plan["findings"].as_array().unwrap() {
        let code = finding["code"].as_str().unwrap();
        let Some(value) = finding["value"].as_f64() else {
            continue;
        };
        let ran = lentic(
            &["explain", code, tank, "--format", "json", "--members", "0"],
            "",
        );
        let explained: Value = serde_json::from_str(&ran.stdout).unwrap();
        let steps = explained["working"]["steps"].as_array().unwrap();
        let shows = steps.iter().any(|step| {
            let step = step["value"].as_f64().unwrap();
            (step - value).abs() <= 1e-6 * value.abs().max(1.0)
        });
        assert!(
            shows || code == "plants.mix",
            "{code}: {value} in {steps:#?}"
        );
    }
}

/// Free diffusion of ammonium at 25 C, 1.71e-4 m2/d: Li and Gregory (1974), from memory.
/// Tortuosity 1 - ln(0.4^2) = 2.8326: Boudreau (1996). The parts of a cap: Palermo et
/// al. (1998).
#[test]
fn the_leak_is_worked_through_with_its_resistances_and_the_parts_of_a_cap() {
    let spec = "[tank]\nshape = 'box'\nsize = '60 x 30 x 36 cm'\n[soil]\nmaterial = 'loam_topsoil'\ndepth = '25 mm'\n[cap]\nmaterial = 'filter_sand'\ndepth = '40 mm'\nproperties = { porosity = '40 %' }\n[water]\ntemperature = '25 C'\n[[plants]]\nname = 'duckweed'\namount = '30 %'\n";
    let arguments = [
        "explain",
        "cap.leak",
        "-",
        "--format",
        "json",
        "--members",
        "0",
    ];
    let explained: Value = serde_json::from_str(&lentic(&arguments, spec).stdout).unwrap();
    let steps = explained["working"]["steps"].as_array().unwrap();
    let value = |end: &str| {
        let named = |step: &&Value| step["name"].as_str().unwrap().ends_with(end);
        steps.iter().find(named).unwrap()["value"].as_f64().unwrap()
    };
    let near = |value: f64, expected: f64| {
        assert!(
            (value / expected - 1.0).abs() < 1e-3,
            "{value} for {expected}"
        );
    };
    let effective_m2_d = 0.4 * 1.71e-4 / 2.8326;
    near(value("to diffusion alone"), 0.040 / effective_m2_d);
    // Kozeny and Carman for grains of 0.5 mm, times 6e3 m2/d to the m2 (judgement)
    let currents_m2_d = 6e3 * 0.4_f64.powi(3) / 0.6_f64.powi(2) * 0.5e-3_f64.powi(2) / 180.0;
    near(
        value("of the cap"),
        0.040 / (effective_m2_d + currents_m2_d),
    );
    // a third of the soil's depth through its pores, 0.57 of the table of soils
    let soil_m2_d = 0.57 * 1.71e-4 / (1.0 - 0.57_f64.powi(2).ln());
    near(value("of the soil"), 0.025 / 3.0 / soil_m2_d);
    let grains_mm_d = value("between the grains");
    near(
        grains_mm_d,
        1e3 / (value("of the soil") + value("of the cap")),
    );
    // Ls (phi + rho Kd) with the loam's 0.57, 1.1 kg/L and 3 L/kg of the table of soils.
    let store_m = 0.025 * (0.57 + 1.1 * 3.0);
    near(
        value("store over both") * (grains_mm_d + value("by holes")) * 1e-3,
        store_m,
    );
    let isolating_mm = 1e3 * effective_m2_d * value("Cs") * 1e3 / value("K / 21");
    near(value("Ti"), isolating_mm);
    near(value("To + Tb + Ti"), 5.0 + isolating_mm);
}

#[test]
fn an_explained_finding_counts_for_the_exit_code() {
    let explain = |code: &str, fail_on: &str| {
        let tank = "demo-tanks/roots-out-of-reach.toml";
        let members = ["--members", "0", "--fail-on", fail_on];
        lentic(&[&["explain", code, tank][..], &members[..]].concat(), "").code
    };
    assert_eq!(explain("cap.deep", "act"), 1);
    assert_eq!(explain("cap.fine", "act"), 0);
    assert_eq!(explain("cap.fine", "watch"), 1);
}

#[test]
fn a_source_is_explained_and_an_unknown_word_gets_a_suggestion() {
    let source = lentic(&["explain", "larson_2007"], "");
    assert!(source.stdout.contains("Larson"), "{}", source.stdout);
    let wrong = lentic(&["explain", "cap.thn"], "");
    assert_eq!(wrong.code, 2);
    assert!(
        wrong.stderr.contains("did you mean cap.thin?"),
        "{}",
        wrong.stderr
    );
}

const TANK: &str = "demo-tanks/living-room-180.toml";

/// What a command prints as JSON, with few members.
fn json(arguments: &[&str]) -> Value {
    let ran = lentic(
        &[arguments, &["--format", "json", "--members", "8"]].concat(),
        "",
    );
    assert_eq!(ran.code, 0, "{arguments:?}: {}", ran.stderr);
    serde_json::from_str(&ran.stdout).unwrap()
}

#[test]
fn a_result_is_explained_with_its_unit_its_topic_and_its_value() {
    let bare = json(&["explain", "night.dawn_oxygen_mg_l"]);
    assert_eq!(bare["unit"], "mg/L");
    assert_eq!(bare["code"], "air.dawn");
    assert!(bare.get("values").is_none(), "{bare:#}");
    let plan = json(&["plan", TANK]);
    let told = json(&["explain", "night.dawn_oxygen_mg_l", TANK]);
    assert_eq!(
        told["values"][0]["value"],
        plan["night"]["dawn_oxygen_mg_l"]
    );
    assert_eq!(told["finding"]["code"], "air.dawn");
    assert!(!told["working"]["steps"].as_array().unwrap().is_empty());
    let text = lentic(&["explain", "weight.total_kg", TANK, "--members", "0"], "");
    let total = plan["weight"]["total_kg"].as_f64().unwrap();
    let shown = format!("{total:.1} kg");
    assert!(text.stdout.contains(&shown), "{shown}: {}", text.stdout);
}

#[test]
fn what_only_startup_night_or_check_give_is_taken_from_them() {
    for (path, command, pointer) in [
        (
            "days[30].ammonia_mg_l.high",
            "startup",
            "/days/30/ammonia_mg_l/high",
        ),
        ("hours.3.ph.typical", "night", "/hours/3/ph/typical"),
        ("causes[0].probability", "check", "/causes/0/probability"),
        ("check.day", "check", "/day"),
        ("findings[2].status", "plan", "/findings/2/status"),
    ] {
        let tank = "demo-tanks/third-week-nitrite.toml";
        let told = json(&["explain", path, tank]);
        let whole = json(&[command, tank]);
        let expected = whole.pointer(pointer).expect("a value");
        assert_eq!(&told["values"][0]["value"], expected, "{path}");
    }
}

#[test]
fn a_list_gives_the_values_of_all_its_items() {
    let plan = json(&["plan", TANK]);
    let told = json(&["explain", "findings[].status", TANK]);
    let findings = plan["findings"].as_array().unwrap();
    let values = told["values"].as_array().unwrap();
    assert_eq!(values.len(), findings.len());
    for (value, finding) in values.iter().zip(findings) {
        assert_eq!(value["value"], finding["status"]);
    }
}

#[test]
fn a_column_of_rows_is_understood() {
    let finding = json(&["explain", "findings.cap.deep", TANK]);
    assert_eq!(finding["finding"]["code"], "cap.deep");
    let worst = json(&["explain", "status", "demo-tanks/roots-out-of-reach.toml"]);
    assert_eq!(worst["values"][0]["value"], "act");
}

#[test]
fn a_result_is_written_as_a_row_and_as_a_page_too() {
    let explain = |format| {
        let path = "bed.release_peak_mg_n_m2_d";
        let ran = lentic(
            &["explain", path, TANK, "--members", "0", "--format", format],
            "",
        );
        assert_eq!(ran.code, 0, "{}", ran.stderr);
        ran.stdout
    };
    let row = explain("csv");
    let mut reader = csv::Reader::from_reader(row.as_bytes());
    let heads = reader.headers().unwrap().clone();
    assert_eq!(reader.records().count(), 1);
    for head in ["unit", "says", "code", "values.0.value"] {
        assert!(heads.iter().any(|other| other == head), "{head}: {heads:?}");
    }
    let page = explain("html");
    assert!(
        page.contains("Living room") && page.contains("Working"),
        "{page}"
    );
}

#[test]
fn every_section_says_how_far_it_was_tested() {
    for section in [
        "tank", "soil", "cap", "bed", "weight", "panes", "planting", "plants", "startup", "flush",
        "night", "air", "flow", "light", "animals", "heat", "cost",
    ] {
        let told = json(&["explain", section]);
        let tested = told["tested"].as_str().unwrap_or_default();
        let holds = tested.contains(" for ") || tested.starts_with("Never tested against");
        assert!(holds, "{section}: {tested}");
    }
    let startup = lentic(&["explain", "startup"], "").stdout;
    assert!(
        startup.contains("ammonia of fed aquaria 0.2 for 0.21"),
        "{startup}"
    );
}

#[test]
fn a_section_shows_what_is_in_it() {
    let night = lentic(&["explain", "night"], "");
    assert_eq!(night.code, 0, "{}", night.stderr);
    for within in ["night.dawn_oxygen_mg_l", "hours[].ph"] {
        assert!(night.stdout.contains(within), "{within}: {}", night.stdout);
    }
    for line in night.stdout.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
    let cap = json(&["explain", "cap"]);
    let codes = cap["topics"].as_array().unwrap().iter();
    assert!(codes.clone().any(|topic| topic["code"] == "cap.coarse"));
    let many = lentic(&["explain", "day", TANK], "");
    assert_eq!(many.code, 2);
    assert!(
        many.stderr.contains("night.day") && many.stderr.contains("check.day"),
        "{}",
        many.stderr
    );
}

#[test]
fn explain_alone_teaches_with_commands_that_work() {
    let alone = lentic(&["explain"], "");
    assert_eq!((alone.code, alone.stderr.as_str()), (0, ""));
    let mut tried = 0;
    for line in alone.stdout.lines() {
        assert!(line.chars().count() <= 80, "{line}");
        let commands = line.trim_start().split("   ").map(str::trim);
        for command in commands.filter_map(|part| part.strip_prefix("lentic ")) {
            let typed = command.replace("my-tank.toml", TANK);
            if line.starts_with("  ") {
                let ran = lentic(&typed.split(' ').collect::<Vec<_>>(), "");
                assert_eq!(ran.code, 0, "{command}: {}", ran.stderr);
                tried += 1;
            }
        }
    }
    assert_eq!(tried, 7, "{}", alone.stdout);
}

#[test]
fn the_nearest_of_rules_results_and_sources_is_suggested() {
    for (typed, meant) in [
        ("cap.thn", "cap.thin"),
        ("weight.totl_kg", "weight.total_kg"),
        ("dawn_oxigen_mg_l", "night.dawn_oxygen_mg_l"),
        ("causes[].probabilty", "causes[].probability"),
        ("larson_207", "larson_2007"),
    ] {
        let wrong = lentic(&["explain", typed], "");
        assert_eq!(wrong.code, 2, "{typed}");
        let asks = format!("did you mean {meant}?");
        assert!(wrong.stderr.contains(&asks), "{typed}: {}", wrong.stderr);
    }
    let lost = lentic(&["explain", "something else entirely"], "");
    assert!(!lost.stderr.contains("did you mean"), "{}", lost.stderr);
    assert!(
        lost.stderr.contains("lentic list results"),
        "{}",
        lost.stderr
    );
}

#[test]
fn what_a_result_or_a_source_rests_on_counts_for_the_exit_code() {
    let explain = |what: &str| {
        let tank = "demo-tanks/roots-out-of-reach.toml";
        let members = ["--members", "0", "--fail-on", "act"];
        lentic(&[&["explain", what, tank][..], &members[..]].concat(), "").code
    };
    assert_eq!(explain("cap.depth_cm"), 1);
    assert_eq!(explain("findings[].status"), 1);
    assert_eq!(explain("status"), 1);
    assert_eq!(explain("cap.verdict"), 1);
    assert_eq!(explain("kim_2007"), 1);
    assert_eq!(explain("cap.thinnest_cm"), 0);
    assert_eq!(explain("tank.water_l"), 0);
    assert_eq!(explain("larson_2007"), 0);
    let nothing = lentic(&["explain", "cap.deep", "--fail-on", "act"], "");
    assert_eq!(nothing.code, 2);
    assert!(nothing.stderr.contains("spec"), "{}", nothing.stderr);
}

#[test]
fn a_source_shows_what_rests_on_it() {
    let source = json(&["explain", "larson_2007"]);
    assert_eq!(source["key"], "larson_2007");
    let names = |key: &str| source["rests"][key].as_array().unwrap().clone();
    assert!(names("topics").contains(&"plants.cover".into()));
    assert!(names("results").contains(&"planting.floating_cover_pct".into()));
}

/// What `compare` and `explain` each say of one tank, with the exit code that act gives.
#[test]
fn a_status_is_that_of_a_comparison() {
    for tank in [TANK, "demo-tanks/roots-out-of-reach.toml"] {
        for members in [&[][..], &["--members", "8"]] {
            let run = |words: &[&str]| {
                let fixed = ["--format", "json", "--fail-on", "act"];
                let ran = lentic(&[words, members, &fixed].concat(), "");
                let value: Value = serde_json::from_str(&ran.stdout).unwrap();
                (value, ran.code)
            };
            let (told, told_code) = run(&["explain", "status", tank]);
            let (row, row_code) = run(&["compare", tank, "--columns", "status"]);
            assert_eq!(told["values"][0]["value"], row["rows"][0]["status"]);
            assert_eq!(told_code, row_code, "{tank} {members:?}");
        }
    }
    let name = json(&["explain", "rows[0].name", TANK]);
    assert_eq!(name["values"][0]["value"], "Living room");
}

#[test]
fn what_no_tank_has_by_itself_is_said_to_be_of_none() {
    for path in ["solve.value", "solve.turns", "sensitivity[].variance_share"] {
        let ran = lentic(&["explain", path, TANK], "");
        assert_eq!(ran.code, 0, "{}", ran.stderr);
        assert!(
            ran.stdout.contains("No single tank has it"),
            "{}",
            ran.stdout
        );
    }
}

#[test]
fn a_source_of_a_rule_of_checks_shows_what_a_check_finds() {
    let tank = "demo-tanks/gasping-before-the-lamp.toml";
    let told = json(&["explain", "good_1985", tank]);
    let check = json(&["check", tank]);
    let of = |found: &Value| -> Vec<Value> {
        let findings = found["findings"].as_array().unwrap().iter();
        let of_cause = findings.filter(|finding| finding["code"] == "check.cause");
        of_cause.cloned().collect()
    };
    assert_eq!(of(&told), of(&check));
    assert_eq!(of(&told).len(), 1, "{told:#}");
    let fail_on = ["--fail-on", "watch", "--members", "8"];
    let ran = lentic(
        &[&["explain", "good_1985", tank][..], &fail_on].concat(),
        "",
    );
    assert_eq!(ran.code, 1, "{}", ran.stdout);
}

#[test]
fn without_a_subject_there_is_nothing_to_judge_or_to_format() {
    for (options, named) in [
        (&["--fail-on", "act"][..], "--fail-on"),
        (&["--fail-on", "act", "--format", "json"], "--fail-on"),
        (&["--format", "json"], "--format"),
        (&["--format", "csv"], "--format"),
        (&["--format", "html"], "--format"),
    ] {
        let ran = lentic(&[&["explain"], options].concat(), "");
        assert_eq!((ran.code, ran.stdout.as_str()), (2, ""), "{options:?}");
        assert!(ran.stderr.contains(named), "{}", ran.stderr);
        assert!(ran.stderr.contains("lentic explain"), "{}", ran.stderr);
    }
    let text = lentic(&["explain", "--format", "text"], "");
    assert_eq!(text.code, 0, "{}", text.stderr);
}

#[test]
fn a_numbered_row_has_the_title_and_the_value_of_its_result() {
    let plan = json(&["plan", TANK]);
    for typed in [
        "rows[3].weight.total_kg",
        "rows.0.weight.total_kg",
        "compare.rows[0].weight.total_kg",
        "weight.total_kg",
    ] {
        let told = json(&["explain", typed, TANK]);
        let values = told["values"].as_array().unwrap();
        assert_eq!(values.len(), 1, "{typed}");
        assert_eq!(values[0]["path"], "weight.total_kg", "{typed}");
        assert_eq!(values[0]["value"], plan["weight"]["total_kg"], "{typed}");
        let text = lentic(&["explain", typed], "").stdout;
        assert!(text.starts_with("weight.total_kg\n"), "{typed}: {text}");
    }
    for (typed, path) in [
        ("compare.status", "rows[].status"),
        ("night.hours[3].ph", "hours[3].ph"),
        ("rows[2].status", "rows[2].status"),
        ("soil.bags.0.size", "soil.bags[0].size"),
        ("dawn_oxygen_mg_l.low", "night.dawn_oxygen_mg_l.low"),
    ] {
        let text = lentic(&["explain", typed], "").stdout;
        assert_eq!(text.lines().next(), Some(path), "{typed}");
    }
}

#[test]
fn an_item_that_no_list_can_have_has_no_value() {
    let path = "findings[99999999999999999999999].status";
    let told = json(&["explain", path, TANK]);
    assert!(told.get("values").is_none(), "{told:#}");
}

#[test]
fn every_command_with_results_is_a_section() {
    for command in ["plan", "startup", "night", "check", "compare", "solve"] {
        let told = json(&["explain", command]);
        let results = told["results"].as_array().unwrap();
        let own = results.iter().filter(|row| row["command"] == command);
        let rows = dictionary::results().iter();
        let all = rows.filter(|row| row.command.word() == command).count();
        assert!(all > 3, "{command}");
        assert_eq!(own.count(), all, "{command}");
    }
}
