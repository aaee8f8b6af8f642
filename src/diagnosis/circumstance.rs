//! What the spec and the other readings say by themselves: facts that are commoner where
//! a cause is at work.
//!
//! As with signs, each has a share of tanks in which it holds anyway and a ratio for the
//! causes that it goes with; all are judgement.

use super::case::CaseHistory;
use super::cause::{ByCause, Cause};
use super::dawn::Dawn;
use super::fact::{
    GASPING, HARD_DGH, LONG_H, LOW_OXYGEN_MG_L, OLD_D, RICH_G_KG, STRONG_UMOL, SUFFERING, WARM_C,
    YOUNG_D, brings_something, digs_deep, grows_fast, is_bad, is_fed_much, is_over_limit, is_soft,
    is_still, is_very_soft, read_under, reads_clean, stocked_early, surface_may_close,
};
use super::measurement::Measurand;
use crate::design::Incident;

/// No fact holds in more than this share of the tanks, or in less.
const MOST: f64 = 0.95;
const LEAST: f64 = 0.02;
/// A fact about a tank.
#[derive(Debug, Clone, Copy)]
pub struct Circumstance {
    /// Its name in results.
    pub name: &'static str,
    /// What it says of the tank where it holds.
    pub says: &'static str,
    /// What it says where it does not.
    pub says_not: &'static str,
    /// Share of the tanks in which it holds anyway.
    usual: f64,
    /// How many times as often it holds where a cause is at work.
    ratios: &'static [(Cause, f64)],
    /// Whether it holds, where that is known.
    holds: fn(&Facts<'_>) -> Option<bool>,
}

/// A case with what was computed for its facts.
#[derive(Debug, Clone, Copy)]
pub struct Facts<'a> {
    /// The case.
    pub case: &'a CaseHistory<'a>,
    /// The night as the model has it, where it was followed.
    pub dawn: Option<Dawn>,
}

impl Circumstance {
    /// Every fact looked at.
    pub fn all() -> &'static [Self] {
        CIRCUMSTANCES
    }

    /// Whether it holds; nothing where the case does not say, or where the fact is no
    /// question for it.
    pub fn holds(&self, facts: &Facts<'_>) -> Option<bool> {
        (self.holds)(facts)
    }

    /// Share of the tanks with a cause in which it holds.
    pub fn share(&self, cause: Cause) -> f64 {
        let ratio = self.ratios.iter().find(|(own, _)| *own == cause);
        let ratio = ratio.map_or(1.0, |(_, ratio)| *ratio);
        (self.usual * ratio).clamp(LEAST, MOST)
    }

    /// The likelihood of its holding or not, under each cause.
    pub fn likelihood(&self, holds: bool) -> ByCause {
        ByCause::of(|cause| {
            let share = self.share(cause);
            if holds { share } else { 1.0 - share }
        })
    }
}

const CIRCUMSTANCES: &[Circumstance] = &[
    Circumstance {
        name: "cap.coarse",
        says: "the cap's grains are too coarse for this soil",
        says_not: "the cap's grains hold this soil",
        usual: 0.05,
        ratios: &[(Cause::CapCoarse, 16.0), (Cause::AsExpected, 3.0)],
        holds: |facts| Some(is_bad(facts.case.standing.coarse)),
    },
    Circumstance {
        name: "cap.fine, cap.deep, soil.deep",
        says: "the bed is fine or deep",
        says_not: "the bed is neither fine nor deep",
        usual: 0.08,
        ratios: &[(Cause::CapFine, 9.0)],
        holds: |facts| {
            let standing = &facts.case.standing;
            Some(is_bad(standing.fine) || is_bad(standing.deep) || is_bad(standing.soil_deep))
        },
    },
    Circumstance {
        name: "cap.thin",
        says: "the cap is thin somewhere",
        says_not: "the cap as described is deep enough",
        usual: 0.08,
        ratios: &[(Cause::CapThin, 9.0), (Cause::CapBreached, 4.0)],
        holds: |facts| Some(is_bad(facts.case.standing.thin)),
    },
    Circumstance {
        name: "soil.material",
        says: "this soil is rich",
        says_not: "this kind of soil is not rich",
        usual: 0.15,
        ratios: &[(Cause::SoilRich, 3.2)],
        holds: |facts| {
            let soil = &facts.case.design.draft().soil;
            Some(soil.material.rich || soil.mineral_n_g_kg().typical >= RICH_G_KG)
        },
    },
    Circumstance {
        name: "plants.load",
        says: "the planting is less than half of what this soil asks for",
        says_not: "the planting is enough for this soil, or nearly",
        usual: 0.15,
        ratios: &[(Cause::FewPlants, 5.5), (Cause::SlowGrowersOnly, 6.0)],
        holds: |facts| Some(facts.case.standing.index < 1.0),
    },
    Circumstance {
        name: "plants.mix",
        says: "nothing planted grows fast",
        says_not: "fast growers or floaters are planted",
        usual: 0.05,
        ratios: &[(Cause::SlowGrowersOnly, 17.0)],
        holds: |facts| Some(!grows_fast(facts.case)),
    },
    Circumstance {
        name: "plants.cover",
        says: "floaters may close the surface",
        says_not: "floaters are kept from closing the surface",
        usual: 0.07,
        ratios: &[(Cause::ShadedOut, 9.0), (Cause::NightExchange, 3.0)],
        holds: |facts| Some(surface_may_close(facts.case)),
    },
    Circumstance {
        name: "light",
        says: "the lamp is strong or burns long",
        says_not: "the lamp is neither strong nor burns long",
        usual: 0.1,
        ratios: &[(Cause::LightLong, 8.0), (Cause::ShadedOut, 0.5)],
        holds: |facts| {
            let inputs = &facts.case.inputs;
            Some(inputs.light_hours > LONG_H || inputs.light.umol_m2_s() > STRONG_UMOL)
        },
    },
    Circumstance {
        name: "age",
        says: "the tank is under seven weeks old",
        says_not: "the tank is over six weeks old",
        usual: 0.4,
        ratios: &[
            (Cause::TankYoung, 2.3),
            (Cause::SoilRich, 1.7),
            (Cause::FewPlants, 1.6),
            (Cause::SlowGrowersOnly, 1.5),
            (Cause::HungryWater, 0.2),
            (Cause::HardnessCreep, 0.1),
            (Cause::BacteriaSetBack, 0.4),
            (Cause::ShadedOut, 0.6),
            (Cause::NightExchange, 0.6),
        ],
        holds: |facts| Some(facts.case.age_d <= YOUNG_D),
    },
    Circumstance {
        name: "old age",
        says: "the tank is over half a year old",
        says_not: "the tank is under half a year old",
        usual: 0.2,
        ratios: &[
            (Cause::HungryWater, 4.0),
            (Cause::HardnessCreep, 3.5),
            (Cause::TankYoung, 0.1),
            (Cause::LeavesMelting, 0.2),
            (Cause::FewPlants, 0.4),
            (Cause::SoilRich, 0.3),
        ],
        holds: |facts| Some(facts.case.age_d >= OLD_D),
    },
    Circumstance {
        name: "animals",
        says: "animals are in",
        says_not: "no animals are in yet",
        usual: 0.5,
        ratios: &[
            (Cause::Overfed, 1.9),
            (Cause::Diggers, 1.9),
            (Cause::DeadMatter, 1.7),
            (Cause::NightExchange, 1.7),
            (Cause::BacteriaSetBack, 1.7),
            (Cause::Chlorine, 1.5),
            (Cause::TankYoung, 0.5),
        ],
        holds: |facts| Some(facts.case.is_stocked()),
    },
    Circumstance {
        name: "animals.diggers",
        says: "animals that dig deeper than the cap are in",
        says_not: "no animal listed digs through the cap",
        usual: 0.05,
        ratios: &[(Cause::Diggers, 16.0)],
        holds: |facts| Some(digs_deep(facts.case)),
    },
    Circumstance {
        name: "temperature",
        says: "the water is warm",
        says_not: "the water is not warm",
        usual: 0.05,
        ratios: &[(Cause::Heat, 14.0)],
        holds: |facts| {
            let read = facts.case.log.iter();
            let warm = facts.case.temperature().celsius() >= WARM_C
                || read
                    .filter(|reading| reading.of == Measurand::Temperature)
                    .any(|reading| reading.value.number() >= WARM_C);
            Some(warm)
        },
    },
    Circumstance {
        name: "alkalinity, pH",
        says: "the water is soft or acid",
        says_not: "the water is neither soft nor acid",
        usual: 0.08,
        ratios: &[(Cause::SoftWater, 11.0), (Cause::HardnessCreep, 0.3)],
        holds: |facts| Some(is_soft(facts.case)),
    },
    Circumstance {
        name: "alkalinity, pH",
        says: "of soft and acid waters this is one of the softest",
        says_not: "it is soft or acid water, but not of the softest",
        usual: 0.2,
        ratios: &[(Cause::SoftWater, 3.5)],
        holds: |facts| is_soft(facts.case).then(|| is_very_soft(facts.case)),
    },
    Circumstance {
        name: "hardness",
        says: "the tap water is hard",
        says_not: "the tap water is not hard",
        usual: 0.15,
        ratios: &[(Cause::HardnessCreep, 4.0), (Cause::SoftWater, 0.2)],
        holds: |facts| Some(facts.case.design.draft().water.hardness.dgh() > HARD_DGH),
    },
    Circumstance {
        name: "water.change",
        says: "water is changed regularly",
        says_not: "no regular water changes are planned",
        usual: 0.4,
        ratios: &[
            (Cause::TapWater, 1.8),
            (Cause::Chlorine, 1.9),
            (Cause::HardnessCreep, 0.3),
        ],
        holds: |facts| Some(facts.case.design.draft().water.change.is_some()),
    },
    Circumstance {
        name: "air",
        says: "nothing moves the water",
        says_not: "air or a pump moves the water",
        usual: 0.5,
        ratios: &[
            (Cause::StillWater, 1.8),
            (Cause::NightExchange, 1.8),
            (Cause::BacteriaSetBack, 0.4),
        ],
        holds: |facts| is_still(facts.case.design),
    },
    Circumstance {
        name: "tap water",
        says: "the tap water itself holds nitrate or ammonia",
        says_not: "the tap water as described brings little",
        usual: 0.1,
        ratios: &[(Cause::TapWater, 5.0)],
        holds: |facts| Some(brings_something(facts.case)),
    },
    Circumstance {
        name: "feed",
        says: "more is fed than these animals need",
        says_not: "the food given is what these animals need, or less",
        usual: 0.1,
        ratios: &[(Cause::Overfed, 5.0)],
        holds: |facts| Some(is_fed_much(facts.case)),
    },
    Circumstance {
        name: "dawn oxygen",
        says: "animals gasp, and by the night model oxygen falls low before dawn",
        says_not: "animals gasp, but by the night model enough oxygen is left at dawn",
        usual: 0.12,
        ratios: &[
            (Cause::NightExchange, 6.0),
            (Cause::StillWater, 2.0),
            (Cause::Heat, 2.0),
        ],
        holds: |facts| {
            let gasps = facts.case.has_one_of(&GASPING);
            gasps.then_some(facts.dawn.is_some_and(|dawn| dawn.is_low()))
        },
    },
    Circumstance {
        name: "dawn oxygen",
        says: "by the night model oxygen falls low before dawn, though nothing gasps",
        says_not: "by the night model enough oxygen is left at dawn",
        usual: 0.2,
        ratios: &[(Cause::NightExchange, 2.5), (Cause::StillWater, 1.5)],
        holds: |facts| {
            let gasps = facts.case.has_one_of(&GASPING);
            (!gasps).then_some(facts.dawn.is_some_and(|dawn| dawn.is_low()))
        },
    },
    Circumstance {
        name: "oxygen",
        says: "oxygen was read low",
        says_not: "no reading of oxygen is low",
        usual: 0.05,
        ratios: &[
            (Cause::NightExchange, 8.0),
            (Cause::Heat, 5.0),
            (Cause::Overfed, 3.0),
            (Cause::DeadMatter, 4.0),
            (Cause::StillWater, 4.0),
        ],
        holds: |facts| Some(read_under(facts.case, Measurand::Oxygen, LOW_OXYGEN_MG_L)),
    },
    Circumstance {
        name: "animals.early",
        says: "animals came within the first three weeks",
        says_not: "no animal came within the first three weeks",
        usual: 0.1,
        ratios: &[(Cause::TankYoung, 4.0), (Cause::AsExpected, 0.5)],
        holds: |facts| {
            let is_young = facts.case.is_stocked() && facts.case.age_d <= YOUNG_D;
            is_young.then(|| stocked_early(facts.case))
        },
    },
    Circumstance {
        name: "what came in",
        says: "a medicine, a gas, a spray or new animals came in lately",
        says_not: "no medicine, gas, spray or new animal is told of",
        usual: 0.04,
        ratios: &[(Cause::NoneOfThese, 14.0), (Cause::BacteriaSetBack, 2.0)],
        holds: |facts| {
            let comes_in = |incident: &Incident| {
                !matches!(incident, Incident::FilterWashed | Incident::LampChanged)
            };
            facts.case.incidents().any(comes_in).then_some(true)
        },
    },
    Circumstance {
        name: "clean readings",
        says: "animals suffer though ammonia and nitrite read nothing",
        says_not: "animals suffer, and ammonia or nitrite is there",
        usual: 0.4,
        // these harm animals by ammonia and nitrite alone
        ratios: &[
            (Cause::CapBreached, 0.2),
            (Cause::CapThin, 0.2),
            (Cause::CapCoarse, 0.2),
            (Cause::SoilRich, 0.2),
            (Cause::FewPlants, 0.2),
            (Cause::SlowGrowersOnly, 0.2),
            (Cause::TankYoung, 0.2),
            (Cause::BacteriaSetBack, 0.2),
            (Cause::BedDisturbed, 0.2),
            (Cause::LeavesMelting, 0.2),
            (Cause::DeadMatter, 0.3),
            (Cause::TapWater, 0.5),
            (Cause::AsExpected, 0.3),
            (Cause::NoneOfThese, 2.0),
        ],
        holds: |facts| {
            let suffers = facts.case.is_stocked() && facts.case.has_one_of(&SUFFERING);
            suffers.then(|| reads_clean(facts.case)).flatten()
        },
    },
    Circumstance {
        name: "readings",
        says: "a recent reading passes its limit",
        says_not: "no recent reading passes a limit",
        usual: 0.5,
        ratios: &[(Cause::AsExpected, 0.06)],
        holds: |facts| Some(is_over_limit(facts.case)),
    },
];
