//! `plants.load`: planting of day one against the flush.

use super::case::DesignCase;
use super::declaration::{About, Judge, Rule};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::load::{FLUSH_DAYS, INDEX_OK, INDEX_WATCH, JUDGED_DAYS};
use crate::plan::outcome::Plan;
use crate::plan::planting::portions_in_words;
use crate::plan::words;
use crate::source::{Basis, Source};
use crate::units::show::significant;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::PlantsLoad,
    about: About::Tank,
    judge: Judge::Start(|case| Ok(vec![judged(case)])),
    orders: &[
        Action::LayBed,
        Action::Plant,
        Action::ChangeWater,
        Action::RunDevice,
        Action::ReachIn,
    ],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "Do the plants of day one take the flush?",
        limits: || {
            format!(
                "index {INDEX_OK} and over ok, {INDEX_WATCH} and over watch, under {INDEX_WATCH} act; the typical run must also stay under the limits from day {}",
                JUDGED_DAYS.0
            )
        },
        formula: || {
            format!(
                "index = K / J; K = F ((Qmax - Q) + 0.8 rF T Qmax) + S ((Qmax - Q) + Qmax (exp(rS te) - 1)); J: ammonium released over T = {FLUSH_DAYS} days without plants, and what filling stirs up"
            )
        },
        symbols: &[
            "F, S: dry mass of floaters and fast growers on a square metre",
            "Q, Qmax: nitrogen in their tissue at planting and when full",
            "rF, rS: net growth at the planned light",
            "te: T less the lag of new stems",
        ],
        range: || {
            "held against 180 runs of the full model with 40 members each: in no start or hardly one ammonia and nitrite stayed under their limits below 1, in half of them from 2 to 3, in four of five from 4 on over potting mix, from 6 on over loam; slow growers are left out, they hardly count in the first month".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::Klein2022, Source::NielsenSandJensen1991],
    },
};

/// Planting of day one against the flush.
fn judged(case: &DesignCase<'_>) -> Finding {
    let met = case.planting.met;
    let status = match met.index {
        _ if met.is_met() => Status::Ok,
        index if index >= INDEX_WATCH => Status::Watch,
        _ => Status::Act,
    };
    let index = significant(met.index, 2);
    let limit = significant(met.limit, 2);
    let says = match status {
        Status::Ok => format!("the plants can take {index} times what the bed gives off"),
        _ if met.index <= 0.0 && takes_nothing(case) => {
            "nothing is planted that takes what the bed gives off in the first weeks".to_owned()
        }
        _ if met.index <= 0.0 => {
            "what is planted does not grow at this light and temperature".to_owned()
        }
        _ if met.index_is_met() => format!(
            "the plants can take {index} times what the bed gives off in {FLUSH_DAYS} days, but too late: ammonia or nitrite passes its limit before they grow (see flush)"
        ),
        _ => format!(
            "the plants can take {index} times what the bed gives off in {FLUSH_DAYS} days; {limit} is wanted"
        ),
    };
    let remedy = (status != Status::Ok).then(|| more_plants(case));
    Finding {
        code: Code::PlantsLoad,
        status,
        subject: "planting".to_owned(),
        value: Some(met.index),
        unit: "index",
        low: Some(met.limit),
        high: None,
        says,
        remedy,
        basis: Basis::Judgement,
        source: None,
    }
}

/// Whether neither floaters that feed from the water nor fast growers are planted.
fn takes_nothing(case: &DesignCase<'_>) -> bool {
    let planted = case.design.planted();
    planted.feeding_floaters.dry.g() + planted.fast.dry.g() <= 0.0
}

pub(super) fn more_plants(case: &DesignCase<'_>) -> Remedy {
    if case.planting.section.needed.portions.is_empty() {
        let why = if case.planting.met.index_is_met() {
            "more plants come too late"
        } else {
            "plants do not help here"
        };
        return Remedy {
            says: format!("{why}: {}", words::either(&otherwise(case))),
            quantity: None,
            unit: "",
        };
    }
    let planting = &case.planting.section;
    let needed = &planting.needed;
    let added_g = needed.floating_g - planting.floating_g + needed.fast_g - planting.fast_g;
    let reached = &case.planting.reached;
    let short = if reached.is_met() {
        String::new()
    } else {
        let still = if needed.index >= reached.limit {
            "even so ammonia or nitrite goes over"
        } else {
            "plants alone are not enough"
        };
        format!("; {still}: {}", words::either(&otherwise(case)))
    };
    let units = case.design.draft().units;
    let when = if case.is_running { "now" } else { "on day one" };
    Remedy {
        says: format!(
            "add {} {when} (index {}){short}",
            portions_in_words(units, &needed.portions),
            significant(needed.index, 2)
        ),
        quantity: Some(added_g),
        unit: "g",
    }
}

/// What else brings the flush down, beside water that is changed by readings.
fn otherwise(case: &DesignCase<'_>) -> Vec<String> {
    let mut means = Vec::new();
    if case.planting.fast_growth_per_d <= 0.0 {
        means.push("give more light, in this one fast growers shrink".to_owned());
    }
    if case.is_running {
        means.push("change water until ammonia and nitrite read nothing".to_owned());
        return means;
    }
    if case.design.draft().soil.soaked == 0 {
        means.push("soak and drain the soil before use".to_owned());
    }
    means.push("take less or poorer soil".to_owned());
    means
}

pub(super) fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let planting = &plan.planting;
    vec![
        step("floaters, fresh", planting.floating_g, "g"),
        step("fast growers, fresh", planting.fast_g, "g"),
        step("slow growers, fresh (left out)", planting.slow_g, "g"),
        step(
            &format!("released in {FLUSH_DAYS} days, J"),
            plan.bed.release_21_d_g_n_m2,
            "g N/m2",
        ),
        step(
            &format!("taken in {FLUSH_DAYS} days, K"),
            taken_g_m2(plan),
            "g N/m2",
        ),
        step("index K / J", planting.index, ""),
    ]
}

/// Nitrogen that the planting takes in the flush, K.
pub(super) fn taken_g_m2(plan: &Plan) -> f64 {
    plan.planting.index * plan.bed.release_21_d_g_n_m2
}
