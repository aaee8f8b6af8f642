//! `bed.oxygen`: how far oxygen reaches into the bed.

use super::case::DesignCase;
use super::declaration::{About, Judge, Rule};
use crate::finding::{Action, Code, Explanation, Finding, Status, step};
use crate::source::{Basis, Source};
use crate::units::Length;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::BedOxygen,
    about: About::Bed,
    judge: Judge::Start(|case| Ok(vec![judged(case)])),
    orders: &[Action::OpenBed, Action::Plant],
    steps: |_, plan| vec![step("oxic front", plan.bed.oxic_front_mm, "mm")],
    explanation: Explanation {
        asks: "How far does oxygen reach into the bed?",
        limits: || {
            "a note: soil without oxygen under a cap is normal and no danger sign".to_owned()
        },
        formula: || "z / L = D_O C_O / (D_O C_O + 2 D_N C_N)".to_owned(),
        symbols: &[
            "z: depth of the oxic front",
            "L: depth of the cap",
            "D_O, C_O: oxygen's diffusion coefficient, and oxygen in the water",
            "D_N, C_N: ammonium's, and ammonium in the soil's pore water",
        ],
        range: || {
            "clean sand, ammonium alone eating oxygen from below; methane, iron and sulfide bring the front nearer to the surface".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::Bouldin1968, Source::CaiSayles1996],
    },
};

/// How far oxygen reaches into the bed.
fn judged(case: &DesignCase<'_>) -> Finding {
    let units = case.design.draft().units;
    let front = Length::from_mm(case.bed.oxic_front_mm);
    Finding {
        code: Code::BedOxygen,
        status: Status::Ok,
        subject: "bed".to_owned(),
        value: Some(case.bed.oxic_front_mm),
        unit: "mm",
        low: None,
        high: None,
        says: format!(
            "oxygen reaches about {} into the cap; soil without oxygen below is normal",
            units.depth(front)
        ),
        remedy: None,
        basis: Basis::Judgement,
        source: Some(Source::Bouldin1968),
    }
}
