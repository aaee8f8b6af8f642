//! The causes that no amount in the start-up model mends: steps of their own.

use super::super::case::CaseHistory;
use super::super::cause::Cause;
use super::super::dawn::{AIR_SOUGHT, night_inputs};
use super::super::estimate::TankEstimate;
use super::super::fact::is_over_limit;
use super::super::hypotheses::AHEAD_D;
use super::super::measurement::Measurand;
use super::{DilutedTank, RemedyStep, calm_after, outside};
use crate::dosing::{Dosing, Hunger, Nutrients, Readings, dosing};
use crate::night::limits::DAWN_WATCH_MG_L;
use crate::night::sizing::{AirNeed, air_needed};
use crate::numerics::rodas::IntegrationError;
use crate::plan::air_setting;
use crate::startup::limits::NO_RISE_MG_N_L;
use crate::startup::{Dissolved, ModelEvent, ModelEventKind, day_state};
use crate::units::show::{counted, significant};
use crate::units::{Analyte, Concentration, Flow, Pressure};
use crate::water::salt::BAKING_SODA;

/// Alkalinity that nitrifiers are content with, dKH (common practice, no source).
const CONTENT_DKH: f64 = 4.0;
/// Water that a planted tank wants moved, volumes an hour (common practice, no source).
const TURNOVER_PER_H: f64 = 3.0;
/// Part of the bed that may be worked on at once, % (judgement: a quarter).
const AT_ONCE_PCT: f64 = 25.0;

/// The step for a cause that water changes and time have to do for.
pub(super) fn step(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    held: &DilutedTank,
) -> Result<RemedyStep, IntegrationError> {
    Ok(match estimate.cause {
        Cause::CapFine if case.smells_of_sulfide() => sulfide(case),
        Cause::CapFine => RemedyStep::new(
            "let gas out with a thin rod, a hand's width apart and a quarter of the bed a week, air on and nobody's face over it; plant rooted plants, and stop where it smells of bad eggs",
            AT_ONCE_PCT,
            "%",
        ),
        Cause::BedDisturbed => wait(
            estimate,
            held,
            "leave the bed alone, cut plants off at the sand instead of pulling them, and feed nothing for ten days",
        )?,
        Cause::TankYoung => wait(
            estimate,
            held,
            "wait for the bacteria; add no animal, and feed those that are in nothing for ten days and a quarter after that",
        )?,
        Cause::BacteriaSetBack => wait(
            estimate,
            held,
            "leave filter and bed alone, run the filter day and night, feed nothing for ten days and a quarter until ammonia reads nothing twice",
        )?,
        Cause::Chlorine => wait(
            estimate,
            held,
            "treat tap water against chlorine and chloramine before it goes in, by the label with air running, the label's dose for the whole tank once now, and feed nothing for ten days",
        )?,
        Cause::HungryWater => feed_plants(case, estimate, held)?,
        Cause::SoftWater => soda(case),
        Cause::HardnessCreep => RemedyStep::new(
            "top up with rain or demineralised water alone, and change water each week",
            25.0,
            "%",
        ),
        Cause::StillWater => flow(case),
        Cause::NightExchange => air(case)?,
        Cause::NoneOfThese => outside::step(case),
        Cause::KitError => RemedyStep::plain(
            "test the same water again with another kit, and tap or bottled water beside it; change nothing on one reading alone",
        ),
        _ if held.asks_nothing() => {
            RemedyStep::plain("leave it alone: nothing here asks for a change")
        }
        _ => RemedyStep::plain("leave bed and plants as they are"),
    })
}

/// What comes first where sulfide is in the bed (common practice, no source).
fn sulfide(case: &CaseHistory<'_>) -> RemedyStep {
    let first = if case.is_stocked() {
        "move the animals out and run air"
    } else {
        "keep animals out and run air"
    };
    RemedyStep::plain(format!(
        "{first} before the bed is touched; do not prod or stir it where it smells of bad eggs; once air runs, set rooted plants where it does not smell, and open the window with nobody's face over the tank"
    ))
}

/// Days until ammonia and nitrite are calm.
fn wait(
    estimate: &TankEstimate,
    held: &DilutedTank,
    what: &str,
) -> Result<RemedyStep, IntegrationError> {
    Ok(match calm_after(estimate, &held.tank)? {
        Some(days) if days < 1.0 => RemedyStep::new(what, 0.0, "d"),
        Some(days) => RemedyStep::new(
            format!(
                "{what}; by the typical run it takes {}",
                counted(days, "more day")
            ),
            days,
            "d",
        ),
        None => RemedyStep::new(
            format!("{what}; by the typical run it takes more than {AHEAD_D} days"),
            f64::from(AHEAD_D),
            "d",
        ),
    })
}

/// What the plants would take if they found it, less what comes in by itself.
fn feed_plants(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    held: &DilutedTank,
) -> Result<RemedyStep, IntegrationError> {
    if is_over_limit(case) {
        return Ok(RemedyStep::plain(
            "dose no fertiliser while a reading is over its limit; potassium and iron by the label after that",
        ));
    }
    let tank = &held.tank;
    let ahead = estimate.ahead(tank)?;
    let taken_g_d = ahead.first().map_or(0.0, |now| {
        let today = day_state(&tank.inputs, &tank.numbers, now);
        today.nitrogen_taken.g_d()
    });
    let wanted = Nutrients::with_nitrogen(taken_g_d * 1e3 * 7.0);
    let hunger = Hunger {
        design: case.design,
        need: wanted.beyond(Nutrients::of_upkeep(case.design)),
        readings: readings(case),
    };
    Ok(match dosing(&hunger) {
        Err(refusal) => RemedyStep::plain(format!(
            "{refusal}; potassium and iron by the label after that"
        )),
        Ok(given) => dosed(case, estimate, held, given),
    })
}

/// The last measurements, as kits read them.
fn readings(case: &CaseHistory<'_>) -> Readings {
    let of = |subject| {
        let found = case.latest(subject)?;
        Some((found.day, found.value.at_least()))
    };
    Readings {
        today_d: case.age_d,
        ammonia: of(Measurand::Ammonia),
        nitrite: of(Measurand::Nitrite),
        nitrate: of(Measurand::Nitrate),
        phosphate: of(Measurand::Phosphate),
        potassium: of(Measurand::Potassium),
        iron: of(Measurand::Iron),
    }
}

/// The doses, with the tank that the first of nitrate makes.
fn dosed(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    held: &DilutedTank,
    given: Dosing,
) -> RemedyStep {
    let now = case.latest(Measurand::Nitrate);
    let now = now.map_or(0.0, |reading| reading.value.at_least());
    let first = given.dosing.iter().find(|dose| dose.doses_per_week > 0);
    let rise: f64 = first.map_or(0.0, |dose| dose.raises_nitrate_mg_l);
    let mut tank = held.tank.clone();
    tank.inputs.events.push(ModelEvent {
        day: estimate.now_d,
        kind: ModelEventKind::Measured(Dissolved {
            nitrate_n: Some(Analyte::Nitrate.element(Concentration::from_mg_l(now + rise))),
            ..Dissolved::default()
        }),
    });
    let says = given.says();
    let mut step = RemedyStep {
        tank: Some(tank),
        ..match first {
            Some(dose) => RemedyStep::new(says, dose.dose_ml, "mL"),
            None => RemedyStep::plain(says),
        }
    };
    step.given = Some(given);
    step
}

/// Baking soda, unless ammonia forbids a higher pH.
fn soda(case: &CaseHistory<'_>) -> RemedyStep {
    let ammonia = case.latest(Measurand::Ammonia);
    let ammonia = ammonia.map_or(0.0, |reading| reading.value.at_least());
    if ammonia >= NO_RISE_MG_N_L {
        return RemedyStep::plain(format!(
            "do not raise pH while ammonia stands at {} mg/L, for more of it would turn poisonous: change water first, and harden it only once ammonia reads under {NO_RISE_MG_N_L} mg/L",
            significant(ammonia, 2)
        ));
    }
    let missing = (CONTENT_DKH - case.design.draft().water.alkalinity.dkh()).max(1.0);
    let soda_g = missing * BAKING_SODA.mg_per_degree_l() * case.design.water().litres() * 1e-3;
    RemedyStep::new(
        format!(
            "raise alkalinity by {} dKH over four days: {} g of baking soda in all, a quarter a day, dissolved first",
            significant(missing, 2),
            significant(soda_g, 2)
        ),
        soda_g,
        "g",
    )
}

fn flow(case: &CaseHistory<'_>) -> RemedyStep {
    let flow = Flow::from_l_min(TURNOVER_PER_H * case.design.water().litres() / 60.0);
    RemedyStep::new(
        format!(
            "move the water: a small pump or sponge filter of about {}, three times the water an hour, aimed along the surface but not at the floaters",
            case.design.draft().units.flow(flow)
        ),
        flow.l_min(),
        "L/min",
    )
}

/// Air that keeps dawn oxygen up, by the night model from the tank as it stands.
fn air(case: &CaseHistory<'_>) -> Result<RemedyStep, IntegrationError> {
    let inputs = night_inputs(case)?;
    let limit = Concentration::from_mg_l(DAWN_WATCH_MG_L);
    let units = case.design.draft().units;
    let depth = units.dimension(units.down(inputs.air_depth()));
    Ok(match air_needed(&inputs, AIR_SOUGHT, limit)? {
        AirNeed::SurfaceIsEnough | AirNeed::PumpIsEnough => RemedyStep::plain(
            "take off the lid or thin the floaters to a third, and let a little air run by night: by the model the surface is enough",
        ),
        AirNeed::Air(flow) => {
            let (night, when) = flow
                .night_only
                .map_or((flow.always, "day and night"), |night| {
                    (night, "while the lamp is off")
                });
            let setting = air_setting(night);
            RemedyStep::new(
                format!(
                    "run an air stone {when}: {} at {depth} depth keeps dawn oxygen at {DAWN_WATCH_MG_L:.0} mg/L; the pump has to give {}; thin floaters that lie close",
                    units.air_flow(setting),
                    units.pump_pressure(Pressure::from_kpa(flow.pressure_kpa.high))
                ),
                setting.l_min(),
                "L/min",
            )
        }
        AirNeed::OutOfReach { flow, .. } => RemedyStep::new(
            format!(
                "more air than {} would be needed: take animals out, thin the floaters to a third and take the lid off",
                units.air_flow(flow)
            ),
            flow.l_min(),
            "L/min",
        ),
    })
}
