//! A log of readings: CSV with a row a day, as keepers write it.

use std::collections::HashSet;
use std::fmt;

use csv::{ReaderBuilder, StringRecord};
use jiff::civil::Date;

use crate::diagnosis::{Measurement, Reported, Subject};
use crate::units::{Analyte, Concentration, Quantity, QuantityError, Temperature};

/// The last day that a log may hold.
const MOST_DAYS: f64 = 3650.0;
/// Cells that hold nothing.
const EMPTY: [&str; 6] = ["", "-", "--", "n/a", "na", "?"];
/// Words for nothing found.
const NOTHING: [&str; 4] = ["none", "nd", "n.d.", "not detectable"];
/// Words for less than the first mark of a card.
const TRACE: [&str; 3] = ["trace", "traces", "tr"];
/// The first mark over nothing of the cards in common use, on the own scale.
const FIRST_MARK: [(Subject, f64); 4] = [
    (Subject::Ammonia, 0.25),
    (Subject::Nitrite, 0.25),
    (Subject::Nitrate, 5.0),
    (Subject::Phosphate, 0.25),
];

/// A log as read: what can be used, and what is wrong with the rest.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Log {
    /// In the order of the rows.
    pub measurements: Vec<Measurement>,
    /// In the order of the lines.
    pub faults: Vec<LogFault>,
}

/// Something of a log that cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LogFault {
    /// The line, from 1.
    pub line: u64,
    /// The column's head, where it is about one.
    pub column: Option<String>,
    /// What is wrong, and what was done about it.
    pub says: String,
}

impl fmt::Display for LogFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.column {
            Some(column) => write!(f, "{}: {column}: {}", self.line, self.says),
            None => write!(f, "{}: {}", self.line, self.says),
        }
    }
}

/// Reads a log; dates are counted from `start`.
///
/// Columns are told by their heads, whatever their order and spelling ("NO3 (mg/L)",
/// "temp F"); a head may say the scale of its column. A cell that cannot be read is left
/// out and named, a row without a day likewise; everything else is kept.
///
/// # Example
/// ```
/// use lentic::diagnosis::{Reported, Subject};
/// let log = lentic::spec::log::parse("day,NH4,NO3-N\n21,<0.25,20\n28,trace,x\n", None);
/// assert_eq!(log.measurements.len(), 3);
/// assert_eq!(log.measurements[1].of, Subject::Nitrate);
/// assert!((log.measurements[1].value.number() - 88.5).abs() < 0.1);
/// assert!(log.faults[0].to_string().starts_with("3: NO3-N: "));
/// ```
pub fn parse(text: &str, start: Option<Date>) -> Log {
    let text = text.trim_start_matches('\u{feff}');
    let mut reader = ReaderBuilder::new()
        .delimiter(delimiter(text))
        .flexible(true)
        .has_headers(true)
        .from_reader(text.as_bytes());
    let mut log = Log::default();
    let Ok(heads) = reader.headers().cloned() else {
        return log;
    };
    let columns: Vec<Option<Column>> = heads.iter().map(Column::of).collect();
    if heads.is_empty() || heads.iter().all(|head| head.trim().is_empty()) {
        return log;
    }
    head_faults(&heads, &columns, &mut log);
    let mut seen: HashSet<Vec<String>> = HashSet::new();
    for record in reader.records() {
        match record {
            Ok(record) => row(&record, &heads, &columns, start, &mut seen, &mut log),
            Err(error) => {
                let line = error.position().map_or(0, csv::Position::line);
                log.fault(
                    line,
                    None,
                    "the row cannot be read as CSV and was skipped".to_owned(),
                );
            }
        }
    }
    log
}

impl Log {
    fn fault(&mut self, line: u64, column: Option<&str>, says: String) {
        self.faults.push(LogFault {
            line,
            column: column.map(|head| head.trim().to_owned()),
            says,
        });
    }
}

/// The mark that parts the columns: whichever the first line holds most of.
fn delimiter(text: &str) -> u8 {
    let first = text.lines().next().unwrap_or_default();
    let count = |mark: char| first.matches(mark).count();
    [(',', b','), (';', b';'), ('\t', b'\t')]
        .into_iter()
        .rev()
        .max_by_key(|(mark, _)| count(*mark))
        .map_or(b',', |(_, byte)| byte)
}

/// What a column holds.
#[derive(Debug, Clone, PartialEq)]
enum Column {
    Day,
    Date,
    Of(Subject, String),
}

/// Heads that people write, without their unit.
const HEADS: &[(&[&str], Subject)] = &[
    (
        &[
            "ammonia",
            "ammonium",
            "total ammonia",
            "tan",
            "nh3",
            "nh4",
            "nh4+",
            "nh3/nh4",
            "nh3 nh4",
            "nh3-n",
            "nh4-n",
        ],
        Subject::Ammonia,
    ),
    (
        &["nitrite", "nitrites", "no2", "no2-", "no2-n"],
        Subject::Nitrite,
    ),
    (
        &["nitrate", "nitrates", "no3", "no3-", "no3-n"],
        Subject::Nitrate,
    ),
    (
        &["phosphate", "phosphates", "po4", "po4-p"],
        Subject::Phosphate,
    ),
    (&["ph"], Subject::Ph),
    (
        &["temperature", "temp", "water temperature", "t"],
        Subject::Temperature,
    ),
    (&["oxygen", "o2", "do", "dissolved oxygen"], Subject::Oxygen),
];
/// Heads that name a scale; "nh3/nh4" does not say which.
const SCALES: [&str; 9] = [
    "nh3", "nh4", "nh4+", "nh3-n", "nh4-n", "tan", "no2-n", "no3-n", "po4-p",
];

impl Column {
    /// The column of a head, whatever its case, brackets and unit.
    fn of(head: &str) -> Option<Self> {
        let plain = head
            .trim()
            .to_lowercase()
            .replace(['_', '(', ')', '[', ']'], " ");
        let words: Vec<&str> = plain.split_whitespace().collect();
        let joined = words.join(" ");
        match joined.as_str() {
            "day" | "days" | "day no" | "day number" | "age" | "tank day" => {
                return Some(Self::Day);
            }
            "date" | "when" | "tested on" | "test date" => return Some(Self::Date),
            _ => {}
        }
        (1..=words.len()).rev().find_map(|count| {
            let name = words[..count].join(" ");
            let (_, subject) = HEADS
                .iter()
                .find(|(names, _)| names.contains(&name.as_str()))?;
            let rest = words[count..].join(" ");
            Some(Self::Of(*subject, unit_of(*subject, &name, &rest)))
        })
    }
}

/// The unit that cells of a column have where they say none.
fn unit_of(subject: Subject, name: &str, rest: &str) -> String {
    let rest = rest.replace("mg l", "mg/l");
    match subject {
        Subject::Ph => String::new(),
        Subject::Temperature => rest.trim_start_matches(['°', 'º']).to_owned(),
        Subject::Oxygen => {
            if rest.is_empty() {
                "mg/L".to_owned()
            } else {
                rest
            }
        }
        _ if rest.is_empty() && SCALES.contains(&name) => {
            format!("mg/L {}", if name == "tan" { "N" } else { name })
        }
        _ if rest.is_empty() => "mg/L".to_owned(),
        _ if SCALES.contains(&name) && matches!(rest.as_str(), "mg/l" | "ppm") => {
            format!("{rest} {}", if name == "tan" { "n" } else { name })
        }
        _ => rest,
    }
}

/// Says which columns are not used, and whether any tells the day.
fn head_faults(heads: &StringRecord, columns: &[Option<Column>], log: &mut Log) {
    for (head, column) in heads.iter().zip(columns) {
        if column.is_none() && !head.trim().is_empty() {
            log.fault(
                1,
                Some(head),
                "no reading of this name is known; the column is not used".to_owned(),
            );
        }
    }
    let dated = columns
        .iter()
        .flatten()
        .any(|column| matches!(column, Column::Day | Column::Date));
    if !dated {
        log.fault(1, None, "no column is headed day or date".to_owned());
    }
}

fn row(
    record: &StringRecord,
    heads: &StringRecord,
    columns: &[Option<Column>],
    start: Option<Date>,
    seen: &mut HashSet<Vec<String>>,
    log: &mut Log,
) {
    let line = record.position().map_or(0, csv::Position::line);
    let cells: Vec<String> = record.iter().map(|cell| cell.trim().to_owned()).collect();
    if cells.iter().all(String::is_empty) {
        return;
    }
    let day = match day(&cells, columns, start) {
        Ok(day) => day,
        Err(says) => {
            log.fault(line, None, format!("{says}; the row was skipped"));
            return;
        }
    };
    if !seen.insert(cells.clone()) {
        log.fault(
            line,
            None,
            "the row repeats an earlier one word for word and was left out".to_owned(),
        );
        return;
    }
    for ((cell, column), head) in cells.iter().zip(columns).zip(heads) {
        let Some(Column::Of(subject, unit)) = column else {
            continue;
        };
        match reported(*subject, cell, unit) {
            Ok(Some(value)) => log.measurements.push(Measurement {
                day,
                of: *subject,
                value,
            }),
            Ok(None) => {}
            Err(says) => log.fault(line, Some(head), format!("{says}; the cell was left out")),
        }
    }
}

/// The day of a row: its number, or its date counted from the start.
fn day(cells: &[String], columns: &[Option<Column>], start: Option<Date>) -> Result<f64, String> {
    let cell = |wanted: &Column| {
        let mut pairs = columns.iter().zip(cells);
        let found =
            pairs.find(|(column, cell)| column.as_ref() == Some(wanted) && !cell.is_empty());
        found.map(|(_, cell)| cell.as_str())
    };
    let day = match (cell(&Column::Day), cell(&Column::Date)) {
        (Some(day), _) => day
            .parse::<f64>()
            .ok()
            .filter(|day| day.is_finite())
            .ok_or_else(|| {
                format!("{day:?} is no day: write days since flooding, for example 21")
            })?,
        (None, Some(date)) => counted(date, start)?,
        (None, None) => return Err("no day and no date".to_owned()),
    };
    if day < 0.0 {
        return Err(format!(
            "day {day} lies before the soil was flooded on day 0"
        ));
    }
    if day > MOST_DAYS {
        return Err(format!("day {day} is beyond day {MOST_DAYS}"));
    }
    Ok(day)
}

fn counted(text: &str, start: Option<Date>) -> Result<f64, String> {
    let date: Date = text.parse().map_err(|_| {
        format!("{text:?} is no date: write year-month-day, for example 2027-03-27")
    })?;
    let start = start.ok_or_else(|| {
        "a date, but the spec has no start: give start = 2027-03-06 there, or days here".to_owned()
    })?;
    Ok(f64::from((date - start).get_days()))
}

/// What a cell says; nothing where it is empty.
fn reported(subject: Subject, cell: &str, unit: &str) -> Result<Option<Reported>, String> {
    let lower = cell.to_lowercase();
    if EMPTY.contains(&lower.as_str()) {
        return Ok(None);
    }
    let first_mark = FIRST_MARK.iter().find(|(of, _)| *of == subject);
    if let Some((_, mark)) = first_mark {
        if TRACE.contains(&lower.as_str()) {
            return Ok(Some(Reported::Below(*mark)));
        }
        if NOTHING.contains(&lower.as_str()) {
            return Ok(Some(Reported::Value(0.0)));
        }
    }
    let below = cell.strip_prefix(['<', '≤']);
    let above = cell
        .strip_prefix(['>', '≥'])
        .or_else(|| cell.strip_suffix('+'));
    let number = |text: &str| amount(subject, text.trim().trim_start_matches('='), unit);
    Ok(Some(match (below, above) {
        (Some(text), _) => Reported::Below(number(text)?),
        (None, Some(text)) => Reported::Above(number(text)?),
        (None, None) => Reported::Value(number(cell)?),
    }))
}

/// The number of a cell in the unit of its subject, by the cell's own unit or the column's.
fn amount(subject: Subject, text: &str, unit: &str) -> Result<f64, String> {
    let text = text.strip_prefix('~').unwrap_or(text).trim();
    let bare = text.parse::<f64>().is_ok();
    let whole = if bare {
        format!("{text} {unit}")
    } else {
        text.to_owned()
    };
    let whole = whole.trim();
    let says = |error: QuantityError| error.to_string();
    match subject {
        Subject::Ph => within(text, text.parse::<f64>().ok(), 3.0, 11.0, "pH"),
        Subject::Temperature => {
            let celsius = Temperature::parse(whole).map_err(says)?.celsius();
            within(whole, Some(celsius), 0.0, 40.0, "a water temperature in C")
        }
        Subject::Oxygen => {
            let read = Concentration::parse(whole).map_err(says)?.mg_l();
            within(whole, Some(read), 0.0, 50.0, "oxygen in mg/L")
        }
        Subject::Ammonia => nutrient(Analyte::Ammonia, whole, 1000.0),
        Subject::Nitrite => nutrient(Analyte::Nitrite, whole, 1000.0),
        Subject::Nitrate => nutrient(Analyte::Nitrate, whole, 10_000.0),
        Subject::Phosphate => nutrient(Analyte::Phosphate, whole, 1000.0),
    }
}

fn nutrient(analyte: Analyte, text: &str, most: f64) -> Result<f64, String> {
    let read = analyte.parse(text).map_err(|error| error.to_string())?;
    within(text, Some(read.mg_l()), 0.0, most, "a reading in mg/L")
}

fn within(text: &str, value: Option<f64>, low: f64, high: f64, what: &str) -> Result<f64, String> {
    match value {
        Some(value) if (low..=high).contains(&value) => Ok(value),
        Some(_) => Err(format!(
            "{text:?} is not within {low} to {high}, as {what} is"
        )),
        None => Err(format!("{text:?} is no number")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Log {
        parse(text, "2027-03-06".parse().ok())
    }

    #[test]
    fn heads_are_told_however_they_are_written() {
        for head in [
            "NO3",
            "nitrate",
            "Nitrate (ppm)",
            "NO3 [mg/L]",
            "nitrates",
            "nitrate_mg_l",
        ] {
            let log = read(&format!("Day,{head}\n3,20\n"));
            assert_eq!(log.measurements.len(), 1, "{head}: {:?}", log.faults);
            assert_eq!(log.measurements[0].of, Subject::Nitrate);
            assert!(
                (log.measurements[0].value.number() - 20.0).abs() < 1e-9,
                "{head}"
            );
        }
        let log = read("date;temp (F);pH;DO\n2027-03-16;77;7.1;6\n");
        assert!(log.faults.is_empty(), "{:?}", log.faults);
        assert_eq!(log.measurements.len(), 3);
        assert!((log.measurements[0].value.number() - 25.0).abs() < 1e-9);
        assert!((log.measurements[0].day - 10.0).abs() < 1e-9);
    }

    /// 14.007/18.039 and 62.004/14.007 by molar masses.
    #[test]
    fn scales_of_head_and_cell_are_followed() {
        let log = read("day,NH4,nitrate\n3,1,10 mg/L NO3-N\n");
        assert!((log.measurements[0].value.number() - 0.7765).abs() < 1e-3);
        assert!((log.measurements[1].value.number() - 44.27).abs() < 0.05);
    }

    #[test]
    fn cells_say_less_more_trace_and_nothing() {
        let log = read("day,ammonia,nitrite,nitrate\n3,0,trace,>80\n4,<0.25,nd,80+\n5,-,,?\n");
        let values: Vec<Reported> = log.measurements.iter().map(|one| one.value).collect();
        assert_eq!(
            values,
            [
                Reported::Value(0.0),
                Reported::Below(0.25),
                Reported::Above(80.0),
                Reported::Below(0.25),
                Reported::Value(0.0),
                Reported::Above(80.0),
            ]
        );
        assert!(log.faults.is_empty(), "{:?}", log.faults);
    }

    #[test]
    fn what_cannot_be_used_is_named_by_line_and_the_rest_is_kept() {
        let log = read(
            "day,date,ammonia,temp,colour\n\
             -2,,1,,\n\
             ,2027-03-01,1,,\n\
             x,,1,,\n\
             ,,1,,\n\
             5,,-1,24 C,\n\
             6,,0.5,24,\n\
             6,,0.5,24,\n\
             9999,,0.5,,\n",
        );
        let told: Vec<String> = log.faults.iter().map(ToString::to_string).collect();
        let expected = [
            "1: colour: no reading",
            "2: day -2 lies before",
            "3: day -5 lies before",
            "4: \"x\" is no day",
            "5: no day and no date",
            "6: ammonia: ",
            "7: temp: ",
            "8: the row repeats",
            "9: day 9999 is beyond",
        ];
        assert_eq!(told.len(), expected.len(), "{told:#?}");
        for (told, expected) in told.iter().zip(expected) {
            assert!(told.starts_with(expected), "{told} for {expected}");
        }
        assert_eq!(log.measurements.len(), 2);
    }

    #[test]
    fn an_empty_log_holds_nothing() {
        for text in ["", "\n", "day,ammonia\n", "\u{feff}", ",,,\n"] {
            assert!(read(text).measurements.is_empty(), "{text:?}");
        }
    }
}
