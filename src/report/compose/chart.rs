//! The charts of a start-up: nutrients against their limits, plants by group.

use crate::design::{Design, EventKind, Incident};
use crate::plan::{DayRow, Estimate, ReadingRow, watch_limit_mg_l};
use crate::report::chart::{Across, Chart, Level, Mark, Series};
use crate::report::document::Block;
use crate::units::Analyte;

/// What a chart follows, and where it finds it in a day.
type Followed = (&'static str, &'static str, Analyte, fn(&DayRow) -> Estimate);

/// The charts of nutrients, in order.
const FOLLOWED: [Followed; 3] = [
    ("ammonia", "mg N/L", Analyte::Ammonia, |row| {
        row.ammonia_mg_l
    }),
    ("nitrite", "mg NO2/L", Analyte::Nitrite, |row| {
        row.nitrite_mg_l
    }),
    ("nitrate", "mg NO3/L", Analyte::Nitrate, |row| {
        row.nitrate_mg_l
    }),
];

/// A group of plants, and where its mass stands in a day.
type Group = (&'static str, fn(&DayRow) -> Estimate);

const GROUPS: [Group; 3] = [
    ("floaters", |row| row.floating_g),
    ("fast growers", |row| row.fast_g),
    ("slow growers", |row| row.slow_g),
];

/// How a chart is read.
const KEY: &str = "Line: the typical start. Shade: 10 to 90 % of the starts. Dash and dot: the limit. Crosses: readings.";

/// The charts of the days followed.
pub(super) fn followed(design: &Design, days: &[DayRow], readings: &[ReadingRow]) -> Vec<Block> {
    let marks = marks(design);
    let nutrients = FOLLOWED.map(|(name, unit, analyte, value)| {
        let limit = watch_limit_mg_l(design, analyte);
        let read = readings.iter().filter(|row| row.analyte == name);
        Chart {
            title: format!("{name}, {unit}"),
            across: Across::Days,
            series: vec![series(name, days, value)],
            limits: limit.into_iter().map(watch).collect(),
            points: read.map(|row| (row.day, row.value_mg_l)).collect(),
            marks: marks.clone(),
        }
    });
    let groups = GROUPS
        .iter()
        .map(|(name, value)| series(name, days, *value))
        .filter(|series| series.line.iter().any(|(_, band)| band.typical > 0.0));
    let plants = Chart {
        title: "plants, g fresh".to_owned(),
        across: Across::Days,
        series: groups.collect(),
        marks,
        ..Chart::default()
    };
    let charts = nutrients.into_iter().chain([plants]).map(Block::Chart);
    let key = Block::OnPage(Box::new(Block::Text(KEY.to_owned())));
    [key].into_iter().chain(charts).collect()
}

fn series(name: &str, days: &[DayRow], value: fn(&DayRow) -> Estimate) -> Series {
    let line = days.iter();
    Series {
        name: name.to_owned(),
        line: line
            .map(|row| (f64::from(row.day), value(row).band()))
            .collect(),
    }
}

fn watch(value: f64) -> Level {
    Level {
        name: "limit".to_owned(),
        value,
    }
}

const fn incident_name(incident: &Incident) -> &'static str {
    match incident {
        Incident::Medicine(_) => "medicine",
        Incident::FilterWashed => "filter washed",
        Incident::LampChanged => "lamp changed",
        Incident::AnimalsAdded(_) => "new animals",
        Incident::Sprayed => "sprayed in the room",
        Incident::GasAdded => "gas led in",
    }
}

/// What the spec has done to the tank, and when animals move in.
fn marks(design: &Design) -> Vec<Mark> {
    let draft = design.draft();
    let mark = |at: f64, name: &str| Mark {
        at,
        name: name.to_owned(),
    };
    let events = draft.events.iter().map(|event| {
        let name = match &event.kind {
            EventKind::CapAdded(_) => "cap added",
            EventKind::WaterChange(_) => "water change",
            EventKind::Disturbed(_) => "bed disturbed",
            EventKind::PlantsAdded(_) => "plants added",
            EventKind::PlantsRemoved(_) => "plants removed",
            EventKind::Incident(incident) => incident_name(incident),
        };
        mark(event.day, name)
    });
    let changes = draft.water.change.iter().flat_map(|change| change.days());
    let animals = draft.animals.iter().map(|stock| stock.from_day);
    let mut marks: Vec<Mark> = events
        .chain(changes.map(|day| mark(day, "water change")))
        .chain(animals.map(|day| mark(day, "animals in")))
        .collect();
    marks.sort_by(|a, b| a.at.total_cmp(&b.at));
    marks
}
