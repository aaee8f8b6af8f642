//! What new water does to a tank: its chlorine, its warmth, and how fast it may go in.

use super::section::Makeup;
use crate::design::{Design, Disinfectant, LabelDose};
use crate::mixture::Mixture;
use crate::source::Band;
use crate::units::{Alkalinity, Concentration, Share, Temperature, Volume};
use crate::water::atmosphere::pressure_at;
use crate::water::carbon_dioxide::{OUTDOOR_AIR, air_equilibrium};
use crate::water::carbonate::{self, Activity};
use crate::water::chlorine::{HALF_LIFE_AERATED_H, HALF_LIFE_STILL_H, nitrogen_left, standing_h};
use crate::water::mixing::hot_share;
use crate::water::tap;

/// Chlorine of the tap water with what it leaves.
#[derive(Debug, Clone, Copy)]
pub(super) struct Chlorine {
    /// As it is known; unknown is taken as chloramine.
    pub(super) said: Option<Disinfectant>,
    label: Option<LabelDose>,
    pub(super) mg_l: Band,
    pub(super) ammonia_left_mg_l: Band,
}

impl Chlorine {
    pub(super) fn of(design: &Design, mixture: &Mixture) -> Self {
        let water = &design.draft().water;
        let said = water.disinfectant;
        let mg_l = match said {
            Some(Disinfectant::None) => Band::exact(0.0),
            _ => tap::chlorine(water.chlorine),
        };
        let bound = match said {
            Some(Disinfectant::Chloramine) => mg_l,
            // as much as is chloramine: none, or all
            None => Band::new(0.0, mg_l.typical, mg_l.high),
            Some(Disinfectant::None | Disinfectant::Chlorine) => Band::exact(0.0),
        };
        let left = |chlorine: f64| {
            let bound = nitrogen_left(Concentration::from_mg_l(chlorine));
            (water.ammonia + bound).mg_l() * mixture.tap_share()
        };
        Self {
            said,
            label: design.draft().conditioner.label,
            mg_l,
            ammonia_left_mg_l: Band::new(left(bound.low), left(bound.typical), left(bound.high)),
        }
    }

    pub(super) fn is_there(&self) -> bool {
        self.mg_l.high > 0.0
    }

    /// Whether standing alone rids the water of it.
    fn is_free(&self) -> bool {
        self.said == Some(Disinfectant::Chlorine)
    }

    /// Conditioner for an amount of water, by its label.
    pub(super) fn dose(&self, water: Volume) -> Option<Volume> {
        self.label
            .filter(|_| self.is_there())
            .map(|label| label.of(water))
    }

    /// Hours of standing, open or with air bubbling through it.
    pub(super) fn stand_h(&self, aerated: bool) -> Option<Band> {
        let half_life = if aerated {
            HALF_LIFE_AERATED_H
        } else {
            HALF_LIFE_STILL_H
        };
        let stand = |mg_l| standing_h(Concentration::from_mg_l(mg_l), half_life);
        (self.is_free() && self.is_there()).then(|| {
            Band::new(
                stand(self.mg_l.low).low,
                stand(self.mg_l.typical).typical,
                stand(self.mg_l.high).high,
            )
        })
    }
}

/// What is drawn from either tap.
#[derive(Debug, Clone, Copy)]
pub(super) struct TapVolumes {
    pub(super) hot: Volume,
    pub(super) cold: Volume,
}

/// How warm the new water is.
#[derive(Debug, Clone, Copy)]
pub(super) struct Warmth {
    pub(super) drawn: Option<TapVolumes>,
    pub(super) reached: Option<Temperature>,
    pub(super) tank_change_k: Option<f64>,
}

impl Warmth {
    /// From both taps to the tank's own warmth, or as near as they come; softened water
    /// stands in the room.
    pub(super) fn of(design: &Design, mixture: &Mixture, share: f64) -> Self {
        let draft = design.draft();
        let water = &draft.water;
        let Some(cold) = water.cold else {
            return Self {
                drawn: None,
                reached: None,
                tank_change_k: None,
            };
        };
        let tap = mixture.tap_share();
        let wanted = water.temperature.celsius();
        let of_soft = draft.room.temperature.celsius() * (1.0 - tap);
        let hot_part = water.hot.filter(|_| tap > 0.0).map_or(0.0, |hot| {
            let asked = Temperature::from_celsius((wanted - of_soft) / tap);
            let nearest = asked.max(cold).min(hot);
            hot_share(nearest, cold, hot).map_or(0.0, Share::fraction)
        });
        let hot_c = water.hot.unwrap_or(cold).celsius();
        let tap_c = cold.celsius() + hot_part * (hot_c - cold.celsius());
        let reached = tap_c * tap + of_soft;
        Self {
            drawn: Some(TapVolumes {
                hot: mixture.tap() * hot_part,
                cold: mixture.tap() * (1.0 - hot_part),
            }),
            reached: Some(Temperature::from_celsius(reached)),
            tank_change_k: Some(share * (reached - wanted)),
        }
    }

    pub(super) fn hot_l(&self) -> f64 {
        self.drawn.map_or(0.0, |drawn| drawn.hot.litres())
    }
}

/// Degrees of either kind that animals bear in a day: practice.
const DEGREES_A_DAY: f64 = 1.0;
/// pH that animals bear as a change in a day: practice.
const PH_A_DAY: f64 = 0.3;
/// Share of the conductivity that animals bear as a change in a day: practice.
const CONDUCTIVITY_A_DAY: f64 = 0.1;
/// More days than this are told as this many.
const MOST_STEPS: f64 = 365.0;

/// Over how many days the water goes into a tank with animals.
#[derive(Debug, Clone, Copy)]
pub(super) struct RefillPace {
    pub(super) steps: u32,
}

/// Something of the tank's water that new water changes.
#[derive(Debug, Clone, Copy)]
pub(super) struct ChangedProperty {
    pub(super) of: &'static str,
    pub(super) unit: &'static str,
    /// By how much all of the new water changes it.
    pub(super) by: f64,
    /// What animals bear of it in a day.
    borne: f64,
}

/// What all of the new water changes in the tank: from the water as last measured, or as the
/// tap has it, to where it leads.
pub(super) fn changes(design: &Design, made: &Makeup) -> [ChangedProperty; 4] {
    let of_new = Waters {
        hardness_dgh: made.hardness_dgh,
        alkalinity_dkh: made.alkalinity_dkh,
        conductivity_us_cm: made.conductivity_us_cm.typical,
    };
    between(design, &of_new, made.share_pct / 100.0)
}

/// What animals are sensitive to.
struct Waters {
    hardness_dgh: f64,
    alkalinity_dkh: f64,
    conductivity_us_cm: f64,
}

impl Waters {
    /// The tank's, as last measured or as the tap has it.
    fn now(design: &Design) -> Self {
        let draft = design.draft();
        let water = &draft.water;
        let hardness = draft.latest(|reading| reading.hardness);
        let alkalinity = draft.latest(|reading| reading.alkalinity);
        let hardness = hardness.map_or(water.hardness, |(_, read)| read);
        let alkalinity = alkalinity.map_or(water.alkalinity, |(_, read)| read);
        let read = draft.latest(|reading| reading.conductivity);
        let read = read.map(|(_, read)| read).or(water.conductivity);
        Self {
            hardness_dgh: hardness.dgh(),
            alkalinity_dkh: alkalinity.dkh(),
            conductivity_us_cm: tap::conductivity(read, hardness, alkalinity).typical,
        }
    }

    /// With a share of other water.
    fn with(&self, share: f64, new: &Self) -> Self {
        let mixed = |own: f64, new: f64| own + share * (new - own);
        Self {
            hardness_dgh: mixed(self.hardness_dgh, new.hardness_dgh),
            alkalinity_dkh: mixed(self.alkalinity_dkh, new.alkalinity_dkh),
            conductivity_us_cm: mixed(self.conductivity_us_cm, new.conductivity_us_cm),
        }
    }
}

fn between(design: &Design, new: &Waters, share: f64) -> [ChangedProperty; 4] {
    let now = Waters::now(design);
    let then = now.with(share, new);
    let (temperature, altitude) = (
        design.draft().water.temperature,
        design.draft().room.altitude,
    );
    let in_air = air_equilibrium(temperature, pressure_at(altitude), OUTDOOR_AIR);
    let settled = |alkalinity_dkh: f64| {
        let alkalinity = Alkalinity::from_dkh(alkalinity_dkh);
        carbonate::ph(in_air, alkalinity, temperature, Activity::Ideal)
    };
    let of = |of, unit, by, borne| ChangedProperty {
        of,
        unit,
        by,
        borne,
    };
    let conductivity = then.conductivity_us_cm - now.conductivity_us_cm;
    [
        of(
            "hardness",
            "dGH",
            then.hardness_dgh - now.hardness_dgh,
            DEGREES_A_DAY,
        ),
        of(
            "alkalinity",
            "dKH",
            then.alkalinity_dkh - now.alkalinity_dkh,
            DEGREES_A_DAY,
        ),
        of(
            "pH once it has taken the air's carbon dioxide",
            "",
            settled(then.alkalinity_dkh) - settled(now.alkalinity_dkh),
            PH_A_DAY,
        ),
        of(
            "conductivity",
            "uS/cm",
            conductivity,
            now.conductivity_us_cm * CONDUCTIVITY_A_DAY,
        ),
    ]
}

impl RefillPace {
    pub(super) const AT_ONCE: Self = Self { steps: 1 };

    /// So many that none bears more change than a day's.
    pub(super) fn of(design: &Design, mixture: &Mixture, share: f64) -> Self {
        let new = Waters {
            hardness_dgh: mixture.hardness().dgh(),
            alkalinity_dkh: mixture.alkalinity().dkh(),
            conductivity_us_cm: mixture.conductivity_us_cm().typical,
        };
        let changes = between(design, &new, share).into_iter();
        let borne = changes.filter(|change| change.borne > 0.0);
        let largest = borne
            .map(|change| (change.by / change.borne).abs())
            .fold(0.0, f64::max);
        // what rounding alone brings over a whole number asks for no further day
        let steps = (largest - 1e-9).ceil().clamp(1.0, MOST_STEPS);
        Self {
            steps: steps as u32,
        }
    }
}
