//! The steps behind the figures of new water.

use super::{Makeup, treatment};
use crate::design::Design;
use crate::finding::{Working, WorkingStep, step};
use crate::units::{Alkalinity, Hardness, Temperature};

/// The steps behind the figures that rest on a topic; none where nothing stands between what
/// goes in and what comes out.
pub fn working_of(design: &Design, made: &Makeup, topic: &str) -> Working {
    let steps = match topic {
        "water.mixture" => mixture(design, made),
        "water.salts" => salts(made),
        "water.pace" => pace(design, made),
        "water.chlorine" => chlorine(made),
        "water.warmth" => warmth(design, made),
        _ => Vec::new(),
    };
    Working { steps }
}

fn mixture(design: &Design, made: &Makeup) -> Vec<WorkingStep> {
    let water = &design.draft().water;
    let goal = water.goal;
    let asked = [
        (
            "hardness asked for",
            goal.hardness.map(Hardness::dgh),
            "dGH",
        ),
        (
            "alkalinity asked for",
            goal.alkalinity.map(Alkalinity::dkh),
            "dKH",
        ),
    ];
    let mut steps = vec![
        step("hardness of the tap water", water.hardness.dgh(), "dGH"),
        step(
            "of the softened water",
            water.softened.hardness.dgh(),
            "dGH",
        ),
        step("alkalinity of the tap water", water.alkalinity.dkh(), "dKH"),
        step(
            "of the softened water",
            water.softened.alkalinity.dkh(),
            "dKH",
        ),
    ];
    let asked = asked.into_iter();
    steps.extend(asked.filter_map(|(name, value, unit)| Some(step(name, value?, unit))));
    steps.extend([
        step("share of tap water", made.tap_l / made.total_l * 100.0, "%"),
        step("hardness then, with salts", made.hardness_dgh, "dGH"),
        step("alkalinity then, with salts", made.alkalinity_dkh, "dKH"),
        step(
            "conductivity then",
            made.conductivity_us_cm.typical,
            "uS/cm",
        ),
    ]);
    steps
}

fn salts(made: &Makeup) -> Vec<WorkingStep> {
    let salts = made.salts.iter();
    let each = salts.map(|salt| step(salt.name, salt.mass_g, "g"));
    let total = step("dissolved in", made.total_l, "L");
    let sodium = step("sodium that they bring", made.sodium_mg_l, "mg/L");
    each.chain([total, sodium]).collect()
}

fn pace(design: &Design, made: &Makeup) -> Vec<WorkingStep> {
    let share = step("share of the water that is new", made.share_pct, "%");
    let changes = treatment::changes(design, made);
    let changes = changes.into_iter();
    let changes = changes.map(|change| step(change.of, change.by, change.unit));
    [share]
        .into_iter()
        .chain(changes)
        .chain([step("days", f64::from(made.steps), "")])
        .collect()
}

fn chlorine(made: &Makeup) -> Vec<WorkingStep> {
    let mut steps = vec![
        step("tap water", made.tap_l, "L"),
        step("chlorine, typical", made.chlorine_mg_l.typical, "mg/L"),
        step("ammonia left", made.ammonia_left_mg_l.typical, "mg N/L"),
        step(
            "raises the tank's by",
            made.ammonia_rise_mg_l.typical,
            "mg N/L",
        ),
    ];
    let known = [
        ("conditioner", made.conditioner_ml, "mL"),
        ("stands for", made.stand_h.map(|band| band.typical), "h"),
        (
            "with air",
            made.stand_aerated_h.map(|band| band.typical),
            "h",
        ),
    ];
    let known = known.into_iter();
    steps.extend(known.filter_map(|(name, value, unit)| Some(step(name, value?, unit))));
    steps
}

fn warmth(design: &Design, made: &Makeup) -> Vec<WorkingStep> {
    let water = &design.draft().water;
    let known = [
        ("cold tap", water.cold.map(Temperature::celsius), "C"),
        ("hot tap", water.hot.map(Temperature::celsius), "C"),
        ("tank", Some(water.temperature.celsius()), "C"),
        ("from the hot tap", made.hot_l, "L"),
        ("from the cold tap", made.cold_l, "L"),
        ("together", made.temperature_c, "C"),
        ("warms the tank by", made.tank_change_c, "C"),
    ];
    let known = known.into_iter();
    known
        .filter_map(|(name, value, unit)| Some(step(name, value?, unit)))
        .collect()
}
