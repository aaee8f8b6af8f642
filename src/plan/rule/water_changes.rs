//! Water changes as remedies word them.

use super::case::FlushCase;
use crate::finding::Remedy;
use crate::plan::flush::ChangePlan;
use crate::units::show;

/// Water changes where some were found, else the planting.
pub(super) fn against_the_flush(case: &FlushCase<'_>) -> Remedy {
    match case.startup.water_change_plan.first() {
        Some(change) => water_change(case, change),
        None => Remedy {
            says: "plant as under plants.load, soak the soil before use, and keep animals out until two clean tests a week apart".to_owned(),
            quantity: None,
            unit: "",
        },
    }
}

/// "change water in the first weeks", as much as the calendar holds where that was sought.
pub(super) fn changing_water(case: &FlushCase<'_>) -> String {
    let plan = case.startup.water_change_plan.first();
    match plan.zip(case.with_changes) {
        Some((change, probability)) => format!(
            "change {:.0} % of the water every {} days in the first weeks (under the limits in {:.0} % of the starts)",
            change.share_pct,
            show::fixed(change.every_d, 1),
            probability * 100.0
        ),
        None => "change water in the first weeks".to_owned(),
    }
}

fn water_change(case: &FlushCase<'_>, change: &ChangePlan) -> Remedy {
    let litres = case.design.water() * (change.share_pct / 100.0);
    let asked = case.design.draft().goal.probability.fraction();
    let reached = case.with_changes.map_or_else(String::new, |probability| {
        let short = if probability < asked {
            ", less than asked for: planting, soaking and less soil do more"
        } else {
            ""
        };
        format!(
            ": under the limits in {:.0} % of the starts{short}",
            probability * 100.0
        )
    });
    Remedy {
        says: format!(
            "change {:.0} % ({}) every {} days from day {:.0} to {:.0}{reached}",
            change.share_pct,
            case.design.draft().units.volume(litres),
            show::fixed(change.every_d, 1),
            change.from,
            change.until
        ),
        quantity: Some(litres.litres()),
        unit: "L",
    }
}
