//! Laws of the water changes that a start is advised.

use lentic::design::{Design, WaterChange};
use lentic::plan::{Options, Startup, startup};
use lentic::units::{Duration, Share};

const OPTIONS: Options = Options {
    members: 40,
    seed: 5,
    days: 40,
};

fn design(more: &str) -> Design {
    let text = format!(
        r#"{more}
[tank]
shape = "box"
size = "40 x 25 x 25 cm"
[soil]
material = "loam_topsoil"
depth = "25 mm"
[cap]
material = "filter_sand"
depth = "40 mm"
[[plants]]
name = "lemna_minor"
amount = "30 %"
[[plants]]
name = "ludwigia_repens"
amount = "12 stems"
"#
    );
    lentic::spec::parse(&text).unwrap_or_else(|faults| panic!("{faults}"))
}

fn follow(design: &Design) -> Startup {
    startup(design, OPTIONS, &|_| ()).expect("a run").0
}

/// The advice of a start, as a spec would have it.
fn advised(start: &Startup) -> Vec<WaterChange> {
    let plans = start.section.water_change_plan.iter();
    plans
        .map(|plan| WaterChange {
            share: Share::from_percent(plan.share_pct),
            every: Duration::from_days(plan.every_d),
            from: plan.from,
            until: plan.until,
        })
        .collect()
}

#[test]
fn a_start_that_is_likely_enough_needs_no_more_changes() {
    let start = follow(&design("goal = { probability = '1 %' }"));
    assert!(start.probability_under_limits >= 0.01);
    assert_eq!(advised(&start), []);
    assert_eq!(start.section.probability_with_changes, None);
}

#[test]
fn a_start_that_no_change_of_water_helps_is_advised_none() {
    let start = follow(&design("goal = { ammonia = '0.000001 mg/L' }"));
    assert_eq!(advised(&start), []);
    assert_eq!(start.section.probability_with_changes, None);
}

/// The probability told is met by a design with the changes written into it.
#[test]
fn changes_written_into_the_design_reach_what_they_promise() {
    let asked = design("goal = { probability = '45 %' }");
    let start = follow(&asked);
    assert!(start.probability_under_limits < 0.45);
    let promised = start
        .section
        .probability_with_changes
        .expect("a probability");
    assert!(promised >= 0.45, "{promised}");
    let mut draft = asked.into_draft();
    draft.water.change = advised(&start).first().copied();
    let changed = follow(&draft.check().expect("a design"));
    let reached = changed.probability_under_limits;
    assert!((reached - promised).abs() < 1e-9, "{reached}");
}

/// The changes stand in place of the keeper's own.
#[test]
fn advice_does_not_depend_on_changes_that_it_replaces() {
    let own = "water = { change = { share = '5 %', every = '7 d', from = 7 } }";
    assert_eq!(
        advised(&follow(&design(own))),
        advised(&follow(&design("")))
    );
    let doing = |start: &Startup| {
        let entries = start.section.calendar.iter();
        entries
            .filter(|entry| entry.what.starts_with("change "))
            .count()
    };
    assert_eq!(doing(&follow(&design(own))), 1);
}

#[test]
fn advice_does_not_depend_on_the_number_of_threads() {
    let on = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        pool.expect("a pool").install(|| follow(&design("")))
    };
    let alone = on(1);
    assert_eq!(alone, on(2));
    assert_eq!(alone, on(5));
}
