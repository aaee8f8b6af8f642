//! What to do about a cause, with quantities found by the same model from the tank as it
//! most likely stands.

mod cure;
mod dilution;
mod hand;
mod limit;
mod outside;
mod patience;
mod plants;
mod rebuild;

pub use dilution::{ChangeSchedule, DilutedTank, Immediate};
pub use limit::NitrogenLimits;

use serde::Serialize;

use super::case::CaseHistory;
use super::cause::Cause;
use super::estimate::TankEstimate;
use super::scenario::Scenario;
use crate::catalogue;
use crate::dosing::Dosing;
use crate::finding::Action;
use crate::numerics::rodas::IntegrationError;
use crate::plan::{sand_over, sand_to};
use crate::result::results;
use crate::source::Band;
use crate::units::show::significant;
use crate::units::{Density, Length, Temperature};
use cure::Cure;
use dilution::{ChangeWater, hold, is_held};
use patience::Patience;
use plants::Addition;

/// Days after which a cure is to hold by itself, without water changes (judgement).
const CURED_D: f64 = 14.0;
/// Ammonia under which, and nitrite nitrogen under which, a wait is over, mg N/L.
const CALM_MG_N_L: f64 = 0.25;

results! {
    /// What to do about a cause.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct CauseRemedy {
        /// the steps in one sentence
        pub says: String => "check.cause",
        /// how much of the main step, in the unit beside it
        pub quantity: Option<f64> => "check.cause",
        /// unit of that quantity
        pub unit: &'static str => "check.cause",
        /// whether the typical run stays under the limits with it
        pub meets_limits: bool => "check.water",
        /// The main step by itself, without the water changes that go with it.
        #[serde(skip)]
        pub main: String,
        /// What to do now, step by step.
        #[serde(skip)]
        pub now: Vec<String>,
        /// What follows.
        #[serde(skip)]
        pub then: Vec<String>,
        /// The work that it orders, from which its cautions follow.
        #[serde(skip)]
        pub actions: Vec<Action>,
        /// What hungry plants are given.
        #[serde(skip)]
        pub given: Option<Dosing>,
    }
}

/// A remedy with the tank that it makes.
#[derive(Debug, Clone, PartialEq)]
pub struct Treatment {
    /// In words.
    pub remedy: CauseRemedy,
    /// The estimated tank with everything done.
    pub tank: Scenario,
    /// The estimate that it was made from: laid anew where the bed is.
    pub estimate: TankEstimate,
}

/// What to do about an estimated tank; `ready` is the day from which the forecast has
/// ammonia and nitrite low if nothing is done.
///
/// # Errors
/// When its numbers leave the finite ones.
pub fn treat(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    ready: Option<Band>,
) -> Result<Treatment, IntegrationError> {
    let cure = Cure::of(estimate.cause);
    let (amount, does, held) = least(case, estimate, cure)?;
    let patience = Patience::of(case, ready);
    if !held.holds && estimate.cause == Cause::SoilRich && !case.is_stocked() {
        let anew = rebuild::with_soaked_soil(case, estimate)?;
        return Ok(patience.before(anew));
    }
    let main = main_step(case, estimate, cure, amount, &held)?;
    let (now, then) = match estimate.cause {
        Cause::KitError => (vec![main.says.clone()], Vec::new()),
        _ => steps(case, &main.says, &held, cure.water(amount), patience),
    };
    Ok(Treatment {
        remedy: CauseRemedy {
            says: in_one(&now, &then),
            main: main.says,
            now,
            then,
            quantity: main.quantity,
            unit: main.unit,
            meets_limits: held.holds && does,
            actions: actions(case, estimate.cause, &held),
            given: main.given,
        },
        tank: main.tank.unwrap_or(held.tank),
        estimate: estimate.clone(),
    })
}

/// The work of a cause's remedy: its main step, water changes, and moving animals out
/// where they do not do it.
fn actions(case: &CaseHistory<'_>, cause: Cause, held: &DilutedTank) -> Vec<Action> {
    let mut actions = Cure::of(cause).orders(cause).to_vec();
    actions.extend(held.orders());
    if !held.holds && case.is_stocked() {
        actions.push(Action::MoveAnimals);
    }
    actions
}

/// The main step in words, with its quantity.
pub(super) struct RemedyStep {
    says: String,
    quantity: Option<f64>,
    unit: &'static str,
    /// The tank that it makes, where that is not the one held by water changes.
    tank: Option<Scenario>,
    /// What hungry plants are given by it.
    given: Option<Dosing>,
}

impl RemedyStep {
    fn new(says: impl Into<String>, quantity: f64, unit: &'static str) -> Self {
        Self {
            says: says.into(),
            quantity: Some(quantity),
            unit,
            tank: None,
            given: None,
        }
    }

    fn plain(says: impl Into<String>) -> Self {
        Self {
            says: says.into(),
            quantity: None,
            unit: "",
            tank: None,
            given: None,
        }
    }
}

/// The amount of a cure with whether it does what it is for and the water changes still
/// needed: of several, the one with the least water; of equals, the least.
fn least(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    cure: Cure,
) -> Result<(f64, bool, DilutedTank), IntegrationError> {
    let is_for_plants = matches!(cure, Cure::Thin | Cure::LessLight);
    let mut best: Option<(f64, bool, DilutedTank)> = None;
    for amount in cure.amounts(case, estimate) {
        let tank = cure.apply(case, estimate, amount);
        let does = is_cured(case, estimate, cure, &tank)?;
        let held = match estimate.cause {
            // nothing is changed on a reading that may be wrong
            Cause::KitError => DilutedTank::untouched(case, estimate, &tank)?,
            _ => hold(case, estimate, &tank, cure.water(amount))?,
        };
        let stop = does && held.pace.is_none() && held.holds;
        let better = best
            .as_ref()
            .is_none_or(|(_, _, other)| is_for_plants || held.is_less_than(other));
        if better {
            best = Some((amount, does || !is_for_plants, held));
        }
        if stop {
            break;
        }
    }
    match best {
        Some(best) => Ok(best),
        None => Ok((
            0.0,
            true,
            hold(case, estimate, &estimate.tank, ChangeWater::Tap)?,
        )),
    }
}

/// Whether a cure does what it is for by itself.
fn is_cured(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    cure: Cure,
    tank: &Scenario,
) -> Result<bool, IntegrationError> {
    match cure {
        Cure::Thin => {
            let fast = |days: f64| move |day: f64| day >= estimate.now_d + days;
            let ahead = estimate.ahead(tank)?;
            let early = ahead.iter().find(|sample| fast(7.0)(sample.day));
            let late = ahead.last();
            Ok(match (early, late) {
                (Some(early), Some(late)) => late.state.fast >= early.state.fast,
                _ => false,
            })
        }
        Cure::LessLight => {
            let ahead = estimate.ahead(tank)?;
            Ok(match (ahead.first(), ahead.last()) {
                (Some(now), Some(late)) => late.state.algae < now.state.algae,
                _ => false,
            })
        }
        _ => is_held(estimate, tank, &NitrogenLimits::of(case), CURED_D),
    }
}

fn main_step(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    cure: Cure,
    amount: f64,
    held: &DilutedTank,
) -> Result<RemedyStep, IntegrationError> {
    let units = case.design.draft().units;
    Ok(match cure {
        Cure::Sand => sand(case, estimate.cause, amount),
        Cure::Plants => {
            let addition = Addition::step(case, amount as u32);
            let words = addition.says();
            if words.is_empty() {
                RemedyStep::plain("let the plants that are there grow")
            } else {
                RemedyStep::new(format!("plant {words}"), addition.fresh().g(), "g")
            }
        }
        Cure::SandAndPlants => {
            let sand = sand_over(case.design, cure::sand_beside_plants(case, amount));
            let addition = Addition::step(case, amount as u32);
            RemedyStep {
                says: format!("plant {}, and {}", addition.says(), sand.says),
                quantity: sand.quantity,
                unit: sand.unit,
                tank: None,
                given: None,
            }
        }
        Cure::Thin => RemedyStep::new(
            format!("thin the floaters to {amount:.0} % of the surface now, and again each week"),
            amount,
            "%",
        ),
        Cure::LessLight if amount > 0.0 => RemedyStep::new(
            format!(
                "cut the light to {} hours a day, take out by hand what algae can be wound up or wiped off, and add fast growers",
                significant(amount, 2)
            ),
            amount,
            "h",
        ),
        Cure::LessLight => RemedyStep::plain(
            "the light is short already: dim or raise the lamp, and add fast growers",
        ),
        Cure::LessFood => food(estimate, amount),
        Cure::Blend => RemedyStep::new(
            format!(
                "test the tap water itself; for changes and topping up blend it with {amount:.0} % of rain or demineralised water"
            ),
            amount,
            "%",
        ),
        Cure::Cool => RemedyStep::new(
            format!(
                "cool the water to {} by a degree or two a day: lid off, a fan across the surface, air on day and night",
                units.temperature(Temperature::from_celsius(amount))
            ),
            amount,
            "C",
        ),
        Cure::CleanOut if estimate.cause == Cause::LeavesMelting => RemedyStep::plain(
            "pinch off and take out every leaf that turns glassy, and leave roots and stems: new leaves follow",
        ),
        Cure::CleanOut => RemedyStep::plain(
            "find and take out what is dead; siphon off loose muck from the top of the sand without digging",
        ),
        Cure::Rehome => RemedyStep::plain(
            "move the animals that dig to a tank without soil; no cap stands up to them",
        ),
        Cure::Fast | Cure::Wait => hand::step(case, estimate, held)?,
    })
}

/// Sand in millimetres, litres, kilograms and bags: on the thin place, or all over.
fn sand(case: &CaseHistory<'_>, cause: Cause, more_mm: f64) -> RemedyStep {
    let more = Length::from_mm(more_mm);
    if cause == Cause::CapCoarse {
        return finer_sand(case, more);
    }
    let wanted = case.standing.cap_wanted;
    let is_thin_somewhere = case.design.bed().cap.thinnest.depth < wanted;
    let remedy = if is_thin_somewhere {
        sand_to(case.design, wanted)
    } else {
        sand_over(case.design, more)
    };
    let how = if cause == Cause::CapBreached {
        "find where soil shows and lower sand onto it in a cup, without digging: "
    } else {
        ""
    };
    RemedyStep {
        says: format!("{how}{}", remedy.says),
        quantity: remedy.quantity,
        unit: remedy.unit,
        tank: None,
        given: None,
    }
}

/// The sand that fills the gaps of a coarse cap.
const FINER_SAND: &str = "filter_sand";

/// Finer sand for the gaps of a coarse cap, and some over it.
///
/// ```text
/// volume = area (phi cap + over)        phi: pore share of the coarse cap
/// ```
fn finer_sand(case: &CaseHistory<'_>, over: Length) -> RemedyStep {
    let draft = case.design.draft();
    let Ok(sand) = catalogue::find::<catalogue::Cap>(FINER_SAND) else {
        return RemedyStep::plain("fill the gaps of the cap with filter sand");
    };
    let bed = case.design.bed();
    let gaps = bed.cap.mean * draft.cap.porosity().typical;
    let volume = bed.area() * (gaps + over);
    let mass = Density::from_kg_m3(sand.dry_bulk_kg_m3.typical) * volume;
    RemedyStep::new(
        format!(
            "trickle {} into the gaps of the cap and {} over it, a quarter of the bed a week: {}, {} in all",
            sand.label,
            draft.units.depth(over),
            draft.units.bulk_volume(volume),
            draft.units.mass(mass)
        ),
        volume.litres(),
        "L",
    )
}

fn food(estimate: &TankEstimate, left_pct: f64) -> RemedyStep {
    let left_mg = cure::fed_now(estimate).mass_per_day.mg() * left_pct / 100.0;
    if left_mg < 1.0 {
        return RemedyStep::new(
            "give no food for a week, then no more than is eaten in a minute; siphon off what lies about",
            0.0,
            "mg/d",
        );
    }
    RemedyStep::new(
        format!(
            "cut the food by {:.0} %, to about {} mg a day by the estimate, all of it eaten within a minute; siphon off what lies about",
            100.0 - left_pct,
            significant(left_mg, 2)
        ),
        left_mg,
        "mg/d",
    )
}

/// What to do now, the main step first, and what follows: regular changes, and waiting where
/// water alone does not do it.
fn steps(
    case: &CaseHistory<'_>,
    main: &str,
    held: &DilutedTank,
    with: ChangeWater,
    patience: Patience,
) -> (Vec<String>, Vec<String>) {
    let immediate = held.immediate.map(|changes| changes.says_with(case, with));
    let now = [Some(main.to_owned()), immediate];
    let pace = held.pace.map(|pace| format!("change {}", pace.says()));
    let wait = (!held.holds).then(|| patience.says());
    (
        now.into_iter().flatten().collect(),
        [pace, wait].into_iter().flatten().collect(),
    )
}

/// Steps in one sentence.
fn in_one(now: &[String], then: &[String]) -> String {
    match then {
        [] => now.join("; "),
        then => format!("{}; then {}", now.join("; "), then.join("; ")),
    }
}

/// What to do where animals suffer and no cause of the list explains it.
pub(super) fn without_cause(case: &CaseHistory<'_>) -> String {
    outside::step(case).says
}

/// The day from now after which ammonia and nitrite stay calm, d.
pub(super) fn calm_after(
    estimate: &TankEstimate,
    tank: &Scenario,
) -> Result<Option<f64>, IntegrationError> {
    let ahead = estimate.ahead(tank)?;
    let last_up = ahead.iter().rposition(|sample| {
        sample.state.ammonia >= CALM_MG_N_L || sample.state.nitrite >= CALM_MG_N_L
    });
    Ok(match last_up {
        None => Some(0.0),
        Some(last) => ahead
            .get(last + 1)
            .map(|sample| sample.day - estimate.now_d),
    })
}
