//! A start-up run as a document.

use super::chart::followed;
use super::estimate::ranged;
use super::{finding, reason};
use crate::design::Design;
use crate::finding::{Finding, Status};
use crate::plan::{CalendarEntry, Estimate, Startup, StartupSection};

use crate::report::document::{Block, Document, Fact, Table, TableColumn, Timeline};
use crate::units::show::{fixed, significant};

/// Drivers shown for each result.
const DRIVERS_SHOWN: usize = 4;

/// A start-up run, summary first.
pub fn startup(design: &Design, startup: &Startup, findings: &[Finding]) -> Document {
    let section = &startup.section;
    let status = findings.iter().map(|finding| finding.status).max();
    let mut blocks = vec![
        Block::Verdict(status.unwrap_or(Status::Ok), startup.summary()),
        Block::Text(drawn_from(section)),
        Block::Heading("Course".to_owned()),
        Block::Facts(facts(section)),
    ];
    blocks.extend(followed(design, &startup.courses()));
    blocks.extend(timeline(section).map(|block| Block::OnPage(Box::new(block))));
    blocks.extend(readings(startup));
    blocks.extend(calendar(&section.calendar));
    blocks.extend(drivers(startup));
    blocks.extend(finding::findings(findings, design.draft().units));
    blocks.extend(finding::cautions(&startup.cautions));
    Document {
        title: startup.name.clone(),
        reasons: reason::of(&blocks, findings),
        blocks,
    }
}

/// "200 members, seed 1: typical, and 10 to 90 % in brackets".
fn drawn_from(section: &StartupSection) -> String {
    if section.members == 0 {
        "Central numbers alone, no band.".to_owned()
    } else {
        format!(
            "Typical values, 10 to 90 % of {} members (seed {}) in brackets.",
            section.members, section.seed
        )
    }
}

/// The facts on the first weeks, as the plan shows them too.
pub(super) fn facts(section: &StartupSection) -> Vec<Fact> {
    let over = &section.share_over_limit;
    let share = |share: f64| {
        if section.members == 0 {
            String::new()
        } else {
            format!("over the limit in {:.0} % of the starts", share * 100.0)
        }
    };
    let peak = |value: Estimate, day: Estimate| {
        (
            format!("{} mg/L", ranged(value)),
            format!("about day {}", fixed(day.typical(), 0)),
        )
    };
    let (ammonia, ammonia_day) = peak(section.ammonia_peak_mg_l, section.ammonia_peak_day);
    let (nitrite, nitrite_day) = peak(section.nitrite_peak_mg_l, section.nitrite_peak_day);
    let joined = |day: String, share: String| {
        if share.is_empty() {
            day
        } else {
            format!("{day}; {share}")
        }
    };
    let mut facts = vec![
        Fact::new(
            "ammonia peak",
            ammonia,
            joined(ammonia_day, share(over.ammonia)),
        )
        .by("flush.ammonia"),
        Fact::new(
            "nitrite peak",
            nitrite,
            joined(nitrite_day, share(over.nitrite)),
        )
        .by("flush.nitrite"),
        Fact::new(
            "nitrate peak",
            format!("{} mg/L", ranged(section.nitrate_peak_mg_l)),
            share(over.nitrate),
        )
        .by("flush.nitrate"),
        ready(section).by("animals.early"),
        Fact::new(
            "algae window",
            format!("{} days", ranged(section.algae_window_days)),
            "with light and nutrients left over for algae",
        )
        .by("light.long"),
    ];
    facts.extend(changes(section));
    if section.members_lost > 0 {
        facts.push(Fact::new(
            "left out",
            format!("{} members", section.members_lost),
            "could not be computed; the figures are those of the others",
        ));
    }
    facts
}

/// How many starts hold, and what the changes by reading come to.
fn changes(section: &StartupSection) -> Option<Fact> {
    let changes = section.changes_by_reading.as_ref();
    let words = changes.map_or_else(
        || section.changes_by_reading_reason.clone(),
        |changes| {
            Some(format!(
                "ammonia and nitrite under their limits with {:.0} % changed when a test reads over {} mg N/L or {} mg/L of nitrite; {}",
                changes.share * 100.0,
                significant(changes.threshold_ammonia_mg_l, 2),
                significant(changes.threshold_nitrite_mg_l, 2),
                changes.how_often()
            ))
        },
    )?;
    Some(Fact::new("odds", section.odds_in_words(), words).by("flush.changes"))
}

fn ready(section: &StartupSection) -> Fact {
    let animals = match (section.ready_day_advised, &section.ready_day_advised_reason) {
        (Some(day), _) => format!("animals from day {}, after two clean tests", fixed(day, 0)),
        (None, reason) => format!("no day for animals: {}", reason.clone().unwrap_or_default()),
    };
    let late = section.ready_day_reason.as_ref();
    let late = late.map_or_else(String::new, |reason| format!("{reason}; "));
    let day = section.ready_day.map_or_else(
        || format!("not by day {}", section.days),
        |day| format!("day {}", whole_days(day)),
    );
    Fact::new("ready", day, format!("{late}{animals}"))
}

/// "43 (26-82)": a day has no parts that anyone could plan by.
fn whole_days(day: Estimate) -> String {
    let band = day.band();
    let [low, typical, high] = [band.low, band.typical, band.high].map(|day| fixed(day, 0));
    if low == high {
        typical
    } else {
        format!("{typical} ({low}-{high})")
    }
}

fn readings(startup: &Startup) -> Vec<Block> {
    if startup.readings.is_empty() {
        return Vec::new();
    }
    let rows = startup.readings.iter().map(|row| {
        vec![
            fixed(row.day, 0),
            row.analyte.to_owned(),
            significant(row.value_mg_l, 2),
            ranged(Estimate::Band(row.band_mg_l)),
            row.lies.to_owned(),
        ]
    });
    vec![
        Block::Heading("Readings against the band".to_owned()),
        Block::Table(Table {
            columns: vec![
                TableColumn::numbers("day"),
                TableColumn::words("of"),
                TableColumn::numbers("read"),
                TableColumn::words("band mg/L"),
                TableColumn::words("lies"),
            ],
            rows: rows.collect(),
        }),
    ]
}

/// The calendar under its heading.
pub(super) fn calendar(calendar: &[CalendarEntry]) -> [Block; 2] {
    [
        Block::Heading("Calendar".to_owned()),
        Block::Table(entries(calendar)),
    ]
}

/// Entries of the calendar as a table, with dates where there are any.
pub(super) fn entries(entries: &[CalendarEntry]) -> Table {
    let dated = entries.iter().any(|entry| entry.date.is_some());
    let mut columns = vec![TableColumn::numbers("day")];
    if dated {
        columns.push(TableColumn::numbers("date"));
    }
    columns.push(TableColumn::words("do"));
    let rows = entries.iter().map(|entry| {
        let mut row = vec![entry.day.to_string()];
        if dated {
            row.push(entry.date.clone().unwrap_or_default());
        }
        row.push(entry.what.clone());
        row
    });
    Table {
        columns,
        rows: rows.collect(),
    }
}

/// The calendar along its days, a row for each thing to do.
pub(super) fn timeline(start: &StartupSection) -> Option<Block> {
    let mut rows: Vec<(String, Vec<f64>)> = Vec::new();
    for entry in &start.calendar {
        let day = f64::from(entry.day);
        match rows.iter_mut().find(|(what, _)| *what == entry.what) {
            Some((_, days)) => days.push(day),
            None => rows.push((entry.what.clone(), vec![day])),
        }
    }
    let last = start.calendar.last()?.day;
    let until = f64::from(start.days).max(f64::from(last));
    Some(Block::Timeline(Timeline { until, rows }))
}

fn drivers(startup: &Startup) -> Vec<Block> {
    if startup.drivers.is_empty() {
        return Vec::new();
    }
    let mut results: Vec<&str> = Vec::new();
    for driver in &startup.drivers {
        if !results.contains(&driver.on) {
            results.push(driver.on);
        }
    }
    let facts = results.into_iter().map(|on| {
        let words: Vec<String> = startup
            .drivers
            .iter()
            .filter(|driver| driver.on == on)
            .take(DRIVERS_SHOWN)
            .map(|driver| format!("{} {:+.1}", driver.parameter, driver.rank_correlation))
            .collect();
        Fact::new(
            on.trim_end_matches("_mg_l").replace('_', " "),
            words.join(", "),
            "",
        )
        .by("flush.drivers")
    });
    vec![
        Block::Heading("What drives the spread (rank correlation)".to_owned()),
        Block::Facts(facts.collect()),
    ]
}
