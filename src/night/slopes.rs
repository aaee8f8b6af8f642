//! How what moves oxygen and carbon moves with oxygen, carbon and store.

use super::carbon::{Carbon, CarbonSlopes};
use super::coefficients::CARBON_PER_OXYGEN;
use super::half_saturation::{
    AMMONIA_OXIDISER_HALF_MG_L, ANIMAL_HALF_MG_L, BED_HALF_MG_L, DEAD_HALF_MG_L,
    NITRITE_OXIDISER_HALF_MG_L, PLANT_HALF_MG_L,
};
use super::model::{
    CARBON_PARTS, CarbonPassage, Feeding, Fluxes, NightModel, NightState, OXYGEN_PARTS, Phase,
    STATES,
};
use crate::numerics::real::Real;

/// Slopes with oxygen and with all inorganic carbon, 1/h.
#[derive(Clone, Copy)]
struct By<R> {
    oxygen: R,
    carbon: R,
}

impl<R: Real> NightModel<R> {
    /// The slopes of [`NightModel::fluxes`] with oxygen, with all inorganic carbon and with the
    /// store.
    pub(super) fn slopes(
        &self,
        phase: Phase,
        &[oxygen, all_carbon, store]: &NightState<R>,
        carbon: &Carbon<R>,
    ) -> [Fluxes<R>; STATES] {
        let numbers = &self.coefficients;
        let moved = self.carbonate.slopes(all_carbon, carbon.hydrogen);
        let fixed =
            |parts: &[Feeding<R>]| self.fixed_slopes(phase, oxygen, (carbon, &moved), parts);
        let (plants, algae) = (fixed(&self.plants()), fixed(&[self.algae()]));
        let submerged = By {
            oxygen: plants.oxygen + algae.oxygen,
            carbon: plants.carbon + algae.carbon,
        };
        let zero = R::splat(0.0);
        let kept = numbers.tissue_share.complement();
        let full = store / (store + numbers.store_half);
        let (reached, slope) = reached(oxygen, PLANT_HALF_MG_L);
        let drawn = numbers.submerged_breath * full * slope;
        let breathing = drawn + numbers.other_breath * slope;
        let animals = numbers.animals * slope_at(oxygen, ANIMAL_HALF_MG_L);
        let dead = numbers.dead * slope_at(oxygen, DEAD_HALF_MG_L);
        let bed = numbers.bed * slope_at(oxygen, BED_HALF_MG_L);
        let emptied =
            numbers.submerged_breath * reached * full.complement() / (store + numbers.store_half);
        [
            Fluxes {
                oxygen: [
                    submerged.oxygen,
                    -breathing,
                    -animals,
                    -dead,
                    -bed,
                    -self.nitrification_slope(oxygen),
                    self.exchange_slope(phase, oxygen),
                ],
                carbon: [
                    (breathing + animals + dead) * CARBON_PER_OXYGEN,
                    -(numbers.fixed_carbon * submerged.oxygen),
                    zero,
                ],
                store: kept * plants.oxygen - drawn,
            },
            Fluxes {
                oxygen: only::<R, OXYGEN_PARTS>(0, submerged.carbon),
                carbon: [
                    zero,
                    -(numbers.fixed_carbon * submerged.carbon),
                    self.carbon_exchange_slope(phase, (carbon, &moved)),
                ],
                store: kept * plants.carbon,
            },
            Fluxes {
                oxygen: only::<R, OXYGEN_PARTS>(1, -emptied),
                carbon: only::<R, CARBON_PARTS>(0, emptied * CARBON_PER_OXYGEN),
                store: -emptied,
            },
        ]
    }

    fn fixed_slopes(
        &self,
        phase: Phase,
        oxygen: R,
        carbon: (&Carbon<R>, &CarbonSlopes<R>),
        parts: &[Feeding<R>],
    ) -> By<R> {
        let canopy = self.coefficients.canopy();
        let mut sum = By {
            oxygen: R::splat(0.0),
            carbon: R::splat(0.0),
        };
        for part in parts.iter().filter(|part| phase.lit && part.is_there()) {
            let slopes = canopy.fed_slopes(carbon, oxygen, part.weight);
            let by_fed = canopy.oxygen_slope(&part.stand, slopes.fed) * part.share;
            sum.oxygen += by_fed * slopes.by_oxygen;
            sum.carbon += by_fed * slopes.by_carbon;
        }
        sum
    }

    fn nitrification_slope(&self, oxygen: R) -> R {
        let numbers = &self.coefficients;
        if self.is_nitrifying() {
            numbers.ammonia_oxidation * slope_at(oxygen, AMMONIA_OXIDISER_HALF_MG_L)
                + numbers.nitrite_oxidation * slope_at(oxygen, NITRITE_OXIDISER_HALF_MG_L)
        } else {
            R::splat(0.0)
        }
    }

    fn exchange_slope(&self, phase: Phase, oxygen: R) -> R {
        let numbers = &self.coefficients;
        let over = oxygen - numbers.pearling_from;
        let pearling = over.if_positive(numbers.pearling, R::splat(0.0));
        let through_surface = if phase.running {
            numbers.running_oxygen + numbers.bubble_oxygen
        } else {
            numbers.still_oxygen
        };
        -(through_surface + pearling)
    }

    fn carbon_exchange_slope(
        &self,
        phase: Phase,
        (carbon, slopes): (&Carbon<R>, &CarbonSlopes<R>),
    ) -> R {
        let CarbonPassage {
            surface,
            film_m,
            bubbles,
        } = self.carbon_passage(phase);
        let (enhanced, slope) =
            self.hydration
                .enhancement_slope(&self.carbonate, carbon.hydrogen, film_m);
        let deficit = self.coefficients.room_carbon - carbon.dioxide;
        surface * slope * slopes.ln_hydrogen * deficit
            - (surface * enhanced + bubbles) * slopes.dioxide
    }
}

/// Nothing but one entry.
fn only<R: Real, const N: usize>(place: usize, value: R) -> [R; N] {
    std::array::from_fn(|at| if at == place { value } else { R::splat(0.0) })
}

/// Uptake at an oxygen level over that of endless oxygen, and its slope.
fn reached<R: Real>(oxygen: R, half_mg_l: f64) -> (R, R) {
    let inverse = R::splat(1.0) / (oxygen + half_mg_l);
    (oxygen * inverse, inverse * inverse * half_mg_l)
}

fn slope_at<R: Real>(oxygen: R, half_mg_l: f64) -> R {
    reached(oxygen, half_mg_l).1
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::design::{DutyHours, FlowDevice};
    use crate::night::coefficients::Coefficients;
    use crate::night::inputs::{Ceiling, Kept, NightInputs, Users};
    use crate::night::rates::Rates;
    use crate::source::Band;
    use crate::state::DayState;
    use crate::units::{
        Alkalinity, Area, Concentration, Flow, Length, Mass, MassRate, Share, Temperature,
    };
    use crate::water::atmosphere;

    fn model() -> NightModel<f64> {
        let floor = Area::from_m2(0.1);
        let inputs = NightInputs {
            surface: floor,
            floor,
            water: floor * Length::from_cm(25.0),
            depth: Length::from_cm(25.0),
            temperature: Temperature::from_celsius(24.0),
            pressure: atmosphere::SEA_LEVEL,
            alkalinity: Alkalinity::from_dkh(4.0),
            light: Band::exact(60.0),
            light_hours: 9.0,
            ceiling: Ceiling::Open,
            device: FlowDevice::AirStone,
            flow: Flow::from_l_min(0.3),
            device_depth: Length::from_cm(20.0),
            duty: DutyHours::Always,
            emergent: Share::ZERO,
            animals: vec![Kept {
                body: Mass::from_g(1.0),
                count: 10.0,
                air_breathing: false,
            }],
            feed: MassRate::from_g_d(0.2),
            surface_film: false,
            bicarbonate_users: Users::UNKNOWN,
            state: DayState {
                day: 40.0,
                fast: Mass::from_g(6.0),
                slow: Mass::from_g(4.0),
                floating: Mass::from_g(2.0),
                algae: Mass::from_g(0.5),
                oxygen: Concentration::from_mg_l(7.0),
                ammonia_oxidised: MassRate::from_g_d(0.01),
                nitrite_oxidised: MassRate::from_g_d(0.01),
                ..DayState::LIFELESS
            },
        };
        let central = Rates::of(&inputs).central();
        NightModel::new(&inputs, Coefficients::of(&inputs, &central))
    }

    #[test]
    fn slopes_are_those_of_small_differences() {
        let (model, step) = (model(), 1e-4);
        let at = |phase, state: &NightState<f64>| {
            let carbon = model.carbonate.split(state[1]);
            model.fluxes(phase, state, &carbon).ledger()
        };
        let phases = [(true, true), (true, false), (false, true), (false, false)];
        for state in [
            [7.0, 75.0, 6.0],
            [2.0, 90.0, 0.3],
            [14.0, 65.0, 30.0],
            [0.1, 99.0, 2.0],
        ] {
            let carbon = model.carbonate.split(state[1]);
            for (lit, running) in phases {
                let phase = Phase { lit, running };
                let slopes = model.slopes(phase, &state, &carbon);
                for (column, found) in slopes.iter().map(Fluxes::ledger).enumerate() {
                    let shifted = |by: f64| {
                        let mut there = state;
                        there[column] += by;
                        at(phase, &there)
                    };
                    let (above, below) = (shifted(step), shifted(-step));
                    for (place, found) in found.into_iter().enumerate() {
                        let expected = (above[place] - below[place]) / (2.0 * step);
                        assert!(
                            (found - expected).abs() < 1e-6 + 1e-4 * expected.abs(),
                            "{state:?} {phase:?} {column} {place}: {found} {expected}"
                        );
                    }
                }
            }
        }
    }
}
