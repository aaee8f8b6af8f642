//! A bed laid anew, for a tank without animals whose soil is too rich for any planting.

use super::super::case::CaseHistory;
use super::super::estimate::TankEstimate;
use super::super::scenario::Scenario;
use super::dilution::{ChangeWater, DilutedTank, hold};
use super::{CauseRemedy, Treatment, in_one};
use crate::finding::Action;
use crate::numerics::rodas::IntegrationError;
use crate::startup::Inputs;

/// Rounds of soaking and draining at most.
const MOST_ROUNDS: u32 = 8;

/// The work of laying a bed anew.
const REBUILDING: [Action; 4] = [Action::OpenBed, Action::LayBed, Action::Fill, Action::Plant];

/// The same tank started again with its soil soaked and drained as often as it takes.
pub(super) fn with_soaked_soil(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
) -> Result<Treatment, IntegrationError> {
    let mut best = attempt(case, estimate, 1)?;
    for rounds in 2..=MOST_ROUNDS {
        if best.held.holds && best.held.pace.is_none() {
            break;
        }
        let next = attempt(case, estimate, rounds)?;
        if next.held.is_less_than(&best.held) {
            best = next;
        }
    }
    Ok(best.treatment(case))
}

/// A bed laid anew after some rounds of soaking.
struct Attempt {
    rounds: u32,
    anew: TankEstimate,
    held: DilutedTank,
}

fn attempt(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    rounds: u32,
) -> Result<Attempt, IntegrationError> {
    let anew = TankEstimate {
        tank: laid_anew(case, estimate, rounds),
        now_d: 0.0,
        cause: estimate.cause,
    };
    let held = hold(case, &anew, &anew.tank, ChangeWater::Tap)?;
    Ok(Attempt { rounds, anew, held })
}

impl Attempt {
    fn treatment(self, case: &CaseHistory<'_>) -> Treatment {
        let pace = self.held.pace;
        let then = Vec::from_iter(pace.map(|pace| format!("change {}", pace.says())));
        let units = case.design.draft().units;
        let soil = units.bulk_volume(case.design.bed().soil.volume);
        let times = match self.rounds {
            1 => "once".to_owned(),
            2 => "twice".to_owned(),
            rounds => format!("{rounds} times"),
        };
        let main = format!(
            "start again while no animals are in: keep the plants in a bucket, take out sand and soil ({soil}), soak the soil in twice its volume of water and drain it {times}, a day each, and lay both anew"
        );
        Treatment {
            remedy: CauseRemedy {
                says: in_one(std::slice::from_ref(&main), &then),
                now: vec![main.clone()],
                then,
                main,
                quantity: Some(f64::from(self.rounds)),
                unit: "rounds",
                meets_limits: self.held.holds,
                actions: REBUILDING.into_iter().chain(self.held.orders()).collect(),
                given: None,
            },
            tank: self.held.tank,
            estimate: self.anew,
        }
    }
}

/// The estimated soil after some rounds, under a tank just filled.
fn laid_anew(case: &CaseHistory<'_>, estimate: &TankEstimate, rounds: u32) -> Scenario {
    let mut numbers = estimate.tank.numbers;
    let soil = &mut numbers.soil;
    let left = soil.left_after_soaking(rounds);
    soil.mineral_nitrogen *= left.ammonium;
    soil.pore_phosphate *= left.phosphate;
    Scenario {
        inputs: Inputs {
            events: Vec::new(),
            ..case.inputs.clone()
        },
        numbers,
    }
}
