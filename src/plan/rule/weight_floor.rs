//! `weight.floor`: weight and pressure on the floor; figures and caution, no pass or fail.

use super::case::DesignCase;
use super::declaration::{About, Judge, Rule};
use crate::finding::{Action, Code, Explanation, Finding, Status, WorkingStep, step};
use crate::plan::outcome::Plan;
use crate::source::{Basis, Source};
use crate::units::{Mass, Pressure};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::WeightFloor,
    about: About::Tank,
    judge: Judge::Start(|case| Ok(vec![judged(case)])),
    orders: &[Action::Fill],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "What does it weigh, and on how small a footprint?",
        limits: || "figures and a caution, no pass or fail".to_owned(),
        formula: || {
            "total = shell + beds with their pore water + stones + water + stand; pressure = total g / footprint".to_owned()
        },
        symbols: &[],
        range: || {
            "design loads of building codes are averages over a whole floor and cannot be held against a footprint".to_owned()
        },
        basis: Basis::Published,
        sources: &[Source::En572_1, Source::IrcR301_5, Source::En1991_1_1],
    },
};

/// Weight and pressure on the floor.
fn judged(case: &DesignCase<'_>) -> Finding {
    let units = case.design.draft().units;
    let total = units.mass(Mass::from_kg(case.weight.total_kg));
    let pressure = units.floor_pressure(Pressure::from_kpa(case.weight.footprint_pressure_kpa));
    Finding {
        code: Code::WeightFloor,
        status: Status::Note,
        subject: "floor".to_owned(),
        value: Some(case.weight.total_kg),
        unit: "kg",
        low: None,
        high: None,
        says: format!(
            "{total} in all, {pressure} on the footprint: an estimate, not a floor check"
        ),
        remedy: None,
        basis: Basis::Published,
        source: Some(Source::IrcR301_5),
    }
}

fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let weight = &plan.weight;
    vec![
        step("shell", weight.shell_kg, "kg"),
        step("soil with its water", weight.soil_kg, "kg"),
        step("cap with its water", weight.cap_kg, "kg"),
        step("stones", weight.hardscape_kg, "kg"),
        step("free water", weight.water_kg, "kg"),
        step("stand and equipment", weight.stand_kg, "kg"),
        step("total", weight.total_kg, "kg"),
        step("footprint", plan.tank.footprint_cm2, "cm2"),
        step("pressure on it", weight.footprint_pressure_kpa, "kPa"),
    ]
}
