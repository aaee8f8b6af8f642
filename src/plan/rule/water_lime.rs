//! `water.lime`: lime that settles out of hard water at dusk.

use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use crate::design::Design;
use crate::finding::{Code, Explanation, Finding, Status, WorkingStep, step};
use crate::plan::outcome::Plan;
use crate::source::{Basis, Source};
use crate::units::Hardness;
use crate::units::constants::molar_mass;
use crate::units::show::significant;
use crate::water::{carbonate, tap};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::WaterLime,
    about: About::Tank,
    judge: Judge::Night(|case| Vec::from_iter(judged(case))),
    orders: &[],
    steps,
    explanation: Explanation {
        asks: "Does lime settle out of the water at dusk?",
        limits: || {
            format!(
                "a note where pH at dusk is over {DUSK_PH} and the water holds {SETTLES} times the lime that it can keep dissolved, or more"
            )
        },
        formula: || {
            "ratio = [Ca] g K1 K2 CO2 / (H^2 Kc), log Kc = -171.9065 - 0.077993 T + 2839.319/T + 71.595 log T".to_owned()
        },
        symbols: &[
            "Ca: calcium, the hardness less its magnesium",
            "g: activity of ions with two charges, by Davies",
            "K1, K2, Kc: dissociation of carbonic acid and of calcite",
            "H: 10^-pH at dusk",
        ],
        range: || {
            "what keeps lime dissolved beside that (phosphate, magnesium, humic acids) is left out; a reading of hardness under the tap's shows that it settles".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[Source::PlummerBusenberg1982, Source::Davies1962],
    },
};

/// pH at dusk over which leaves take lime out of the water: judgement.
const DUSK_PH: f64 = 8.5;
/// Times its saturation from which lime settles: judgement.
const SETTLES: f64 = 10.0;
/// A reading that is lower than the tap's by less may be the kit's, dGH: judgement.
const TOLD_APART_DGH: f64 = 1.0;

/// Hardness that is calcium.
fn calcium(design: &Design) -> Hardness {
    let water = &design.draft().water;
    let magnesium = tap::magnesium(water.magnesium, water.hardness).typical;
    let magnesium = Hardness::from_meq_l(magnesium * 2.0 / molar_mass::MG);
    (water.hardness - magnesium).max(Hardness::ZERO)
}

/// How many times its lime the water can keep dissolved.
fn ratio(design: &Design, dusk_ph: f64) -> f64 {
    let water = &design.draft().water;
    carbonate::calcite_saturation(
        dusk_ph,
        calcium(design),
        water.alkalinity,
        water.temperature,
    )
    .unwrap_or(0.0)
}

/// Nothing where lime stays dissolved.
fn judged(case: &NightCase<'_>) -> Option<Finding> {
    let (design, ph) = (case.design(), case.night.outlook.ph_dusk.typical);
    let ratio = ratio(design, ph);
    let settles = ph > DUSK_PH && ratio >= SETTLES;
    settles.then(|| Finding {
        code: Code::WaterLime,
        status: Status::Note,
        subject: "lime".to_owned(),
        value: Some(ratio),
        unit: "times saturation",
        low: None,
        high: Some(SETTLES),
        says: format!(
            "at dusk, at pH {}, the water holds {} times the lime that it can keep dissolved: expect crusts on leaves and glass, and 1 dKH lost with each dGH{}",
            significant(ph, 2),
            significant(ratio, 2),
            seen(design)
        ),
        remedy: None,
        basis: Basis::Judgement,
        source: Some(Source::PlummerBusenberg1982),
    })
}

/// What a reading says for it.
fn seen(design: &Design) -> String {
    let draft = design.draft();
    let tap = draft.water.hardness.dgh();
    let read = draft.latest(|reading| reading.hardness);
    let fallen = read.filter(|(_, read)| read.dgh() < tap - TOLD_APART_DGH);
    fallen.map_or_else(String::new, |(day, read)| {
        format!(
            "; hardness was read at {} dGH on day {}, under the tap's {}, so it does",
            significant(read.dgh(), 2),
            significant(day, 3),
            significant(tap, 2)
        )
    })
}

fn steps(design: &Design, plan: &Plan) -> Vec<WorkingStep> {
    let dusk_ph = plan.night.ph_dusk.typical();
    let water = &design.draft().water;
    vec![
        step("pH at dusk", dusk_ph, ""),
        step("hardness that is calcium", calcium(design).dgh(), "dGH"),
        step("alkalinity", water.alkalinity.dkh(), "dKH"),
        step(
            "lime over what stays dissolved",
            ratio(design, dusk_ph),
            "times",
        ),
    ]
}
