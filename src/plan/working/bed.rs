//! The working behind findings on soil, cap and what digs in them.

use super::flush::taken_g_m2;
use super::step;
use crate::design::Design;
use crate::finding::Step;
use crate::plan::Plan;
use crate::plan::judge::{cap_depth, cap_grain};
use crate::plan::load::FLUSH_DAYS;
use crate::source::Band;
use crate::startup::{self, Barrier, Inputs, Parameters};
use crate::substrate::isolation::{CapParts, PLACING_ERROR_CM, isolation_thickness};
use crate::substrate::verdict::{CoarseLimits, FineLimits};
use crate::units::{Concentration, Length};

pub(super) fn coarse(design: &Design) -> Vec<Step> {
    let limits = CoarseLimits::over(&cap_grain::filter_soil(design));
    vec![
        step("D15 of the cap", design.draft().cap.d15_mm().typical, "mm"),
        step("filter limit of the soil", limits.rule.mm(), "mm"),
        step("ok up to 1.6 times that", limits.watch_above.mm(), "mm"),
        step("act above", limits.act_above.mm(), "mm"),
    ]
}

pub(super) fn fine(design: &Design) -> Vec<Step> {
    let limits = FineLimits::over(&cap_grain::filter_soil(design));
    let cap = &design.draft().cap;
    vec![
        step("d10 of the cap", cap.d10_mm().typical, "mm"),
        step("loose from d10", limits.d10_loose.mm(), "mm"),
        step("D15 of the cap", cap.d15_mm().typical, "mm"),
        step("least D15 over this soil", limits.d15_least.mm(), "mm"),
        step("passing 0.075 mm", cap.material.fines_pct.typical, "%"),
        step("most that may pass", limits.fines_most.percent(), "%"),
    ]
}

pub(super) fn thin(design: &Design) -> Vec<Step> {
    let limits = cap_depth::limits(design);
    let bed = design.bed();
    vec![
        step("brimful", design.vessel().brimful().litres(), "L"),
        step("thinnest place", bed.cap.thinnest.depth.mm(), "mm"),
        step("act under", limits.act_under.mm(), "mm"),
        step("watch under", limits.watch_under.mm(), "mm"),
        step(
            "sand to reach that everywhere",
            bed.cap_short_of(limits.watch_under).litres(),
            "L",
        ),
    ]
}

pub(super) fn leak(design: &Design, plan: &Plan) -> Vec<Step> {
    let numbers = Parameters::<Band>::of(design).central();
    let barrier = startup::barrier(&Inputs::of(design), &numbers);
    let passage = &barrier.passage;
    let settled = passage.settled();
    let mut steps = vec![
        step(
            "pore water at filling, Cs",
            barrier.pore_water_mg_l,
            "mg N/L",
        ),
        step("resistance of the soil", passage.soil_d_m, "d/m"),
        step("resistance of the cap", passage.cap_d_m, "d/m"),
        step(
            "resistance of the cap to diffusion alone",
            passage.still_cap_d_m,
            "d/m",
        ),
        step(
            "conductance between the grains",
            settled.matrix_m_d * 1e3,
            "mm/d",
        ),
        step("conductance by holes", settled.holes_m_d * 1e3, "mm/d"),
        step(
            "half of it comes through the cap after",
            passage.half_rise_d(design.bed().cap.mean.m()),
            "d",
        ),
        step(
            "turnover of the soil's ammonium, store over both",
            passage.store_m / settled.both_m_d(),
            "d",
        ),
        step("peak release", plan.bed.release_peak_mg_n_m2_d, "mg N/m2/d"),
        step(
            "released in 21 days, stirred up included",
            plan.bed.release_21_d_g_n_m2,
            "g N/m2",
        ),
        step("planting index", plan.planting.index, ""),
    ];
    steps.extend(capping(design, plan, &barrier));
    steps
}

/// The parts of a still cap that lets through no more than the plants take, where they
/// take anything.
fn capping(design: &Design, plan: &Plan, barrier: &Barrier) -> Vec<Step> {
    let taken_mg_m2_d = taken_g_m2(plan) / f64::from(FLUSH_DAYS) * 1e3;
    if taken_mg_m2_d <= 0.0 {
        return Vec::new();
    }
    let burrows = design.draft().animals.iter();
    let burrows = burrows.map(|stock| stock.animal.digs_mm.typical);
    let parts = CapParts {
        placing: Length::from_cm(PLACING_ERROR_CM),
        burrowing: Length::from_mm(burrows.fold(0.0, f64::max)),
        isolation: isolation_thickness(
            barrier.cap_diffusion.m2_s(),
            Concentration::from_mg_l(barrier.pore_water_mg_l),
            taken_mg_m2_d,
        ),
    };
    vec![
        step(
            "taken by the plants a day, K / 21",
            taken_mg_m2_d,
            "mg N/m2/d",
        ),
        step("lost in placing by hand, To", parts.placing.mm(), "mm"),
        step("stirred by animals, Tb", parts.burrowing.mm(), "mm"),
        step(
            "isolating by diffusion alone, Ti",
            parts.isolation.mm(),
            "mm",
        ),
        step("To + Tb + Ti", parts.needed().mm(), "mm"),
        step("mean depth of the cap", design.bed().cap.mean.mm(), "mm"),
    ]
}

pub(super) fn depths(design: &Design) -> Vec<Step> {
    let bed = design.bed();
    vec![
        step("mean depth of the soil", bed.soil.mean.mm(), "mm"),
        step("deepest soil", bed.soil.deepest.depth.mm(), "mm"),
        step("mean depth of the cap", bed.cap.mean.mm(), "mm"),
        step(
            "inner height of the tank",
            design.vessel().height().mm(),
            "mm",
        ),
        step(
            "bed over height",
            (bed.soil.mean + bed.cap.mean) / design.vessel().height() * 100.0,
            "%",
        ),
    ]
}

pub(super) fn slope(design: &Design) -> Vec<Step> {
    let top = &design.bed().top;
    vec![
        step("lowest place of the bed", top.lowest.depth.mm(), "mm"),
        step("highest place of the bed", top.highest.depth.mm(), "mm"),
        step("steepest slope", top.slope_deg, "degrees"),
    ]
}

pub(super) fn diggers(design: &Design) -> Vec<Step> {
    let mut steps = vec![step(
        "thinnest cap",
        design.bed().cap.thinnest.depth.mm(),
        "mm",
    )];
    steps.extend(design.draft().animals.iter().map(|stock| {
        let name = format!("{} stirs", stock.animal.label);
        step(&name, stock.animal.digs_mm.typical, "mm")
    }));
    steps
}
