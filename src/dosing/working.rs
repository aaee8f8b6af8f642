//! The steps behind what is given.

use super::section::{Dose, Dosing};
use crate::finding::{WorkingStep, step};

/// The steps behind the doses, or behind the nitrogen among the roots.
pub fn steps(given: &Dosing, topic: &str) -> Vec<WorkingStep> {
    match topic {
        "water.dosing" => given.dosing.iter().flat_map(of_dose).collect(),
        "water.root_zone" => given.root_zone.as_ref().map_or_else(Vec::new, |zone| {
            vec![
                step("spots", f64::from(zone.spots), ""),
                step("nitrogen of each", zone.nitrogen_mg, "mg"),
                step("apart", zone.grid_cm, "cm"),
            ]
        }),
        _ => Vec::new(),
    }
}

fn of_dose(dose: &Dose) -> Vec<WorkingStep> {
    let named = |what: &str| format!("{}: {what}", dose.salt);
    let more = [
        ("potassium settles at", dose.potassium_steady_mg_l, "mg/L"),
        ("food a day for the rest", dose.feed_instead_mg, "mg"),
    ];
    let more = more
        .into_iter()
        .filter_map(|(what, value, unit)| Some(step(&named(what), value?, unit)));
    [
        step(&named("needed"), dose.need_mg_per_week, "mg/week"),
        step(&named("weighed"), dose.salt_mg_per_week, "mg/week"),
        step(&named("doses"), f64::from(dose.doses_per_week), "a week"),
        step(&named("each"), dose.dose_ml, "mL"),
        step(
            &named("raises nitrate by"),
            dose.raises_nitrate_mg_l,
            "mg/L",
        ),
    ]
    .into_iter()
    .chain(more)
    .collect()
}
