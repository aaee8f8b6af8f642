//! The night before the last reading, as the night model has it.

use super::case::CaseHistory;
use super::cause::Cause;
use super::scenario::{middle, scenario};
use crate::night::{Ensemble, NightInputs, Rates, outlook};
use crate::numerics::rodas::IntegrationError;
use crate::source::Band;
use crate::startup::{day_state, ensemble, surface_light};

/// Members that a night is followed with.
const MEMBERS: u32 = 16;
/// Members of the night that air is sized for, and their seed.
pub(super) const AIR_SOUGHT: Ensemble = Ensemble {
    members: 32,
    seed: 1,
};
/// Typical dawn oxygen that counts as low, mg/L.
const LOW_MG_L: f64 = 4.0;

/// Dawn oxygen of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dawn {
    /// Lowest oxygen of the day, mg/L.
    pub oxygen_mg_l: Band,
}

impl Dawn {
    /// The night of a case as the typical numbers have it, nothing amiss.
    ///
    /// # Errors
    /// When the numbers of the tank leave the finite ones.
    pub fn of(case: &CaseHistory<'_>, seed: u64) -> Result<Self, IntegrationError> {
        let inputs = night_inputs(case)?;
        let ensemble = Ensemble {
            members: MEMBERS,
            seed,
        };
        let night = outlook(&inputs, &Rates::of(&inputs), ensemble)?;
        Ok(Self {
            oxygen_mg_l: night.low_mg_l,
        })
    }

    /// Whether animals would gasp in the typical night.
    pub fn is_low(&self) -> bool {
        self.oxygen_mg_l.typical < LOW_MG_L
    }
}

/// The tank on its last day for the night model.
pub(super) fn night_inputs(case: &CaseHistory<'_>) -> Result<NightInputs, IntegrationError> {
    let tank = scenario(case, Cause::AsExpected, &middle());
    let days = ensemble::days_of(&tank.inputs, &tank.numbers, case.now_d().round() as u32)?;
    let last = days
        .last()
        .ok_or(IntegrationError::NotFinite { time: 0.0 })?;
    let mut state = day_state(&tank.inputs, &tank.numbers, last);
    state.day = case.age_d;
    let mut inputs = NightInputs::of(case.design, &state, surface_light(case.design));
    inputs.temperature = case.temperature();
    Ok(inputs)
}
