//! What a cell of a log says.

use crate::diagnosis::{Measurand, Reported};
use crate::units::parse::two_of;
use crate::units::{
    Alkalinity, Analyte, Concentration, Conductivity, Hardness, Quantity, QuantityError,
    Temperature,
};
use crate::water::card::Card;

/// Cells that hold nothing.
const EMPTY: [&str; 6] = ["", "-", "--", "n/a", "na", "?"];
/// Words for nothing found.
const NOTHING: [&str; 4] = ["none", "nd", "n.d.", "not detectable"];
/// Words for less than the first mark of a card.
const TRACE: [&str; 3] = ["trace", "traces", "tr"];

/// What a cell says; nothing where it is empty.
pub(super) fn reported(
    subject: Measurand,
    cell: &str,
    unit: &str,
) -> Result<Option<Reported>, String> {
    let lower = cell.to_lowercase();
    if EMPTY.contains(&lower.as_str()) {
        return Ok(None);
    }
    if let Some(analyte) = subject.analyte() {
        if TRACE.contains(&lower.as_str()) {
            return Ok(Some(Reported::Below(Card::first_mark(analyte))));
        }
        if NOTHING.contains(&lower.as_str()) {
            return Ok(Some(Reported::Value(0.0)));
        }
    }
    let below = cell.strip_prefix(['<', '≤']);
    let above = cell
        .strip_prefix(['>', '≥'])
        .or_else(|| cell.strip_suffix('+'));
    if let Some((low, high)) = two_of(cell) {
        let one = |text: &str| amount(subject, text, unit);
        return Ok(Some(Reported::Between(one(low.trim())?, one(high)?)));
    }
    let number = |text: &str| amount(subject, text.trim().trim_start_matches('='), unit);
    Ok(Some(match (below, above) {
        (Some(text), _) => Reported::Below(number(text)?),
        (None, Some(text)) => Reported::Above(number(text)?),
        (None, None) => Reported::Value(number(cell)?),
    }))
}

/// The number of a cell in the unit of its subject, by the cell's own unit or the column's.
fn amount(subject: Measurand, text: &str, unit: &str) -> Result<f64, String> {
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
        Measurand::Ph => within(text, text.parse::<f64>().ok(), 3.0, 11.0, "pH"),
        Measurand::Temperature => {
            let celsius = Temperature::parse(whole).map_err(says)?.celsius();
            within(whole, Some(celsius), 0.0, 40.0, "a water temperature in C")
        }
        Measurand::Oxygen => dissolved(whole, 50.0, "oxygen in mg/L"),
        Measurand::Potassium => dissolved(whole, 1000.0, "potassium in mg/L"),
        Measurand::Iron => dissolved(whole, 100.0, "iron in mg/L"),
        Measurand::Hardness => {
            let read = Hardness::parse(whole).map_err(says)?.dgh();
            within(whole, Some(read), 0.0, 100.0, "a hardness in dGH")
        }
        Measurand::Alkalinity => {
            let read = Alkalinity::parse(whole).map_err(says)?.dkh();
            within(whole, Some(read), 0.0, 60.0, "an alkalinity in dKH")
        }
        Measurand::Conductivity => {
            let read = Conductivity::parse(whole).map_err(says)?.us_cm();
            within(whole, Some(read), 0.0, 20_000.0, "a conductivity in uS/cm")
        }
        Measurand::Ammonia => nutrient(Analyte::Ammonia, whole, 1000.0),
        Measurand::Nitrite => nutrient(Analyte::Nitrite, whole, 1000.0),
        Measurand::Nitrate => nutrient(Analyte::Nitrate, whole, 10_000.0),
        Measurand::Phosphate => nutrient(Analyte::Phosphate, whole, 1000.0),
    }
}

fn dissolved(text: &str, most: f64, what: &str) -> Result<f64, String> {
    let read = Concentration::parse(text).map_err(|error| error.to_string())?;
    within(text, Some(read.mg_l()), 0.0, most, what)
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
