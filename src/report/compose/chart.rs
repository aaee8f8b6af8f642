//! The charts of a start-up: nutrients against their limits, plants by group.

use crate::design::{Design, EventKind, Incident};
use crate::plan::{Courses, DayRow, Estimate, StartupSection, watch_limit_mg_l};
use crate::report::chart::{Across, Chart, LimitLine, Mark, Series};
use crate::report::document::Block;
use crate::source::Band;
use crate::units::Analyte;

/// A nutrient that a chart follows.
struct Followed {
    name: &'static str,
    unit: &'static str,
    analyte: Analyte,
    /// Where it stands in a day.
    value: fn(&DayRow) -> Estimate,
    /// Day and height of its typical peak.
    peak: fn(&StartupSection) -> Option<(f64, f64)>,
}

/// The charts of nutrients, in order.
const FOLLOWED: [Followed; 3] = [
    Followed {
        name: "ammonia",
        unit: "mg N/L",
        analyte: Analyte::Ammonia,
        value: |row| row.ammonia_mg_l,
        peak: |start| Some(typical(start.ammonia_peak_day, start.ammonia_peak_mg_l)),
    },
    Followed {
        name: "nitrite",
        unit: "mg NO2/L",
        analyte: Analyte::Nitrite,
        value: |row| row.nitrite_mg_l,
        peak: |start| Some(typical(start.nitrite_peak_day, start.nitrite_peak_mg_l)),
    },
    Followed {
        name: "nitrate",
        unit: "mg NO3/L",
        analyte: Analyte::Nitrate,
        value: |row| row.nitrate_mg_l,
        peak: |_| None,
    },
];

fn typical(day: Estimate, height: Estimate) -> (f64, f64) {
    (day.typical(), height.typical())
}

/// A group of plants, and where its mass stands in a day.
type Group = (&'static str, fn(&DayRow) -> Estimate);

const GROUPS: [Group; 3] = [
    ("floaters", |row| row.floating_g),
    ("fast growers", |row| row.fast_g),
    ("slow growers", |row| row.slow_g),
];

/// How a chart is read.
const KEY: &str = "Line: the median of the starts on each day. As advised: with water changed by readings. Shade: 10 to 90 % of them. Diamond: the typical peak, the median of their own peaks, which texts speak of; it lies over the line, for each start peaks on a day of its own. Dash and dot: the limit; a course far under it is drawn small. Triangles: what is done. Crosses: readings. Point at a chart for its values, or go to it with Tab and along it with the arrow keys.";
/// The names of the two courses.
const AS_WRITTEN: &str = "as written";
const WITH_CHANGES: &str = "as advised";

/// The charts of the days followed: as written, with its band, and beside it as advised.
pub(super) fn followed(design: &Design, courses: &Courses<'_>) -> Vec<Block> {
    let marks = marks(design);
    let days = courses.as_written;
    let nutrients = FOLLOWED.map(|followed| {
        let limit = watch_limit_mg_l(design, followed.analyte);
        let readings = courses.readings.iter();
        let read = readings.filter(|row| row.analyte == followed.name);
        Chart {
            title: format!("{}, {}", followed.name, followed.unit),
            across: Across::Days,
            series: lines(&followed, courses),
            limits: limit.into_iter().map(watch).collect(),
            points: read.map(|row| (row.day, row.value_mg_l)).collect(),
            peak: (followed.peak)(courses.section),
            marks: marks.clone(),
            start: design.draft().start,
            ..Chart::default()
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
        start: design.draft().start,
        ..Chart::default()
    };
    let charts = nutrients.into_iter().chain([plants]).map(Block::Chart);
    let key = Block::OnPage(Box::new(Block::Text(KEY.to_owned())));
    [key].into_iter().chain(charts).collect()
}

/// The course as written with its band; where changes are advised, that with them as a line.
fn lines(followed: &Followed, courses: &Courses<'_>) -> Vec<Series> {
    if courses.with_changes.is_empty() {
        return vec![series(followed.name, courses.as_written, followed.value)];
    }
    let mut with = series(WITH_CHANGES, courses.with_changes, followed.value);
    for (_, band) in &mut with.line {
        *band = Band::exact(band.typical);
    }
    vec![series(AS_WRITTEN, courses.as_written, followed.value), with]
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

fn watch(value: f64) -> LimitLine {
    LimitLine {
        name: "limit".to_owned(),
        value,
    }
}

const fn incident_name(incident: &Incident) -> &'static str {
    match incident {
        Incident::Medicine(_) => "medicine",
        Incident::FilterWashed => "filter washed",
        Incident::Off(_) => "power off",
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
            EventKind::Dosed(_) => "dosed",
            EventKind::Fed(_) => "fed more",
            EventKind::ToppedUp(_) => "topped up",
            EventKind::Away(_) => "nobody there",
            EventKind::Drained(_) => "carried elsewhere",
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
