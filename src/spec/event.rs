//! `[[events]]`: what is done on which day.

use super::living;
use super::section::SpecSection;
use crate::catalogue::Animal;
use crate::design::key::{self, Value};
use crate::design::{Dosed, Event, EventKind, Incident, Violation};
use crate::units::Share;
use crate::water::salt::PURITY;

/// What an event may do; each does one of them.
const ACTIONS: [&str; 17] = [
    "cap_added",
    "water_change",
    "disturbed",
    "plants_added",
    "plants_removed",
    "dosed",
    "fed",
    "topped_up",
    "away",
    "drained",
    "off",
    "medicine",
    "filter_washed",
    "lamp_changed",
    "animals_added",
    "sprayed",
    "gas_added",
];

/// Reads `[[events]]`.
pub(super) fn read(root: &SpecSection<'_>) -> Option<Vec<Event>> {
    root.list("events", event)
}

fn event(section: &SpecSection<'_>) -> Option<Event> {
    let day = section.required("day", Value::read);
    let kind = kind(section);
    Some(Event {
        day: day?,
        kind: kind?,
    })
}

fn kind(section: &SpecSection<'_>) -> Option<EventKind> {
    let given: Vec<&str> = ACTIONS
        .into_iter()
        .filter(|action| section.has(action))
        .collect();
    if given.is_empty() {
        section.report_here(Violation::new(
            "nothing is done",
            format!("an event has one of {}", ACTIONS.join(", ")),
            "for example water_change = \"50 %\"",
        ));
    }
    section.refuse_second(&given, "an event does one thing");
    let kinds: Vec<Option<EventKind>> = given.iter().map(|action| done(section, action)).collect();
    kinds.into_iter().next().flatten()
}

fn done(section: &SpecSection<'_>, action: &str) -> Option<EventKind> {
    let share = || section.optional(action, Value::read);
    match action {
        "cap_added" => section
            .optional(action, Value::read)
            .map(EventKind::CapAdded),
        "water_change" => share().map(EventKind::WaterChange),
        "disturbed" => share().map(EventKind::Disturbed),
        "plants_added" => living::plants(section, action).map(EventKind::PlantsAdded),
        "plants_removed" => living::plants(section, action).map(EventKind::PlantsRemoved),
        "dosed" => dosed(&section.child(action)).map(EventKind::Dosed),
        "fed" => section.optional(action, Value::read).map(EventKind::Fed),
        "topped_up" => section
            .optional(action, Value::read)
            .map(EventKind::ToppedUp),
        "away" => section.optional(action, Value::read).map(EventKind::Away),
        "drained" => share().map(EventKind::Drained),
        _ => incident(section, action).map(EventKind::Incident),
    }
}

/// A salt as it was weighed, as pure as it is usually sold unless said.
fn dosed(section: &SpecSection<'_>) -> Option<Dosed> {
    if !section.is_there() {
        return None;
    }
    let salt = section.required("salt", Value::read);
    let mass = section.required("mass", Value::read);
    let purity = section.optional("purity", Value::read);
    Some(Dosed {
        salt: salt?,
        mass: mass?,
        purity: purity.unwrap_or(Share::from_fraction(PURITY)),
    })
}

fn incident(section: &SpecSection<'_>, action: &str) -> Option<Incident> {
    match action {
        "medicine" => section.optional(action, key::text).map(Incident::Medicine),
        "animals_added" => section.list(action, newcomer).map(Incident::AnimalsAdded),
        "off" => section.optional(action, Value::read).map(Incident::Off),
        "filter_washed" => happened(section, action, Incident::FilterWashed),
        "lamp_changed" => happened(section, action, Incident::LampChanged),
        "sprayed" => happened(section, action, Incident::Sprayed),
        _ => happened(section, action, Incident::GasAdded),
    }
}

fn newcomer(section: &SpecSection<'_>) -> Option<(&'static Animal, u32)> {
    let animal = section.required("name", Value::read);
    let count = section.required("count", Value::read);
    Some((animal?, count?))
}

/// An incident said to have happened; one that did not is no event.
fn happened(section: &SpecSection<'_>, action: &str, incident: Incident) -> Option<Incident> {
    if section.optional(action, Value::read)? {
        return Some(incident);
    }
    section.report(
        action,
        Violation::new(
            "false",
            "an event is something that happened",
            format!("write {action} = true, or leave the event out"),
        ),
    );
    None
}
