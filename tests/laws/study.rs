//! Rows of a study against plans of the same specs.

use std::collections::BTreeMap;

use lentic::plan::{Options, Plan, PlanPart, plan};
use lentic::study::{
    Axis, BaseTank, Bound, Cell, Condition, Levels, Question, Relation, ResultColumn, Shard, Shown,
    SolveProblem, Space, TankRow, compare, solve,
};
use serde_json::Value;

const OPTIONS: Options = Options {
    members: 6,
    seed: 3,
    days: 90,
};

/// A tank with a default that follows each key varied below.
fn spec(height: &str, cap: &str, plants: &str, shrimp: &str) -> String {
    format!(
        r#"
[tank]
shape = "box"
length = "50 cm"
width = "30 cm"
height = "{height}"
[soil]
material = "organic_potting_mix"
depth = "25 mm"
bags = [ {{ size = "5 L", price = 4.5 }} ]
[cap]
material = "filter_sand"
depth = "{cap}"
bags = [ {{ size = "5 kg", price = 3.0 }} ]
[[plants]]
name = "lemna_minor"
amount = "{plants}"
[[animals]]
name = "small_shrimp"
count = {shrimp}
"#
    )
}

fn base() -> BaseTank {
    let text = spec("36 cm", "40 mm", "30 %", "4");
    BaseTank::of(0, lentic::spec::parse_draft(&text, "any").expect("a draft"))
}

fn axes() -> Vec<Axis> {
    [
        "tank.height=29..45cm/3",
        "cap.depth=25..55mm/2",
        "plants[0].amount=2%,31%",
        "animals[0].count=0..15/2",
    ]
    .map(|text| lentic::spec::axis(text).expect("an axis"))
    .to_vec()
}

fn every_column() -> Question {
    Question {
        columns: ResultColumn::every().collect(),
        ..Question::about(Space::grid(axes()).expect("a grid"), OPTIONS)
    }
}

fn number(row: &TankRow, place: usize) -> f64 {
    match row.levels[place].shown {
        Shown::Number(number) => number,
        Shown::Text(_) => panic!("a number"),
    }
}

/// The plan of the spec that a row stands for, written out anew.
fn plan_of(row: &TankRow) -> Plan {
    let text = spec(
        &format!("{} cm", number(row, 0)),
        &format!("{} mm", number(row, 1)),
        &format!("{} %", number(row, 2)),
        &format!("{}", number(row, 3)),
    );
    let design = lentic::spec::parse_named(&text, "any", None).expect("a design");
    plan(&design, OPTIONS).expect("a plan")
}

/// The value at a result's place in a plan's JSON.
fn in_plan(plan: &Plan, name: &str) -> Option<Value> {
    if name == "status" {
        return Some(plan.status().word().into());
    }
    if let Some(code) = name.strip_prefix("findings.") {
        let with_code = plan
            .findings
            .iter()
            .filter(|finding| finding.code.text() == code);
        let worst = with_code.map(|finding| finding.status).max()?;
        return Some(worst.word().into());
    }
    let value = serde_json::to_value(plan).expect("JSON");
    let found = value.pointer(&format!("/{}", name.replace('.', "/")))?;
    (!found.is_null()).then(|| found.clone())
}

fn as_json(cell: &Cell) -> Value {
    match cell {
        Cell::Number(number) => Value::from(*number),
        Cell::Whole(whole) => Value::from(*whole),
        Cell::Word(word) => Value::from(word.as_str()),
        Cell::Flag(flag) => Value::from(*flag),
    }
}

#[test]
fn a_row_is_the_plan_of_the_same_spec_to_the_last_digit() {
    let question = every_column();
    let bases = [base()];
    let rows: Vec<TankRow> = compare(&question, &bases).collect();
    assert_eq!(rows.len(), 24);
    // Every fifth row has each level of each axis among them.
    for row in rows.iter().step_by(5) {
        let plan = plan_of(row);
        let cells = row.cells.as_ref().expect("a tank");
        for (column, cell) in question.columns.iter().zip(cells) {
            let found = cell.as_ref().map(as_json);
            assert_eq!(found, in_plan(&plan, column.name()), "{}", column.name());
        }
    }
}

/// What is assumed where a number of shrimp is turned to, and where it is written.
#[test]
fn animals_turned_in_and_out_take_their_assumed_feed_along() {
    let written = |shrimp: &str| {
        let text = spec("36 cm", "40 mm", "30 %", shrimp);
        lentic::spec::parse_draft(&text, "any").expect("a draft")
    };
    let knob = lentic::spec::axis("animals[0].count=0,4")
        .expect("an axis")
        .knob;
    for (from, to) in [("0", 4), ("4", 0), ("0", 0), ("4", 9)] {
        let mut turned = written(from);
        lentic::spec::setting(knob, &to.to_string())
            .and_then(|setting| setting.apply(&mut turned))
            .expect("a count");
        let mut expected = written(&to.to_string());
        for draft in [&mut turned, &mut expected] {
            draft.assumed.sort_by(|a, b| a.key.cmp(&b.key));
        }
        assert_eq!(turned.assumed, expected.assumed, "{from} to {to}");
        assert_eq!(turned.feed, expected.feed, "{from} to {to}");
    }
}

/// What takes the same parts of a plan is asked for together, each result by itself with
/// `LENTIC_LAWS` set.
#[test]
fn a_result_is_the_same_whatever_else_is_asked_for() {
    let every = every_column();
    let bases = [base()];
    let whole = compare(&every, &bases).next().expect("a row");
    let cells = whole.cells.expect("a tank");
    let by_itself = std::env::var_os("LENTIC_LAWS").is_some();
    let mut together: BTreeMap<(PlanPart, usize), Vec<usize>> = BTreeMap::new();
    for (place, column) in every.columns.iter().enumerate() {
        let own = if by_itself { place } else { 0 };
        let part = (PlanPart::of(column.name()), own);
        together.entry(part).or_default().push(place);
    }
    assert!(together.len() > 8, "{together:?}");
    for places in together.values() {
        let asked = Question {
            columns: places
                .iter()
                .map(|place| every.columns[*place].clone())
                .collect(),
            ..every.clone()
        };
        let row = compare(&asked, &bases).next().expect("a row");
        for (place, cell) in places.iter().zip(row.cells.expect("a tank")) {
            assert_eq!(cell, cells[*place], "{}", every.columns[*place].name());
        }
    }
}

#[test]
fn rows_do_not_depend_on_the_number_of_threads() {
    let question = Question {
        columns: ResultColumn::main().collect(),
        ..every_column()
    };
    let bases = [base()];
    let with = |threads: usize| -> Vec<_> {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        pool.expect("threads").install(|| {
            compare(&question, &bases)
                .map(|row| {
                    let levels = row.levels.into_iter().map(|level| level.shown);
                    (row.number, levels.collect::<Vec<_>>(), row.cells)
                })
                .collect()
        })
    };
    let (one, three) = (with(1), with(3));
    assert_eq!(one.len(), 24);
    assert_eq!(one, three);
}

#[test]
fn shards_are_disjoint_and_complete() {
    let of = |shard: Shard| -> Vec<(u64, Vec<_>)> {
        let question = Question {
            columns: vec![ResultColumn::of("weight.total_kg").expect("a result")],
            shard,
            ..every_column()
        };
        let bases = [base(), BaseTank::of(1, base().draft)];
        compare(&question, &bases)
            .map(|row| (row.number, row.cells.expect("a tank")))
            .collect()
    };
    let whole = of(Shard::WHOLE);
    assert_eq!(whole.len(), 48);
    for count in [1, 2, 5, 7] {
        let mut together: Vec<_> = (1..=count)
            .flat_map(|part| of(Shard { part, of: count }))
            .collect();
        together.sort_by_key(|(number, _)| *number);
        assert_eq!(together, whole, "{count} shares");
    }
}

#[test]
fn samples_fill_each_range_evenly_and_are_what_they_show() {
    let axes = ["cap.depth=20..60mm", "tank.height=29..45cm"]
        .map(|text| lentic::spec::axis(text).expect("an axis"));
    let question = Question {
        columns: vec![ResultColumn::of("cap.depth_cm").expect("a result")],
        ..Question::about(
            Space::samples(axes.to_vec(), 64, 5).expect("samples"),
            OPTIONS,
        )
    };
    let mut quarters = [[0; 4]; 2];
    for row in compare(&question, &[base()]) {
        let depth_cm = row.cells.as_ref().expect("a tank")[0].as_ref();
        let depth_cm = depth_cm.and_then(Cell::number).expect("a depth");
        assert!((depth_cm * 10.0 - number(&row, 0)).abs() < 1e-9);
        quarters[0][((number(&row, 0) - 20.0) / 10.0) as usize] += 1;
        quarters[1][((number(&row, 1) - 29.0) / 4.0) as usize] += 1;
    }
    assert_eq!(quarters, [[16; 4]; 2]);
}

#[test]
fn what_solve_finds_just_meets_the_condition() {
    let axis = lentic::spec::range("cap.depth", "10mm", "60mm").expect("a range");
    let Levels::Range(range) = &axis.levels else {
        panic!("a range");
    };
    let base = base();
    let condition = Condition {
        column: ResultColumn::of("bed.release_peak_mg_n_m2_d").expect("a result"),
        comparison: Relation::AtMost,
        bound: Bound::Number(25.0),
    };
    let search = SolveProblem {
        draft: &base.draft,
        range,
        condition: &condition,
        options: OPTIONS,
    };
    let answer = solve(&search);
    assert!(answer.monotone && answer.crossings().len() == 1);
    let found = answer.found.expect("a depth");
    let release = |depth_mm: f64| {
        let text = spec("36 cm", &format!("{depth_mm} mm"), "30 %", "4");
        let design = lentic::spec::parse(&text).expect("a design");
        plan(&design, OPTIONS)
            .expect("a plan")
            .bed
            .release_peak_mg_n_m2_d
    };
    assert!(release(found.number) <= 25.0);
    assert!(release(found.number - 0.01) > 25.0);
    let never = solve(&SolveProblem {
        condition: &Condition {
            bound: Bound::Number(0.0),
            ..condition.clone()
        },
        ..search
    });
    assert!(never.found.is_none());
}

#[test]
fn a_grid_has_at_most_a_thousand_million_points_and_so_have_samples() {
    use lentic::study::SpaceError;
    let axes = |counts: [u32; 2]| {
        let [cap, soil] = counts;
        let texts = [
            format!("cap.depth=20..60mm/{cap}"),
            format!("soil.depth=20..60mm/{soil}"),
        ];
        texts.map(|text| lentic::spec::axis(&text).expect("an axis"))
    };
    let full = Space::grid(axes([1_000_000, 1_000]).to_vec()).expect("a grid");
    assert_eq!(full.points(), 1_000_000_000);
    for counts in [[1_000_000, 1_001], [u32::MAX, u32::MAX]] {
        let error = Space::grid(axes(counts).to_vec()).expect_err("too many points");
        assert_eq!(error, SpaceError::TooMany);
    }
    let error = Space::samples(axes([2, 2]).to_vec(), u32::MAX, 1).expect_err("too many");
    assert_eq!(
        error.to_string(),
        "more than 1000000000 points are asked for"
    );
}
