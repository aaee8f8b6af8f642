//! The day of a row of a log.

use jiff::civil::Date;

use super::column::LogColumn;

/// The last day that a log may hold.
const MOST_DAYS: f64 = 3650.0;

/// The day of a row: its number, or its date counted from the start.
pub(super) fn of(
    cells: &[String],
    columns: &[Option<LogColumn>],
    start: Option<Date>,
) -> Result<f64, String> {
    let cell = |wanted: &LogColumn| {
        let mut pairs = columns.iter().zip(cells);
        let found =
            pairs.find(|(column, cell)| column.as_ref() == Some(wanted) && !cell.is_empty());
        found.map(|(_, cell)| cell.as_str())
    };
    let day = match (cell(&LogColumn::Day), cell(&LogColumn::Date)) {
        (Some(day), None) => numbered(day)?,
        (Some(day), Some(date)) => agreed(numbered(day)?, date, start)?,
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

fn numbered(text: &str) -> Result<f64, String> {
    let day = text.parse::<f64>().ok().filter(|day| day.is_finite());
    day.ok_or_else(|| format!("{text:?} is no day: write days since flooding, for example 21"))
}

/// The day of a row that has its date too, which has to be the same where it can be counted.
fn agreed(day: f64, date: &str, start: Option<Date>) -> Result<f64, String> {
    if start.is_none() {
        return Ok(day);
    }
    let of_date = counted(date, start)?;
    if (day.floor() - of_date).abs() < 0.5 {
        Ok(day)
    } else {
        Err(format!(
            "day {day} and {date}, which is day {of_date}: give one of them"
        ))
    }
}

fn counted(text: &str, start: Option<Date>) -> Result<f64, String> {
    let date = text.parse::<Date>().ok().filter(|date| date.year() >= 1);
    let date = date.ok_or_else(|| {
        format!("{text:?} is no date: write year-month-day, for example 2027-03-27")
    })?;
    let start = start.ok_or_else(|| {
        "a date, but the spec has no start: give start = 2027-03-06 there, or days here".to_owned()
    })?;
    Ok(f64::from((date - start).get_days()))
}
