//! `cap.leak`: peak release through the cap against what the planting takes.

use super::case::DesignCase;
use super::declaration::{About, Judge, Rule};
use super::sand::more_sand;
use super::{cap_deep, plants_load};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::numerics::rodas::IntegrationError;
use crate::plan::load::{FLUSH_DAYS, Load};
use crate::plan::outcome::Plan;
use crate::source::Band;
use crate::source::{Basis, Source};
use crate::startup::{self, Barrier, Inputs, Parameters};
use crate::substrate::isolation::{CapParts, PLACING_ERROR_CM, isolation_thickness};
use crate::units::show::significant;
use crate::units::{Concentration, Length};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::CapLeak,
    about: About::Cap,
    judge: Judge::Start(|case| Ok(vec![judged(case)?])),
    orders: &[
        Action::AddSand,
        Action::LayBed,
        Action::Plant,
        Action::ChangeWater,
    ],
    steps,
    explanation: Explanation {
        asks: "Do the plants take what comes through the cap?",
        limits: || {
            "ok where the planting load is met; else watch, with the sand or the plants that would mend it".to_owned()
        },
        formula: || {
            "j = (matrix + holes)(Cs - Ci); matrix = rise / (Ls / 3 De_s + Lc / (De_c + chi k)), holes = (e - 1) / (Ls / 3 De_s + Lc / De_c); beside it T = To + Tb + Ti, Ti = De_c Cs / (K / 21 d)".to_owned()
        },
        symbols: &[
            "j: ammonium nitrogen leaving the bed",
            "Cs: ammonium in the soil's pore water",
            "Ci: ammonium at the bed's surface, where bacteria take of it",
            "Ls, Lc: depth of soil and cap",
            "De: phi D / (1 - ln phi^2)",
            "rise: share that a slab lets through by now",
            "k: permeability of the cap, chi: exchange by currents through it",
            "e: enhancement by roots and gas, 1.5 (1 to 4)",
            "T: depth of a still cap that lets through what plants take",
            "To, Tb, Ti: its parts for placing, burrowing and isolation",
            "K: nitrogen that the planting takes in 21 days",
        ],
        range: || {
            "a tortuosity fitted to mud; in sand the release may be up to twice as large".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[
            Source::Boudreau1996,
            Source::Crank1975,
            Source::IversenJorgensen1993,
            Source::MillingtonQuirk1961,
            Source::PalermoDoer1998,
            Source::LiGregory1974,
            Source::Zou2018,
        ],
    },
};

/// The deepest cap that is suggested against a leak.
const DEEPEST_REMEDY_MM: f64 = 60.0;

/// Steps in which that cap is sought.
const REMEDY_STEP_MM: f64 = 1.0;

/// Peak release through the cap against what the planting takes.
fn judged(case: &DesignCase<'_>) -> Result<Finding, IntegrationError> {
    let peak = case.bed.release_peak_mg_n_m2_d;
    let met = case.planting.met.is_met();
    let says = if met {
        format!(
            "the plants take what comes through the cap: at its peak {} mg N/m2 a day, up to twice that by other models of diffusion",
            significant(peak, 2)
        )
    } else {
        format!(
            "more ammonia comes through the cap than the plants take: at its peak {} mg N/m2 a day, up to twice that by other models",
            significant(peak, 2)
        )
    };
    let remedy = if met || !case.seeks_remedies {
        None
    } else {
        Some(leak_remedy(case)?)
    };
    Ok(Finding {
        code: Code::CapLeak,
        status: if met { Status::Ok } else { Status::Watch },
        subject: "cap".to_owned(),
        value: Some(peak),
        unit: "mg N/m2/d",
        low: None,
        high: None,
        says,
        remedy,
        basis: Basis::Judgement,
        source: Some(Source::Boudreau1996),
    })
}

/// More sand where that alone is enough, else more plants.
fn leak_remedy(case: &DesignCase<'_>) -> Result<Remedy, IntegrationError> {
    let sand = deeper_cap(case)?.map(|depth| more_sand(case.design, depth));
    Ok(sand.unwrap_or_else(|| plants_load::more_plants(case)))
}

/// The least even depth, up to 60 mm and to where it would be too deep, at which the planting meets the load.
fn deeper_cap(case: &DesignCase<'_>) -> Result<Option<Length>, IntegrationError> {
    let now = case.design.bed().cap.mean;
    let meets = |depth: Length| -> Result<bool, IntegrationError> {
        let inputs = Inputs {
            cap_depth: depth,
            ..case.load.inputs.clone()
        };
        let load = Load::with(case.design, inputs)?;
        Ok(load.met_by(case.design.planted())?.is_met())
    };
    let deepest = Length::from_mm(DEEPEST_REMEDY_MM).min(cap_deep::verdict(case.design).limit);
    if now >= deepest || !meets(deepest)? {
        return Ok(None);
    }
    let (mut too_thin, mut enough) = (now, deepest);
    while (enough - too_thin).mm() > REMEDY_STEP_MM {
        let middle = (too_thin + enough) / 2.0;
        if meets(middle)? {
            enough = middle;
        } else {
            too_thin = middle;
        }
    }
    Ok(Some(enough))
}

fn steps(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
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
            &format!("released in {FLUSH_DAYS} days, stirred up included"),
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
fn capping(design: &Design, plan: &Plan, barrier: &Barrier) -> Vec<WorkingStep> {
    let taken_mg_m2_d = plants_load::taken_g_m2(plan) / f64::from(FLUSH_DAYS) * 1e3;
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
            &format!("taken by the plants a day, K / {FLUSH_DAYS}"),
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
