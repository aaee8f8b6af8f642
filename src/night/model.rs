//! The rates of change of oxygen and carbon in the water.

use super::canopy::StandResponse;
use super::carbon::{Carbon, Carbonate};
use super::coefficients::{CARBON_PER_OXYGEN, Coefficients};
use super::film::Hydration;
use super::half_saturation::{
    AMMONIA_OXIDISER_HALF_MG_L, ANIMAL_HALF_MG_L, BED_HALF_MG_L, DEAD_HALF_MG_L,
    NITRITE_OXIDISER_HALF_MG_L, PLANT_HALF_MG_L,
};
use super::inputs::{NightInputs, Users};
use crate::numerics::real::Real;
use crate::units::Share;
use crate::water::oxygen;

/// States that the rates depend on: oxygen, mg/L, all inorganic carbon, mg CO2/L, and what
/// submerged plants have fixed and may still breathe, as mg/L of oxygen.
pub(super) const STATES: usize = 3;
/// Oxygen, all inorganic carbon and store.
pub(super) type NightState<R> = [R; STATES];
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
    pub(super) carbonate: Carbonate<R>,
    pub(super) saturation_mg_l: f64,
    pub(super) hydration: Hydration,
    users: Users,
}

/// Oxygen that each process gives to the water, mg/(L h), below zero what it takes, and
/// the carbon dioxide that goes with it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Fluxes<R> {
    /// Photosynthesis, plants breathing, animals, dead matter and leavings, bed,
    /// nitrification, exchange.
    pub(super) oxygen: [R; OXYGEN_PARTS],
    /// Breathed out, fixed, exchanged; mg CO2/(L h).
    pub(super) carbon: [R; CARBON_PARTS],
    /// Change of the store, mg O2/(L h).
    pub(super) store: R,
}

/// Oxygen of what grows under water, mg/(L h).
struct Fixed<R> {
    plants: R,
    algae: R,
}

/// A part of a stand that takes carbon alike.
pub(super) struct Feeding<R> {
    pub(super) stand: StandResponse<R>,
    /// Bicarbonate that counts as carbon dioxide for it.
    pub(super) weight: R,
    /// Share of the stand.
    pub(super) share: f64,
}

impl<R: Real> NightModel<R> {
    pub(super) fn new(inputs: &NightInputs, coefficients: Coefficients<R>) -> Self {
        Self {
            carbonate: Carbonate::new(coefficients.alkalinity_mol_l, inputs.temperature),
            coefficients,
            saturation_mg_l: oxygen::saturation(inputs.temperature, inputs.pressure).mg_l(),
            hydration: Hydration::at(inputs.temperature),
            users: inputs.bicarbonate_users,
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
    pub(super) fn fluxes(
        &self,
        phase: Phase,
        &[oxygen, _, store]: &NightState<R>,
        carbon: &Carbon<R>,
    ) -> Fluxes<R> {
        let numbers = &self.coefficients;
        let fixed = self.fixed(phase, oxygen, carbon);
        let submerged = fixed.plants + fixed.algae;
        let of_plants = reached(oxygen, PLANT_HALF_MG_L);
        let drawn = numbers.submerged_breath * of_plants * store / (store + numbers.store_half);
        let plants = drawn + numbers.other_breath * of_plants;
        let animals = numbers.animals * reached(oxygen, ANIMAL_HALF_MG_L);
        let dead = numbers.dead * reached(oxygen, DEAD_HALF_MG_L);
        let nitrification = if self.is_nitrifying() {
            numbers.ammonia_oxidation * reached(oxygen, AMMONIA_OXIDISER_HALF_MG_L)
                + numbers.nitrite_oxidation * reached(oxygen, NITRITE_OXIDISER_HALF_MG_L)
        } else {
            R::splat(0.0)
        };
        Fluxes {
            oxygen: [
                submerged + self.floating(phase),
                -plants,
                -animals,
                -dead,
                -(numbers.bed * reached(oxygen, BED_HALF_MG_L)),
                -nitrification,
                self.exchange(phase, oxygen),
            ],
            carbon: [
                (plants + animals + dead) * CARBON_PER_OXYGEN + numbers.bed_carbon,
                -(numbers.fixed_carbon * submerged),
                self.carbon_exchange(phase, carbon),
            ],
            store: numbers.tissue_share.complement() * fixed.plants - drawn,
        }
    }

    fn fixed(&self, phase: Phase, oxygen: R, carbon: &Carbon<R>) -> Fixed<R> {
        let canopy = self.coefficients.canopy();
        let of = |feeding: &Feeding<R>| {
            let fed = canopy.fed(carbon, oxygen, feeding.weight);
            canopy.oxygen(&feeding.stand, fed) * feeding.share
        };
        let sum = |parts: &[Feeding<R>]| {
            let growing = parts.iter().filter(|part| phase.lit && part.is_there());
            growing.map(of).fold(R::splat(0.0), |sum, part| sum + part)
        };
        Fixed {
            plants: sum(&self.plants()),
            algae: sum(&[self.algae()]),
        }
    }

    /// Plants under water by the carbon that they take.
    pub(super) fn plants(&self) -> [Feeding<R>; 4] {
        let numbers = &self.coefficients;
        let (fast, slow) = (numbers.fast(), numbers.slow());
        let part = |stand, weight, share: Share| Feeding {
            stand,
            weight,
            share: share.fraction(),
        };
        let (lit, none) = (numbers.bicarbonate_lit, R::splat(0.0));
        let others = |share: Share| Share::from_fraction(1.0 - share.fraction());
        [
            part(fast, lit, self.users.fast),
            part(fast, none, others(self.users.fast)),
            part(slow, lit, self.users.slow),
            part(slow, none, others(self.users.slow)),
        ]
    }

    pub(super) fn algae(&self) -> Feeding<R> {
        Feeding {
            stand: self.coefficients.algae(),
            weight: self.coefficients.bicarbonate_weight,
            share: 1.0,
        }
    }

    pub(super) fn is_nitrifying(&self) -> bool {
        let numbers = &self.coefficients;
        !(numbers.ammonia_oxidation.is_zero() && numbers.nitrite_oxidation.is_zero())
    }

    fn floating(&self, phase: Phase) -> R {
        if phase.lit {
            self.coefficients.floating_oxygen
        } else {
            R::splat(0.0)
        }
    }

    fn exchange(&self, phase: Phase, oxygen: R) -> R {
        let numbers = &self.coefficients;
        let deficit = -(oxygen - self.saturation_mg_l);
        let pearling = (oxygen - numbers.pearling_from).positive_part() * numbers.pearling;
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
        let enhanced = |film_m: R| {
            self.hydration
                .enhancement(&self.carbonate, carbon.hydrogen, film_m)
        };
        let CarbonPassage {
            surface,
            film_m,
            bubbles,
        } = self.carbon_passage(phase);
        let clearance = surface * enhanced(film_m) + bubbles;
        clearance * (self.coefficients.room_carbon - carbon.dioxide)
    }

    /// The ways of carbon dioxide between water and air.
    pub(super) fn carbon_passage(&self, phase: Phase) -> CarbonPassage<R> {
        let numbers = &self.coefficients;
        if phase.running {
            CarbonPassage {
                surface: numbers.running_carbon,
                film_m: numbers.running_film_m,
                bubbles: numbers.bubble_carbon,
            }
        } else {
            CarbonPassage {
                surface: numbers.still_carbon,
                film_m: numbers.still_film_m,
                bubbles: R::splat(0.0),
            }
        }
    }
}

/// Clearances of carbon dioxide, 1/h, and the film at the surface, m.
pub(super) struct CarbonPassage<R> {
    pub(super) surface: R,
    pub(super) film_m: R,
    pub(super) bubbles: R,
}

impl<R: Real> Feeding<R> {
    pub(super) fn is_there(&self) -> bool {
        self.share > 0.0 && !self.stand.most.is_zero()
    }
}

impl<R: Real> Fluxes<R> {
    /// Rates of the states.
    pub(super) fn change(&self) -> [R; STATES] {
        [sum(&self.oxygen), sum(&self.carbon), self.store]
    }

    /// The same with what each process moves.
    pub(super) fn ledger(&self) -> [R; LEDGER] {
        let mut rates = [R::splat(0.0); LEDGER];
        let (states, moved) = rates.split_at_mut(STATES);
        states.copy_from_slice(&self.change());
        let (by_oxygen, by_carbon) = moved.split_at_mut(OXYGEN_PARTS);
        by_oxygen.copy_from_slice(&self.oxygen);
        by_carbon.copy_from_slice(&self.carbon);
        rates
    }
}

fn sum<R: Real>(parts: &[R]) -> R {
    parts.iter().fold(R::splat(0.0), |sum, part| sum + *part)
}

/// Uptake at an oxygen level over that of endless oxygen, `C / (K + C)`.
fn reached<R: Real>(oxygen: R, half_mg_l: f64) -> R {
    oxygen / (oxygen + half_mg_l)
}
