//! The working behind figures that no finding judges.

use super::estimate::Estimate;
use super::outcome::Plan;
use super::rule::air_setting;
use crate::air::pump::static_head;
use crate::design::Design;
use crate::finding::{WorkingStep, step};
use crate::heat::heater;
use crate::night::air_depth;
use crate::night::sizing::diffuser;
use crate::night::upkeep::heat_loss;
use crate::water::density;

/// The steps behind the figures that rest on a topic; none where it has none to show.
pub(super) fn steps(design: &Design, plan: &Plan, topic: &str) -> Vec<WorkingStep> {
    match topic {
        "tank.volume" => volume(design, plan),
        "soil.purchase" => soil(design, plan),
        "cap.purchase" => cap(design, plan),
        "plants.mass" => planting(design),
        "heat.balance" => heat(design, plan),
        "heat.cooling" => cooling(design, plan),
        "light.lamp" => light(design, plan),
        "air.needed" | "air.pump" => air(design, plan),
        _ => Vec::new(),
    }
}

fn volume(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let below = design.vessel().volume_below(design.water_level());
    vec![
        step("to the rim", plan.tank.brimful_l, "L"),
        step("under the water level", below.litres(), "L"),
        step("bed", design.bed().volume().litres(), "L"),
        step("stones", plan.tank.hardscape_l, "L"),
        step("water left", plan.tank.water_l, "L"),
    ]
}

fn soil(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let settled = design.draft().soil.material.settled_share;
    vec![
        step("soil in place", plan.soil.volume_l, "L"),
        step("settled share, typical", settled.typical, ""),
        step("to buy", plan.soil.buy_l, "L"),
        step("settled share, most", settled.high, ""),
        step("to buy then", plan.soil.buy_low_l, "L"),
        step("settled share, least", settled.low, ""),
        step("to buy then", plan.soil.buy_high_l, "L"),
    ]
}

fn cap(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let cap = &design.draft().cap;
    vec![
        step("cap in place", plan.cap.volume_l, "L"),
        step("dry bulk density", cap.dry_bulk_kg_m3().typical, "kg/m3"),
        step("to buy, dry", plan.cap.buy_kg, "kg"),
        step("pore share", cap.porosity().typical, ""),
        step("with its pores full of water", plan.cap.wet_mass_kg, "kg"),
    ]
}

fn planting(design: &Design) -> Vec<WorkingStep> {
    let areas = design.areas();
    let mut steps = vec![
        step("water surface", areas.surface.cm2(), "cm2"),
        step("floor of the bed", areas.floor.cm2(), "cm2"),
    ];
    steps.extend(design.draft().plants.iter().filter_map(|planting| {
        let fresh = planting.biomass(areas)?.fresh;
        Some(step(
            &format!("{}, fresh", planting.plant.label),
            fresh.g(),
            "g",
        ))
    }));
    steps
}

fn heat(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let draft = design.draft();
    let loss = heat_loss(design);
    vec![
        step("water", draft.water.temperature.celsius(), "C"),
        step("room", draft.room.temperature.celsius(), "C"),
        step("humidity of the room", draft.room.humidity.percent(), "%"),
        evaporates(plan.heat.evaporation_l_per_week),
        step("lost through the walls", loss.sides.watts(), "W"),
        step("lost through the bottom", loss.bottom.watts(), "W"),
        step("lost through surface or lid", loss.surface.watts(), "W"),
        step("lost with what evaporates", loss.evaporation.watts(), "W"),
        step("lost in all", loss.total().watts(), "W"),
        step("margin of a heater", heater::MARGIN.typical, ""),
        step("heater", plan.heat.heater_w, "W"),
    ]
}

/// Below zero vapour of the room settles on the water.
fn evaporates(l_per_week: f64) -> WorkingStep {
    if l_per_week < 0.0 {
        step("condenses on the water", -l_per_week, "L/week")
    } else {
        step("evaporates", l_per_week, "L/week")
    }
}

fn cooling(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let draft = design.draft();
    let mut steps = vec![
        step("water", plan.tank.water_l, "L"),
        step("at", draft.water.temperature.celsius(), "C"),
        step("room", draft.room.temperature.celsius(), "C"),
    ];
    let hours = plan.heat.cools_4_k_h;
    steps.extend(hours.map(|hours| step("4 K colder in", hours, "h")));
    steps
}

fn light(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let light = &plan.light;
    vec![
        step(
            "surface under floaters",
            plan.planting.floating_cover_pct,
            "%",
        ),
        step("depth of the water", plan.tank.water_depth_cm, "cm"),
        step(
            "half way down, lamp on",
            light.par_mid_umol.typical(),
            "umol/m2/s",
        ),
        step("lamp on", design.draft().light.hours, "h"),
        step(
            "half way down, in a day",
            light.daily_mol_m2.typical(),
            "mol/m2",
        ),
    ]
}

fn air(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let night = &plan.night;
    let mut steps = vec![step(
        "dawn oxygen as it is, one in ten below",
        night.dawn_oxygen_mg_l.band().low,
        "mg/L",
    )];
    let found = [
        ("least air, day and night", night.air_needed_l_min),
        ("least air, lamp off", night.air_needed_night_l_min),
    ];
    let found = found.into_iter();
    steps.extend(found.flat_map(|(name, l_min)| air_setting::steps(name, l_min)));
    let pressure = night.pump_pressure_kpa.map(Estimate::typical);
    steps.extend(pressure.into_iter().flat_map(|kpa| pump(design, kpa)));
    steps
}

/// The pressure of a pump by its parts.
fn pump(design: &Design, pressure_kpa: f64) -> [WorkingStep; 5] {
    let draft = design.draft();
    let (depth, warmth) = (air_depth(design), draft.water.temperature);
    let pores = diffuser(draft.air.device).pore_pressure_kpa();
    [
        step("depth that air is let in at", depth.cm(), "cm"),
        step("density of the water", density(warmth).kg_m3(), "kg/m3"),
        step(
            "pressure of the water over that",
            static_head(depth, warmth).kpa(),
            "kPa",
        ),
        step("pores that it leaves by, typical", pores.typical, "kPa"),
        step("pressure to exceed, typical", pressure_kpa, "kPa"),
    ]
}
