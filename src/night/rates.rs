//! The uncertain numbers of a night.

use super::inputs::{Ceiling, Feeding, NightInputs};
use super::numbers::numbers;
use crate::air::{Diffuser, Surface, bubble, demand, plume, surface};
use crate::design::Device;
use crate::numerics::distribution::range_inverse;
use crate::source::Band;

numbers! {
    /// One value of every number of a night that is known only as a range.
    pub struct Rates {
        /// Light at the water surface, umol/(m2 s).
        light,
        /// Transfer velocity of the calm surface at a Schmidt number of 600, m/d.
        calm_k600,
        /// The same of the rippled surface, m/d.
        rippled_k600,
        /// Share of the exchange that goes on under floaters.
        mat_passage,
        /// Share of the oxygen in the air that dissolves per metre of depth.
        bubble_efficiency,
        /// Transfer in tank water over transfer in clean water.
        alpha,
        /// Saturation in tank water over saturation in clean water, for bubbles.
        beta,
        /// Air that ripples two thirds of the surface, L/(min m2).
        rippling_air,
        /// Water from a pump that ripples two thirds of the surface, L/(min m2).
        rippling_water,
        /// Carbon dioxide in the air of the room, ppm.
        room_carbon,
        /// Dark respiration of plants at 22.5 C, mg O2/(g h).
        plant_dark,
        /// Share of that which submerged plants draw from the water, the rest from
        /// gas within.
        plant_share,
        /// Share of the respiration of floaters that the water bears: roots, undersides.
        floater_respiration_share,
        /// Share of the oxygen of floaters that goes into the water.
        floater_oxygen_share,
        /// Photosynthesis of floaters in full light at 25 C, mg O2/(g h).
        floating_photosynthesis,
        /// Light at half of it, umol/(m2 s).
        floating_light_half,
        /// Share of the light that one layer of floaters takes.
        floating_absorptance,
        /// Photosynthesis of fast plants in full light with all carbon at 25 C, mg O2/(g h).
        fast_photosynthesis,
        /// Light at half of it, umol/(m2 s).
        fast_light_half,
        /// Photosynthesis of slow plants, as of fast ones.
        slow_photosynthesis,
        /// Light at half of it, umol/(m2 s).
        slow_light_half,
        /// Photosynthesis of algae, as of fast plants.
        algae_photosynthesis,
        /// Light at half of it, umol/(m2 s).
        algae_light_half,
        /// Dark respiration of algae at 22.5 C, mg O2/(g h).
        algae_dark,
        /// Carbon dioxide at half photosynthesis, mg/L.
        carbon_half,
        /// Bicarbonate that counts as carbon dioxide, mol/mol.
        bicarbonate_weight,
        /// Extinction of light by the water itself, 1/m.
        water_extinction,
        /// Extinction of light by submerged plants, m2/g.
        plant_extinction,
        /// Oxygen use of an old bed at 20 C, g/(m2 d).
        bed,
        /// What a bed just flooded uses over that, as a share of it.
        new_bed,
        /// Oxygen use of animals over that at rest.
        animal_factor,
    }
}

/// Water from a pump per surface that ripples two thirds of it, L/(min m2) (judgement).
const RIPPLING_WATER_L_MIN_M2: Band = Band::new(8.0, 20.0, 50.0);
/// Carbon dioxide in a lived-in room, ppm: outdoor air to a closed bedroom (judgement).
const ROOM_CARBON_PPM: Band = Band::new(420.0, 600.0, 1200.0);
/// Dark respiration of plants grown in dim light, mg O2/(g h): between the 0.7 that a
/// loss of 0.015 a day comes to (`janse_2005`) and the 1.5 of plants from the field
/// ([`demand::PLANT_DARK_MG_G_H`]); judgement.
const PLANT_DARK_MG_G_H: Band = Band::new(0.45, 1.0, 3.0);
/// Share of the oxygen respired that submerged plants draw from the water; 30 % and
/// over 40 % came from gas within (`sorrell_1989`).
const PLANT_SHARE: Band = Band::new(0.55, 0.65, 0.9);
/// Judgement: roots and undersides lie in the water, the rest in the air.
const FLOATER_RESPIRATION_SHARE: Band = Band::new(0.1, 0.2, 0.5);
/// Judgement: the upper side gives its oxygen to the air.
const FLOATER_OXYGEN_SHARE: Band = Band::new(0.0, 0.05, 0.15);
/// Judgement, gross growth of duckweed 0.3-0.55 a day at 0.4 g C/g.
const FLOATING_PHOTOSYNTHESIS: Band = Band::new(15.0, 30.0, 50.0);
/// Half of full growth at 3 (1.5-6) mol/(m2 d), over ten hours (judgement).
const FLOATING_LIGHT_HALF: Band = Band::new(40.0, 80.0, 160.0);
/// Green leaves take 0.80-0.85 (from memory).
const FLOATING_ABSORPTANCE: Band = Band::new(0.70, 0.82, 0.95);
/// Gross growth of 0.10-0.25 a day in twelve hours at 0.4 g C/g (`janse_2005`,
/// `nielsen_sand_jensen_1991`; judgement).
const FAST_PHOTOSYNTHESIS: Band = Band::new(10.0, 19.0, 27.0);
/// 16-35 in one plant (`rodrigues_thomaz_2010`), 78 in a lake model (`janse_2005`).
const FAST_LIGHT_HALF: Band = Band::new(15.0, 30.0, 80.0);
/// Gross growth of 0.03-0.10 a day, likewise (judgement).
const SLOW_PHOTOSYNTHESIS: Band = Band::new(3.5, 6.2, 10.6);
/// Shade plants (judgement).
const SLOW_LIGHT_HALF: Band = Band::new(5.0, 15.0, 30.0);
/// Gross growth of 0.6-1.5 a day, likewise (`janse_2005`).
const ALGAE_PHOTOSYNTHESIS: Band = Band::new(64.0, 107.0, 160.0);
/// The high end of a lake model (`janse_2005`).
const ALGAE_LIGHT_HALF: Band = Band::new(15.0, 40.0, 80.0);
/// A loss of 0.075 a day to respiration in a lake model (`janse_2005`).
const ALGAE_DARK: Band = Band::new(2.0, 3.5, 6.0);
/// 10-20 % of full photosynthesis at 1 mg/L, nearly all at 30 (Bowes 1985 as quoted
/// elsewhere, `bowes_1985`; judgement).
const CARBON_HALF_MG_L: Band = Band::new(3.0, 5.0, 9.0);
/// Users of bicarbonate draw on it far less readily, many plants not at all (judgement).
const BICARBONATE_WEIGHT: Band = Band::new(0.0, 0.02, 0.05);
/// Clear water to tannin (judgement).
const WATER_EXTINCTION: Band = Band::new(0.2, 0.5, 2.0);
/// Lake models (`janse_2005`, `scheffer_2003`).
const PLANT_EXTINCTION: Band = Band::new(0.005, 0.010, 0.020);

/// At most twice the old bed's 2 g/(m2 d), in the first weeks after flooding (judgement).
const NEW_BED: Band = Band::new(0.0, 0.5, 1.0);

impl Rates<Band> {
    /// The ranges for a tank: its light, surface, device and whether it is fed.
    pub fn of(inputs: &NightInputs) -> Self {
        let calm = match inputs.ceiling {
            Ceiling::Open => Surface::Open,
            Ceiling::Lid => Surface::Lidded,
        };
        let diffuser = match inputs.device {
            Device::SpongeFilter => Diffuser::OpenTube,
            Device::None | Device::AirStone | Device::Pump => Diffuser::FineStone,
        };
        Self {
            light: inputs.light,
            calm_k600: calm.k600_m_d(),
            rippled_k600: Surface::Rippled.k600_m_d(),
            mat_passage: surface::MAT_PASSAGE,
            bubble_efficiency: diffuser.efficiency_per_m(),
            alpha: bubble::ALPHA,
            beta: bubble::BETA,
            rippling_air: plume::RIPPLING_AIR_L_MIN_M2,
            rippling_water: RIPPLING_WATER_L_MIN_M2,
            room_carbon: ROOM_CARBON_PPM,
            plant_dark: PLANT_DARK_MG_G_H,
            plant_share: PLANT_SHARE,
            floater_respiration_share: FLOATER_RESPIRATION_SHARE,
            floater_oxygen_share: FLOATER_OXYGEN_SHARE,
            floating_photosynthesis: FLOATING_PHOTOSYNTHESIS,
            floating_light_half: FLOATING_LIGHT_HALF,
            floating_absorptance: FLOATING_ABSORPTANCE,
            fast_photosynthesis: FAST_PHOTOSYNTHESIS,
            fast_light_half: FAST_LIGHT_HALF,
            slow_photosynthesis: SLOW_PHOTOSYNTHESIS,
            slow_light_half: SLOW_LIGHT_HALF,
            algae_photosynthesis: ALGAE_PHOTOSYNTHESIS,
            algae_light_half: ALGAE_LIGHT_HALF,
            algae_dark: ALGAE_DARK,
            carbon_half: CARBON_HALF_MG_L,
            bicarbonate_weight: BICARBONATE_WEIGHT,
            water_extinction: WATER_EXTINCTION,
            plant_extinction: PLANT_EXTINCTION,
            bed: demand::BED_G_M2_D,
            new_bed: NEW_BED,
            animal_factor: match inputs.feeding {
                Feeding::Fed => demand::FED_FACTOR,
                Feeding::Unfed => demand::SWIMMING_FACTOR,
            },
        }
    }

    /// The typical value of each.
    pub fn central(&self) -> Rates<f64> {
        self.map(|band| band.typical)
    }

    /// One member of an ensemble: each number taken from its range at a
    /// probability that `coordinate` gives for its place.
    pub fn draw(&self, mut coordinate: impl FnMut(u32) -> f64) -> Rates<f64> {
        let mut place = 0;
        self.map(|band| {
            let probability = coordinate(place);
            place += 1;
            range_inverse(band.low, band.typical, band.high, probability)
        })
    }
}
