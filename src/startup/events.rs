//! What is done to a design's tank, as the start-up model sees it.

use super::inputs::{DailyFeed, ModelEvent, ModelEventKind, NutrientDose, PlantedMass};
use crate::design::{self, Design, Planted, WaterChange, usual};
use crate::units::{Mass, Share};
use crate::water::salt::Element;

/// Share of the nitrifying bacteria that carrying a tank elsewhere costs, and of the bed that
/// it stirs: judgement, 20 to 90 % are left.
const BACTERIA_LOST: Share = Share::from_fraction(0.5);
const CARRIED_STIRS: Share = Share::from_fraction(0.1);
/// Floaters that nobody thins.
const UNTHINNED: Share = Share::from_fraction(1.0);

/// What carrying a tank elsewhere does to it, with so much of its water new.
pub fn carried(new_water: Share) -> [ModelEventKind; 3] {
    [
        ModelEventKind::Disturbed(CARRIED_STIRS),
        ModelEventKind::BacteriaLost {
            ammonia: BACTERIA_LOST,
            nitrite: BACTERIA_LOST,
        },
        ModelEventKind::WaterChange(new_water),
    ]
}

/// The food of a design, as it is given once something is fed.
pub(super) fn feed(feed: design::Feed) -> DailyFeed {
    DailyFeed {
        mass_per_day: feed.mass_per_day,
        protein: feed.protein,
    }
}

/// Regular water changes, what is fed once animals are in, and the events.
pub(super) fn events(design: &Design, changes: Option<WaterChange>) -> Vec<ModelEvent> {
    let draft = design.draft();
    let away = Absences::of(design);
    let mut events = Vec::new();
    if let Some(change) = changes {
        let kind = ModelEventKind::WaterChange(change.share);
        let days = change.days().filter(|day| !away.holds(*day));
        events.extend(days.map(|day| ModelEvent { day, kind }));
    }
    events.extend(fed(design, &away));
    for (from, until) in away.0 {
        let thinned = |day: f64, cover: Share| ModelEvent {
            day,
            kind: ModelEventKind::Thinned(cover),
        };
        events.push(thinned(from, UNTHINNED));
        events.push(thinned(until, draft.harvest.floaters_above));
    }
    for event in &draft.events {
        let kinds = done(design, &event.kind).into_iter();
        events.extend(kinds.map(|kind| ModelEvent {
            day: event.day,
            kind,
        }));
    }
    events
}

/// What an event comes to in the water and the bed.
fn done(design: &Design, kind: &design::EventKind) -> Vec<ModelEventKind> {
    let areas = design.areas();
    let planting = |plants: &[design::Planting]| PlantedMass::of(&Planted::of(plants, areas));
    match kind {
        design::EventKind::CapAdded(depth) => vec![ModelEventKind::CapAdded(*depth)],
        design::EventKind::WaterChange(share) => vec![ModelEventKind::WaterChange(*share)],
        design::EventKind::Disturbed(share) => vec![ModelEventKind::Disturbed(*share)],
        design::EventKind::PlantsAdded(plants) => {
            vec![ModelEventKind::PlantsAdded(planting(plants))]
        }
        design::EventKind::PlantsRemoved(plants) => {
            vec![ModelEventKind::PlantsRemoved(planting(plants))]
        }
        design::EventKind::Dosed(dosed) => vec![ModelEventKind::Dosed(NutrientDose {
            nitrate_n: dosed.element(Element::N),
            phosphorus: dosed.element(Element::P),
        })],
        design::EventKind::Drained(share) => carried(*share).to_vec(),
        design::EventKind::Fed(_)
        | design::EventKind::Away(_)
        | design::EventKind::ToppedUp(_)
        | design::EventKind::Incident(_) => Vec::new(),
    }
}

/// The days without a keeper, each from its first to its end.
struct Absences(Vec<(f64, f64)>);

impl Absences {
    fn of(design: &Design) -> Self {
        let events = design.draft().events.iter();
        let away = events.filter_map(|event| match event.kind {
            design::EventKind::Away(span) => Some((event.day, event.day + span.days())),
            _ => None,
        });
        Self(away.collect())
    }

    fn holds(&self, day: f64) -> bool {
        let mut spans = self.0.iter();
        spans.any(|(from, until)| (*from..*until).contains(&day))
    }
}

/// What is fed from each day on at which that changes: once animals are in, not while nobody
/// is there, and more on a single day.
fn fed(design: &Design, away: &Absences) -> Vec<ModelEvent> {
    let draft = design.draft();
    let own = feed(draft.feed);
    let first_in = draft.animals.iter().map(|stock| stock.from_day);
    let from = first_in.reduce(f64::min).unwrap_or(0.0);
    let single: Vec<(f64, Mass)> = draft
        .events
        .iter()
        .filter_map(|event| match event.kind {
            design::EventKind::Fed(mass) => Some((event.day, mass)),
            _ => None,
        })
        .collect();
    let protein = if own.protein > Share::ZERO {
        own.protein
    } else {
        usual::PROTEIN
    };
    let on = |day: f64| {
        let daily = if day >= from && !away.holds(day) {
            own.mass_per_day
        } else {
            Mass::ZERO
        };
        let more = single
            .iter()
            .filter(|(on, _)| (*on..on + 1.0).contains(&day));
        let more: Mass = more.map(|(_, mass)| *mass).sum();
        ModelEventKind::Fed(DailyFeed {
            mass_per_day: daily + more,
            protein,
        })
    };
    let mut days: Vec<f64> = single.iter().flat_map(|(on, _)| [*on, on + 1.0]).collect();
    days.extend(away.0.iter().flat_map(|(from, until)| [*from, *until]));
    if !draft.animals.is_empty() {
        days.push(from);
    }
    days.sort_by(f64::total_cmp);
    days.dedup();
    let changes = days.into_iter();
    changes
        .map(|day| ModelEvent { day, kind: on(day) })
        .collect()
}
