//! The working behind findings on a day and a night.

use super::step;
use crate::design::Design;
use crate::finding::Step;
use crate::plan::Plan;

pub(super) fn dawn(plan: &Plan) -> Vec<Step> {
    let night = &plan.night;
    let dawn = night.dawn_oxygen_mg_l.band();
    let mut steps = vec![
        step("day", night.day, "d"),
        step(
            "oxygen in balance with the air",
            night.saturation_mg_l,
            "mg/L",
        ),
        step("members", f64::from(night.members), ""),
        step("dawn oxygen, one in ten below", dawn.low, "mg/L"),
        step("dawn oxygen, one in ten above", dawn.high, "mg/L"),
        step(
            "its hour, the lamp going on at 0",
            night.dawn_hour.typical(),
            "h",
        ),
        step("dawn oxygen, typical", dawn.typical, "mg/L"),
    ];
    steps.extend(
        night
            .air_needed_l_min
            .map(|air| step("least air, day and night", air, "L/min")),
    );
    steps
}

pub(super) fn flow(plan: &Plan) -> Vec<Step> {
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

pub(super) fn light(design: &Design, plan: &Plan) -> Vec<Step> {
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

pub(super) fn animals(plan: &Plan) -> Vec<Step> {
    let animals = &plan.animals;
    vec![
        step(
            "carried by oxygen at dawn",
            animals.carried_by_oxygen_g.typical(),
            "g",
        ),
        step(
            "carried by the plants' uptake of nitrogen",
            animals.carried_by_nitrogen_g,
            "g",
        ),
        step("animals", animals.mass_g, "g"),
    ]
}
