//! `[[events]]`: what is done on which day.

use super::living;
use super::section::Section;
use crate::design::key::{Misfit, Value};
use crate::design::{Event, EventKind};

/// What an event may do; each does one of them.
const ACTIONS: [&str; 5] = [
    "cap_added",
    "water_change",
    "disturbed",
    "plants_added",
    "plants_removed",
];

/// Reads `[[events]]`.
pub(super) fn read(root: &Section<'_>) -> Option<Vec<Event>> {
    root.list("events", event)
}

fn event(section: &Section<'_>) -> Option<Event> {
    let day = section.required("day", Value::read);
    let kind = kind(section);
    Some(Event {
        day: day?,
        kind: kind?,
    })
}

fn kind(section: &Section<'_>) -> Option<EventKind> {
    let given: Vec<&str> = ACTIONS
        .into_iter()
        .filter(|action| section.has(action))
        .collect();
    if given.is_empty() {
        section.report_here(Misfit::new(
            "nothing is done",
            format!("an event has one of {}", ACTIONS.join(", ")),
            "for example water_change = \"50 %\"",
        ));
    }
    section.refuse_second(&given, "an event does one thing");
    let kinds: Vec<Option<EventKind>> = given.iter().map(|action| done(section, action)).collect();
    kinds.into_iter().next().flatten()
}

fn done(section: &Section<'_>, action: &str) -> Option<EventKind> {
    let share = || section.optional(action, Value::read);
    match action {
        "cap_added" => section
            .optional(action, Value::read)
            .map(EventKind::CapAdded),
        "water_change" => share().map(EventKind::WaterChange),
        "disturbed" => share().map(EventKind::Disturbed),
        "plants_added" => living::plants(section, action).map(EventKind::PlantsAdded),
        _ => living::plants(section, action).map(EventKind::PlantsRemoved),
    }
}
