//! The rates of change of oxygen and carbon in the water.

use super::canopy::StandResponse;
use super::carbon::{Carbon, Carbonate};
use super::coefficients::Coefficients;
use super::film::Hydration;
use super::inputs::{NightInputs, Users};
use crate::numerics::real::Real;
use crate::numerics::rodas::{System, difference_jacobian};
use crate::units::Share;
use crate::units::constants::molar_mass;
use crate::water::oxygen;
use crate::water::stoichiometry::NitrogenForm;

/// Oxygen at half respiration, mg/L: plants, whose uptake falls as a hyperbola
/// (`sorrell_1989`; the value a judgement), animals, which hold theirs until little is
/// left, bacteria on dead matter, and the bed (all judgement).
const PLANT_HALF_MG_L: f64 = 2.0;
const ANIMAL_HALF_MG_L: f64 = 0.5;
const DEAD_HALF_MG_L: f64 = 1.0;
const BED_HALF_MG_L: f64 = 2.0;
/// Oxygen at half growth of nitrifiers, mg/L (`hiatt_grady_2008`).
const AMMONIA_OXIDISER_HALF_MG_L: f64 = 0.6;
const NITRITE_OXIDISER_HALF_MG_L: f64 = 1.2;
/// Carbon dioxide per oxygen, by mass, mole for mole as in the respiration of sugar.
const CARBON_PER_OXYGEN: f64 = molar_mass::CO2 / molar_mass::O2;

/// States that the rates depend on: oxygen, mg/L, all inorganic carbon, mg CO2/L, and what
/// submerged plants have fixed and may still breathe, as mg/L of oxygen.
pub(super) const STATES: usize = 3;
/// Processes that move oxygen.
pub(super) const OXYGEN_PARTS: usize = 7;
/// Ways by which carbon comes and goes.
pub(super) const CARBON_PARTS: usize = 3;
/// The states with what each process has moved since the start, mg/L of oxygen, then of
/// carbon dioxide.
pub(super) const LEDGER: usize = STATES + OXYGEN_PARTS + CARBON_PARTS;

/// Whether the lamp is on and whether the device runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Phase {
    pub(super) lit: bool,
    pub(super) running: bool,
}

impl Phase {
    /// A power cut.
    pub(super) const CUT: Self = Self {
        lit: false,
        running: false,
    };
}

/// A tank and one set of numbers, or eight.
#[derive(Debug, Clone, Copy)]
pub(super) struct NightModel<R> {
    pub(super) coefficients: Coefficients<R>,
    pub(super) carbonate: Carbonate,
    pub(super) saturation_mg_l: f64,
    hydration: Hydration,
    users: Users,
    oxidiser_oxygen_mg_l: f64,
    /// Oxygen per carbon in what becomes tissue.
    tissue_quotient: f64,
}

/// Oxygen that each process gives to the water, mg/(L h), below zero what it takes, and
/// the carbon dioxide that goes with it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fluxes<R> {
    /// Photosynthesis, plants breathing, animals, dead matter and leavings, bed,
    /// nitrification, exchange.
    oxygen: [R; OXYGEN_PARTS],
    /// Breathed out, fixed, exchanged; mg CO2/(L h).
    carbon: [R; CARBON_PARTS],
    /// Change of the store, mg O2/(L h).
    store: R,
}

/// Oxygen of what grows under water, mg/(L h).
struct Fixed<R> {
    plants: R,
    algae: R,
}

impl<R: Real> NightModel<R> {
    pub(super) fn new(inputs: &NightInputs, coefficients: Coefficients<R>) -> Self {
        let state = &inputs.state;
        let form = if state.ammonia > state.nitrite_n + state.nitrate_n {
            NitrogenForm::Ammonium
        } else {
            NitrogenForm::Nitrate
        };
        Self {
            coefficients,
            carbonate: Carbonate::new(inputs.alkalinity, inputs.temperature),
            saturation_mg_l: oxygen::saturation(inputs.temperature, inputs.pressure).mg_l(),
            hydration: Hydration::at(inputs.temperature),
            users: inputs.bicarbonate_users,
            oxidiser_oxygen_mg_l: state.oxygen.mg_l(),
            tissue_quotient: form.photosynthetic_quotient(),
        }
    }

    /// What moves oxygen and carbon.
    ///
    /// ```text
    /// uptake   = r C / (K + C) (K + C*) / C*
    /// plants   = r s / (s + s0)                 s the store, s0 half of it used up
    /// quotient = 1 / ((1 - y) + y / PQ)         oxygen per carbon fixed
    /// exchange = ks (C* - C) + kb (beta C* - C)
    /// ```
    ///
    /// r the uptake at saturation C*, for nitrifiers at the oxygen of their rates; y the
    /// share of what is fixed that becomes tissue, PQ its quotient: whatever is breathed
    /// again gave as much oxygen as it takes. The bed gives off carbon dioxide whether or
    /// not oxygen reaches it.
    pub(super) fn fluxes(&self, phase: Phase, state: &[R; STATES]) -> Fluxes<R> {
        let numbers = &self.coefficients;
        let &[oxygen, all_carbon, store] = state;
        let carbon = self.carbonate.split(all_carbon);
        let fixed = self.fixed(phase, oxygen, &carbon);
        let submerged = fixed.plants + fixed.algae;
        let floating = if phase.lit {
            numbers.floating_oxygen
        } else {
            R::splat(0.0)
        };
        let at_saturation = |half: f64| breathed(oxygen, half, self.saturation_mg_l);
        let at_reference = |half: f64| breathed(oxygen, half, self.oxidiser_oxygen_mg_l);
        let drawn = numbers.submerged_breath
            * (store / (store + numbers.store_half))
            * at_saturation(PLANT_HALF_MG_L);
        let plants = drawn + numbers.other_breath * at_saturation(PLANT_HALF_MG_L);
        let animals = numbers.animals * at_saturation(ANIMAL_HALF_MG_L);
        let dead = numbers.dead * at_saturation(DEAD_HALF_MG_L);
        let nitrification = numbers.ammonia_oxidation * at_reference(AMMONIA_OXIDISER_HALF_MG_L)
            + numbers.nitrite_oxidation * at_reference(NITRITE_OXIDISER_HALF_MG_L);
        let carbon_parts = [
            (plants + animals + dead + numbers.bed * numbers.bed_quotient) * CARBON_PER_OXYGEN,
            -(self.carbon_per_oxygen_fixed() * submerged) * CARBON_PER_OXYGEN,
            self.carbon_exchange(phase, &carbon),
        ];
        Fluxes {
            oxygen: [
                submerged + floating,
                -plants,
                -animals,
                -dead,
                -(numbers.bed * at_saturation(BED_HALF_MG_L)),
                -nitrification,
                self.exchange(phase, oxygen),
            ],
            carbon: carbon_parts,
            store: numbers.tissue_share.complement() * fixed.plants - drawn,
        }
    }

    fn fixed(&self, phase: Phase, oxygen: R, carbon: &Carbon<R>) -> Fixed<R> {
        let zero = R::splat(0.0);
        if !phase.lit {
            return Fixed {
                plants: zero,
                algae: zero,
            };
        }
        let numbers = &self.coefficients;
        let canopy = numbers.canopy();
        let fed = canopy.fed(carbon, oxygen / self.saturation_mg_l);
        let plants =
            |stand: &StandResponse<R>, users: Share| canopy.mixed(stand, &fed, users.fraction());
        Fixed {
            plants: plants(&numbers.fast(), self.users.fast) * numbers.fast_g_l
                + plants(&numbers.slow(), self.users.slow) * numbers.slow_g_l,
            algae: canopy.oxygen(&numbers.algae(), fed.of_algae) * numbers.algae_g_l,
        }
    }

    /// Carbon fixed per oxygen given off, mol/mol.
    fn carbon_per_oxygen_fixed(&self) -> R {
        let tissue = self.coefficients.tissue_share;
        tissue.complement() + tissue / self.tissue_quotient
    }

    fn exchange(&self, phase: Phase, oxygen: R) -> R {
        let numbers = &self.coefficients;
        let deficit = -(oxygen - self.saturation_mg_l);
        let from = numbers.pearling_from * self.saturation_mg_l;
        let pearling = (oxygen - from).positive_part() * numbers.pearling;
        let through_surface = if phase.running {
            numbers.running_oxygen * deficit
                + numbers.bubble_oxygen * (numbers.bubble_saturation - oxygen)
        } else {
            numbers.still_oxygen * deficit
        };
        through_surface - pearling
    }

    /// Carbon dioxide from the air: at the surface faster than by diffusion alone.
    fn carbon_exchange(&self, phase: Phase, carbon: &Carbon<R>) -> R {
        let numbers = &self.coefficients;
        let enhanced = |film_m: R| {
            self.hydration
                .enhancement(&self.carbonate, carbon.hydrogen, film_m)
        };
        let clearance = if phase.running {
            numbers.running_carbon * enhanced(numbers.running_film_m) + numbers.bubble_carbon
        } else {
            numbers.still_carbon * enhanced(numbers.still_film_m)
        };
        clearance * (numbers.room_carbon - carbon.dioxide)
    }
}

impl<R: Real> Fluxes<R> {
    /// Rates of the states.
    fn change(&self) -> [R; STATES] {
        [sum(&self.oxygen), sum(&self.carbon), self.store]
    }
}

fn sum<R: Real>(parts: &[R]) -> R {
    parts.iter().fold(R::splat(0.0), |sum, part| sum + *part)
}

/// Uptake at an oxygen level over uptake at another, `C (K + C0) / ((K + C) C0)`.
fn breathed<R: Real>(oxygen: R, half_mg_l: f64, reference_mg_l: f64) -> R {
    oxygen / (oxygen + half_mg_l) * ((half_mg_l + reference_mg_l) / reference_mg_l)
}

/// Oxygen, carbon and store in one phase of the day; time in hours.
pub(super) struct DayPhase<'a, R> {
    pub(super) model: &'a NightModel<R>,
    pub(super) phase: Phase,
}

impl<R: Real> System<R, STATES> for DayPhase<'_, R> {
    fn rates(&self, _hour: f64, state: &[R; STATES]) -> [R; STATES] {
        self.model.fluxes(self.phase, state).change()
    }

    fn time_slope(&self, _: f64, _: &[R; STATES], _: &[R; STATES]) -> [R; STATES] {
        [R::splat(0.0); STATES]
    }
}

/// The same with what each process moved.
pub(super) struct Ledger<'a, R> {
    pub(super) model: &'a NightModel<R>,
    pub(super) phase: Phase,
}

impl<R: Real> System<R, LEDGER> for Ledger<'_, R> {
    fn rates(&self, _hour: f64, state: &[R; LEDGER]) -> [R; LEDGER] {
        let &[oxygen, carbon, store, ..] = state;
        let fluxes = self.model.fluxes(self.phase, &[oxygen, carbon, store]);
        let mut rates = [R::splat(0.0); LEDGER];
        let (states, moved) = rates.split_at_mut(STATES);
        states.copy_from_slice(&fluxes.change());
        let (by_oxygen, by_carbon) = moved.split_at_mut(OXYGEN_PARTS);
        by_oxygen.copy_from_slice(&fluxes.oxygen);
        by_carbon.copy_from_slice(&fluxes.carbon);
        rates
    }

    fn coupled(&self) -> usize {
        STATES
    }

    fn jacobian(
        &self,
        hour: f64,
        state: &[R; LEDGER],
        rates: &[R; LEDGER],
    ) -> [[R; LEDGER]; LEDGER] {
        let mut jacobian =
            difference_jacobian(state, rates, STATES, |shifted| self.rates(hour, shifted));
        // oxygen and carbon are the sums of their parts, in the slopes too: so the balances
        // close
        for slopes in &mut jacobian[..STATES] {
            let (by_oxygen, by_carbon) = slopes[STATES..].split_at(OXYGEN_PARTS);
            let sums = [sum(by_oxygen), sum(by_carbon)];
            slopes[..sums.len()].copy_from_slice(&sums);
        }
        jacobian
    }

    fn time_slope(&self, _: f64, _: &[R; LEDGER], _: &[R; LEDGER]) -> [R; LEDGER] {
        [R::splat(0.0); LEDGER]
    }
}
