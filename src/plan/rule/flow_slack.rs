//! `flow.slack`: water too still for the plants in it.

use super::air_dawn;
use super::air_setting::{air_setting, depth, units};
use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::verdict::{Verdict, finding};
use crate::air::circulation::OPEN_WATER_CM_S;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::outcome::Plan;
use crate::source::{Basis, Source};
use crate::state::movement::{Movement, air_for_speed};
use crate::units::show::significant;
use crate::units::{Mass, Velocity};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::FlowSlack,
    about: About::Tank,
    judge: Judge::Night(|case| vec![judged(case)]),
    orders: &[Action::RunDevice, Action::ReachIn],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "Does the water move enough for the plants in it?",
        limits: || {
            format!(
                "under {} cm/s a note in a planted tank that is otherwise well; watch where dawn oxygen, the planting load or stalled plants back it",
                OPEN_WATER_CM_S.low
            )
        },
        formula: || {
            "film d = x / (0.664 Re^(1/2) Sc^(1/3)), Re = U x / nu; uptake through it from k (C - s) = V s / (K + s), k = D / d".to_owned()
        },
        symbols: &[
            "U: speed at the plants",
            "x: length of a leaf, 30 mm",
            "nu: viscosity of the water",
            "C, s: nitrogen in the water and at the leaf",
            "V, K: largest uptake and half-saturation",
        ],
        range: || {
            "a laminar layer on a flat leaf; 0.02 to 0.5 cm/s already raised photosynthesis sixfold over still water".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[
            Source::Westlake1967,
            Source::NishiharaAckerman2007,
            Source::Kestin1978,
            Source::Fischer1979,
            Source::Nicklin1963,
            Source::Reinemann1990,
        ],
    },
};

/// A sign that backs still water.
const STALLED_PLANTS: &str = "stalled_plants";

/// Whether something else says that the water is too still.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StillnessSign {
    /// The tank is otherwise well.
    None,
    /// Dawn oxygen, the planting load or stalled plants do.
    Found,
}

/// `flow.slack`: the typical speed against what submerged plants gain from; nothing to
/// note where there are none.
///
/// # Source
/// Westlake 1967 (`westlake_1967`) for what still water costs; the limit is a judgement.
pub fn verdict(movement: &Movement, submerged: Mass, support: StillnessSign) -> Verdict {
    let limit = OPEN_WATER_CM_S.low;
    let moves = movement.velocity_cm_s.typical >= limit || submerged <= Mass::ZERO;
    Verdict {
        status: match support {
            _ if moves => Status::Ok,
            StillnessSign::None => Status::Note,
            StillnessSign::Found => Status::Watch,
        },
        value: movement.velocity_cm_s.typical,
        unit: "cm/s",
        low: Some(limit),
        high: None,
        basis: Basis::Judgement,
        source: Some(Source::Westlake1967),
    }
}

/// Water too still.
fn judged(case: &NightCase<'_>) -> Finding {
    let night = case.night;
    let movement = &night.movement;
    let verdict = verdict(movement, night.inputs.state.submerged(), support(case));
    let (speed, film) = (
        significant(movement.velocity_cm_s.typical, 2),
        significant(movement.film_mm.typical, 2),
    );
    let says = match verdict.status {
        Status::Ok => format!("the water moves at {speed} cm/s"),
        Status::Note => format!(
            "the water hardly moves ({speed} cm/s, {film} mm of still film on the leaves), which many planted tanks do well with"
        ),
        Status::Watch | Status::Act => format!(
            "the water hardly moves ({speed} cm/s): through {film} mm of still film plants take {} % of what they could",
            significant(movement.uptake_pct.typical, 2)
        ),
    };
    let remedy = (verdict.status >= Status::Watch)
        .then_some(verdict.low)
        .flatten()
        .and_then(|cm_s| stirring(case, cm_s));
    finding(Code::FlowSlack, verdict, "water", says, remedy)
}

/// Whether anything else says that the water is too still.
fn support(case: &NightCase<'_>) -> StillnessSign {
    let stalled = case.design().draft().signs.has(STALLED_PLANTS);
    let dawn = air_dawn::case_verdict(case);
    if stalled || !case.load_is_met || dawn.status >= Status::Watch {
        StillnessSign::Found
    } else {
        StillnessSign::None
    }
}

fn stirring(case: &NightCase<'_>, cm_s: f64) -> Option<Remedy> {
    let flow = air_for_speed(
        &case.night.inputs.stirred(),
        case.night.inputs.air_depth(),
        Velocity::from_cm_s(cm_s),
    )?;
    let setting = air_setting(flow);
    Some(Remedy {
        says: format!(
            "let an air stone {} deep bubble {}: it moves the water at {cm_s} cm/s",
            depth(case, case.night.inputs.air_depth()),
            units(case).air_flow(setting)
        ),
        quantity: Some(setting.l_min()),
        unit: "L/min",
    })
}

pub(super) fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let flow = &plan.flow;
    vec![
        step(
            "turned over",
            flow.turnover_per_h.typical(),
            "times an hour",
        ),
        step("film on the leaves", flow.film_mm.typical(), "mm"),
        step(
            "uptake through it over uptake without it",
            flow.uptake_pct.typical(),
            "%",
        ),
        step("speed at the plants", flow.velocity_cm_s.typical(), "cm/s"),
    ]
}
