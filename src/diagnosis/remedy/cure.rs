//! What is done about a cause beside water changes, in steps from little to much.

use super::super::case::CaseHistory;
use super::super::cause::Cause;
use super::super::estimate::TankEstimate;
use super::super::scenario::{SHADED_CARBON, Scenario};
use super::dilution::ChangeWater;
use super::plants::Addition;
use crate::finding::Action;
use crate::startup::{DailyFeed, ModelEvent, ModelEventKind};
use crate::units::{Length, Mass, Share, Temperature};

/// The deepest cap that is suggested, mm.
const DEEPEST_CAP_MM: f64 = 60.0;
/// Steps in which sand is added, mm.
const SAND_STEP_MM: f64 = 5.0;
/// Cover that floaters are thinned to, %, from much to little.
const COVERS_PCT: [f64; 4] = [50.0, 40.0, 30.0, 20.0];
/// Hours of light, from many to few.
const HOURS: [f64; 6] = [10.0, 9.0, 8.0, 7.0, 6.0, 5.0];
/// Shares of the food that the spec speaks of, %: all of it, half, none.
const FOOD_PCT: [f64; 3] = [100.0, 50.0, 0.0];
/// Days without food that fish in good flesh bear, and the share of today's food that
/// follows, % (common practice, no source).
pub(super) const FAST_D: f64 = 10.0;
pub(super) const FED_AFTER_PCT: f64 = 25.0;
/// Shares of water without nitrate in what is changed, %.
const BLENDS_PCT: [f64; 4] = [25.0, 50.0, 75.0, 100.0];

/// What may be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Cure {
    /// More sand.
    Sand,
    /// More plants.
    Plants,
    /// More sand and more plants.
    SandAndPlants,
    /// Fewer floaters.
    Thin,
    /// Fewer hours of light.
    LessLight,
    /// Less food.
    LessFood,
    /// Other water for the changes.
    Blend,
    /// Cooler water.
    Cool,
    /// What rots is taken out.
    CleanOut,
    /// The animals that dig are taken out.
    Rehome,
    /// Nothing is fed for a while, then little.
    Fast,
    /// Nothing but water changes and time.
    Wait,
}

impl Cure {
    /// The work that a cause's main step orders.
    pub(super) const fn orders(self, cause: Cause) -> &'static [Action] {
        use Action::{
            AddSand, ChangeWater, Condition, DoseNitrate, MoveAnimals, OpenBed, Plant, ReachIn,
            RunDevice,
        };
        match self {
            Self::Sand => &[AddSand],
            Self::Plants | Self::Thin => &[Plant],
            Self::SandAndPlants => &[AddSand, Plant],
            Self::LessLight => &[RunDevice, Plant],
            Self::LessFood => &[ReachIn],
            Self::Blend => &[ChangeWater],
            Self::Cool => &[RunDevice],
            Self::CleanOut => &[ReachIn, Plant],
            Self::Rehome => &[MoveAnimals],
            Self::Fast | Self::Wait => match cause {
                Cause::CapFine => &[OpenBed, Plant, RunDevice, MoveAnimals],
                Cause::BedDisturbed => &[ReachIn],
                Cause::BacteriaSetBack | Cause::StillWater => &[RunDevice],
                Cause::NightExchange => &[RunDevice, Plant, MoveAnimals],
                Cause::Chlorine => &[Condition],
                Cause::HungryWater => &[DoseNitrate],
                Cause::SoftWater | Cause::HardnessCreep => &[ChangeWater],
                Cause::NoneOfThese => &[ChangeWater, MoveAnimals],
                _ => &[],
            },
        }
    }

    /// The cure of a cause, where one shows in the water.
    pub(super) const fn of(cause: Cause) -> Self {
        match cause {
            Cause::CapBreached | Cause::CapThin | Cause::CapCoarse => Self::Sand,
            Cause::SoilRich => Self::SandAndPlants,
            Cause::FewPlants | Cause::SlowGrowersOnly => Self::Plants,
            Cause::ShadedOut => Self::Thin,
            Cause::LightLong => Self::LessLight,
            Cause::Overfed => Self::LessFood,
            Cause::TapWater => Self::Blend,
            Cause::Heat => Self::Cool,
            Cause::DeadMatter | Cause::LeavesMelting => Self::CleanOut,
            Cause::Diggers => Self::Rehome,
            Cause::BedDisturbed | Cause::TankYoung | Cause::BacteriaSetBack | Cause::Chlorine => {
                Self::Fast
            }
            Cause::CapFine
            | Cause::HungryWater
            | Cause::SoftWater
            | Cause::HardnessCreep
            | Cause::StillWater
            | Cause::NightExchange
            | Cause::KitError
            | Cause::NoneOfThese
            | Cause::AsExpected => Self::Wait,
        }
    }

    /// What water is changed with beside so much of it.
    pub(super) fn water(self, amount: f64) -> ChangeWater {
        match self {
            Self::Blend => ChangeWater::Blend(amount),
            _ => ChangeWater::Tap,
        }
    }

    /// Amounts to try, from little to much.
    pub(super) fn amounts(self, case: &CaseHistory<'_>, estimate: &TankEstimate) -> Vec<f64> {
        match self {
            Self::Sand => sand_steps(case),
            Self::Plants | Self::SandAndPlants => (1..=Addition::STEPS).map(f64::from).collect(),
            Self::Thin => COVERS_PCT.to_vec(),
            Self::LessLight => {
                let now = estimate.tank.inputs.light_hours;
                let fewer = HOURS.iter().copied().filter(|hours| *hours < now);
                fewer.collect()
            }
            Self::LessFood => food_steps(case, estimate),
            Self::Blend => BLENDS_PCT.to_vec(),
            Self::Cool => vec![25.0],
            Self::CleanOut | Self::Rehome | Self::Fast | Self::Wait => vec![0.0],
        }
    }

    /// The estimated tank with so much of it done now.
    pub(super) fn apply(
        self,
        case: &CaseHistory<'_>,
        estimate: &TankEstimate,
        amount: f64,
    ) -> Scenario {
        let mut tank = estimate.tank.clone();
        let mut now = |kind| {
            tank.inputs.events.push(ModelEvent {
                day: estimate.now_d,
                kind,
            });
        };
        match self {
            Self::Sand => now(ModelEventKind::CapAdded(Length::from_mm(amount))),
            Self::Plants => now(ModelEventKind::PlantsAdded(
                Addition::step(case, amount as u32).planting(),
            )),
            Self::SandAndPlants => {
                now(ModelEventKind::CapAdded(sand_beside_plants(case, amount)));
                now(ModelEventKind::PlantsAdded(
                    Addition::step(case, amount as u32).planting(),
                ));
            }
            Self::Thin => {
                now(ModelEventKind::Thinned(Share::from_percent(amount)));
                // what the cover kept off comes back with the light
                tank.numbers.fast.carbon_factor /= SHADED_CARBON;
                tank.numbers.slow.growth /= SHADED_CARBON;
            }
            Self::LessLight => now(ModelEventKind::LightHours(amount)),
            Self::LessFood => now(ModelEventKind::Fed(food_left(estimate, amount))),
            Self::Blend => {
                tank.numbers.tap.nitrate *= 1.0 - amount / 100.0;
                tank.numbers.tap.ammonia *= 1.0 - amount / 100.0;
            }
            Self::Cool => now(ModelEventKind::Temperature(Temperature::from_celsius(
                amount,
            ))),
            Self::CleanOut => {
                now(ModelEventKind::Fed(own_feed(case)));
                if estimate.cause == Cause::LeavesMelting {
                    tank.numbers.submerged.melt = case.bands.submerged.melt.typical;
                }
            }
            Self::Rehome => now(ModelEventKind::Fed(DailyFeed::default())),
            Self::Fast => {
                now(ModelEventKind::Fed(DailyFeed::default()));
                tank.inputs.events.push(ModelEvent {
                    day: estimate.now_d + FAST_D,
                    kind: ModelEventKind::Fed(food_left(estimate, FED_AFTER_PCT)),
                });
            }
            Self::Wait => {}
        }
        tank
    }
}

/// Sand until the cap is 60 mm deep; a cap that is deeper is topped by one step.
fn sand_steps(case: &CaseHistory<'_>) -> Vec<f64> {
    let room = DEEPEST_CAP_MM - case.design.bed().cap.mean.mm();
    let steps = (room / SAND_STEP_MM).floor().max(1.0) as u32;
    (1..=steps)
        .map(|step| f64::from(step) * SAND_STEP_MM)
        .collect()
}

/// Sand that goes with a step of plants, up to the deepest cap.
pub(super) fn sand_beside_plants(case: &CaseHistory<'_>, step: f64) -> Length {
    let steps = sand_steps(case);
    let most = steps.last().copied().unwrap_or(SAND_STEP_MM);
    Length::from_mm((step * SAND_STEP_MM).min(most))
}

/// What the spec says is fed, once animals are in.
fn own_feed(case: &CaseHistory<'_>) -> DailyFeed {
    let feed = case.design.draft().feed;
    if case.is_stocked() {
        DailyFeed {
            mass_per_day: feed.mass_per_day,
            protein: feed.protein,
        }
    } else {
        DailyFeed::default()
    }
}

/// Shares of the estimated food, %, down to what the spec speaks of and less.
fn food_steps(case: &CaseHistory<'_>, estimate: &TankEstimate) -> Vec<f64> {
    let fed_g = fed_now(estimate).mass_per_day.g();
    let own_pct = if fed_g > 0.0 {
        100.0 * own_feed(case).mass_per_day.g() / fed_g
    } else {
        0.0
    };
    FOOD_PCT
        .map(|share| own_pct.min(100.0) * share / 100.0)
        .to_vec()
}

/// What goes in by the estimate on the last day.
pub(super) fn fed_now(estimate: &TankEstimate) -> DailyFeed {
    let events = estimate.tank.inputs.events.iter();
    let fed = events.filter_map(|event| match event.kind {
        ModelEventKind::Fed(feed) => Some((event.day, feed)),
        _ => None,
    });
    fed.max_by(|a, b| a.0.total_cmp(&b.0))
        .map_or(estimate.tank.inputs.feed, |(_, feed)| feed)
}

fn food_left(estimate: &TankEstimate, percent: f64) -> DailyFeed {
    let fed = fed_now(estimate);
    DailyFeed {
        mass_per_day: Mass::from_g(fed.mass_per_day.g() * percent / 100.0),
        ..fed
    }
}
