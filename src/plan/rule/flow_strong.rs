//! `flow.strong`: water too fast for floaters or leaves.

use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::flow_slack;
use super::verdict::{Verdict, finding};
use crate::air::circulation::{FLOATER_BEST_CM_S, MOST_AT_FLOATERS_CM_S, MOST_AT_PLANTS_CM_S};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::source::{Basis, Source};
use crate::state::movement::{Movement, own_flow_for_speed};
use crate::units::show::significant;
use crate::units::{Share, Velocity};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::FlowStrong,
    about: About::Tank,
    judge: Judge::Night(|case| vec![judged(case)]),
    orders: &[Action::RunDevice, Action::ReachIn],
    steps: |_, plan| flow_slack::steps(plan),
    explanation: Explanation {
        asks: "Does the water move too much for floaters or leaves?",
        limits: || {
            format!(
                "over {} cm/s under floaters a note, over {MOST_AT_FLOATERS_CM_S} cm/s watch; without floaters over {MOST_AT_PLANTS_CM_S} cm/s watch",
                2.0 * FLOATER_BEST_CM_S
            )
        },
        formula: || {
            "U = Q / section for lifted water; for a pump's jet U = sqrt(Q u / section), u = Q / (pi d^2 / 4)".to_owned()
        },
        symbols: &[
            "Q: water that is moved",
            "section: depth by the side of a square of the same surface",
            "d: bore of the outlet, 12 mm (8 to 16)",
        ],
        range: || {
            format!(
                "duckweed grew best at {FLOATER_BEST_CM_S} cm/s and worse at twice that; the speed from which floaters melt is common practice, and walls and plants brake the jet"
            )
        },
        basis: Basis::Judgement,
        sources: &[Source::Coughlan2022, Source::Madsen1993],
    },
};

/// Cover from which floaters are there to be swept about, %.
const FLOATERS_FROM_PCT: f64 = 1.0;

/// `flow.strong`: the typical speed against what floaters bear, or submerged plants
/// where nothing floats. Duckweed grew best at 0.12 cm/s and worse at twice that: over
/// it a note, over a centimetre a second, which is practice, a watch.
///
/// # Source
/// Coughlan et al. 2022 (`coughlan_2022`) for floaters; for leaves under water, judgement.
pub fn verdict(movement: &Movement, cover: Share) -> Verdict {
    let speed = movement.velocity_cm_s.typical;
    let floaters = cover.percent() >= FLOATERS_FROM_PCT;
    let (note, watch) = if floaters {
        (2.0 * FLOATER_BEST_CM_S, MOST_AT_FLOATERS_CM_S)
    } else {
        (MOST_AT_PLANTS_CM_S, MOST_AT_PLANTS_CM_S)
    };
    let status = if speed > watch {
        Status::Watch
    } else if speed > note {
        Status::Note
    } else {
        Status::Ok
    };
    Verdict {
        status,
        value: speed,
        unit: "cm/s",
        low: None,
        high: Some(note),
        basis: if floaters {
            Basis::Published
        } else {
            Basis::Judgement
        },
        source: floaters.then_some(Source::Coughlan2022),
    }
}

/// Water too fast.
fn judged(case: &NightCase<'_>) -> Finding {
    let night = case.night;
    let cover = night.inputs.state.cover;
    let verdict = verdict(&night.movement, cover);
    let speed = significant(verdict.value, 2);
    let says = match verdict.status {
        Status::Ok => format!("nothing is swept about ({speed} cm/s)"),
        Status::Note => format!("at {speed} cm/s floaters grow more slowly than in still water"),
        Status::Watch | Status::Act => {
            format!("at {speed} cm/s floaters are swept under and melt, or leaves are dragged")
        }
    };
    let remedy = (verdict.status >= Status::Watch)
        .then_some(verdict.high)
        .flatten()
        .and_then(|cm_s| throttled(case, cm_s));
    finding(Code::FlowStrong, verdict, "water", says, remedy)
}

fn throttled(case: &NightCase<'_>, cm_s: f64) -> Option<Remedy> {
    let flow = own_flow_for_speed(&case.night.inputs.stirred(), Velocity::from_cm_s(cm_s))?;
    Some(Remedy {
        says: format!(
            "turn it down to {} or break its jet on a sponge or a wall",
            case.design().draft().units.flow(flow)
        ),
        quantity: Some(flow.l_min()),
        unit: "L/min",
    })
}
