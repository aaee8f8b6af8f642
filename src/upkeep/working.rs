//! The steps behind the figures of a running tank.

use super::Upkeep;
use super::routine::share_to_hold;
use crate::design::Design;
use crate::dosing;
use crate::finding::{Working, WorkingStep, step};
use crate::plan::{Estimate, watch_limit_mg_l};
use crate::units::Analyte;

/// What the steps of a band's typical value are called.
type Named<'a> = (&'a str, Option<Estimate>, &'static str);

/// The steps behind the figures that rest on a topic; none where nothing stands between what
/// goes in and what comes out.
pub fn working_of(design: &Design, found: &Upkeep, topic: &str) -> Working {
    let steps = match topic {
        "upkeep.harvest" => harvest(design, found),
        "upkeep.nitrogen" => nitrogen(found),
        "upkeep.potassium" => {
            let removed = found.upkeep.removed.k_mg_per_week;
            typical(&[("potassium taken out", Some(removed), "mg/week")])
        }
        "upkeep.nitrate" => nitrate(design, found),
        "upkeep.creep" => creep(design, found),
        "upkeep.alkalinity" => alkalinity(design, found),
        "upkeep.ageing" => ageing(found),
        "upkeep.pouring" => pouring(design, found),
        "upkeep.stir" | "upkeep.settling" => stirred(design, found),
        "upkeep.away" => away(design, found),
        "upkeep.move" => carried(found),
        "upkeep.bucket" => bucket(found),
        _ => {
            let given = found.given.as_ref();
            given.map_or_else(Vec::new, |given| dosing::steps(given, topic))
        }
    };
    Working { steps }
}

/// The typical values of those that there are.
fn typical(named: &[Named<'_>]) -> Vec<WorkingStep> {
    let named = named.iter();
    let steps = named.filter_map(|(name, band, unit)| Some(step(name, (*band)?.typical(), unit)));
    steps.collect()
}

fn harvest(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let (draft, week) = (design.draft(), &found.upkeep);
    let kept = &draft.harvest;
    let mut steps = vec![step(
        "cover that floaters are thinned to",
        kept.floaters_above.percent(),
        "%",
    )];
    steps.extend(typical(&[
        ("taken out, fresh", week.floaters_thin_g, "g/week"),
        ("share of the surface", week.floaters_thin_pct, "%"),
        ("handfuls", week.floaters_thin_handfuls, "a week"),
    ]));
    steps.push(step(
        "stems are cut from, dry",
        kept.stems_above.g_m2(),
        "g/m2",
    ));
    let trimmed = week.stems_trim_g;
    steps.extend(trimmed.map(|grams| step("a third of them, fresh", grams, "g")));
    steps.extend(typical(&[("every", week.stems_trim_every_d, "d")]));
    steps
}

fn nitrogen(found: &Upkeep) -> Vec<WorkingStep> {
    let (supply, removed) = (&found.upkeep.supply, &found.upkeep.removed);
    let mut steps = typical(&[("from feed", supply.feed_n_mg_per_week, "mg/week")]);
    steps.push(step(
        "with changed water",
        supply.tap_n_mg_per_week,
        "mg/week",
    ));
    let dosed = supply.dosed_n_mg_per_week;
    steps.extend(dosed.map(|dosed| step("with salts", dosed, "mg/week")));
    steps.extend(typical(&[
        (
            "out of the soil",
            Some(supply.soil_n_mg_per_week),
            "mg/week",
        ),
        ("out with plants", Some(removed.n_mg_per_week), "mg/week"),
        (
            "lost with water and to the air",
            Some(supply.lost_n_mg_per_week),
            "mg/week",
        ),
        ("stays", Some(supply.kept_n_mg_per_week), "mg/week"),
        (
            "left over of all that",
            Some(found.upkeep.balance_residual_mg_per_week),
            "mg/week",
        ),
    ]));
    steps
}

/// The regular change: its share and how often.
fn changed(design: &Design) -> Vec<WorkingStep> {
    let change = design.draft().water.change;
    change.map_or_else(Vec::new, |change| {
        vec![
            step("water changed at a time", change.share.percent(), "%"),
            step("every", change.every.days(), "d"),
        ]
    })
}

fn nitrate(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let week = &found.upkeep;
    let tap = design.draft().water.nitrate.mg_l();
    let rise = week.nitrate_rise_mg_l_per_week;
    let mut steps = typical(&[("gained beside changes", Some(rise), "mg/L a week")]);
    steps.push(step("nitrate of the tap water", tap, "mg/L"));
    steps.extend(changed(design));
    steps.extend(typical(&[(
        "before a change, in the end",
        week.nitrate_steady_mg_l,
        "mg/L",
    )]));
    if let Some(limit) = watch_limit_mg_l(design, Analyte::Nitrate) {
        steps.push(step("limit", limit, "mg/L"));
        let by_week = share_to_hold(rise.typical(), tap, limit);
        steps.extend(by_week.map(|share| step("share a week that holds it", share.percent(), "%")));
    }
    steps
}

fn creep(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let (water, week) = (&design.draft().water, &found.upkeep);
    let soft = water.top_up.softened.fraction();
    let topped = water.hardness.dgh() * (1.0 - soft) + water.softened.hardness.dgh() * soft;
    let mut steps = vec![
        step("water in the tank", design.water().litres(), "L"),
        step("evaporates", week.top_up_l_per_week, "L/week"),
        step("hardness of the tap water", water.hardness.dgh(), "dGH"),
        step("hardness of what is topped up", topped, "dGH"),
        step("climbs by", week.hardness_rise_dgh_per_month, "dGH/month"),
    ];
    steps.extend(changed(design));
    let steady = week.hardness_steady_dgh;
    steps.extend(steady.map(|dgh| step("after a change, in the end", dgh, "dGH")));
    steps.extend(typical(&[(
        "conductivity then",
        week.conductivity_steady_us_cm,
        "uS/cm",
    )]));
    steps
}

fn alkalinity(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let week = &found.upkeep;
    let tap = design.draft().water.alkalinity.dkh();
    let mut steps = vec![step("alkalinity of the tap water", tap, "dKH")];
    steps.extend(typical(&[(
        "gained by topping up, less what nitrogen uses",
        Some(week.alkalinity_rise_dkh_per_month),
        "dKH/month",
    )]));
    steps.extend(changed(design));
    steps.extend(typical(&[(
        "before a change, in the end",
        week.alkalinity_steady_dkh,
        "dKH",
    )]));
    steps
}

fn ageing(found: &Upkeep) -> Vec<WorkingStep> {
    let ageing = &found.ageing;
    let years = ageing.years.iter().map(|row| {
        let name = format!("set free after {} years", row.year);
        step(&name, row.release_mg_n_m2_d.typical(), "mg N/m2/d")
    });
    let ends = typical(&[
        (
            "under what plants want after",
            ageing.falls_under_demand_years,
            "years",
        ),
        (
            "phosphorus lasts for",
            ageing.phosphorus_lasts_years,
            "years",
        ),
    ]);
    years.chain(ends).collect()
}

fn pouring(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let temperature = design.draft().water.temperature.celsius();
    let known = [
        ("oxygen lasts for", found.power.lasts_h, "h"),
        ("poured back from 30 cm", found.power.pour_l_h, "L/h"),
    ];
    let known = known
        .into_iter()
        .filter_map(|(name, value, unit)| Some(step(name, value?, unit)));
    let mut steps = vec![
        step("water in the tank", design.water().litres(), "L"),
        step("its temperature", temperature, "C"),
    ];
    steps.extend(known);
    steps
}

fn stirred(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let Some(stir) = &found.stir else {
        return Vec::new();
    };
    let limit = watch_limit_mg_l(design, Analyte::Ammonia).unwrap_or_default();
    vec![
        step("share of the bed", stir.share_pct, "%"),
        step("water in the tank", design.water().litres(), "L"),
        step(
            "ammonia that it brings",
            stir.ammonia_rise_mg_l.typical(),
            "mg N/L",
        ),
        step("limit", limit, "mg N/L"),
        step("share that is borne at once", stir.safe_share_pct, "%"),
        step("changed after it", stir.change_after_pct, "%"),
        step("depth of the water", design.water_depth().cm(), "cm"),
        step("clears in", stir.clears_h, "h"),
    ]
}

fn away(design: &Design, found: &Upkeep) -> Vec<WorkingStep> {
    let Some(away) = &found.away else {
        return Vec::new();
    };
    vec![
        step("evaporates", found.upkeep.top_up_l_per_week, "L/week"),
        step("days", away.days, "d"),
        step("lost", away.top_up_l, "L"),
        step("surface", design.surface().cm2(), "cm2"),
        step("the level falls by", away.level_falls_cm, "cm"),
        step("hardness over that before", away.hardness_factor, ""),
    ]
}

fn carried(found: &Upkeep) -> Vec<WorkingStep> {
    let Some(moved) = &found.moved else {
        return Vec::new();
    };
    vec![
        step("carried", moved.carried_kg, "kg"),
        step("water taken along", moved.water_kept_l, "L"),
        step(
            "highest ammonia after",
            moved.ammonia_peak_mg_l.typical(),
            "mg N/L",
        ),
        step(
            "highest nitrite after",
            moved.nitrite_peak_mg_l.typical(),
            "mg NO2/L",
        ),
    ]
}

fn bucket(found: &Upkeep) -> Vec<WorkingStep> {
    let Some(bucket) = &found.bucket else {
        return Vec::new();
    };
    let lasts = bucket.lasts_h.map(|hours| step("lasts for", hours, "h"));
    let water = step("water in the bucket", bucket.water_l, "L");
    [water].into_iter().chain(lasts).collect()
}
