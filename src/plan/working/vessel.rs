//! The working behind findings on the vessel.

use super::step;
use crate::design::Design;
use crate::finding::Step;
use crate::plan::Plan;

pub(super) fn weight(plan: &Plan) -> Vec<Step> {
    let weight = &plan.weight;
    vec![
        step("shell", weight.shell_kg, "kg"),
        step("soil with its water", weight.soil_kg, "kg"),
        step("cap with its water", weight.cap_kg, "kg"),
        step("stones", weight.hardscape_kg, "kg"),
        step("free water", weight.water_kg, "kg"),
        step("stand and equipment", weight.stand_kg, "kg"),
        step("total", weight.total_kg, "kg"),
        step("footprint", plan.tank.footprint_cm2, "cm2"),
        step("pressure on it", weight.footprint_pressure_kpa, "kPa"),
    ]
}

pub(super) fn panes(design: &Design, plan: &Plan) -> Vec<Step> {
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
