//! What is the same in all members: the tank, its routine, and the days looked at.

use super::harvest::{WEEK_D, measured_per_week};
use super::routine::Routine;
use crate::catalogue::{PlantGroup, Portion};
use crate::design::{Biomass, Design, EventKind as Done, Planted, Planting, WaterChange};
use crate::night::upkeep::EnergyUse as Running;
use crate::startup::{DailyFeed, Inputs, ModelEventKind, Parameters, fed_nitrogen};
use crate::units::{Share, Volume};

/// Days that the week's figures are read off.
const WINDOW_D: u32 = 28;
/// Days of a year, week by week.
const YEAR_D: u32 = 364;
/// The day that is looked at where none is asked for: a year after filling, judgement.
const USUAL_DAY: u32 = 365;
/// The last day that can be looked at.
pub const LAST_DAY: u32 = 1825;
/// The first: judgement, for before it nothing repeats itself.
pub const FIRST_DAY: u32 = 7;

/// A group of plants by the portions that they were planted in.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct PortionWeights {
    /// Fresh mass over dry; nothing where none were planted.
    pub(super) fresh_per_dry: f64,
    /// Fresh mass of a loose handful, g, where the catalogue weighs one.
    pub(super) handful_g: Option<f64>,
}

/// A tank and the days that are looked at.
pub(super) struct KeptTank<'a> {
    pub(super) design: &'a Design,
    pub(super) inputs: Inputs,
    /// The day after filling.
    pub(super) day: u32,
    /// First and last day of the weeks before it.
    pub(super) window: (u32, u32),
    /// The changes that go on on the day.
    pub(super) change: Option<WaterChange>,
    pub(super) floaters: PortionWeights,
    pub(super) stems: PortionWeights,
    /// Heat and evaporation.
    pub(super) running: Running,
}

impl<'a> KeptTank<'a> {
    /// The tank on the day asked for, or a year after filling, or on the last day that the
    /// spec speaks of.
    pub(super) fn of(design: &'a Design, asked: Option<u32>) -> Self {
        let day = asked
            .unwrap_or_else(|| usual_day(design))
            .clamp(FIRST_DAY, LAST_DAY);
        let change = kept_up(design, day);
        let planted: Vec<Planting> = plantings(design).cloned().collect();
        let all = Planted::of(&planted, design.areas());
        let going_on = |change: &WaterChange| {
            let on = f64::from(day);
            change.from <= on && change.until + change.every.days() > on
        };
        Self {
            design,
            inputs: Inputs::changed(design, change),
            day,
            window: window(design, day),
            change: change.filter(going_on),
            floaters: PortionWeights {
                fresh_per_dry: fresh_per_dry(all.feeding_floaters),
                handful_g: handful_g(&planted),
            },
            stems: PortionWeights {
                fresh_per_dry: fresh_per_dry(all.fast),
                handful_g: None,
            },
            running: Running::of(design),
        }
    }

    pub(super) fn floor_m2(&self) -> f64 {
        self.design.bed().area().m2()
    }

    /// Nitrogen that feed leaves in the tank between two days, mg.
    pub(super) fn feed_n_mg(&self, numbers: &Parameters<f64>, from: f64, to: f64) -> f64 {
        let left: f64 = fed_nitrogen(numbers.water.feed_retained).iter().sum();
        self.protein_mg(from, to) * left
    }

    /// Protein fed between two days, mg.
    fn protein_mg(&self, from: f64, to: f64) -> f64 {
        let per_day = |feed: DailyFeed| feed.mass_per_day.mg() * feed.protein.fraction();
        let events = self.inputs.events.iter();
        let fed = events.filter_map(|event| match event.kind {
            ModelEventKind::Fed(feed) => Some((event.day, per_day(feed))),
            _ => None,
        });
        let mut fed: Vec<(f64, f64)> = fed.collect();
        fed.sort_by(|one, other| one.0.total_cmp(&other.0));
        let starts = std::iter::once((0.0, per_day(self.inputs.feed))).chain(fed.clone());
        let ends = fed.iter().map(|(day, _)| *day).chain([f64::INFINITY]);
        let within = |((start, rate), end): ((f64, f64), f64)| {
            rate * (end.min(to) - start.max(from)).max(0.0)
        };
        starts.zip(ends).map(within).sum()
    }

    /// Whether anything is fed in the last weeks.
    pub(super) fn is_fed(&self) -> bool {
        let (from, to) = self.window;
        self.protein_mg(f64::from(from), f64::from(to)) > 0.0
    }

    /// Nitrogen of the salts put in between two days, mg.
    pub(super) fn dosed_n_mg(&self, from: f64, to: f64) -> f64 {
        let events = self.inputs.events.iter();
        let dosed = events.filter_map(|event| match event.kind {
            ModelEventKind::Dosed(dose) if (from..to).contains(&event.day) => {
                Some(dose.nitrate_n.mg())
            }
            _ => None,
        });
        dosed.sum()
    }

    /// Water that evaporates a week; none where it settles on the tank instead.
    ///
    /// What was poured in and written down goes before what is reckoned.
    pub(super) fn evaporation(&self) -> Volume {
        let events = self.design.draft().events.iter();
        let poured = events.filter_map(|event| match event.kind {
            Done::ToppedUp(volume) => Some((event.day, volume.litres())),
            _ => None,
        });
        let poured = measured_per_week(poured, f64::from(self.day));
        Volume::from_litres(
            poured
                .unwrap_or(self.running.evaporation_l_per_week)
                .max(0.0),
        )
    }

    /// What topping up a week adds of something that tap and softened water hold so much of.
    pub(super) fn topped_up(&self, tap: f64, softened: f64) -> f64 {
        let share = self.design.draft().water.top_up.softened.fraction();
        let held = tap + (softened - tap) * share;
        held * (self.evaporation() / self.design.water())
    }

    /// What topping up a week adds to hardness, dGH.
    pub(super) fn hardened_dgh(&self) -> f64 {
        let water = &self.design.draft().water;
        self.topped_up(water.hardness.dgh(), water.softened.hardness.dgh())
    }

    /// The routine of something that rises by the week, from a source.
    pub(super) fn routine(&self, rise_per_week: f64, source: f64) -> Routine {
        let (share, every_d) = self.change.map_or((Share::ZERO, WEEK_D), |change| {
            (change.share, change.every.days())
        });
        Routine {
            share,
            rise: rise_per_week * every_d / WEEK_D,
            source,
        }
    }

    /// The days of the year before, week by week, up to the day.
    pub(super) fn week_days(&self) -> impl Iterator<Item = u32> {
        let from = self.day.saturating_sub(YEAR_D);
        let week = WEEK_D as u32;
        (from + (self.day - from) % week..=self.day).step_by(week as usize)
    }

    /// Hardness on the days of the year.
    pub(super) fn hardness_dgh(&self) -> Vec<(u32, f64)> {
        let tap = self.design.draft().water.hardness.dgh();
        let per_day = self.hardened_dgh() / WEEK_D;
        let mut hardness = tap;
        let (mut day, mut found) = (0.0, Vec::new());
        let mut changes: Vec<(f64, f64)> = self.changes().collect();
        changes.sort_by(|one, other| one.0.total_cmp(&other.0));
        let mut changes = changes.into_iter().peekable();
        for wanted in self.week_days() {
            let until = f64::from(wanted);
            while let Some((on, share)) = changes.next_if(|(on, _)| *on < until) {
                hardness += per_day * (on - day);
                hardness += share * (tap - hardness);
                day = on;
            }
            hardness += per_day * (until - day);
            day = until;
            found.push((wanted, hardness));
        }
        found
    }

    /// Every change of water, by day and share.
    fn changes(&self) -> impl Iterator<Item = (f64, f64)> {
        self.inputs
            .events
            .iter()
            .filter_map(|event| match event.kind {
                ModelEventKind::WaterChange(share) => Some((event.day, share.fraction())),
                _ => None,
            })
    }
}

/// A year after filling, or the last day that the spec speaks of.
fn usual_day(design: &Design) -> u32 {
    let draft = design.draft();
    let events = draft.events.iter().map(|event| event.day);
    let readings = draft.readings.iter().map(|reading| reading.day);
    let prunings = draft.harvest.taken.iter().map(|taken| taken.day);
    let last = events.chain(readings).chain(prunings).fold(0.0, f64::max);
    USUAL_DAY.max(last.ceil() as u32)
}

/// The regular changes, kept up to the day where the spec does not say until when.
fn kept_up(design: &Design, day: u32) -> Option<WaterChange> {
    let is_assumed = design
        .draft()
        .assumed
        .iter()
        .any(|assumed| assumed.key == "water.change.until");
    design.draft().water.change.map(|change| WaterChange {
        until: if is_assumed {
            change.until.max(f64::from(day))
        } else {
            change.until
        },
        ..change
    })
}

/// The longest stretch of the last weeks in which no plants are put in or taken out.
fn window(design: &Design, day: u32) -> (u32, u32) {
    let start = day.saturating_sub(WINDOW_D);
    let events = design.draft().events.iter();
    let planted =
        events.filter(|event| matches!(event.kind, Done::PlantsAdded(_) | Done::PlantsRemoved(_)));
    let mut days: Vec<u32> = planted
        .map(|event| event.day.floor() as u32)
        .filter(|on| (start..day).contains(on))
        .collect();
    days.sort_unstable();
    let starts = std::iter::once(start).chain(days.iter().map(|on| on + 1));
    let ends = days.iter().copied().chain(std::iter::once(day));
    let longest = starts.zip(ends).filter(|(from, to)| from < to);
    longest
        .max_by_key(|(from, to)| to - from)
        .unwrap_or((start, day))
}

/// Every planting, of the first day and later.
fn plantings(design: &Design) -> impl Iterator<Item = &Planting> {
    let later = design
        .draft()
        .events
        .iter()
        .filter_map(|event| match &event.kind {
            Done::PlantsAdded(plants) => Some(plants),
            _ => None,
        });
    design.draft().plants.iter().chain(later.flatten())
}

fn fresh_per_dry(biomass: Biomass) -> f64 {
    if biomass.dry.g() > 0.0 {
        biomass.fresh / biomass.dry
    } else {
        0.0
    }
}

/// A handful of the first floater that the catalogue weighs one of.
fn handful_g(planted: &[Planting]) -> Option<f64> {
    let mut floaters = planted.iter().map(|planting| planting.plant);
    floaters.find_map(|plant| {
        let handful = plant.fresh_g.get(&Portion::Handful);
        handful
            .filter(|_| plant.group == PlantGroup::Floater)
            .map(|band| band.typical)
    })
}
