//! Values of a spec as they were written, without their format.

use jiff::civil;
use toml::de::DeValue;
use toml::value::Datetime;

use crate::design::key::Raw;

/// A value without its format.
pub(super) fn raw<'d>(value: &'d DeValue<'d>) -> Raw<'d> {
    match value {
        DeValue::String(text) => Raw::Text(text),
        DeValue::Integer(integer) => Raw::Number {
            value: i64::from_str_radix(integer.as_str(), integer.radix())
                .ok()
                .map(|value| value as f64),
            is_whole: true,
            written: integer.to_string(),
        },
        DeValue::Float(float) => Raw::Number {
            value: float.as_str().parse().ok(),
            is_whole: false,
            written: float.to_string(),
        },
        DeValue::Boolean(flag) => Raw::Flag(*flag),
        DeValue::Datetime(moment) => Raw::Moment {
            date: date(moment),
            written: moment.to_string(),
        },
        DeValue::Array(_) => Raw::List,
        DeValue::Table(_) => Raw::Table,
    }
}

/// The date of a moment that is no more than a date, from the year 1 on.
fn date(moment: &Datetime) -> Option<civil::Date> {
    if moment.time.is_some() || moment.offset.is_some() {
        return None;
    }
    let date = moment.date?;
    let year = i16::try_from(date.year).ok().filter(|year| *year >= 1)?;
    let month = i8::try_from(date.month).ok()?;
    let day = i8::try_from(date.day).ok()?;
    civil::Date::new(year, month, day).ok()
}
