//! How what is typed at an option is read.

use crate::plan::OnDay;
use crate::study::Shard;
use crate::units::{Duration, Quantity, QuantityError, Share, Volume};

/// Five years; beyond, nothing that the model knows changes.
pub(super) const MOST_DAYS: i64 = 1825;

/// A day as typed.
pub(super) fn on_day(text: &str) -> Result<OnDay, String> {
    match text {
        "leanest" => Ok(OnDay::Leanest),
        "filling" => Ok(OnDay::Filling),
        "flush-peak" => Ok(OnDay::FlushPeak),
        "grown-in" => Ok(OnDay::GrownIn),
        number => match number.parse() {
            Ok(day) if i64::from(day) <= MOST_DAYS => Ok(OnDay::Day(day)),
            _ => Err(format!(
                "a day is a whole number from 0 to {MOST_DAYS}, or leanest, filling, flush-peak or grown-in"
            )),
        },
    }
}

/// A share of the bed as typed.
pub(super) fn stirred(text: &str) -> Result<Share, String> {
    within(text, Share::ZERO, Share::from_fraction(1.0))
        .map_err(|error| error.unwrap_or("a share of the bed is 0 % to 100 %".to_owned()))
}

/// A time as typed.
pub(super) fn away(text: &str) -> Result<Duration, String> {
    within(text, Duration::from_hours(1.0), Duration::from_days(365.0))
        .map_err(|error| error.unwrap_or("a time away is 1 h to 365 d".to_owned()))
}

/// A bucket as typed.
pub(super) fn bucket(text: &str) -> Result<Volume, String> {
    within(text, Volume::from_litres(0.1), Volume::from_litres(1000.0))
        .map_err(|error| error.unwrap_or("a bucket holds 0.1 L to 1000 L".to_owned()))
}

/// A quantity between two; what is wrong with its text, or nothing where it lies outside.
fn within<T: Quantity>(text: &str, least: T, most: T) -> Result<T, Option<String>> {
    let value = T::parse(text).map_err(|error| Some(error.to_string()))?;
    if (least.base()..=most.base()).contains(&value.base()) {
        Ok(value)
    } else {
        Err(None)
    }
}

/// A volume as typed; a bare number is in litres.
pub(super) fn litres(text: &str) -> Result<Volume, QuantityError> {
    let is_bare = text.trim().parse::<f64>().is_ok();
    Volume::parse(&if is_bare {
        format!("{text} L")
    } else {
        text.to_owned()
    })
}

/// A share of the rows as typed.
pub(super) fn shard(text: &str) -> Result<Shard, String> {
    let read = || {
        let (part, of) = text.split_once('/')?;
        let (part, of) = (part.trim().parse().ok()?, of.trim().parse().ok()?);
        (part >= 1 && part <= of).then_some(Shard { part, of })
    };
    read().ok_or_else(|| "a share is I/N with I from 1 to N, for example 2/4".to_owned())
}
