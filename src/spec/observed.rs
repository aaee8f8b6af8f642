//! `[[readings]]` and `[signs]`: what was measured and seen.

use std::ops::Range;

use jiff::civil::Date;

use super::section::SpecSection;
use crate::catalogue::Sign;
use crate::design::key::{Value, date, number, span};
use crate::design::{KitMarks, Reading, Signs, Violation};
use crate::units::Analyte;

/// The day of flooding, from which dates are counted.
pub(super) enum FloodingDate {
    /// Not said.
    Absent,
    /// Said, but not to be read.
    Faulty,
    /// The date with its place in the text.
    On(Date, Range<usize>),
}

impl FloodingDate {
    /// Reads `start`.
    pub(super) fn read(root: &SpecSection<'_>) -> Self {
        match root.optional("start", date) {
            Some(date) => Self::On(date, root.span("start")),
            None if root.has("start") || root.misspells("start") => Self::Faulty,
            None => Self::Absent,
        }
    }

    /// The date, where there is one.
    pub(super) fn date(&self) -> Option<Date> {
        match self {
            Self::On(date, _) => Some(*date),
            _ => None,
        }
    }
}

/// Reads `[[readings]]`.
pub(super) fn readings(root: &SpecSection<'_>, start: &FloodingDate) -> Option<Vec<Reading>> {
    root.list("readings", |item| reading(item, start))
}

/// Reads `[kit]`: the marks of each card, rising.
pub(super) fn kit(section: &SpecSection<'_>) -> Option<KitMarks> {
    let (ammonia, nitrite) = (marks(section, "ammonia"), marks(section, "nitrite"));
    let nitrate = marks(section, "nitrate");
    Some(KitMarks {
        ammonia: ammonia?,
        nitrite: nitrite?,
        nitrate: nitrate?,
    })
}

fn marks(section: &SpecSection<'_>, name: &str) -> Option<Vec<f64>> {
    if !section.has(name) {
        return Some(Vec::new());
    }
    let marks = section.each(name, number)?;
    let rises = marks.iter().zip(marks.iter().skip(1)).all(|(a, b)| a < b);
    if rises && marks.last().is_some_and(|mark| *mark > 0.0) {
        return Some(marks);
    }
    section.report(
        name,
        Violation::new(
            "marks that do not rise from nothing",
            "the marks of a card rise, and one of them is over 0",
            "write them as the card has them, the palest first",
        ),
    );
    None
}

fn reading(section: &SpecSection<'_>, start: &FloodingDate) -> Option<Reading> {
    let day = day(section, start);
    let mut between = Vec::new();
    let mut nutrient = |name, kind| {
        let [low, high] = section.optional(name, span(kind))?;
        if low < high {
            between.push((kind, low, high));
        }
        Some((low + high) / 2.0)
    };
    let reading = Reading {
        day: 0.0,
        ammonia: nutrient("ammonia", Analyte::Ammonia),
        nitrite: nutrient("nitrite", Analyte::Nitrite),
        nitrate: nutrient("nitrate", Analyte::Nitrate),
        phosphate: nutrient("phosphate", Analyte::Phosphate),
        ph: section.optional("ph", Value::read),
        temperature: section.optional("temperature", Value::read),
        oxygen: section.optional("oxygen", Value::read),
        hardness: section.optional("hardness", Value::read),
        alkalinity: section.optional("alkalinity", Value::read),
        conductivity: section.optional("conductivity", Value::read),
        potassium: section.optional("potassium", Value::read),
        iron: section.optional("iron", Value::read),
        blank: section.optional("blank", Value::read),
        between,
    };
    Some(Reading {
        day: day?,
        ..reading
    })
}

/// The day, as given or counted from the start to the date.
fn day(section: &SpecSection<'_>, start: &FloodingDate) -> Option<f64> {
    let given: Vec<&str> = ["day", "date"]
        .into_iter()
        .filter(|name| section.has(name))
        .collect();
    section.refuse_second(&given, "a reading has a day or a date");
    match given.first() {
        None => {
            section.missing(
                "day",
                "a reading has a day, or a date where start is given".to_owned(),
            );
            None
        }
        Some(&"day") => section.optional("day", Value::read),
        _ => day_of_date(section, start),
    }
}

fn day_of_date(section: &SpecSection<'_>, start: &FloodingDate) -> Option<f64> {
    let date = section.optional("date", date)?;
    let (start, start_span) = match start {
        FloodingDate::On(start, span) => (start, span),
        FloodingDate::Faulty => return None,
        FloodingDate::Absent => {
            section.report("date", no_start());
            return None;
        }
    };
    let days = (date - *start).get_days();
    if days < 0 {
        section.report(
            "date",
            Violation::new(
                format!("{date} is {} days before the start", -days),
                "a reading is taken on day 0 or later",
                "mend the date or start",
            )
            .beside(
                start_span.clone(),
                format!("the soil is flooded on {start}"),
            ),
        );
        return None;
    }
    Some(f64::from(days))
}

fn no_start() -> Violation {
    Violation::new(
        "a date, but start is not given",
        "dates are counted from start",
        "give start = 2027-03-06 before the first section, or day instead of date",
    )
}

/// Reads `[signs]`, each sign once.
pub(super) fn signs(section: &SpecSection<'_>) -> Option<Signs> {
    if !section.is_there() {
        return Some(Signs::default());
    }
    if !section.has("observed") && !section.has("absent") {
        section.missing("observed", "[signs] needs observed or absent".to_owned());
        return None;
    }
    let looked = section.optional("looked", Value::read);
    let (observed, absent) = (named(section, "observed"), named(section, "absent"));
    let signs = Signs {
        observed: observed?,
        absent: absent?,
        looked: looked.unwrap_or_default(),
    };
    match signs.absent.iter().find(|sign| signs.has(&sign.name)) {
        None => Some(signs),
        Some(both) => {
            section.report(
                "absent",
                Violation::new(
                    format!("{}, which is observed as well", both.name),
                    "a sign is seen or it is not",
                    "name it in one of the two",
                ),
            );
            None
        }
    }
}

fn named(section: &SpecSection<'_>, list: &str) -> Option<Vec<&'static Sign>> {
    let mut signs: Vec<&'static Sign> = Vec::new();
    if !section.has(list) {
        return Some(signs);
    }
    for sign in section.each(list, Value::read)? {
        if !signs.contains(&sign) {
            signs.push(sign);
        }
    }
    Some(signs)
}
