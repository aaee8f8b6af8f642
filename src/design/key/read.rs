//! Readers of one value: each takes what stands at a key and returns what it
//! means, or why it does not fit.

use jiff::civil;

use super::{KeyEntry, KeyKind, Raw, nearest};
use crate::catalogue::{self, TankSize};
use crate::design::{LabelDose, TopUp, Violation};
use crate::units::error::{QuantityError, QuantityProblem};
use crate::units::list::either;
use crate::units::parse::two_of;
use crate::units::size::Size;
use crate::units::{Analyte, Concentration, Length, Quantity, Share, Volume};

/// A text that is not blank.
pub(crate) fn text(entry: &KeyEntry<'_>) -> Result<String, Violation> {
    let text = entry.text()?.trim();
    if text.is_empty() {
        return Err(Violation::new(
            "an empty text",
            entry.kind_rule(),
            entry.example(),
        ));
    }
    Ok(text.to_owned())
}

/// A number with its unit, within the key's limits.
pub(crate) fn quantity<Q: Quantity>(entry: &KeyEntry<'_>) -> Result<Q, Violation> {
    let value = Q::parse(entry.text()?).map_err(|error| unread(entry, &error))?;
    entry.within_limits(value.base(), |bound| Q::parse(bound).ok().map(Q::base))?;
    Ok(value)
}

/// A concentration on the analyte's own scale, within the key's limits.
pub(super) fn analyte(
    analyte: Analyte,
) -> impl Fn(&KeyEntry<'_>) -> Result<Concentration, Violation> {
    move |entry| {
        let value = analyte
            .parse(entry.text()?)
            .map_err(|error| unread(entry, &error))?;
        let own_scale = |bound: &str| analyte.parse(bound).ok().map(Concentration::mg_l);
        entry.within_limits(value.mg_l(), own_scale)?;
        Ok(value)
    }
}

/// Two concentrations of an analyte on its own scale, "0-0.25 mg/L", or one twice.
pub(crate) fn span(
    kind: Analyte,
) -> impl Fn(&KeyEntry<'_>) -> Result<[Concentration; 2], Violation> {
    move |entry| {
        let text = entry.text()?;
        let Some((low, high)) = two_of(text) else {
            return analyte(kind)(entry).map(|value| [value; 2]);
        };
        let one = |text: &str| {
            analyte(kind)(&KeyEntry {
                key: entry.key,
                value: Raw::Text(text),
            })
        };
        let (low, high) = (one(&low)?, one(high)?);
        if low > high {
            return Err(Violation::new(
                format!("{} falls", entry.value.shown()),
                "of two marks the lower stands first",
                entry.example(),
            ));
        }
        Ok([low, high])
    }
}

/// A plain number, within the key's limits.
pub(crate) fn number(entry: &KeyEntry<'_>) -> Result<f64, Violation> {
    let value = entry.plain_number()?;
    if !value.is_finite() {
        return Err(Violation::new(
            format!("{} is not a finite number", entry.value.shown()),
            format!("{} is a plain number", entry.key.leaf()),
            entry.example(),
        ));
    }
    entry.within_limits(value, |bound| bound.parse().ok())?;
    Ok(value)
}

/// A whole number from zero, within the key's limits.
pub(crate) fn count(entry: &KeyEntry<'_>) -> Result<u32, Violation> {
    let value = entry.plain_number()?;
    entry.within_limits(value, |bound| bound.parse().ok())?;
    let is_whole = matches!(entry.value, Raw::Number { is_whole: true, .. });
    if is_whole && (0.0..=f64::from(u32::MAX)).contains(&value) {
        return Ok(value as u32);
    }
    Err(Violation::new(
        format!("{} is not a whole number from 0", entry.value.shown()),
        entry.kind_rule(),
        entry.example(),
    ))
}

/// `true` or `false`.
pub(crate) fn flag(entry: &KeyEntry<'_>) -> Result<bool, Violation> {
    match entry.value {
        Raw::Flag(flag) => Ok(flag),
        _ => Err(entry.wrong_type()),
    }
}

/// A date without time.
pub(crate) fn date(entry: &KeyEntry<'_>) -> Result<civil::Date, Violation> {
    match entry.value {
        Raw::Moment {
            date: Some(date), ..
        } => Ok(date),
        _ => Err(entry.wrong_type()),
    }
}

/// One of the key's words, by what each means.
pub(crate) fn word<T>(
    meaning: impl Fn(&str) -> Option<T>,
) -> impl Fn(&KeyEntry<'_>) -> Result<T, Violation> {
    move |entry| {
        let word = entry.text()?;
        meaning(&word.replace([' ', '-'], "_")).ok_or_else(|| unknown_word(entry, word))
    }
}

fn unknown_word(entry: &KeyEntry<'_>, word: &str) -> Violation {
    let choices = match entry.key.kind {
        KeyKind::Word(choices) => choices,
        _ => &[],
    };
    let help = match nearest(word, choices.iter().copied()) {
        Some(near) => format!("did you mean \"{near}\"?"),
        None => entry.example(),
    };
    Violation::new(
        format!("{} is not one of its words", entry.value.shown()),
        format!("{} is {}", entry.key.leaf(), either(choices)),
        help,
    )
}

/// That a text is not the quantity its key takes.
pub(crate) fn unread(entry: &KeyEntry<'_>, error: &QuantityError) -> Violation {
    let found = error.problem.to_string();
    if matches!(error.problem, QuantityProblem::Negative { .. }) {
        return Violation::new(found, error.way_out(), entry.example());
    }
    let rule = format!("{} is {}", entry.key.leaf(), error.quantity);
    Violation::new(found, rule, error.way_out())
}

/// Three lengths, each within the key's limits.
pub(crate) fn size(entry: &KeyEntry<'_>) -> Result<Size, Violation> {
    let text = entry.text()?;
    let size = Size::parse(text).map_err(|error| Violation {
        rule: "size is length x width x height with the unit".to_owned(),
        help: sold_as(text).unwrap_or_else(|| entry.example()),
        ..unread(entry, &error)
    })?;
    for length in [size.length, size.width, size.height] {
        entry.within_limits(length.m(), |bound| Length::parse(bound).ok().map(Length::m))?;
    }
    Ok(size)
}

/// A dose to an amount of water, as labels have it: "5 mL per 40 L", "5 mL / 40 L".
pub(crate) fn dose(entry: &KeyEntry<'_>) -> Result<LabelDose, Violation> {
    let text = entry.text()?;
    let Some((dose, per)) = text.split_once(" per ").or_else(|| text.split_once('/')) else {
        return Err(Violation::new(
            format!("{} says no amount of water", entry.value.shown()),
            entry.kind_rule(),
            entry.example(),
        ));
    };
    let volume = |text: &str| Volume::parse(text).map_err(|error| unread(entry, &error));
    let label = LabelDose {
        dose: volume(dose)?,
        per: volume(per)?,
    };
    let ml_per_litre = label.dose.ml() / label.per.litres();
    entry.within_limits(ml_per_litre, |bound| bound.parse().ok())?;
    if ml_per_litre.is_finite() {
        return Ok(label);
    }
    Err(Violation::new(
        format!("{} is a dose to no water", entry.value.shown()),
        entry.kind_rule(),
        entry.example(),
    ))
}

/// Tap water, soft water, or the share of soft water in a mixture of both.
pub(crate) fn top_up(entry: &KeyEntry<'_>) -> Result<TopUp, Violation> {
    let softened = match entry.text()? {
        "tap" => Share::ZERO,
        "soft" => Share::from_fraction(1.0),
        text if text.starts_with(char::is_alphabetic) => return Err(entry.wrong_type()),
        _ => quantity(entry)?,
    };
    Ok(TopUp { softened })
}

/// The lines to write for a size by its trade name: such sizes are outside the glass.
fn sold_as(name: &str) -> Option<String> {
    let sold = catalogue::find::<TankSize>(name).ok()?;
    Some(format!(
        "write size = \"{}\", outside = true, wall = \"{}\"; makers differ, so measure your own",
        sold.outside.text, sold.wall.text
    ))
}
