//! Laws of water changes by reading.

use lentic::design::Design;
use lentic::plan::{Options, Startup, plan, startup};
use lentic::source::Band;
use lentic::startup::{ChangesByReading, Draw, Inputs, Member, Parameters, ensemble};
use lentic::units::{Concentration, Duration, Share};

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

/// The members of a design with water changed where ammonia is over one threshold, mg N/L,
/// or nitrite over another, mg NO2-N/L.
fn members(ammonia: f64, nitrite_n: f64) -> Vec<Member> {
    let design = design("");
    let rule = ChangesByReading {
        share: Share::from_percent(30.0),
        ammonia: Concentration::from_mg_l(ammonia),
        nitrite_n: Concentration::from_mg_l(nitrite_n),
        every: Duration::from_days(2.0),
    };
    let draw = Draw {
        members: OPTIONS.members,
        seed: OPTIONS.seed,
    };
    let inputs = Inputs::by_reading(&design, rule);
    let bands = Parameters::<Band>::of(&design);
    ensemble::members(&inputs, &bands, OPTIONS.days, draw, &|_| ())
}

/// On every day of a test, and on no other, water is changed where the sample of that day,
/// which shows it just before, is over a threshold.
#[test]
fn water_is_changed_on_the_days_whose_tests_ask_for_it() {
    let (ammonia, nitrite_n) = (0.1, 0.05);
    let members = members(ammonia, nitrite_n);
    assert!(members.iter().any(|member| member.changed_on.len() > 1));
    for member in &members {
        let over = member.days.iter().filter(|sample| {
            let state = &sample.state;
            sample.day > 0.0
                && (sample.day / 2.0).fract() < f64::EPSILON
                && (state.ammonia > ammonia || state.nitrite > nitrite_n)
        });
        let over: Vec<f64> = over.map(|sample| sample.day).collect();
        assert_eq!(member.changed_on, over, "{}", member.index);
    }
}

#[test]
fn a_run_that_reads_nothing_over_is_that_without_the_rule() {
    let never = members(1e9, 1e9);
    let draw = Draw {
        members: OPTIONS.members,
        seed: OPTIONS.seed,
    };
    let design = design("");
    let bands = Parameters::<Band>::of(&design);
    let plain = ensemble::members(&Inputs::of(&design), &bands, OPTIONS.days, draw, &|_| ());
    assert_eq!(never, plain);
}

/// Where changes are advised, more starts hold with them than without; where they are not,
/// the odds are those as written, and a reason is given.
#[test]
fn advised_changes_hold_more_starts() {
    for more in [
        "",
        "goal = { ammonia = '0.000001 mg/L' }",
        "goal = { nitrite = '5 mg/L' }",
        "water = { phosphate = '2 mg/L' }",
        "water = { ammonia = '0.4 mg/L', nitrite = '0.3 mg/L' }",
        "water = { change = { share = '50 %', every = '2 d', from = 2 } }",
    ] {
        let section = follow(&design(more)).section;
        let with = section.odds_with_changes.expect("odds");
        if let Some(changes) = section.changes_by_reading {
            assert!(with > section.odds_as_written, "{more}");
            assert_eq!(section.probability_with_changes, Some(with));
            assert!(changes.expected_low <= changes.expected);
            assert!(changes.expected <= changes.expected_high);
            assert_eq!(section.changes_by_reading_reason, None);
        } else {
            let off = with - section.odds_as_written;
            assert!(off.abs() < f64::EPSILON, "{more}");
            assert_eq!(section.probability_with_changes, None);
            assert!(section.changes_by_reading_reason.is_some(), "{more}");
            assert_eq!(section.water_change_plan, []);
        }
    }
}

/// A plan and a start tell the same odds and the same changes.
#[test]
fn plan_and_start_tell_the_same_odds() {
    let design = design("water = { phosphate = '1 mg/L' }");
    let start = follow(&design);
    let plan = plan(&design, OPTIONS).expect("a plan");
    assert_eq!(plan.startup, start.section);
    let same = |odds: f64| assert!((odds - plan.startup.odds_as_written).abs() < f64::EPSILON);
    same(plan.planting.probability_under_limits);
    same(start.probability_under_limits);
    assert!(plan.verdict().contains(&start.section.odds_in_words()));
}

/// The rule stands in place of the keeper's own regular changes.
#[test]
fn the_rule_does_not_depend_on_changes_that_it_replaces() {
    let own = "water = { change = { share = '5 %', every = '7 d', from = 7 } }";
    let (own, none) = (follow(&design(own)), follow(&design("")));
    let changes = own.section.changes_by_reading;
    assert!(changes.is_some());
    assert_eq!(changes, none.section.changes_by_reading);
    let doing = |start: &Startup| {
        let entries = start.section.calendar.iter();
        let changing = entries.filter(|entry| entry.what.contains("change "));
        changing.count()
    };
    assert_eq!((doing(&own), doing(&none)), (1, 1));
}

#[test]
fn the_rule_does_not_depend_on_the_number_of_threads() {
    let on = |threads: usize| {
        let pool = rayon::ThreadPoolBuilder::new().num_threads(threads).build();
        pool.expect("a pool").install(|| follow(&design("")))
    };
    let alone = on(1);
    assert_eq!(alone, on(2));
    assert_eq!(alone, on(5));
}
