//! What to do on which day.

use std::collections::BTreeMap;

use jiff::ToSpan;

use super::ready::Readiness;
use super::section::{CalendarEntry, ReadingChanges};
use crate::catalogue::{self, Animal};
use crate::design::{Design, FlowDevice};
use crate::finding::Action;
use crate::plan::words;
use crate::startup::limits;
use crate::units::show::{fixed, significant};

/// Days on which a new tank is tested, whatever it does: practice.
const TEST_DAYS: [i32; 6] = [3, 7, 14, 21, 28, 42];
/// Ammonia and nitrite over these are worth a test on the day of their peak, mg/L.
const WORTH_A_TEST_MG_L: f64 = 0.25;
/// The animals that a tank gets where none are planned.
const SNAILS: &str = "surface_snail";
/// Days from the first of two clean tests to the second: practice.
const BETWEEN_CLEAN_TESTS: i32 = 7;

/// What the calendar is made from, beside the design.
pub(super) struct CalendarInputs<'a> {
    /// Day and height of the typical peak of ammonia (mg N/L) and nitrite (mg NO2/L).
    pub(super) peaks: [(f64, f64); 2],
    /// First day on which the typical cover passes the harvest limit.
    pub(super) thin_day: Option<f64>,
    /// First day on which the typical fast growers pass the trimming mass.
    pub(super) trim_day: Option<f64>,
    /// When animals may move in.
    pub(super) readiness: &'a Readiness,
    /// The water changes by reading that are advised, in place of the design's own.
    pub(super) changes: Option<&'a ReadingChanges>,
}

/// The kinds of animals planned; snails where none are.
pub(in crate::plan) fn kinds(design: &Design) -> impl Iterator<Item = &'static Animal> {
    let stock = &design.draft().animals;
    let snails = stock
        .is_empty()
        .then(|| catalogue::find::<Animal>(SNAILS).ok());
    let planned = stock.iter().map(|stock| stock.animal);
    planned.chain(snails.flatten())
}

/// The calendar, in order of day.
pub(super) fn calendar(design: &Design, course: &CalendarInputs<'_>) -> Vec<CalendarEntry> {
    let mut entries = before_filling(design);
    entries.push(UndatedEntry::new(
        0,
        format!(
            "lay soil and cap, fill slowly over a plate, plant all, start {}",
            started(design)
        ),
        &[
            Action::LayBed,
            Action::Fill,
            Action::Plant,
            Action::RunDevice,
        ],
    ));
    entries.extend(tests(course));
    entries.extend(match course.changes {
        Some(changes) => Some(by_reading(design, changes)),
        None => own_changes(design),
    });
    let upkeep = [
        (
            course.thin_day,
            "thin the floaters back; weigh what you take out",
        ),
        (course.trim_day, "trim the stems and replant the tops"),
    ];
    entries.extend(upkeep.into_iter().filter_map(|(day, what)| {
        Some(UndatedEntry::new(
            day?.ceil() as i32,
            what,
            &[Action::Plant],
        ))
    }));
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

/// What is switched on.
fn started(design: &Design) -> &'static str {
    match design.draft().air.device {
        FlowDevice::None => "the lamp",
        FlowDevice::AirStone | FlowDevice::SpongeFilter => "lamp and air",
        FlowDevice::Pump => "lamp and pump",
    }
}

/// Something to do on a day, undated.
struct UndatedEntry {
    day: i32,
    what: String,
    actions: &'static [Action],
}

impl UndatedEntry {
    fn new(day: i32, what: impl Into<String>, actions: &'static [Action]) -> Self {
        Self {
            day,
            what: what.into(),
            actions,
        }
    }
}

fn before_filling(design: &Design) -> Vec<UndatedEntry> {
    let rounds = design.draft().soil.soaked;
    (1..=rounds)
        .map(|round| {
            let day = round.cast_signed() - rounds.cast_signed() - 1;
            let what = format!(
                "soak the soil in twice its volume of water and drain it (round {round} of {rounds})"
            );
            UndatedEntry::new(day, what, &[Action::LayBed])
        })
        .collect()
}

fn tests(course: &CalendarInputs<'_>) -> Vec<UndatedEntry> {
    let [ammonia, nitrite] = course.peaks;
    let peak_days = [("ammonia", ammonia), ("nitrite", nitrite)]
        .into_iter()
        .filter(|(_, (_, height))| *height > WORTH_A_TEST_MG_L)
        .map(|(name, (day, height))| {
            let what = format!(
                "test: {name} is due to peak near {} mg/L",
                significant(height, 1)
            );
            UndatedEntry::new(day.round() as i32, what, &[])
        });
    let days = TEST_DAYS.into_iter().map(|day| {
        // ammonia and nitrite are tested anyway where water is changed by them
        let what = match course.changes {
            Some(_) => "test nitrate too",
            None => "test ammonia, nitrite and nitrate",
        };
        UndatedEntry::new(day, what, &[])
    });
    days.chain(peak_days).collect()
}

/// The rule by which water is changed, on the day of its first test.
fn by_reading(design: &Design, changes: &ReadingChanges) -> UndatedEntry {
    let instead = match design.draft().water.change {
        Some(_) => ", in place of regular changes",
        None => "",
    };
    let words = format!(
        "test ammonia and nitrite, then every {} days until both stay clean; change {} % ({}) when ammonia reads over {} mg N/L or nitrite over {} mg/L{instead}: {}",
        fixed(changes.least_days_between, 0),
        fixed(changes.share * 100.0, 0),
        design.draft().units.volume(design.water() * changes.share),
        significant(changes.threshold_ammonia_mg_l, 2),
        significant(changes.threshold_nitrite_mg_l, 2),
        changes.how_often()
    );
    let day = changes.least_days_between.round() as i32;
    UndatedEntry::new(day, words, &[Action::ChangeWater])
}

fn own_changes(design: &Design) -> Option<UndatedEntry> {
    let change = design.draft().water.change?;
    let words = format!(
        "change {} % of the water every {} days until day {}",
        fixed(change.share.percent(), 0),
        fixed(change.every.days(), 1),
        fixed(change.until, 0)
    );
    let day = change.from.round() as i32;
    Some(UndatedEntry::new(day, words, &[Action::ChangeWater]))
}

/// Each kind of animal on its advised day, or later where it is planned later, with the two
/// clean tests before it.
fn animals(design: &Design, course: &CalendarInputs<'_>) -> Vec<UndatedEntry> {
    let planned = |animal: &Animal| {
        let stock = design.draft().animals.iter();
        let of_it = stock.filter(|stock| stock.animal.name == animal.name);
        of_it.map(|stock| stock.from_day).reduce(f64::min)
    };
    let mut by_day: BTreeMap<i32, Vec<&Animal>> = BTreeMap::new();
    for animal in kinds(design) {
        let day = course.readiness.advised(animal);
        if let Some(day) = day.map(|day| day.max(planned(animal).unwrap_or(day))) {
            by_day.entry(day.ceil() as i32).or_default().push(animal);
        }
    }
    let moves_in = by_day.into_iter().flat_map(|(day, animals)| {
        let labels: Vec<&str> = animals.iter().map(|animal| animal.plural.as_str()).collect();
        let (ammonia, nitrite) = clean(animals.iter().all(|animal| animal.is_hardy()));
        let first = format!(
            "first of two clean tests for {}: ammonia under {ammonia} mg N/L, nitrite under {nitrite} mg/L",
            words::listed(&labels)
        );
        let second = format!(
            "second clean test, then first {}, a few at a time",
            words::listed(&labels)
        );
        [
            UndatedEntry::new(day - BETWEEN_CLEAN_TESTS, first, &[]),
            UndatedEntry::new(day, second, &[Action::MoveAnimals]),
        ]
    });
    moves_in.collect()
}

/// Ammonia, mg N/L, and nitrite, mg NO2/L, under which a test is clean.
fn clean(hardy: bool) -> (f64, f64) {
    if hardy {
        (limits::HARDY_AMMONIA_MG_N_L, limits::NITRITE.act)
    } else {
        (limits::READY_AMMONIA_MG_N_L, limits::NITRITE.watch)
    }
}

/// The date of a day, where the spec says when the soil is flooded.
fn date(design: &Design, day: i32) -> Option<String> {
    let start = design.draft().start?;
    let date = start.checked_add(day.days()).ok()?;
    Some(date.to_string())
}
