//! What to do on which day.

use jiff::ToSpan;

use super::section::{CalendarEntry, ChangePlan};
use crate::design::Design;
use crate::finding::Action;
use crate::plan::words;
use crate::units::show::{fixed, significant};

/// Days on which a new tank is tested, whatever it does: practice.
const TEST_DAYS: [i32; 6] = [3, 7, 14, 21, 28, 42];
/// Ammonia and nitrite over these are worth a test on the day of their peak, mg/L.
const WORTH_A_TEST_MG_L: f64 = 0.25;
/// Days before which a kind of animal is not put in where none is planned: practice.
pub(in crate::plan) const SNAILS_DAY: f64 = 14.0;

/// What the calendar is made from, beside the design.
pub(super) struct Course<'a> {
    /// Day and height of the typical peak of ammonia (mg N/L) and nitrite (mg NO2/L).
    pub(super) peaks: [(f64, f64); 2],
    /// First day on which the typical cover passes the harvest limit.
    pub(super) thin_day: Option<f64>,
    /// First day on which the typical fast growers pass the trimming mass.
    pub(super) trim_day: Option<f64>,
    /// The late end of the ready days, without practice floors.
    pub(super) ready_late: Option<f64>,
    /// The water changes advised, in place of the design's own.
    pub(super) changes: &'a [ChangePlan],
}

/// The day from which a kind with this practice floor may move in.
pub(in crate::plan) fn advised_day(ready_late: Option<f64>, floor: f64) -> Option<f64> {
    ready_late.map(|day| day.ceil().max(floor))
}

/// The calendar, in order of day.
pub(super) fn calendar(design: &Design, course: &Course<'_>) -> Vec<CalendarEntry> {
    let mut entries = before_filling(design);
    entries.push(Entry::new(
        0,
        "lay soil and cap, fill slowly over a plate, plant everything, start lamp and air",
        &[
            Action::LayBed,
            Action::Fill,
            Action::Plant,
            Action::RunDevice,
        ],
    ));
    entries.extend(tests(course));
    if course.changes.is_empty() {
        entries.extend(own_changes(design));
    }
    entries.extend(course.changes.iter().map(|change| {
        let entry = change_entry(change);
        Entry {
            what: format!("{} to hold the flush down", entry.what),
            ..entry
        }
    }));
    let upkeep = [
        (
            course.thin_day,
            "thin the floaters back; weigh what you take out",
        ),
        (course.trim_day, "trim the stems and replant the tops"),
    ];
    entries.extend(
        upkeep
            .into_iter()
            .filter_map(|(day, what)| Some(Entry::new(day?.ceil() as i32, what, &[Action::Plant]))),
    );
    entries.extend(animals(design, course));
    entries.sort_by_key(|entry| entry.day);
    entries
        .into_iter()
        .map(|entry| CalendarEntry {
            day: entry.day,
            date: date(design, entry.day),
            what: entry.what,
            actions: entry.actions.to_vec(),
        })
        .collect()
}

/// Something to do on a day, undated.
struct Entry {
    day: i32,
    what: String,
    actions: &'static [Action],
}

impl Entry {
    fn new(day: i32, what: impl Into<String>, actions: &'static [Action]) -> Self {
        Self {
            day,
            what: what.into(),
            actions,
        }
    }
}

fn before_filling(design: &Design) -> Vec<Entry> {
    let rounds = design.draft().soil.soaked;
    (1..=rounds)
        .map(|round| {
            let day = round.cast_signed() - rounds.cast_signed() - 1;
            let what = format!(
                "soak the soil in twice its volume of water and drain it (round {round} of {rounds})"
            );
            Entry::new(day, what, &[Action::LayBed])
        })
        .collect()
}

fn tests(course: &Course<'_>) -> Vec<Entry> {
    let [ammonia, nitrite] = course.peaks;
    let peak_days = [("ammonia", ammonia), ("nitrite", nitrite)]
        .into_iter()
        .filter(|(_, (_, height))| *height > WORTH_A_TEST_MG_L)
        .map(|(name, (day, height))| {
            let what = format!(
                "test: {name} is due to peak near {} mg/L",
                significant(height, 1)
            );
            Entry::new(day.round() as i32, what, &[])
        });
    TEST_DAYS
        .into_iter()
        .map(|day| Entry::new(day, "test ammonia, nitrite and nitrate", &[]))
        .chain(peak_days)
        .collect()
}

fn own_changes(design: &Design) -> Option<Entry> {
    let change = design.draft().water.change?;
    Some(change_entry(&ChangePlan {
        from: change.from,
        until: change.until,
        every_d: change.every.days(),
        share_pct: change.share.percent(),
    }))
}

fn change_entry(change: &ChangePlan) -> Entry {
    let words = format!(
        "change {} % of the water every {} days until day {}",
        fixed(change.share_pct, 0),
        fixed(change.every_d, 1),
        fixed(change.until, 0)
    );
    Entry::new(change.from.round() as i32, words, &[Action::ChangeWater])
}

/// Each kind of animal on its advised day, or later where it is planned later; snails where
/// none is planned.
fn animals(design: &Design, course: &Course<'_>) -> Vec<Entry> {
    let stock = &design.draft().animals;
    let mut kinds: Vec<(f64, &str)> = stock
        .iter()
        .map(|stock| {
            let first_day = f64::from(stock.animal.first_day).max(stock.from_day);
            (first_day, stock.animal.plural.as_str())
        })
        .collect();
    if kinds.is_empty() {
        kinds.push((SNAILS_DAY, "snails"));
    }
    let mut by_day: Vec<(i32, Vec<&str>)> = Vec::new();
    for (floor, label) in kinds {
        let Some(day) = advised_day(course.ready_late, floor) else {
            continue;
        };
        let day = day as i32;
        match by_day.iter_mut().find(|(other, _)| *other == day) {
            Some((_, labels)) => labels.push(label),
            None => by_day.push((day, vec![label])),
        }
    }
    by_day
        .into_iter()
        .map(|(day, labels)| {
            let what = format!(
                "first {}, a few at a time, after two clean tests a week apart",
                words::listed(&labels)
            );
            Entry::new(day, what, &[Action::MoveAnimals])
        })
        .collect()
}

/// The date of a day, where the spec says when the soil is flooded.
fn date(design: &Design, day: i32) -> Option<String> {
    let start = design.draft().start?;
    let date = start.checked_add(day.days()).ok()?;
    Some(date.to_string())
}
