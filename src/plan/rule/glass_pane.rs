//! `glass.pane`: stress in the panes; figures and caution, no pass or fail.

use super::declaration::{About, Judge, Rule};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Status, WorkingStep, step};
use crate::geometry::plate::UNBRACED_RATIO_MOST;
use crate::plan::outcome::Plan;
use crate::plan::section::PanesSection;
use crate::source::{Basis, Source};
use crate::units::{Length, show};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::GlassPane,
    about: About::Tank,
    judge: Judge::Start(|case| {
        let panes = case.panes.iter();
        Ok(panes.map(|panes| judged(case.design, panes)).collect())
    }),
    orders: &[Action::Fill],
    steps,
    explanation: Explanation {
        asks: "What stress does the water put in the panes?",
        limits: || {
            format!(
                "figures and a caution, no pass or fail; no figure for an unbraced pane longer than {UNBRACED_RATIO_MOST} times the water's height"
            )
        },
        formula: || {
            "sigma = beta p0 H^2 / t^2; w = alpha p0 H^4 / (E t^3); p0 = rho g H".to_owned()
        },
        symbols: &[
            "H: height, water taken to the rim",
            "t: thickness",
            "beta, alpha: from plate theory for length over height",
            "E: 70 GPa for glass",
        ],
        range: || {
            "flawless annealed glass, thin plates, deflection under half the thickness; joints, edges, uneven bases and impact are left out".to_owned()
        },
        basis: Basis::Published,
        sources: &[
            Source::Roark2002,
            Source::Timoshenko1959,
            Source::En16612_2019,
            Source::Iso7823,
        ],
    },
};

/// Stress in the panes.
fn judged(design: &Design, panes: &PanesSection) -> Finding {
    let tank = &design.draft().tank;
    let wall = design.draft().units.depth(tank.wall);
    let says = match (panes.long_pane_stress_mpa, panes.long_pane_deflection_mm) {
        (Some(stress), Some(bend)) => format!(
            "the longest pane of {wall} {} would bend {} and carry {} MPa with water to the rim: informative only",
            tank.material.word(),
            design.draft().units.grain(Length::from_mm(bend)),
            show::significant(stress, 2)
        ),
        _ => format!(
            "no figure for the longest pane of {wall} {}: it bends beyond the theory or needs a brace; ask a glazier",
            tank.material.word()
        ),
    };
    Finding {
        code: Code::GlassPane,
        status: Status::Note,
        subject: "panes".to_owned(),
        value: panes.long_pane_stress_mpa,
        unit: "MPa",
        low: None,
        high: None,
        says,
        remedy: None,
        basis: Basis::Memory,
        source: Some(Source::Timoshenko1959),
    }
}

fn steps(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let tank = &design.draft().tank;
    let vessel = design.vessel();
    let mut steps = vec![
        step("height, water to the rim", vessel.height().mm(), "mm"),
        step("thickness", tank.wall.mm(), "mm"),
        step(
            "Young's modulus",
            tank.material.stiffness().mpa() / 1e3,
            "GPa",
        ),
    ];
    if let Some(pane) = vessel.long_pane() {
        steps.push(step("longest pane", pane.length.mm(), "mm"));
        steps.push(step(
            "length over height",
            pane.length / vessel.height(),
            "",
        ));
    }
    if let Some(panes) = &plan.panes {
        let figures = [
            ("stress in it", panes.long_pane_stress_mpa, "MPa"),
            ("bend of it", panes.long_pane_deflection_mm, "mm"),
            ("stress in the end pane", panes.end_pane_stress_mpa, "MPa"),
        ];
        steps.extend(
            figures
                .into_iter()
                .filter_map(|(name, value, unit)| Some(step(name, value?, unit))),
        );
    }
    steps
}
