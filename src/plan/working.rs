//! The working behind a finding: its formula followed through with a design's numbers.

use super::Plan;
use super::judge::{cap_depth, cap_grain};
use super::load::FLUSH_DAYS;
use crate::design::Design;
use crate::finding::{Code, Step, Working};
use crate::source::Band;
use crate::startup::{self, Barrier, Inputs, Parameters};
use crate::substrate::isolation::{CapParts, PLACING_ERROR_CM, isolation_thickness};
use crate::substrate::verdict::{CoarseLimits, FineLimits};
use crate::units::{Concentration, Length};

/// The steps behind one finding of a plan.
pub fn working(design: &Design, plan: &Plan, code: Code) -> Working {
    let steps = match code {
        Code::CapCoarse => coarse(design),
        Code::CapFine => fine(design),
        Code::CapThin => thin(design),
        Code::CapLeak => leak(design, plan),
        Code::CapDeep | Code::SoilThin | Code::SoilDeep => depths(design),
        Code::CapSlope => slope(design),
        Code::BedGas => vec![
            step(
                "gas made over gas that diffuses out, G",
                plan.bed.gas_ratio,
                "",
            ),
            step(
                "entry pressure over overburden, M",
                plan.bed.entry_over_overburden,
                "",
            ),
        ],
        Code::BedOxygen => vec![step("oxic front", plan.bed.oxic_front_mm, "mm")],
        Code::PlantsLoad | Code::PlantsMix => load(plan),
        Code::PlantsCover => vec![step("cover", plan.planting.floating_cover_pct, "%")],
        Code::PlantsListed | Code::CheckWater | Code::CheckCause => Vec::new(),
        Code::AnimalsDiggers => diggers(design),
        Code::AirDawn => dawn(plan),
        Code::FlowSlack | Code::FlowStrong => flow(plan),
        Code::LightShort | Code::LightLong => light(design, plan),
        Code::AnimalsLoad => animals(plan),
        Code::FlushAmmonia | Code::FlushNitrite | Code::FlushNitrate => flush(plan),
        Code::AnimalsEarly => early(design, plan),
        Code::WaterSoft => soft(design, plan),
        Code::WeightFloor => weight(plan),
        Code::GlassPane => panes(design, plan),
    };
    Working { steps }
}

fn step(name: &str, value: f64, unit: &'static str) -> Step {
    Step {
        name: name.to_owned(),
        value,
        unit,
    }
}

fn coarse(design: &Design) -> Vec<Step> {
    let limits = CoarseLimits::over(&cap_grain::filter_soil(design));
    vec![
        step("D15 of the cap", design.draft().cap.d15_mm().typical, "mm"),
        step("filter limit of the soil", limits.rule.mm(), "mm"),
        step("ok up to 1.6 times that", limits.watch_above.mm(), "mm"),
        step("act above", limits.act_above.mm(), "mm"),
    ]
}

fn fine(design: &Design) -> Vec<Step> {
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

fn thin(design: &Design) -> Vec<Step> {
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

fn leak(design: &Design, plan: &Plan) -> Vec<Step> {
    let numbers = Parameters::<Band>::of(design).central();
    let barrier = startup::barrier(&Inputs::of(design), &numbers);
    let passage = &barrier.passage;
    let mut steps = vec![
        step(
            "pore water at filling, Cs",
            barrier.pore_water_mg_l,
            "mg N/L",
        ),
        step("resistance of half the soil", passage.soil_d_m, "d/m"),
        step("resistance of the cap", passage.cap_d_m, "d/m"),
        step("resistance of the still film", passage.film_d_m, "d/m"),
        step(
            "conductance of all three, g",
            passage.conductance_m_d * 1e3,
            "mm/d",
        ),
        step("time to cross the cap, tau", passage.rise_d, "d"),
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

fn depths(design: &Design) -> Vec<Step> {
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

fn slope(design: &Design) -> Vec<Step> {
    let top = &design.bed().top;
    vec![
        step("lowest place of the bed", top.lowest.depth.mm(), "mm"),
        step("highest place of the bed", top.highest.depth.mm(), "mm"),
        step("steepest slope", top.slope_deg, "degrees"),
    ]
}

fn load(plan: &Plan) -> Vec<Step> {
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
fn taken_g_m2(plan: &Plan) -> f64 {
    plan.planting.index * plan.bed.release_21_d_g_n_m2
}

fn diggers(design: &Design) -> Vec<Step> {
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

fn weight(plan: &Plan) -> Vec<Step> {
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

fn panes(design: &Design, plan: &Plan) -> Vec<Step> {
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

fn flush(plan: &Plan) -> Vec<Step> {
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

fn dawn(plan: &Plan) -> Vec<Step> {
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

fn flow(plan: &Plan) -> Vec<Step> {
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

fn light(design: &Design, plan: &Plan) -> Vec<Step> {
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

fn animals(plan: &Plan) -> Vec<Step> {
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

fn early(design: &Design, plan: &Plan) -> Vec<Step> {
    let mut steps = flush(plan);
    steps.extend(design.draft().animals.iter().map(|stock| {
        let name = format!("{} from day", stock.animal.label);
        step(&name, stock.from_day, "d")
    }));
    steps
}

fn soft(design: &Design, plan: &Plan) -> Vec<Step> {
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
