//! Readers of one value: each takes what stands at a key and returns what it
//! means, or why it does not fit.

use jiff::civil;
use toml::de::DeValue;

use super::key::{Key, Kind};
use super::misfit::{Misfit, listed, nearest};
use crate::units::error::{QuantityError, QuantityProblem};
use crate::units::{Analyte, Concentration, Quantity};

/// The most characters that a text of a spec has: a name, a quantity, a word.
pub(super) const MOST_CHARACTERS: usize = 200;

/// What stands at a key.
#[derive(Clone, Copy)]
pub(super) struct Entry<'d> {
    /// The key.
    pub(super) key: &'static Key,
    /// The value.
    pub(super) value: &'d DeValue<'d>,
}

impl Entry<'_> {
    /// The text of the value, or why it is none.
    pub(super) fn text(&self) -> Result<&str, Misfit> {
        let text = self.value.as_str().ok_or_else(|| self.wrong_type())?;
        match text.chars().count() {
            length if length > MOST_CHARACTERS => Err(self.too_long(length)),
            _ => Ok(text),
        }
    }

    fn too_long(&self, length: usize) -> Misfit {
        Misfit::new(
            format!("a text of {length} characters is too long"),
            format!(
                "{} is at most {MOST_CHARACTERS} characters long",
                self.key.leaf()
            ),
            self.example(),
        )
    }

    /// That the value is of another type than its key takes.
    pub(super) fn wrong_type(&self) -> Misfit {
        Misfit::new(described(self.value), self.kind_rule(), self.example())
    }

    /// The rule that the key's kind makes.
    fn kind_rule(&self) -> String {
        format!("{} is {}", self.key.leaf(), kind_words(self.key.kind))
    }

    /// "for example wall = "5 mm"".
    pub(super) fn example(&self) -> String {
        format!("for example {}", self.key.written())
    }

    /// The rule that the key's limits make.
    fn limit_rule(&self) -> String {
        let units = match self.key.kind {
            Kind::BagSize => " litres or kilograms",
            Kind::Amount => " grams or portions",
            _ => "",
        };
        format!("{} is {}{units}", self.key.leaf(), self.key.limits.words())
    }

    /// Holds a value against the key's limits, which `bound` reads.
    pub(super) fn within_limits(
        &self,
        value: f64,
        bound: impl Fn(&str) -> Option<f64>,
    ) -> Result<(), Misfit> {
        let limits = self.key.limits;
        let too_low = limits
            .low
            .and_then(&bound)
            .is_some_and(|low| value < low || (limits.open && value <= low));
        let too_high = limits
            .high
            .and_then(&bound)
            .is_some_and(|high| value > high);
        let side = match (too_low, too_high) {
            (true, _) => "low",
            (_, true) => "high",
            _ => return Ok(()),
        };
        Err(Misfit::new(
            format!("{} is too {side}", shown(self.value)),
            self.limit_rule(),
            self.example(),
        ))
    }
}

/// A text that is not blank.
pub(super) fn text(entry: &Entry<'_>) -> Result<String, Misfit> {
    let text = entry.text()?.trim();
    if text.is_empty() {
        return Err(Misfit::new(
            "an empty text",
            entry.kind_rule(),
            entry.example(),
        ));
    }
    Ok(text.to_owned())
}

/// A number with its unit, within the key's limits.
pub(super) fn quantity<Q: Quantity>(entry: &Entry<'_>) -> Result<Q, Misfit> {
    let value = Q::parse(entry.text()?).map_err(|error| unread(entry, &error))?;
    entry.within_limits(value.base(), |bound| Q::parse(bound).ok().map(Q::base))?;
    Ok(value)
}

/// A concentration on the analyte's own scale, within the key's limits.
pub(super) fn analyte(analyte: Analyte) -> impl Fn(&Entry<'_>) -> Result<Concentration, Misfit> {
    move |entry| {
        let value = analyte
            .parse(entry.text()?)
            .map_err(|error| unread(entry, &error))?;
        let own_scale = |bound: &str| analyte.parse(bound).ok().map(Concentration::mg_l);
        entry.within_limits(value.mg_l(), own_scale)?;
        Ok(value)
    }
}

/// A plain number, within the key's limits.
pub(super) fn number(entry: &Entry<'_>) -> Result<f64, Misfit> {
    let value = plain_number(entry.value).ok_or_else(|| entry.wrong_type())?;
    if !value.is_finite() {
        return Err(Misfit::new(
            format!("{} is not a finite number", shown(entry.value)),
            format!("{} is a plain number", entry.key.leaf()),
            entry.example(),
        ));
    }
    entry.within_limits(value, |bound| bound.parse().ok())?;
    Ok(value)
}

/// A whole number from zero, within the key's limits.
pub(super) fn count(entry: &Entry<'_>) -> Result<u32, Misfit> {
    let value = plain_number(entry.value).ok_or_else(|| entry.wrong_type())?;
    entry.within_limits(value, |bound| bound.parse().ok())?;
    let is_whole = matches!(entry.value, DeValue::Integer(_));
    if is_whole && (0.0..=f64::from(u32::MAX)).contains(&value) {
        return Ok(value as u32);
    }
    Err(Misfit::new(
        format!("{} is not a whole number from 0", shown(entry.value)),
        entry.kind_rule(),
        entry.example(),
    ))
}

/// `true` or `false`.
pub(super) fn flag(entry: &Entry<'_>) -> Result<bool, Misfit> {
    entry.value.as_bool().ok_or_else(|| entry.wrong_type())
}

/// A date without time.
pub(super) fn date(entry: &Entry<'_>) -> Result<civil::Date, Misfit> {
    let moment = entry
        .value
        .as_datetime()
        .filter(|moment| moment.time.is_none() && moment.offset.is_none())
        .ok_or_else(|| entry.wrong_type())?;
    moment
        .date
        .and_then(|date| {
            let year = i16::try_from(date.year).ok()?;
            let month = i8::try_from(date.month).ok()?;
            let day = i8::try_from(date.day).ok()?;
            civil::Date::new(year, month, day).ok()
        })
        .ok_or_else(|| entry.wrong_type())
}

/// One of the key's words, by what each means.
pub(super) fn word<T>(
    meaning: impl Fn(&str) -> Option<T>,
) -> impl Fn(&Entry<'_>) -> Result<T, Misfit> {
    move |entry| {
        let word = entry.text()?;
        meaning(&word.replace([' ', '-'], "_")).ok_or_else(|| unknown_word(entry, word))
    }
}

fn unknown_word(entry: &Entry<'_>, word: &str) -> Misfit {
    let choices = match entry.key.kind {
        Kind::Word(choices) => choices,
        _ => &[],
    };
    let help = match nearest(word, choices.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None => entry.example(),
    };
    Misfit::new(
        format!("{} is not one of its words", shown(entry.value)),
        format!("{} is {}", entry.key.leaf(), listed(choices)),
        help,
    )
}

/// That a text is not the quantity its key takes.
pub(super) fn unread(entry: &Entry<'_>, error: &QuantityError) -> Misfit {
    let found = error.problem.to_string();
    if matches!(error.problem, QuantityProblem::Negative { .. }) {
        return Misfit::new(found, error.way_out(), entry.example());
    }
    let rule = format!("{} is {}", entry.key.leaf(), error.quantity);
    Misfit::new(found, rule, error.way_out())
}

fn plain_number(value: &DeValue<'_>) -> Option<f64> {
    match value {
        DeValue::Integer(integer) => i64::from_str_radix(integer.as_str(), integer.radix())
            .ok()
            .map(|value| value as f64),
        DeValue::Float(float) => float.as_str().parse().ok(),
        _ => None,
    }
}

/// The value as written, cut where it is long.
pub(super) fn shown(value: &DeValue<'_>) -> String {
    /// Enough to recognise a value by.
    const LONGEST: usize = 40;
    match value {
        DeValue::String(text) if text.chars().count() > LONGEST => {
            let start: String = text.chars().take(LONGEST).collect();
            format!("\"{}...\"", start.escape_debug())
        }
        DeValue::String(text) => format!("\"{}\"", text.escape_debug()),
        DeValue::Integer(integer) => integer.to_string(),
        DeValue::Float(float) => float.to_string(),
        DeValue::Boolean(flag) => flag.to_string(),
        DeValue::Datetime(moment) => moment.to_string(),
        DeValue::Array(_) => "a list".to_owned(),
        DeValue::Table(_) => "a table".to_owned(),
    }
}

/// The value with its type, as found where another type belongs.
fn described(value: &DeValue<'_>) -> String {
    let shown = shown(value);
    match value {
        DeValue::String(_) => format!("{shown} is text"),
        DeValue::Integer(_) | DeValue::Float(_) => format!("{shown} is a bare number"),
        DeValue::Boolean(_) => format!("{shown} is a yes or no"),
        DeValue::Datetime(_) => format!("{shown} is a date or time"),
        DeValue::Array(_) | DeValue::Table(_) => format!("found {shown}"),
    }
}

/// What a key of this kind takes, in words.
fn kind_words(kind: Kind) -> String {
    match kind {
        Kind::Text => "a text in quotes".to_owned(),
        Kind::Date => "a date without quotes, year-month-day".to_owned(),
        Kind::Flag => "true or false".to_owned(),
        Kind::Number => "a plain number without quotes".to_owned(),
        Kind::Count => "a whole number from 0, without quotes".to_owned(),
        Kind::Quantity(name) => format!("{name} with its unit, in quotes"),
        Kind::Size => "length x width x height with the unit, in quotes".to_owned(),
        Kind::Depth => "a length with its unit in quotes, or a table of them".to_owned(),
        Kind::BagSize => "a volume or a mass with its unit, in quotes".to_owned(),
        Kind::Amount => "a cover, a fresh mass or a number of portions, in quotes".to_owned(),
        Kind::Word(words) => listed(words),
        Kind::Name(list) => format!("a name from the list of {list}, in quotes"),
        Kind::Names(list) => format!("a list of names from the list of {list}, each in quotes"),
        Kind::Section => "a section".to_owned(),
        Kind::Sections => "a list of sections".to_owned(),
    }
}
