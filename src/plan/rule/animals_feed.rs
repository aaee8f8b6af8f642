//! `animals.feed`: more food than a stocked tank gets.

use super::declaration::{About, Judge, Rule};
use crate::design::Design;
use crate::finding::{Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::source::Basis;
use crate::units::show::significant;

/// Dry food a day that a litre takes without a word, mg.
const FED_MG_L: f64 = 60.0;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::AnimalsFeed,
    about: About::Tank,
    judge: Judge::Design(|design| Vec::from_iter(judged(design))),
    orders: &[],
    steps: |design, _| steps(design),
    explanation: Explanation {
        asks: "Is much more fed than a stocked tank gets?",
        limits: || format!("watch over {FED_MG_L} mg of dry food a day to the litre"),
        formula: || "dry food a day / free water".to_owned(),
        symbols: &[],
        range: || {
            "several times what stocking practice comes to; what the water makes of less is for animals.load and flush.ammonia to say".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[],
    },
};

fn fed_mg_l(design: &Design) -> f64 {
    design.draft().feed.mass_per_day.mg() / design.water().litres()
}

/// More food than a stocked tank gets.
fn judged(design: &Design) -> Option<Finding> {
    let fed = fed_mg_l(design);
    let borne_mg = FED_MG_L * design.water().litres();
    (fed > FED_MG_L).then(|| Finding {
        code: Code::AnimalsFeed,
        status: Status::Watch,
        subject: "food".to_owned(),
        value: Some(fed),
        unit: "mg/L",
        low: None,
        high: Some(FED_MG_L),
        says: format!(
            "{} mg of food a day to the litre, several times what a stocked tank gets",
            significant(fed, 2)
        ),
        remedy: Some(Remedy {
            says: format!(
                "check the unit; feed {} mg a day at most",
                significant(borne_mg, 2)
            ),
            quantity: Some(borne_mg),
            unit: "mg",
        }),
        basis: Basis::Judgement,
        source: None,
    })
}

fn steps(design: &Design) -> Vec<WorkingStep> {
    vec![
        step(
            "dry food a day",
            design.draft().feed.mass_per_day.mg(),
            "mg",
        ),
        step("free water", design.water().litres(), "L"),
        step("food a day to the litre", fed_mg_l(design), "mg/L"),
    ]
}
