//! The rates of change of oxygen and carbon in the water.

use super::carbon::Carbonate;
use super::coefficients::Coefficients;
use super::inputs::NightInputs;
use crate::numerics::real::Real;
use crate::numerics::rodas::{System, difference_jacobian};
use crate::units::constants::molar_mass;
use crate::water::oxygen;
use crate::water::stoichiometry::NitrogenForm;

/// Oxygen at half respiration, mg/L: plants, whose uptake falls as a hyperbola
/// (`sorrell_1989`; the value a judgement), animals, which hold theirs until little is
/// left, and the bed (both judgement).
const PLANT_HALF_MG_L: f64 = 2.0;
const ANIMAL_HALF_MG_L: f64 = 0.5;
const BED_HALF_MG_L: f64 = 2.0;
/// Oxygen at half growth of nitrifiers, mg/L (`hiatt_grady_2008`).
const AMMONIA_OXIDISER_HALF_MG_L: f64 = 0.6;
const NITRITE_OXIDISER_HALF_MG_L: f64 = 1.2;
/// Oxygen over saturation from which it also leaves in bubbles of its own, and how
/// fast it does at twice that, 1/h (judgement).
const PEARLING_OVER: f64 = 2.0;
const PEARLING_PER_H: f64 = 0.5;
/// Carbon dioxide per oxygen, by mass, mole for mole as in the respiration of sugar.
const CARBON_PER_OXYGEN: f64 = molar_mass::CO2 / molar_mass::O2;

/// States that the rates depend on: oxygen, mg/L, and pH.
pub(super) const STATES: usize = 2;
/// The same with the oxygen moved by each process since the start, mg/L.
pub(super) const LEDGER: usize = STATES + 6;

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
pub(super) struct Model<R> {
    pub(super) coefficients: Coefficients<R>,
    pub(super) carbonate: Carbonate,
    pub(super) saturation_mg_l: f64,
    oxidiser_oxygen_mg_l: f64,
    oxygen_per_carbon: f64,
}

/// Oxygen that each process gives to the water, mg/(L h); below zero what it takes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fluxes<R> {
    pub(super) photosynthesis: R,
    pub(super) plants: R,
    pub(super) animals: R,
    pub(super) bed: R,
    pub(super) nitrification: R,
    pub(super) exchange: R,
    /// Change of pH, 1/h.
    ph: R,
}

impl<R: Real> Model<R> {
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
            oxidiser_oxygen_mg_l: state.oxygen.mg_l(),
            oxygen_per_carbon: form.photosynthetic_quotient(),
        }
    }

    /// What moves oxygen and carbon.
    ///
    /// ```text
    /// photosynthesis = (Pf + Ps A / (K + A)) lit,    A = CO2 + w HCO3
    /// uptake         = r C / (K + C) (K + C*) / C*
    /// exchange       = ks (C* - C) + kb (beta C* - C)
    /// ```
    ///
    /// r the uptake at saturation C*, for nitrifiers at the oxygen of their rates. The
    /// bed gives off carbon dioxide whether or not oxygen reaches it.
    pub(super) fn fluxes(&self, phase: Phase, oxygen: R, ph: R) -> Fluxes<R> {
        let numbers = &self.coefficients;
        let carbon = self.carbonate.at(ph);
        let zero = R::splat(0.0);
        let (submerged, floating) = if phase.lit {
            let usable = carbon.dioxide + carbon.bicarbonate * numbers.bicarbonate_weight;
            let fed = usable / (usable + numbers.carbon_half);
            (numbers.submerged_oxygen * fed, numbers.floating_oxygen)
        } else {
            (zero, zero)
        };
        let at_saturation = |half: f64| breathed(oxygen, half, self.saturation_mg_l);
        let at_reference = |half: f64| breathed(oxygen, half, self.oxidiser_oxygen_mg_l);
        let plants = numbers.plants * at_saturation(PLANT_HALF_MG_L);
        let animals = numbers.animals * at_saturation(ANIMAL_HALF_MG_L);
        let nitrification = numbers.ammonia_oxidation * at_reference(AMMONIA_OXIDISER_HALF_MG_L)
            + numbers.nitrite_oxidation * at_reference(NITRITE_OXIDISER_HALF_MG_L);
        let respired = plants + animals + numbers.bed - submerged / self.oxygen_per_carbon;
        let carbon_clearance = if phase.running {
            numbers.running_carbon
        } else {
            numbers.still_carbon
        };
        let gained_carbon = respired * CARBON_PER_OXYGEN
            + carbon_clearance * (numbers.room_carbon - carbon.dioxide);
        Fluxes {
            photosynthesis: submerged + floating,
            plants: -plants,
            animals: -animals,
            bed: -(numbers.bed * at_saturation(BED_HALF_MG_L)),
            nitrification: -nitrification,
            exchange: self.exchange(phase, oxygen),
            ph: gained_carbon / carbon.slope,
        }
    }

    fn exchange(&self, phase: Phase, oxygen: R) -> R {
        let numbers = &self.coefficients;
        let deficit = -(oxygen - self.saturation_mg_l);
        let excess = (oxygen - PEARLING_OVER * self.saturation_mg_l).positive_part();
        let pearling = excess * excess * (PEARLING_PER_H / self.saturation_mg_l);
        let through_surface = if phase.running {
            numbers.running_oxygen * deficit
                + numbers.bubble_oxygen * (numbers.bubble_saturation - oxygen)
        } else {
            numbers.still_oxygen * deficit
        };
        through_surface - pearling
    }
}

impl<R: Real> Fluxes<R> {
    /// Rates of oxygen and pH.
    fn change(&self) -> [R; STATES] {
        let oxygen = self.photosynthesis
            + self.plants
            + self.animals
            + self.bed
            + self.nitrification
            + self.exchange;
        [oxygen, self.ph]
    }
}

/// Uptake at an oxygen level over uptake at another, `C (K + C0) / ((K + C) C0)`.
fn breathed<R: Real>(oxygen: R, half_mg_l: f64, reference_mg_l: f64) -> R {
    oxygen / (oxygen + half_mg_l) * ((half_mg_l + reference_mg_l) / reference_mg_l)
}

/// Oxygen and pH in one phase of the day; time in hours.
pub(super) struct Course<'a, R> {
    pub(super) model: &'a Model<R>,
    pub(super) phase: Phase,
}

impl<R: Real> System<R, STATES> for Course<'_, R> {
    fn rates(&self, _hour: f64, &[oxygen, ph]: &[R; STATES]) -> [R; STATES] {
        self.model.fluxes(self.phase, oxygen, ph).change()
    }

    fn time_slope(&self, _: f64, _: &[R; STATES], _: &[R; STATES]) -> [R; STATES] {
        [R::splat(0.0); STATES]
    }
}

/// The same with what each process moved.
pub(super) struct Ledger<'a, R> {
    pub(super) model: &'a Model<R>,
    pub(super) phase: Phase,
}

impl<R: Real> System<R, LEDGER> for Ledger<'_, R> {
    fn rates(&self, _hour: f64, state: &[R; LEDGER]) -> [R; LEDGER] {
        let fluxes = self.model.fluxes(self.phase, state[0], state[1]);
        let [oxygen, ph] = fluxes.change();
        [
            oxygen,
            ph,
            fluxes.photosynthesis,
            fluxes.plants,
            fluxes.animals,
            fluxes.bed,
            fluxes.nitrification,
            fluxes.exchange,
        ]
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
        // oxygen is the sum of the parts, in the slopes too: so the balance closes
        for slopes in &mut jacobian[..STATES] {
            let sum = |sum, part: &R| sum + *part;
            slopes[0] = slopes[STATES..].iter().fold(R::splat(0.0), sum);
        }
        jacobian
    }

    fn time_slope(&self, _: f64, _: &[R; LEDGER], _: &[R; LEDGER]) -> [R; LEDGER] {
        [R::splat(0.0); LEDGER]
    }
}
