//! What is got ready before a tank is filled.

use serde::Serialize;

use super::night::HeatSection;
use super::section::SoilSection;
use crate::design::{Design, FlowDevice};
use crate::mixture::Mixture;
use crate::result::results;
use crate::source::Band;
use crate::substrate::soaking::WATER_PER_SOIL;
use crate::units::{Density, Length, Volume};

/// Share of the soil that sieving takes away: judgement.
const SIEVED: Band = Band::new(0.05, 0.15, 0.30);
/// Soil bought beyond that: practice.
const RESERVE: f64 = 0.1;
/// A common bucket, L, and how full it is carried: practice.
const BUCKET_L: f64 = 10.0;
const BUCKET_FILL: f64 = 0.7;
/// Water that rinses sand, in volumes of the sand: five times its own, practice.
const RINSES: f64 = 5.0;
/// Water over the bed in which it is planted: practice.
const PLANTING_DEPTH: Length = Length::from_m(0.05);
/// Velocity that leaves sand of 0.5 mm where it lies, a tenth of what moves it, m/s:
/// judgement.
const CALM_M_S: f64 = 0.02;
/// A saucer that water is poured over: its radius, and the water over its rim, m: practice.
const PLATE_RADIUS_M: f64 = 0.08;
const PLATE_WATER_M: f64 = 0.01;
/// A patch of sand kept for mending, m2: practice, as large as two hands.
const PATCH_M2: f64 = 0.01;
/// Heaters as they are sold, W: practice.
const HEATERS_W: [f64; 7] = [25.0, 50.0, 75.0, 100.0, 150.0, 200.0, 300.0];
/// Loop of an air tube over the rim: practice.
const LOOP: Length = Length::from_m(0.3);
/// Days for which water is reckoned.
const DAYS: f64 = 90.0;

results! {
    /// What is got ready before the tank is filled.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct PreparationSection {
        /// soil to buy with what sieving takes away
        pub soil_l: Band => "plan.preparation" by Numbers,
        /// the same with a tenth in reserve
        pub soil_with_reserve_l: f64 => "plan.preparation",
        /// water of one round of soaking
        pub soak_round_l: f64 => "plan.preparation",
        /// water of all rounds of soaking
        pub soak_l: f64 => "plan.preparation",
        /// buckets of 10 L in which it is soaked at once
        pub soak_buckets: f64 => "plan.preparation",
        /// water that wets the soil in the tank
        pub wetting_l: f64 => "plan.preparation",
        /// water that rinses the sand
        pub rinse_l: f64 => "plan.preparation",
        /// water with which it is planted, 5 cm over the bed
        pub planting_fill_l: f64 => "plan.preparation",
        /// fastest pour over a saucer that leaves the sand where it lies
        pub pour_most_l_min: f64 => "plan.preparation",
        /// sand to keep for a patch of 10 x 10 cm
        pub sand_kept_kg: f64 => "plan.preparation",
        /// tap water up to day 90: the fill and the changes of the spec
        pub tap_water_l: f64 => "plan.preparation",
        /// conditioner for it; absent where no label is given
        #[serde(skip_serializing_if = "Option::is_none")]
        pub conditioner_ml: Option<f64> => "plan.preparation",
        /// heater as sold; absent where none is needed
        #[serde(skip_serializing_if = "Option::is_none")]
        pub heater_w: Option<f64> => "plan.preparation",
        /// air tube from the stone over the rim with a loop, without what lies between rim and pump; absent where none is needed
        #[serde(skip_serializing_if = "Option::is_none")]
        pub tube_cm: Option<f64> => "plan.preparation",
    }
}

/// What is got ready.
pub(super) fn preparation(
    design: &Design,
    soil: &SoilSection,
    heat: &HeatSection,
) -> PreparationSection {
    let draft = design.draft();
    let (bed, water) = (design.bed(), design.water());
    let bought = |loss: f64| soil.buy_l / (1.0 - loss);
    let soak_round_l = WATER_PER_SOIL * soil.buy_l;
    let cap_l = bed.cap.volume.litres();
    let over_bed = (bed.area() * PLANTING_DEPTH).min(water);
    let filled_in = filled_in(design);
    let mixture = Mixture::of(&draft.water, filled_in);
    let tap = mixture.map_or(filled_in, |mixture| mixture.tap());
    let patch = Volume::from_m3(PATCH_M2 * bed.cap.mean.m());
    let bulk = Density::from_kg_m3(draft.cap.dry_bulk_kg_m3().typical);
    let rim_m2 = 2.0 * std::f64::consts::PI * PLATE_RADIUS_M * PLATE_WATER_M;
    PreparationSection {
        soil_l: Band::new(
            bought(SIEVED.low),
            bought(SIEVED.typical),
            bought(SIEVED.high),
        ),
        soil_with_reserve_l: bought(SIEVED.typical) * (1.0 + RESERVE),
        soak_round_l,
        soak_l: soak_round_l * f64::from(draft.soil.soaked),
        soak_buckets: ((1.0 + WATER_PER_SOIL) * soil.buy_l / (BUCKET_L * BUCKET_FILL)).ceil(),
        wetting_l: bed.soil.volume.litres() * draft.soil.porosity().typical,
        rinse_l: cap_l * RINSES,
        planting_fill_l: cap_l * draft.cap.porosity().typical + over_bed.litres(),
        pour_most_l_min: CALM_M_S * rim_m2 * 60.0 * 1000.0,
        sand_kept_kg: (bulk * patch).kg(),
        tap_water_l: tap.litres(),
        conditioner_ml: draft.conditioner.label.map(|label| label.of(tap).ml()),
        heater_w: (heat.heater_w > 0.0).then(|| sold_w(heat.heater_w)),
        tube_cm: has_air_pump(design).then(|| (draft.air.depth + draft.tank.freeboard + LOOP).cm()),
    }
}

/// Water of the fill and of the regular changes up to the last day that is reckoned.
pub(super) fn filled_in(design: &Design) -> Volume {
    let changes = design.draft().water.change.map_or(0.0, |change| {
        let days = change.days().take_while(|day| *day <= DAYS).count();
        change.share.fraction() * days as f64
    });
    design.water() * (1.0 + changes)
}

/// The next heater as sold; beyond the largest several of it.
fn sold_w(needed_w: f64) -> f64 {
    let next = HEATERS_W.iter().copied().find(|sold| *sold >= needed_w);
    let [.., largest] = HEATERS_W;
    next.unwrap_or((needed_w / largest).ceil() * largest)
}

fn has_air_pump(design: &Design) -> bool {
    matches!(
        design.draft().air.device,
        FlowDevice::AirStone | FlowDevice::SpongeFilter
    )
}
