//! `light.short`: too little light for the plants under water.

use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::verdict::{Verdict, finding};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::night::lighting::{Lighting, Mend};
use crate::plan::outcome::Plan;
use crate::source::{Basis, Source};
use crate::units::show::significant;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::LightShort,
    about: About::Tank,
    judge: Judge::Night(|case| judged(case).into_iter().collect()),
    orders: &[Action::RunDevice, Action::ReachIn],
    steps,
    explanation: Explanation {
        asks: "Is there light enough for what grows under water?",
        limits: || {
            "hours of light under those that plants just live on: act at the bright end of the lamp's band, watch at the typical, note at the dim end".to_owned()
        },
        formula: || {
            "h = 12 l (K + I) / (mu I), I the mean light in the water below floaters".to_owned()
        },
        symbols: &[
            "l: loss to respiration and death a day, of fast growers at rest",
            "mu: growth in full light of 12 h, less what growing itself costs",
            "K: light at half growth",
            "floaters pass 1 - c + c (1 - a)^L",
            "c, L: cover and layers",
            "a: share that a layer takes, 0.82",
        ],
        range: || {
            "growth after a lake model; fast growers where any are planted, else slow ones"
                .to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::Janse2005],
    },
};

/// `light.short`: hours of light against those with which plants just live (judgement):
/// act where even the bright end of the lamp's band is too little, watch where the
/// typical is, note where the dim end is. Nothing to judge without submerged plants.
pub fn verdict(lighting: &Lighting) -> Option<Verdict> {
    let even = lighting.break_even?;
    let starves = |hours: Option<f64>| hours.is_none_or(|hours| lighting.hours < hours);
    let status = if starves(even.bright) {
        Status::Act
    } else if starves(even.typical) {
        Status::Watch
    } else if starves(even.dim) {
        Status::Note
    } else {
        Status::Ok
    };
    Some(Verdict {
        status,
        value: lighting.hours,
        unit: "h",
        low: even.typical,
        high: None,
        basis: Basis::Judgement,
        source: None,
    })
}

/// Too little light for what grows under water.
fn judged(case: &NightCase<'_>) -> Option<Finding> {
    let night = case.night;
    let need = night.need.as_ref()?;
    let verdict = verdict(&night.lighting)?;
    let hours = significant(night.lighting.hours, 2);
    let asked = verdict.low.map_or_else(
        || "no day is long enough".to_owned(),
        |even| format!("they just live on {} h", significant(even, 2)),
    );
    let says = format!(
        "{hours} h of {} umol/m2/s reach the middle of the water: {asked}",
        significant(night.lighting.par_mid_umol.typical, 2)
    );
    let remedy = (verdict.status >= Status::Watch)
        .then(|| night.lighting.mend(&night.inputs, need))
        .map(brighter);
    Some(finding(Code::LightShort, verdict, "light", says, remedy))
}

fn brighter(mend: Mend) -> Remedy {
    let (says, quantity, unit) = match mend {
        Mend::Hours(hours) => (
            format!("light it {} h a day", significant(hours, 2)),
            Some(hours),
            "h",
        ),
        Mend::Cover(cover) => (
            format!(
                "thin the floaters to {:.0} % of the surface",
                cover.percent()
            ),
            Some(cover.percent()),
            "%",
        ),
        Mend::Lamp(par) => (
            format!(
                "take a lamp that gives {} umol/m2/s at the surface, or plant for shade",
                significant(par, 2)
            ),
            Some(par),
            "umol/m2/s",
        ),
        Mend::Nothing => (
            "nothing planted here lives below the surface: keep floaters alone".to_owned(),
            None,
            "",
        ),
    };
    Remedy {
        says,
        quantity,
        unit,
    }
}

pub(super) fn steps(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let light = &plan.light;
    let mut steps = vec![
        step(
            "half way down, lamp on",
            light.par_mid_umol.typical(),
            "umol/m2/s",
        ),
        step(
            "half way down, in a day",
            light.daily_mol_m2.typical(),
            "mol/m2",
        ),
        step(
            "algae window",
            plan.startup.algae_window_days.typical(),
            "d",
        ),
    ];
    steps.extend(
        light
            .break_even_hours
            .map(|hours| step("plants just live on", hours, "h")),
    );
    steps.push(step("lamp on", design.draft().light.hours, "h"));
    steps
}
