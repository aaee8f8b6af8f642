//! The work of making up new water, in its order.

use std::fmt::Write;

use super::treatment::{Chlorine, RefillPace, Warmth};
use crate::design::Design;
use crate::mixture::Mixture;
use crate::source::Band;
use crate::startup::limits::NO_RISE_MG_N_L;
use crate::units::show::significant;
use crate::units::{UnitSystem, Volume};
use crate::water::salt::GYPSUM;

/// Degrees by which new water may differ from the tank's: practice.
const WARMTH_BORNE_K: f64 = 1.0;

/// Each step in a sentence.
pub(super) fn order(
    design: &Design,
    mixture: &Mixture,
    chlorine: &Chlorine,
    warmth: &Warmth,
    pace: Option<&RefillPace>,
) -> Vec<String> {
    let units = design.draft().units;
    let mut order = vec![mix(units, mixture)];
    order.extend(draw(design, warmth));
    order.extend(condition(units, design, mixture, chlorine));
    order.extend(salts(mixture));
    order.extend(pace.map(|pace| follow(units, mixture, *pace)));
    order.extend(wait(design, mixture));
    order
}

fn mix(units: UnitSystem, mixture: &Mixture) -> String {
    let [tap, soft] = [mixture.tap(), mixture.soft()].map(|part| units.volume(part));
    if mixture.soft() <= Volume::ZERO {
        format!("take {tap} of tap water")
    } else if mixture.tap() <= Volume::ZERO {
        format!("take {soft} of softened water")
    } else {
        format!("mix {tap} of tap water with {soft} of softened water")
    }
}

/// Both taps, or what comes of the cold one alone.
fn draw(design: &Design, warmth: &Warmth) -> Option<String> {
    let units = design.draft().units;
    let (drawn, reached) = (warmth.drawn?, warmth.reached?);
    let wanted = design.draft().water.temperature;
    let off = reached.celsius() - wanted.celsius();
    let from = if drawn.hot > Volume::ZERO {
        format!(
            "draw {} from the hot tap and {} from the cold one: {} together",
            units.volume(drawn.hot),
            units.volume(drawn.cold),
            units.temperature(reached)
        )
    } else {
        format!("unwarmed it comes at {}", units.temperature(reached))
    };
    let at_once = WARMTH_BORNE_K / off.abs();
    Some(if off.abs() <= WARMTH_BORNE_K || at_once >= 1.0 {
        from
    } else {
        format!(
            "{from}; the tank has {}, so let it stand in the room, or change at most {:.0} % of the water at once",
            units.temperature(wanted),
            (at_once * 100.0).floor()
        )
    })
}

/// What is done about chlorine, and what of it is not known.
fn condition(
    units: UnitSystem,
    design: &Design,
    mixture: &Mixture,
    chlorine: &Chlorine,
) -> Vec<String> {
    if !chlorine.is_there() || mixture.tap() <= Volume::ZERO {
        return vec!["no conditioner is needed: no chlorine is in it".to_owned()];
    }
    let dose = |water: Volume| match chlorine.dose(water) {
        Some(dose) => format!("{} mL", significant(dose.ml(), 2)),
        None => format!("the label's dose for {}", units.volume(water)),
    };
    let mut conditioner = format!(
        "stir conditioner in before it goes in, {}",
        dose(mixture.tap())
    );
    if mixture.tap() < design.water() {
        let _ = write!(
            conditioner,
            "; where the tap runs straight into the tank, first {} there",
            dose(design.water())
        );
    }
    if let (Some(still), Some(aerated)) = (chlorine.stand_h(false), chlorine.stand_h(true)) {
        let _ = write!(
            conditioner,
            "; or let it stand open for {} h, {} h with air, until a strip reads no chlorine",
            ranged(still),
            ranged(aerated)
        );
        return vec![conditioner];
    }
    let unsaid = match chlorine.said {
        Some(_) => "",
        None => "ask the supplier whether it is chlorine or chloramine; taken as chloramine: ",
    };
    let left = format!(
        "{unsaid}chloramine does not go by standing, and leaves {} mg N/L of ammonia",
        ranged(chlorine.ammonia_left_mg_l)
    );
    vec![conditioner, left]
}

/// "0.2 (0.02 to 0.8)", or one number where it is known.
fn ranged(band: Band) -> String {
    let typical = significant(band.typical, 2);
    if band.low >= band.high {
        return typical;
    }
    format!(
        "{typical} ({} to {})",
        significant(band.low, 2),
        significant(band.high, 2)
    )
}

fn salts(mixture: &Mixture) -> Option<String> {
    let salts = mixture.salts();
    let named: Vec<String> = salts
        .iter()
        .map(|salt| format!("{} g of {}", significant(salt.mass_g, 3), salt.name))
        .collect();
    let slow = salts.iter().any(|salt| salt.name == GYPSUM.name);
    let slow = if slow { ", gypsum the day before" } else { "" };
    (!named.is_empty()).then(|| format!("dissolve {}{slow}", named.join(", ")))
}

fn follow(units: UnitSystem, mixture: &Mixture, pace: RefillPace) -> String {
    if pace.steps == 1 {
        return "give it to the tank slowly, over half an hour".to_owned();
    }
    let volume = mixture.tap() + mixture.soft();
    format!(
        "change it over {} days, {} a day: animals bear about a degree of hardness or alkalinity, 0.3 of pH and a tenth of the conductivity a day",
        pace.steps,
        units.volume(volume / f64::from(pace.steps))
    )
}

/// That nothing raises pH while ammonia stands.
fn wait(design: &Design, mixture: &Mixture) -> Option<String> {
    let draft = design.draft();
    let (_, ammonia) = draft.latest(|reading| reading.ammonia)?;
    let alkalinity = draft.latest(|reading| reading.alkalinity);
    let now = alkalinity.map_or(draft.water.alkalinity, |(_, read)| read);
    let rises = mixture.alkalinity() > now && ammonia.mg_l() >= NO_RISE_MG_N_L;
    rises.then(|| {
        format!(
            "wait: ammonia reads {} mg/L, and water of more alkalinity raises pH, at which more of it is poisonous; first under {NO_RISE_MG_N_L}",
            significant(ammonia.mg_l(), 2)
        )
    })
}
