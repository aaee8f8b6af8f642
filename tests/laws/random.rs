//! Laws of the plan of any tank: it is computed, finite, and its parts add up.

use std::fmt;

use lentic::design::{Design, Draft};
use lentic::plan::{Options, Partial, Plan, PlanPart, partial, plan};
use lentic::report::json;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;
use serde_json::Value;

use crate::odd::odd_in;
use crate::random_spec;

/// Few days: every rule sees them, and the run takes most of the time.
pub(crate) const OPTIONS: Options = Options {
    members: 0,
    seed: 1,
    days: 20,
};

/// How many times as many designs are drawn as by themselves, where that is asked for.
fn times_asked() -> Option<u32> {
    let asked = std::env::var("LENTIC_LAWS").ok();
    asked.map(|times| times.parse().expect("a whole number"))
}

/// So many cases, or `LENTIC_LAWS` times as many, the same ones in every run;
/// `PROPTEST_RNG_SEED` draws others.
pub(crate) fn config(cases: u32) -> ProptestConfig {
    let usual = ProptestConfig::default();
    ProptestConfig {
        cases: cases * times_asked().unwrap_or(1),
        failure_persistence: None,
        rng_seed: match usual.rng_seed {
            RngSeed::Random => RngSeed::Fixed(1),
            asked @ RngSeed::Fixed(_) => asked,
        },
        ..usual
    }
}

/// Bytes that random specs are made of.
pub(crate) fn bytes() -> impl Strategy<Value = Vec<u8>> {
    prop::collection::vec(any::<u8>(), 20..140)
}

/// A design that shows itself as its spec.
#[derive(Clone)]
pub(crate) struct Drawn {
    pub(crate) design: Design,
    spec: String,
}

impl fmt::Debug for Drawn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.spec)
    }
}

impl Drawn {
    /// What the design is made of.
    pub(crate) fn draft(&self) -> Draft {
        self.design.draft().clone()
    }
}

/// Random designs; what some bytes stand for is at times no design.
pub(crate) fn drawn() -> impl Strategy<Value = Drawn> {
    bytes().prop_filter_map("no design", |bytes| {
        let spec = random_spec::spec(&bytes);
        let design = lentic::spec::parse(&spec).ok()?;
        Some(Drawn { design, spec })
    })
}

fn planned(design: &Design) -> Plan {
    plan(design, OPTIONS).expect("a plan")
}

/// Some parts of a plan.
pub(crate) fn parts(design: &Design, parts: &[PlanPart]) -> Partial {
    partial(design, OPTIONS, parts).expect("a plan")
}

/// What rightly says nothing at times: a rule without a bound, a day that does not come,
/// a date where the spec has no start.
const AT_TIMES_NOTHING: [&str; 5] = [
    ".stocking[].date",
    ".findings[]",
    ".cautions[]",
    ".startup.ready_day",
    ".startup.ready_day_advised",
];

/// Paths of what JSON has nothing for.
fn nulls(value: &Value, path: &str, found: &mut Vec<String>) {
    match value {
        Value::Null if AT_TIMES_NOTHING.iter().any(|known| path.starts_with(known)) => {}
        Value::Null => found.push(path.to_owned()),
        Value::Array(items) => {
            for item in items {
                nulls(item, &format!("{path}[]"), found);
            }
        }
        Value::Object(fields) => {
            for (name, field) in fields {
                nulls(field, &format!("{path}.{name}"), found);
            }
        }
        _ => {}
    }
}

proptest! {
    #![proptest_config(config(6))]

    #[test]
    fn any_design_is_planned_with_finite_numbers_and_written_without_a_gap(drawn in drawn()) {
        let plan = planned(&drawn.design);
        prop_assert_eq!(odd_in(&plan), Vec::<String>::new());
        let mut found = Vec::new();
        nulls(&Value::Object(json::object("lentic/plan/1", &plan)), "", &mut found);
        prop_assert_eq!(found, Vec::<String>::new());
    }

    #[test]
    fn a_plan_is_the_same_every_time(drawn in drawn()) {
        prop_assert_eq!(planned(&drawn.design), planned(&drawn.design));
    }
}

proptest! {
    #![proptest_config(config(1000))]

    /// Also where the bed rises out of the water: what of it stands above the level is
    /// part of the space above the level.
    #[test]
    fn water_stones_the_bed_under_water_and_the_freeboard_fill_the_tank(drawn in drawn()) {
        let design = &drawn.design;
        let (vessel, level) = (design.vessel(), design.water_level());
        let above = vessel.brimful() - vessel.volume_below(level);
        let parts = design.bed().volume_below(level) + design.water() + design.hardscape() + above;
        prop_assert!((parts / vessel.brimful() - 1.0).abs() < 1e-9);
        let emerged = (design.bed().volume() - design.bed().volume_below(level)).litres();
        prop_assert!(emerged > -1e-9 && emerged <= above.litres() + 1e-9);
        prop_assert_eq!(emerged > 1e-6, design.bed().rises_above(level));
        prop_assert!(design.surface() / vessel.surface(level) <= 1.0 + 1e-12);
        prop_assert!(design.surface().m2() > 0.0 && design.water_depth().m() > 0.0);
        prop_assert!(design.water_depth() <= level);
    }

    #[test]
    fn the_parts_of_any_tank_weigh_their_sum(drawn in drawn()) {
        let weight = parts(&drawn.design, &[PlanPart::Measures]).weight.expect("a weight");
        let sum = weight.shell_kg + weight.soil_kg + weight.cap_kg + weight.hardscape_kg
            + weight.water_kg + weight.stand_kg;
        prop_assert!((sum / weight.total_kg - 1.0).abs() < 1e-9);
    }

    #[test]
    fn what_is_bought_is_enough_and_bags_add_up(drawn in drawn()) {
        let plan = parts(&drawn.design, &[PlanPart::Measures]);
        let (soil, cap) = (plan.soil.expect("soil"), plan.cap.expect("cap"));
        prop_assert!(soil.buy_l >= soil.volume_l * (1.0 - 1e-9));
        prop_assert!(cap.buy_kg >= cap.dry_mass_kg * (1.0 - 1e-9));
        prop_assert!(soil.thinnest_cm <= soil.depth_cm + 1e-9 && soil.depth_cm <= soil.deepest_cm + 1e-9);
        prop_assert!(cap.thinnest_cm <= cap.depth_cm + 1e-9 && cap.depth_cm <= cap.deepest_cm + 1e-9);
        if let (Some(total), Some(surplus)) = (soil.bags_total_l, soil.surplus_l) {
            // Bags are counted in whole millilitres.
            prop_assert!(total >= soil.buy_l - 6e-4 && surplus >= 0.0);
            prop_assert!((total - surplus - soil.buy_l).abs() < 6e-4);
            let prices = soil.bags.iter().map(|bag| f64::from(bag.count) * bag.price.unwrap_or(0.0));
            prop_assert!((prices.sum::<f64>() - soil.cost.unwrap_or(0.0)).abs() < 1e-6);
        }
    }
}

/// Most bytes have to make a tank, or the laws are about few.
#[test]
fn most_bytes_are_a_design() {
    let designs = (0_u32..500)
        .filter(|i| {
            let bytes: Vec<u8> = (0_u32..90)
                .map(|j| (i.wrapping_mul(2_654_435_761).wrapping_add(j * 40_503) >> 7) as u8)
                .collect();
            lentic::spec::parse(&random_spec::spec(&bytes)).is_ok()
        })
        .count();
    assert!(designs > 150, "{designs} of 500");
}

/// What the search for inputs learnt: the richest of the tanks that between them take
/// every turn that it found, and the one whose plan took longest. Bytes in hexadecimal.
const KEPT: &str = include_str!("kept.txt");

/// One in three, all of them with `LENTIC_LAWS` set.
#[test]
fn every_kept_tank_is_planned_with_finite_numbers() {
    let bytes = |line: &str| -> Vec<u8> {
        let pairs = line.as_bytes().chunks(2);
        let byte = |pair: &[u8]| u8::from_str_radix(std::str::from_utf8(pair).unwrap(), 16);
        pairs.map(|pair| byte(pair).expect("hexadecimal")).collect()
    };
    let mut planned_tanks = 0;
    let every = if times_asked().is_some() { 1 } else { 3 };
    for line in KEPT.lines().step_by(every) {
        let spec = random_spec::spec(&bytes(line));
        // some hold more animals or food than is let in
        let Ok(design) = lentic::spec::parse(&spec) else {
            continue;
        };
        planned_tanks += 1;
        assert_eq!(odd_in(&planned(&design)), Vec::<String>::new(), "{spec}");
    }
    assert!(planned_tanks * every > 20, "{planned_tanks}");
}
