//! Laws of one tank written otherwise: in other units, in another order.

use std::collections::BTreeSet;

use lentic::UnitSystem;
use lentic::plan::{PlanPart, partial};
use proptest::prelude::*;
use serde_json::{Map, Value};

use crate::random::{OPTIONS, bytes, config};
use crate::random_spec::RandomSpec;

/// What converting a unit there and back may change, of the value.
const ROUNDING: f64 = 1e-9;
/// What the steps of an integration make of sums taken in another order.
const INTEGRATION: f64 = 1e-4;

/// How alike two results are to be.
#[derive(Clone, Copy, PartialEq)]
enum Alike {
    /// To rounding, all that is computed.
    Whole,
    /// To rounding what is measured, to the error of its steps what is integrated.
    Summed,
}
/// The sections that nothing is integrated for.
const MEASURES: [&str; 6] = [".tank", ".soil", ".cap", ".weight", ".panes", ".cost"];

/// The figures of a spec in metric units; none where it is no tank.
fn figures(text: &str) -> Option<Map<String, Value>> {
    let design = lentic::spec::parse_named(text, "any", Some(UnitSystem::Metric)).ok()?;
    let plan = partial(
        &design,
        OPTIONS,
        &[PlanPart::Measures, PlanPart::Start, PlanPart::Load],
    );
    match serde_json::to_value(plan.expect("a plan")) {
        Ok(Value::Object(figures)) => Some(figures),
        other => panic!("{other:?}"),
    }
}

/// Paths at which two results differ by more than rounding.
fn differences(one: &Value, other: &Value, path: &str, alike: Alike, found: &mut Vec<String>) {
    match (one, other) {
        (Value::Object(one), Value::Object(other)) => {
            let mut names: Vec<&String> = one.keys().chain(other.keys()).collect();
            names.dedup();
            for name in names {
                let [one, other] =
                    [one, other].map(|fields| fields.get(name).unwrap_or(&Value::Null));
                differences(one, other, &format!("{path}.{name}"), alike, found);
            }
        }
        (Value::Array(one), Value::Array(other)) if one.len() == other.len() => {
            for (one, other) in one.iter().zip(other) {
                differences(one, other, &format!("{path}[]"), alike, found);
            }
        }
        (Value::Number(one), Value::Number(other)) => {
            let [one, other] = [one, other].map(|number| number.as_f64().expect("a number"));
            if (one - other).abs() > allowed(path, alike, one.abs().max(other.abs())) {
                found.push(format!("{path}: {one} and {other}"));
            }
        }
        _ if one == other => {}
        _ => found.push(format!("{path}: {one} and {other}")),
    }
}

/// By how much two results at a path may differ.
fn allowed(path: &str, alike: Alike, value: f64) -> f64 {
    // Bags are counted in whole millilitres and grams.
    if [".soil.surplus_l", ".cap.surplus_kg"].contains(&path) {
        return 1.1e-3;
    }
    // Days are told by the quarter, and what hangs on one by the whole.
    if alike == Alike::Summed && path.contains("_day") {
        return 1.0;
    }
    let is_measure = MEASURES.iter().any(|section| path.starts_with(section));
    let share = if is_measure || alike == Alike::Whole {
        ROUNDING
    } else {
        INTEGRATION
    };
    share * value.max(1e-3)
}

fn assert_same(one: &str, other: &str, alike: Alike) -> Result<(), TestCaseError> {
    let (Some(first), second) = (figures(one), figures(other)) else {
        return Err(TestCaseError::reject("no tank"));
    };
    let Some(second) = second else {
        return Err(TestCaseError::fail(format!(
            "{other}\nis no tank, but\n{one} is"
        )));
    };
    let mut found = Vec::new();
    differences(
        &Value::Object(first),
        &Value::Object(second),
        "",
        alike,
        &mut found,
    );
    prop_assert_eq!(found, Vec::<String>::new(), "{}\nand\n{}", one, other);
    Ok(())
}

proptest! {
    #![proptest_config(config(50))]

    #[test]
    fn a_tank_in_us_units_is_the_same_tank(bytes in bytes()) {
        let [metric, us] = [UnitSystem::Metric, UnitSystem::Us]
            .map(|units| RandomSpec::new(&bytes, units).text());
        prop_assert!(metric != us);
        assert_same(&metric, &us, Alike::Whole)?;
    }

    /// What is done on one day is done in the order in which it is written.
    #[test]
    fn the_order_of_sections_plants_animals_and_events_of_different_days_does_not_matter(
        bytes in bytes(),
    ) {
        let spec = RandomSpec::new(&bytes, UnitSystem::Metric);
        let events = lentic::spec::parse_draft(&spec.text(), "any").map_or(Vec::new(), |draft| draft.events);
        let days: BTreeSet<i64> = events.iter().map(|event| event.day as i64).collect();
        prop_assume!(days.len() == events.len());
        assert_same(&spec.text(), &spec.reversed(), Alike::Summed)?;
    }
}
