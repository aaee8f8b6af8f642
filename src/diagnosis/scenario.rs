//! What a cause changes in a tank: its inputs, its numbers, or what happened to it.
//!
//! Every range here is a judgement: how bad a cause is when it is bad enough to be seen.

use super::case::{CaseHistory, UNKNOWN_DEPTHS};
use super::cause::Cause;
use crate::design::usual;
use crate::parameters::descriptions;
use crate::startup::{DailyFeed, Inputs, ModelEvent, ModelEventKind, Parameters, PlantedMass};
use crate::units::{Concentration, Length, Mass, Share, Temperature};

/// Numbers drawn for a cause beside those of the model.
pub const DRAWN: usize = 8;
/// Which of them says how much a running-in cap oxidises, and which how deep soil and cap lie
/// where nobody knows it.
const OXIDISED: usize = 5;
const DEPTHS: [usize; 2] = [6, 7];
/// Share of the release that a running-in cap oxidises at most, whatever else is amiss
/// (judgement).
const MOST_OXIDISED: f64 = 0.3;
/// Food that a tank of which nothing is said counts as getting, mg/(L d).
const USUAL_FEED_MG_L: f64 = 1.0;
/// Carbon dioxide under a closed cover over that under an open one.
pub(super) const SHADED_CARBON: f64 = 0.7;
/// Nitrate of one mg N/L.
const NITRATE_PER_N: f64 = 62.0 / 14.0;

/// A tank in which a cause is at work.
#[derive(Debug, Clone, PartialEq)]
pub struct Scenario {
    /// What the model follows.
    pub inputs: Inputs,
    /// Its numbers.
    pub numbers: Parameters<f64>,
}

impl Scenario {
    /// What happens in it beside all that does in another, where nothing else parts them.
    pub(super) fn turned_from(&self, other: &Self) -> Option<&[ModelEvent]> {
        let turn = self.inputs.events.strip_prefix(&other.inputs.events[..])?;
        let without = Inputs {
            events: other.inputs.events.clone(),
            ..self.inputs.clone()
        };
        (self.numbers == other.numbers && without == other.inputs).then_some(turn)
    }
}

/// Places at which numbers are drawn, each from 0 to 1: those of the model, then those
/// of the cause.
pub fn dimensions() -> usize {
    descriptions().len() + DRAWN
}

/// A place in the middle of everything.
pub fn middle() -> Vec<f64> {
    vec![0.5; dimensions()]
}

/// The tank of a case under a cause, with its numbers at a place.
pub fn scenario(case: &CaseHistory<'_>, cause: Cause, place: &[f64]) -> Scenario {
    let at = |dimension: usize| place.get(dimension).copied().unwrap_or(0.5);
    let own = descriptions().len();
    let numbers = if place.iter().all(|at| (at - 0.5).abs() < f64::EPSILON) {
        case.bands.central()
    } else {
        case.bands.draw(|dimension| at(dimension as usize))
    };
    let mut shift = Shift {
        case,
        drawn: std::array::from_fn(|number| at(own + number)),
        scenario: Scenario {
            inputs: case.inputs.clone(),
            numbers,
        },
    };
    shift.scenario.numbers.cap.oxidised_share = MOST_OXIDISED * shift.drawn[OXIDISED];
    shift.draw_unknown_depths();
    shift.apply(cause);
    shift.scenario
}

/// A scenario in the making.
struct Shift<'a> {
    case: &'a CaseHistory<'a>,
    drawn: [f64; DRAWN],
    scenario: Scenario,
}

impl Shift<'_> {
    fn apply(&mut self, cause: Cause) {
        match cause {
            Cause::CapBreached => self.cap_breached(),
            Cause::CapThin => self.cap_thin(),
            Cause::CapCoarse => self.cap_coarse(),
            Cause::CapFine => self.cap_fine(),
            Cause::BedDisturbed => {
                let onset = self.days_ago(0, 1.0, 10.0);
                self.stir(onset, self.between(1, 0.03, 0.30));
            }
            Cause::SoilRich => self.soil_rich(),
            Cause::FewPlants => self.few_plants(),
            Cause::SlowGrowersOnly => self.slow_growers_only(),
            Cause::ShadedOut => self.shaded_out(),
            Cause::LightLong => self.light_long(),
            Cause::HungryWater => self.hungry_water(),
            Cause::TankYoung => self.tank_young(),
            Cause::BacteriaSetBack => {
                let onset = self.days_ago(0, 2.0, 14.0);
                self.lose_bacteria(onset, [1, 2], 0.85, 0.995);
            }
            Cause::Overfed => self.overfed(),
            Cause::DeadMatter => self.dead_matter(),
            Cause::LeavesMelting => self.leaves_melting(),
            Cause::TapWater => self.tap_water(),
            Cause::Chlorine => self.chlorine(),
            Cause::SoftWater => self.scenario.inputs.ph = self.between(0, 5.8, 6.6),
            Cause::Heat => self.heat(),
            Cause::Diggers => self.diggers(),
            Cause::HardnessCreep
            | Cause::StillWater
            | Cause::NightExchange
            | Cause::KitError
            | Cause::NoneOfThese
            | Cause::AsExpected => {}
        }
    }

    fn draw_unknown_depths(&mut self) {
        for ((key, band_mm), number) in UNKNOWN_DEPTHS.into_iter().zip(DEPTHS) {
            if self.case.design.draft().says(key) {
                continue;
            }
            let depth = Length::from_mm(self.between(number, band_mm.low, band_mm.high));
            let inputs = &mut self.scenario.inputs;
            match key {
                "soil.depth" => inputs.soil_depth = depth,
                _ => inputs.cap_depth = depth,
            }
        }
    }

    /// A number of a range, even in its logarithm.
    fn between(&self, number: usize, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.drawn[number])
    }

    /// A day between two numbers of days ago, not before filling.
    fn days_ago(&self, number: usize, least: f64, most: f64) -> f64 {
        let ago = least + (most - least) * self.drawn[number];
        (self.case.now_d() - ago).max(0.0)
    }

    fn event(&mut self, day: f64, kind: ModelEventKind) {
        self.scenario.inputs.events.push(ModelEvent { day, kind });
    }

    fn stir(&mut self, day: f64, share: f64) {
        self.event(day, ModelEventKind::Disturbed(Share::from_fraction(share)));
    }

    /// Loses a share of either kind of nitrifiers, drawn apart.
    fn lose_bacteria(&mut self, day: f64, numbers: [usize; 2], least: f64, most: f64) {
        let [ammonia, nitrite] =
            numbers.map(|number| Share::from_fraction(self.between(number, least, most)));
        self.event(day, ModelEventKind::BacteriaLost { ammonia, nitrite });
    }

    /// A cap that lets through as much as a thinner one would.
    fn thin_cap_to(&mut self, share: f64) {
        let depth = &mut self.scenario.inputs.cap_depth;
        *depth = *depth * share;
    }

    fn cap_breached(&mut self) {
        self.thin_cap_to(self.between(0, 0.12, 0.5));
        let onset = self.days_ago(1, 1.0, 14.0);
        self.stir(onset, self.between(2, 0.01, 0.05));
    }

    fn cap_thin(&mut self) {
        let known = self.case.design.draft().says("cap.depth")
            && self.case.design.bed().cap.mean < self.case.standing.cap_wanted;
        if !known {
            self.thin_cap_to(self.between(0, 0.2, 0.55));
        }
    }

    fn cap_coarse(&mut self) {
        self.thin_cap_to(self.between(0, 0.08, 0.4));
        self.scenario.numbers.cap.oxidised_share = self.between(1, 0.3, 0.9);
    }

    fn cap_fine(&mut self) {
        let onset = self.days_ago(0, 1.0, 14.0);
        self.stir(onset, self.between(1, 0.005, 0.04));
    }

    fn soil_rich(&mut self) {
        let factor = self.between(0, 2.0, 7.0);
        let soil = &mut self.scenario.numbers.soil;
        soil.mineral_nitrogen *= factor;
        soil.total_nitrogen *= factor.sqrt();
    }

    fn few_plants(&mut self) {
        let share = if self.case.standing.index < 1.0 {
            self.between(0, 0.5, 1.0)
        } else {
            self.between(0, 0.08, 0.45)
        };
        let planting = &mut self.scenario.inputs.planting;
        *planting = scaled(planting, share, share);
    }

    fn slow_growers_only(&mut self) {
        let planting = &mut self.scenario.inputs.planting;
        let slow = planting.slow.max(planting.fast);
        *planting = PlantedMass {
            slow,
            ..PlantedMass::default()
        };
    }

    fn shaded_out(&mut self) {
        let cover = self.between(0, 0.7, 1.2);
        let closed = self.scenario.numbers.floating.closed_layer;
        let inputs = &mut self.scenario.inputs;
        let whole = Mass::from_g(closed * inputs.floor.m2() * cover);
        inputs.planting.floating = inputs.planting.floating.max(whole);
        inputs.floaters_above = None;
        self.scenario.numbers.fast.carbon_factor *= SHADED_CARBON;
        self.scenario.numbers.slow.growth *= SHADED_CARBON;
    }

    fn light_long(&mut self) {
        let hours = self.between(0, 10.5, 14.0);
        let brighter = self.between(1, 1.0, 2.0);
        let inputs = &mut self.scenario.inputs;
        inputs.light = inputs.light * brighter;
        inputs.light_hours = inputs.light_hours.max(hours);
        self.scenario.numbers.algae.start *= 3.0;
        self.scenario.numbers.algae.growth *= 1.2;
    }

    fn hungry_water(&mut self) {
        let left = self.between(0, 0.03, 0.3);
        let numbers = &mut self.scenario.numbers;
        numbers.soil.total_nitrogen *= left;
        numbers.soil.mineral_nitrogen *= left;
        numbers.tap.nitrate *= left;
        self.scenario.inputs.feed = DailyFeed::default();
    }

    fn tank_young(&mut self) {
        let seed = self.between(0, 0.02, 0.5);
        let nitrite_seed = self.between(2, 0.02, 0.5);
        let pace = self.between(1, 0.75, 1.0);
        let nitrifiers = &mut self.scenario.numbers.nitrifiers;
        nitrifiers.ammonia_seed *= seed;
        nitrifiers.nitrite_seed *= nitrite_seed;
        nitrifiers.ammonia_growth *= pace;
        nitrifiers.nitrite_growth *= pace;
    }

    /// What is fed by the spec on the last day, or a usual amount.
    fn feed(&self) -> DailyFeed {
        let fed = self.case.design.draft().feed;
        let usual = Mass::from_mg(USUAL_FEED_MG_L * self.case.inputs.water.litres());
        DailyFeed {
            mass_per_day: fed.mass_per_day.max(usual),
            protein: fed.protein.max(usual::PROTEIN),
        }
    }

    /// Feeds a multiple from a day on, and on later days no less than that.
    fn more_feed(&mut self, day: f64, factor: f64) {
        let fed = self.feed();
        let feed = DailyFeed {
            mass_per_day: fed.mass_per_day * factor,
            ..fed
        };
        let events = self.scenario.inputs.events.iter_mut();
        for event in events.filter(|event| event.day > day) {
            if let ModelEventKind::Fed(later) = &mut event.kind {
                later.mass_per_day = later.mass_per_day.max(feed.mass_per_day);
            }
        }
        self.event(day, ModelEventKind::Fed(feed));
    }

    fn overfed(&mut self) {
        let onset = self.days_ago(0, 7.0, 60.0);
        let stocks = self.case.design.draft().animals.iter();
        let stocked = stocks.map(|stock| self.case.model_day(stock.from_day));
        let first = stocked.reduce(f64::min).unwrap_or(0.0);
        self.more_feed(
            onset.max(first.min(self.case.now_d())),
            self.between(1, 2.5, 12.0),
        );
    }

    /// A body or a heap of leaves of some milligrams a litre breaks down within days.
    fn dead_matter(&mut self) {
        let onset = self.days_ago(0, 2.0, 12.0);
        let litres = self.case.inputs.water.litres();
        let feed = DailyFeed {
            mass_per_day: Mass::from_mg(self.between(1, 3.0, 25.0) * litres),
            protein: usual::PROTEIN,
        };
        self.event(onset, ModelEventKind::Fed(feed));
    }

    fn leaves_melting(&mut self) {
        let submerged = &mut self.scenario.numbers.submerged;
        submerged.melt = 0.05 * (0.15_f64 / 0.05).powf(self.drawn[0]);
        self.scenario.numbers.fast.death *= self.between(1, 1.5, 4.0);
    }

    fn tap_water(&mut self) {
        let nitrate = self.between(0, 15.0, 90.0) / NITRATE_PER_N;
        let has_ammonia = self.drawn[1] < 0.3;
        let ammonia = self.between(2, 0.2, 1.0);
        let tap = &mut self.scenario.numbers.tap;
        tap.nitrate = tap.nitrate.max(nitrate);
        if has_ammonia {
            tap.ammonia = tap.ammonia.max(ammonia);
        }
    }

    /// Untreated water came in with the last change, and some of it is bound to ammonia.
    fn chlorine(&mut self) {
        let changes = self.scenario.inputs.events.iter();
        let last = changes
            .filter(|event| matches!(event.kind, ModelEventKind::WaterChange(_)))
            .map(|event| event.day)
            .filter(|day| *day <= self.case.now_d())
            .reduce(f64::max);
        let onset = last.unwrap_or_else(|| self.days_ago(0, 0.5, 7.0));
        if last.is_none() {
            self.event(
                onset,
                ModelEventKind::WaterChange(Share::from_percent(30.0)),
            );
        }
        self.lose_bacteria(onset, [1, 3], 0.6, 0.99);
        self.scenario.numbers.tap.ammonia += 0.8 * self.drawn[2] * self.drawn[2];
    }

    fn heat(&mut self) {
        let onset = self.days_ago(0, 2.0, 14.0);
        let warmer = self.between(1, 3.0, 8.0);
        let now = self.scenario.inputs.temperature.celsius();
        self.event(
            onset,
            ModelEventKind::Temperature(Temperature::from_celsius(now.max(25.0) + warmer)),
        );
        self.scenario.inputs.oxygen = Concentration::from_mg_l(6.0);
    }

    fn diggers(&mut self) {
        let share = self.between(0, 0.01, 0.06);
        let onset = self.days_ago(1, 7.0, 35.0);
        let mut day = onset;
        while day <= self.case.now_d() {
            self.stir(day, share);
            day += 4.0;
        }
        self.thin_cap_to(self.between(2, 0.5, 0.95));
    }
}

/// Floaters and fast growers at one share, slow ones at another.
fn scaled(planting: &PlantedMass, fed: f64, slow: f64) -> PlantedMass {
    PlantedMass {
        cover: planting.cover * fed,
        floating: planting.floating * fed,
        fixing: planting.fixing * fed,
        fast: planting.fast * fed,
        slow: planting.slow * slow,
    }
}
