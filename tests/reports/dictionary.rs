//! The dictionary of results against the lists of paths, both ways; everything explained.

use std::collections::{BTreeMap, BTreeSet};

use lentic::catalogue;
use lentic::explanation;
use lentic::finding::{Code, Working, WorkingStep};
use lentic::plan;
use lentic::report::at::{self, ValueAt};
use lentic::report::compose::{self, WorkedExample};
use lentic::report::dictionary::{self, ExplainSubject, Named, ResultCommand, ResultRow};
use lentic::report::document::Document;
use lentic::report::text::{self, Layout};
use lentic::report::{chart::Glyphs, csv, json};
use lentic::result::ResultKind;
use lentic::source::Source;
use lentic::units::{UnitSystem, unit_of_result};
use lentic::{diagnosis, study};

use crate::designed::{FEW, demo as demo_tank, planned};
use crate::typed::{self, ENDS};

/// Every path that is typed in, with its command.
fn paths() -> Vec<(ResultCommand, String)> {
    let of_one = |command| {
        let paths = typed::paths(command).into_iter();
        paths.map(move |(path, _)| (command, path))
    };
    ResultCommand::ALL.into_iter().flat_map(of_one).collect()
}

/// The rows that could be meant by a path of a command's list: its own before a plan's.
fn meant(command: ResultCommand, path: &str) -> Vec<&'static ResultRow> {
    let is = |row: &ResultRow, wanted: &str| {
        row.path == wanted || (row.band.is_some() && Some(row.path.as_str()) == end_of(wanted))
    };
    let rows = dictionary::results().iter();
    let own: Vec<_> = rows
        .clone()
        .filter(|row| row.command == command && is(row, path))
        .collect();
    if !own.is_empty() {
        return own;
    }
    let in_a_plan = format!("{}.{path}", command.word());
    rows.filter(|row| row.command == ResultCommand::Plan)
        .filter(|row| is(row, path) || is(row, &in_a_plan))
        .collect()
}

fn end_of(path: &str) -> Option<&str> {
    ENDS.iter().find_map(|end| path.strip_suffix(end))
}

#[test]
fn every_path_of_every_list_has_exactly_one_row() {
    let paths = paths();
    assert!(paths.len() > 480, "{}", paths.len());
    for (command, path) in paths {
        let rows = meant(command, &path);
        assert_eq!(rows.len(), 1, "{} {path}: {rows:#?}", command.word());
        assert_eq!(dictionary::result(command, &path), Some(rows[0]));
    }
}

#[test]
fn every_row_occurs_in_a_list_and_stands_once() {
    let listed: Vec<&ResultRow> = paths()
        .into_iter()
        .flat_map(|(command, path)| meant(command, &path))
        .collect();
    let mut names = BTreeSet::new();
    for row in dictionary::results() {
        assert!(listed.contains(&row), "{} is in no list", row.name());
        assert!(names.insert(row.name()), "{} stands twice", row.name());
    }
}

#[test]
fn rows_have_a_band_where_their_paths_do() {
    let mut ends: BTreeMap<String, BTreeSet<&str>> = BTreeMap::new();
    for (command, path) in paths() {
        let row = meant(command, &path)[0];
        let is_end = row.path != path && !path.ends_with(&row.path);
        let end = ENDS.iter().find(|end| is_end && path.ends_with(**end));
        let of_row = ends.entry(row.name()).or_default();
        of_row.extend(end);
    }
    for row in dictionary::results() {
        let has = ends[&row.name()].len();
        let wanted = if row.band.is_some() { 3 } else { 0 };
        assert_eq!(has, wanted, "{}", row.name());
    }
}

#[test]
fn rows_know_what_stands_at_their_paths() {
    for (command, path, kinds) in ResultCommand::ALL.into_iter().flat_map(|command| {
        let paths = typed::paths(command).into_iter();
        paths.map(move |(path, kinds)| (command, path, kinds))
    }) {
        let row = meant(command, &path)[0];
        let kinds = kinds.trim_start_matches("null|");
        let wanted = match row.kind {
            ResultKind::Number => "number",
            ResultKind::Word => "string",
            ResultKind::Flag => "bool",
            ResultKind::List => "list",
            ResultKind::Section => "object",
        };
        assert!([wanted, "null"].contains(&kinds), "{path}: {row:?}");
    }
}

/// Bags are of the soil or of the cap, and so is the rule that counts them.
#[test]
fn what_two_sections_share_rests_on_what_each_rests_on() {
    for (path, topic) in [
        ("soil.bags[].count", "soil.purchase"),
        ("cap.bags[].count", "cap.purchase"),
    ] {
        let row = dictionary::result(ResultCommand::Plan, path).unwrap();
        assert_eq!(row.topic(), Some(topic), "{path}");
    }
}

#[test]
fn every_row_says_in_one_line_what_it_is_and_what_it_rests_on() {
    for row in dictionary::results() {
        let name = row.name();
        if let Some(topic) = row.topic() {
            assert!(explanation::topic(topic).is_some(), "{name}: no {topic}");
        }
        assert!((3..=140).contains(&row.says.len()), "{name}: {}", row.says);
        assert!(!row.says.ends_with('.'), "{name}: {}", row.says);
    }
}

#[test]
fn every_topic_is_that_of_a_finding_or_of_a_result() {
    for topic in explanation::topics() {
        let code = topic.code.as_str();
        let results = dictionary::results().iter();
        let is_named = results
            .filter_map(ResultRow::topic)
            .any(|named| named == code);
        assert!(is_named || Code::find(code).is_some(), "{code}");
        let meant = dictionary::results().iter().any(|row| row.name() == code);
        assert!(!meant, "{code} is a result too");
    }
}

/// Units as the names spell them, typed in.
#[test]
fn the_unit_follows_from_the_name() {
    for (path, unit) in [
        ("weight.total_kg", "kg"),
        ("weight.footprint_pressure_kpa", "kPa"),
        ("panes.long_pane_stress_mpa", "MPa"),
        ("tank.water_l", "L"),
        ("tank.footprint_cm2", "cm2"),
        ("tank.water_depth_cm", "cm"),
        ("bed.release_peak_mg_n_m2_d", "mg N/m2/d"),
        ("bed.release_21_d_g_n_m2", "g N/m2"),
        ("bed.oxic_front_mm", "mm"),
        ("bed.gas_ratio", ""),
        ("planting.needed.portions[].count", ""),
        ("planting.shortfall_pct", "%"),
        ("planting.needed.cost", "money"),
        ("soil.bags[].price", "money"),
        ("heat.cost_per_year", "money"),
        ("startup.ammonia_peak_mg_l.high", "mg/L"),
        ("startup.ammonia_peak_day.low", "d"),
        ("startup.ready_day_advised", "d"),
        ("startup.ready_day_reason", ""),
        ("startup.algae_window_days", "d"),
        ("startup.water_change_plan[].until", "d"),
        ("startup.water_change_plan[].every_d", "d"),
        ("days[].phosphate_p_mg_l", "mg P/L"),
        ("days[].slow_g", "g"),
        ("night.hours_under_5_mg_l.typical", "h"),
        ("night.dawn_hour", "h"),
        ("night.power_cut_h", "h"),
        ("night.ph_dawn", ""),
        ("night.air_needed_night_l_min", "L/min"),
        ("flow.turnover_per_h", "1/h"),
        ("flow.velocity_cm_s", "cm/s"),
        ("light.par_mid_umol", "umol/m2/s"),
        ("light.daily_mol_m2", "mol/m2"),
        ("light.break_even_hours", "h"),
        ("heat.heater_w", "W"),
        ("heat.kwh_per_year", "kWh/year"),
        ("heat.evaporation_l_per_week", "L/week"),
        ("heat.cools_4_k_h", "h"),
        ("hours[].hour", "h"),
        ("measure_next.bits", "bits"),
        ("causes[].probability", ""),
    ] {
        assert_eq!(unit_of_result(path), unit, "{path}");
    }
}

fn rendered(document: &Document) -> String {
    let layout = Layout {
        width: 2000,
        color: false,
        glyphs: Glyphs::ASCII,
    };
    text::render(document, layout)
}

/// The text of an explanation without a spec.
fn explained(subject: &ExplainSubject) -> String {
    rendered(&match subject {
        ExplainSubject::Topic(topic) => compose::explain_topic(topic, None),
        ExplainSubject::Source(source) => compose::explain_source(*source, None),
        ExplainSubject::Result(named) => compose::explain_result(named, topic_of(named), None),
        ExplainSubject::Section {
            name,
            results,
            topics,
        } => compose::explain_section(name, results, topics),
    })
}

fn topic_of(named: &Named) -> Option<&'static catalogue::Topic> {
    named.row.topic().and_then(explanation::topic)
}

#[test]
fn every_code_result_and_source_is_explained() {
    for topic in explanation::topics() {
        let text = explained(&ExplainSubject::find(&topic.code).unwrap());
        assert!(text.contains(&topic.formula), "{}", topic.code);
    }
    for row in dictionary::results() {
        let subject = ExplainSubject::find(&row.name()).unwrap();
        let ExplainSubject::Result(named) = &subject else {
            panic!("{}: {subject:?}", row.name());
        };
        assert_eq!(named.row, row);
        let text = explained(&subject);
        assert!(text.contains(row.says), "{}: {text}", row.name());
        let grounds = match topic_of(named) {
            Some(topic) => topic.rule.as_str(),
            None => dictionary::rests_on(row.ground),
        };
        assert!(text.contains(grounds), "{}: {text}", row.name());
    }
    for source in Source::ALL {
        let text = explained(&ExplainSubject::find(source.key()).unwrap());
        assert!(text.contains(&source.work().title), "{source}");
        assert!(text.contains("What rests on it"), "{source}");
    }
}

#[test]
fn every_path_of_every_list_and_every_column_is_understood() {
    for (command, path) in paths() {
        let row = meant(command, &path)[0];
        match ExplainSubject::find(&path) {
            Ok(ExplainSubject::Result(named)) => assert_eq!(named.row, row, "{path}"),
            Ok(ExplainSubject::Section { results, .. }) => {
                assert!(results.contains(&row), "{path}: {results:#?}");
            }
            other => panic!("{path}: {other:?}"),
        }
    }
    for column in study::ResultColumn::every() {
        let name = column.name();
        let is_code = name.strip_prefix("findings.").is_some();
        match ExplainSubject::find(name) {
            Ok(ExplainSubject::Result(_)) => assert!(!is_code, "{name}"),
            Ok(ExplainSubject::Topic(topic)) => {
                assert_eq!(format!("findings.{}", topic.code), name);
            }
            other => panic!("{name}: {other:?}"),
        }
    }
}

/// A path as CSV has it, `soil.bags.0.size`, with its number in brackets.
fn bracketed(path: &str) -> String {
    let parts = path.split('.').map(|part| match part.parse::<usize>() {
        Ok(place) => format!("[{place}]"),
        Err(_) => format!(".{part}"),
    });
    parts.collect::<String>()[1..].to_owned()
}

#[test]
fn every_value_of_a_plan_is_printed_at_its_path() {
    let plan = planned(&demo_tank("demo-tanks/charged-mix.toml"));
    let object = json::object("lentic/plan/1", &plan);
    let cells = csv::flattened(&object, csv::Lists::Numbered);
    assert!(cells.len() > 200, "{}", cells.len());
    for (path, value) in cells {
        let Ok(ExplainSubject::Result(named)) = ExplainSubject::find(&path) else {
            panic!("{path} is no result");
        };
        let path = bracketed(&path);
        let values = at::values(&object, &named.path);
        let expected = ValueAt {
            path: path.clone(),
            value,
        };
        assert_eq!(values, vec![expected]);
        let worked = WorkedExample {
            name: plan.name.clone(),
            units: UnitSystem::Metric,
            values,
            working: Working { steps: Vec::new() },
            findings: Vec::new(),
            cautions: Vec::new(),
        };
        let text = rendered(&compose::explain_result(&named, None, Some(&worked)));
        assert!(text.contains(&path), "{path}: {text}");
    }
}

#[test]
fn what_rests_on_a_source_is_what_cites_it() {
    for source in Source::ALL {
        let resting = compose::Resting::on(*source);
        for topic in explanation::topics() {
            let cites = topic.source.contains(source);
            assert_eq!(
                resting.topics.contains(&topic.code),
                cites,
                "{}",
                topic.code
            );
        }
        for plant in catalogue::plants() {
            let row = format!("plant {}", plant.name);
            let cites = plant.source.contains(source);
            assert_eq!(resting.rows.contains(&row), cites, "{row}");
            let restricts = plant.listed.iter().any(|list| list.source == *source);
            let row = format!("restricted {row}");
            assert_eq!(resting.rows.contains(&row), restricts, "{row}");
        }
    }
}

/// The numbers of the results that rest on a topic, those of a plan alone.
fn figures_of(topic: &str, object: &serde_json::Map<String, serde_json::Value>) -> Vec<f64> {
    let rows = dictionary::results().iter();
    rows.filter(|row| row.command == ResultCommand::Plan && row.topic() == Some(topic))
        .flat_map(|row| {
            let end = if row.band.is_some() { ".typical" } else { "" };
            at::values(object, &format!("{}{end}", row.path))
        })
        .filter_map(|at| at.value.as_f64())
        .collect()
}

#[test]
fn a_working_shows_a_figure_that_rests_on_it() {
    let design = demo_tank("demo-tanks/gasping-before-the-lamp.toml");
    let plan = planned(&design);
    let object = json::object("lentic/plan/1", &plan);
    let mut worked = 0;
    for topic in explanation::topics() {
        if Code::find(&topic.code).is_some() {
            continue;
        }
        let steps = plan::working_of(&design, &plan, &topic.code).steps;
        let figures = figures_of(&topic.code, &object);
        if steps.is_empty() || figures.is_empty() {
            continue;
        }
        worked += 1;
        let near = |a: f64, b: f64| (a - b).abs() <= 1e-6 * b.abs().max(1e-9);
        let shows = |step: &WorkingStep| figures.iter().any(|figure| near(step.value, *figure));
        assert!(
            steps.iter().any(shows),
            "{}: {figures:?} in {steps:#?}",
            topic.code
        );
    }
    assert!(worked >= 9, "{worked}");
}

#[test]
fn water_and_purchases_follow_from_the_steps_before_them() {
    let design = demo_tank("demo-tanks/hillside-60.toml");
    let plan = planned(&design);
    let values = |code| -> Vec<f64> {
        let steps = plan::working_of(&design, &plan, code).steps;
        steps.iter().map(|step| step.value).collect()
    };
    let [_, below, bed, stones, water] = values("tank.volume")[..] else {
        panic!("five steps");
    };
    assert!((below - bed - stones - water).abs() < 1e-9);
    let soil = values("soil.purchase");
    for pair in soil[1..].chunks(2) {
        assert!((pair[0] * pair[1] / soil[0] - 1.0).abs() < 1e-9, "{soil:?}");
    }
    let [place_l, bulk_kg_m3, buy_kg, ..] = values("cap.purchase")[..] else {
        panic!("five steps");
    };
    assert!((place_l * 1e-3 * bulk_kg_m3 / buy_kg - 1.0).abs() < 1e-9);
}

/// Every topic with its working, on a terminal of eighty columns.
#[test]
fn every_working_stays_within_the_columns() {
    for path in [
        "demo-tanks/third-week-nitrite.toml",
        "demo-tanks/gasping-before-the-lamp.toml",
        "demo-tanks/living-room-180.toml",
    ] {
        let design = demo_tank(path);
        let plan = planned(&design);
        let found = diagnosis::diagnose(&design, &[], FEW).expect("a check");
        for topic in explanation::topics() {
            let of_check = topic.code.starts_with("check.");
            let working = if of_check {
                diagnosis::working_of(&found, &topic.code)
            } else {
                plan::working_of(&design, &plan, &topic.code)
            };
            let worked = WorkedExample {
                name: plan.name.clone(),
                units: UnitSystem::Metric,
                values: Vec::new(),
                working,
                findings: Vec::new(),
                cautions: Vec::new(),
            };
            let text = text::render(
                &compose::explain_topic(topic, Some(&worked)),
                Layout {
                    width: 80,
                    color: false,
                    glyphs: Glyphs::ASCII,
                },
            );
            for line in text.lines() {
                let width = line.chars().count();
                assert!(width <= 80, "{path}: {}: {line}", topic.code);
            }
            for step in &worked.working.steps {
                let value = lentic::units::show::significant(step.value, 4);
                let is_whole = text.lines().any(|line| line.contains(&value));
                assert!(is_whole, "{path}: {}: {value} in {text}", topic.code);
            }
        }
    }
}

#[test]
fn heater_and_daily_light_follow_from_the_steps_before_them() {
    let design = demo_tank("demo-tanks/living-room-180.toml");
    let plan = planned(&design);
    let values = |code| -> Vec<f64> {
        let steps = plan::working_of(&design, &plan, code).steps;
        steps.iter().map(|step| step.value).collect()
    };
    let heat = values("heat.balance");
    let [.., walls, bottom, top, vapour, all, margin, heater] = heat[..] else {
        panic!("{heat:?}");
    };
    assert!(walls > 0.0 && top > 0.0 && vapour > 0.0, "{heat:?}");
    assert!(
        (walls + bottom + top + vapour - all).abs() < 1e-9,
        "{heat:?}"
    );
    assert!((all * margin - heater).abs() < 1e-9, "{heat:?}");
    let light = values("light.lamp");
    let [.., umol_m2_s, hours, mol_m2_d] = light[..] else {
        panic!("{light:?}");
    };
    // Seconds in an hour, mol in a umol.
    let expected = umol_m2_s * hours * 3600.0 * 1e-6;
    assert!((expected / mol_m2_d - 1.0).abs() < 1e-9, "{light:?}");
}

/// p = rho g h and the pores of the stone; standard gravity is 9.80665 m/s2 (ISO 80000-3).
#[test]
fn the_pressure_of_a_pump_follows_from_the_depth_and_the_pores() {
    for path in [
        "demo-tanks/gasping-before-the-lamp.toml",
        "demo-tanks/living-room-180.toml",
        "demo-tanks/sponge-under-the-tap.toml",
    ] {
        let design = demo_tank(path);
        let plan = planned(&design);
        for topic in ["air.needed", "air.pump"] {
            let steps = plan::working_of(&design, &plan, topic).steps;
            let values: Vec<f64> = steps.iter().map(|step| step.value).collect();
            let [.., depth_cm, kg_m3, head_kpa, pores_kpa, pump_kpa] = values[..] else {
                panic!("{path}: {steps:#?}");
            };
            assert!((995.0..1000.0).contains(&kg_m3), "{kg_m3}");
            let expected = kg_m3 * 9.80665 * depth_cm / 100.0 / 1000.0;
            assert!((head_kpa - expected).abs() < 1e-9, "{path}: {steps:#?}");
            assert!((head_kpa + pores_kpa - pump_kpa).abs() < 1e-9, "{steps:#?}");
            assert!(depth_cm > 5.0, "{path}: {steps:#?}");
            let shown = plan.night.pump_pressure_kpa.expect("a pressure");
            assert!((shown.typical() - pump_kpa).abs() < 1e-12);
        }
    }
}
