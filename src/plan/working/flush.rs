//! The working behind findings on the first weeks.

use super::step;
use crate::design::Design;
use crate::finding::{Code, Step};
use crate::plan::Plan;

pub(super) fn load(plan: &Plan) -> Vec<Step> {
    let planting = &plan.planting;
    vec![
        step("floaters, fresh", planting.floating_g, "g"),
        step("fast growers, fresh", planting.fast_g, "g"),
        step("slow growers, fresh (left out)", planting.slow_g, "g"),
        step(
            "released in 21 days, J",
            plan.bed.release_21_d_g_n_m2,
            "g N/m2",
        ),
        step("taken in 21 days, K", taken_g_m2(plan), "g N/m2"),
        step("index K / J", planting.index, ""),
    ]
}

/// Nitrogen that the planting takes in the flush, K.
pub(super) fn taken_g_m2(plan: &Plan) -> f64 {
    plan.planting.index * plan.bed.release_21_d_g_n_m2
}

pub(super) fn flush(plan: &Plan) -> Vec<Step> {
    let startup = &plan.startup;
    let mut steps = vec![
        step(
            "released in 21 days",
            plan.bed.release_21_d_g_n_m2,
            "g N/m2",
        ),
        step("members", f64::from(startup.members), ""),
        step(
            "ammonia, typical peak",
            startup.ammonia_peak_mg_l.typical().max(0.0),
            "mg N/L",
        ),
        step(
            "un-ionised",
            startup.un_ionised_peak_mg_l.typical().max(0.0),
            "mg N/L",
        ),
        step(
            "nitrite, typical peak",
            startup.nitrite_peak_mg_l.typical().max(0.0),
            "mg NO2/L",
        ),
        step(
            "nitrate, typical peak",
            startup.nitrate_peak_mg_l.typical().max(0.0),
            "mg NO3/L",
        ),
    ];
    if let Some(day) = startup.ready_day {
        steps.push(step("ready, typical day", day.typical(), "d"));
    }
    if let Some(day) = startup.ready_day_advised {
        steps.push(step("animals advised from day", day, "d"));
    }
    steps
}

pub(super) fn early(design: &Design, plan: &Plan) -> Vec<Step> {
    let mut steps = flush(plan);
    steps.extend(design.draft().animals.iter().map(|stock| {
        let name = format!("{} from day", stock.animal.label);
        step(&name, stock.from_day, "d")
    }));
    steps
}

pub(super) fn soft(design: &Design, plan: &Plan) -> Vec<Step> {
    let tap = design.draft().water.alkalinity.meq_l();
    let left = plan
        .findings
        .iter()
        .find(|finding| finding.code == Code::WaterSoft)
        .and_then(|finding| finding.value)
        .unwrap_or(tap);
    vec![
        step("alkalinity of the tap water", tap, "meq/L"),
        step("used at most by nitrification", tap - left, "meq/L"),
        step("left", left, "meq/L"),
    ]
}
