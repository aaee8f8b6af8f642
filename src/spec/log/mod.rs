//! A log of readings: CSV with a row a day, as keepers write it.

mod cell;
mod column;
mod day;
#[cfg(test)]
mod tests;

use std::collections::HashSet;
use std::fmt;

use csv::{ReaderBuilder, StringRecord};
use jiff::civil::Date;

use self::column::LogColumn;
use super::MAX_BYTES;
use crate::diagnosis::Measurement;

/// The most rows that a log may have: three for each day that it may reach.
const MOST_ROWS: usize = 10_000;
/// The most characters of a cell, and of a column's head where it is named.
const MOST_CHARACTERS: usize = 60;

/// A log as read: what can be used, and what is wrong with the rest.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct ReadingLog {
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
/// use lentic::diagnosis::{Reported, Measurand};
/// let log = lentic::spec::log::parse("day,NH4,NO3-N\n21,<0.25,20\n28,trace,x\n", None);
/// assert_eq!(log.measurements.len(), 3);
/// assert_eq!(log.measurements[1].of, Measurand::Nitrate);
/// assert!((log.measurements[1].value.number() - 88.5).abs() < 0.1);
/// assert!(log.faults[0].to_string().starts_with("3: NO3-N: "));
/// ```
pub fn parse(text: &str, start: Option<Date>) -> ReadingLog {
    if text.len() as u64 > MAX_BYTES {
        let mut log = ReadingLog::default();
        log.fault(
            1,
            None,
            format!("a log is at most {MAX_BYTES} bytes (1 MiB) long"),
        );
        return log;
    }
    let text = text.trim_start_matches('\u{feff}');
    let mut reader = ReaderBuilder::new()
        .delimiter(delimiter(text))
        .flexible(true)
        .has_headers(true)
        .from_reader(text.as_bytes());
    let mut log = ReadingLog::default();
    let Ok(heads) = reader.headers().cloned() else {
        return log;
    };
    let mut columns: Vec<Option<LogColumn>> = heads.iter().map(LogColumn::of).collect();
    if heads.is_empty() || heads.iter().all(|head| head.trim().is_empty()) {
        return log;
    }
    head_faults(&heads, &columns, &mut log);
    leave_out_repeated(&heads, &mut columns, &mut log);
    let mut seen: HashSet<Vec<String>> = HashSet::new();
    for (place, record) in reader.records().enumerate() {
        if place == MOST_ROWS {
            let says = format!("a log has at most {MOST_ROWS} rows; the rest was not read");
            log.fault(place as u64 + 2, None, says);
            break;
        }
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

impl ReadingLog {
    fn fault(&mut self, line: u64, column: Option<&str>, says: String) {
        self.faults.push(LogFault {
            line,
            column: column.map(|head| head.trim().chars().take(MOST_CHARACTERS).collect()),
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

/// Says which columns are not used, and whether any tells the day.
fn head_faults(heads: &StringRecord, columns: &[Option<LogColumn>], log: &mut ReadingLog) {
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
        .any(|column| matches!(column, LogColumn::Day | LogColumn::Date));
    if !dated {
        log.fault(1, None, "no column is headed day or date".to_owned());
    }
}

/// Of columns that hold the same the first is used.
fn leave_out_repeated(
    heads: &StringRecord,
    columns: &mut [Option<LogColumn>],
    log: &mut ReadingLog,
) {
    for place in 1..columns.len() {
        let (before, rest) = columns.split_at_mut(place);
        let (Some(column), Some(head)) = (rest.first_mut(), heads.get(place)) else {
            continue;
        };
        let is_repeated = column.as_ref().is_some_and(|column| {
            let mut earlier = before.iter().flatten();
            earlier.any(|other| other.holds_the_same(column))
        });
        if is_repeated {
            let says = "an earlier column holds the same; this one is not used".to_owned();
            log.fault(1, Some(head), says);
            *column = None;
        }
    }
}

fn row(
    record: &StringRecord,
    heads: &StringRecord,
    columns: &[Option<LogColumn>],
    start: Option<Date>,
    seen: &mut HashSet<Vec<String>>,
    log: &mut ReadingLog,
) {
    let line = record.position().map_or(0, csv::Position::line);
    let cells: Vec<String> = record.iter().map(|cell| cell.trim().to_owned()).collect();
    if cells.iter().all(String::is_empty) {
        return;
    }
    if cells.iter().skip(heads.len()).any(|cell| !cell.is_empty()) {
        let says = format!(
            "{} cells, where the first line heads {} columns; the row was skipped",
            cells.len(),
            heads.len()
        );
        log.fault(line, None, says);
        return;
    }
    let day = match within_length(&cells, columns).and_then(|()| day::of(&cells, columns, start)) {
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
        let Some(LogColumn::Of(subject, unit)) = column else {
            continue;
        };
        match cell::reported(*subject, cell, unit) {
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

/// Refuses a row with a cell that no reading is as long as; notes may be.
fn within_length(cells: &[String], columns: &[Option<LogColumn>]) -> Result<(), String> {
    let used = cells
        .iter()
        .zip(columns)
        .filter(|(_, column)| column.is_some());
    let lengths = used.map(|(cell, _)| cell.chars().count());
    match lengths.max() {
        Some(length) if length > MOST_CHARACTERS => Err(format!(
            "a cell of {length} characters, where a day or a reading has at most {MOST_CHARACTERS}"
        )),
        _ => Ok(()),
    }
}
