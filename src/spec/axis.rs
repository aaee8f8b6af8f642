//! What is varied, from the text `KEY=A..B/N` or `KEY=x,y,z`.

use std::sync::Arc;

use super::setting::{knob, setting};
use crate::design::{Knob, Setting, Violation};
use crate::study::{Axis, AxisRange, Level, Levels, Shown, Spacing};
use crate::units::parse::split_number;

/// Reads what is varied, and through which values.
///
/// `A..B/N` are N points from A to B, both included, and `A..B/N log` spaces them by equal
/// ratios; `A..B` without N is a range to draw samples from; `x,y,z` are the values
/// themselves. The unit may stand at B alone.
///
/// # Errors
/// When the key may not be varied or a value is not one of it.
///
/// # Example
/// ```
/// let axis = lentic::spec::axis("cap.depth=20..60mm/5")?;
/// assert_eq!(axis.name, "cap.depth_mm");
/// assert_eq!(axis.count(), Some(5));
/// assert_eq!(lentic::spec::axis("cap.material=play_sand, filter_sand")?.count(), Some(2));
/// # Ok::<(), lentic::design::Violation>(())
/// ```
pub fn axis(text: &str) -> Result<Axis, Violation> {
    let (path, values) = text.split_once('=').ok_or_else(|| {
        unfit(
            "no values are given",
            "what is varied is KEY=A..B/N or KEY=x,y,z",
        )
        .at(text.trim())
    })?;
    let knob = knob(path)?;
    if values.contains("..") {
        ranged(knob, values)
    } else {
        listed(knob, values)
    }
}

/// Reads a key and the two ends that it goes between.
///
/// # Errors
/// As [`axis`].
///
/// # Example
/// ```
/// let axis = lentic::spec::range("cap.depth", "10 mm", "60 mm")?;
/// assert_eq!((axis.knob.path().as_str(), axis.unit.as_str()), ("cap.depth", "mm"));
/// # Ok::<(), lentic::design::Violation>(())
/// ```
pub fn range(key: &str, from: &str, to: &str) -> Result<Axis, Violation> {
    between(knob(key)?, from, to, None, Spacing::Even)
}

fn ranged(knob: Knob, text: &str) -> Result<Axis, Violation> {
    let (text, spacing) = match text.trim().strip_suffix("log") {
        Some(rest) => (rest, Spacing::Log),
        None => (text, Spacing::Even),
    };
    let (ends, points) = count(knob, text)?;
    let (low, high) = ends.split_once("..").unwrap_or((ends, ""));
    between(knob, low, high, points, spacing)
}

/// A range between two ends written as in a spec; the unit may stand at the second alone.
fn between(
    knob: Knob,
    low: &str,
    high: &str,
    points: Option<u32>,
    spacing: Spacing,
) -> Result<Axis, Violation> {
    let (low, low_unit) = end(knob, low)?;
    let (high, unit) = end(knob, high)?;
    if !low_unit.is_empty() && low_unit != unit {
        let found = format!("one end is in {low_unit}, the other in {unit}");
        return Err(unfit(found, "both ends of a range are in one unit").at(knob.path()));
    }
    if spacing == Spacing::Log && (low <= 0.0 || high <= 0.0) {
        let rule = "both ends of a log range are above zero";
        return Err(unfit("an end at or below zero", rule).at(knob.path()));
    }
    // Both ends are values that a spec takes.
    let (first, _) = (at(knob, unit, low)?, at(knob, unit, high)?);
    let unit = unit.to_owned();
    Ok(Axis {
        knob,
        name: name(knob, &unit),
        unit: unit.clone(),
        levels: Levels::Range(AxisRange {
            low,
            high,
            spacing,
            points,
            whole: first.is_whole(),
            read: Arc::new(move |number| at(knob, &unit, number)),
        }),
    })
}

/// One end: its number and its unit.
fn end(knob: Knob, text: &str) -> Result<(f64, &str), Violation> {
    split_number(text).map_err(|_| {
        let found = format!("\"{}\" is no number with its unit", text.trim());
        unfit(found, "a range goes from one number to another").at(knob.path())
    })
}

fn unfit(found: impl Into<String>, rule: &str) -> Violation {
    Violation::new(found, rule, "for example cap.depth=20..60mm/5")
}

/// The text before `/N`, and N.
fn count(knob: Knob, text: &str) -> Result<(&str, Option<u32>), Violation> {
    // "umol/m2/s" has strokes too: a count is what follows the last one, if it is a number.
    let Some((ends, number)) = text.rsplit_once('/') else {
        return Ok((text, None));
    };
    match number.trim().parse::<u32>() {
        Ok(points) if points >= 1 => Ok((ends, Some(points))),
        Ok(_) => Err(unfit("0 points", "a range has at least 1 point").at(knob.path())),
        Err(_) => Ok((text, None)),
    }
}

/// The setting by a number in the unit of its range.
fn at(knob: Knob, unit: &str, number: f64) -> Result<Setting, Violation> {
    setting(knob, format!("{number} {unit}").trim())
}

fn listed(knob: Knob, text: &str) -> Result<Axis, Violation> {
    let texts: Vec<&str> = text.split(',').map(str::trim).collect();
    let settings = texts.iter().map(|text| setting(knob, text));
    let settings = settings.collect::<Result<Vec<Setting>, Violation>>()?;
    let unit = one_unit(&texts);
    let level = |(text, setting): (&&str, Setting)| {
        let number = unit.and_then(|_| split_number(text).ok());
        Level {
            shown: match number {
                Some((number, _)) => Shown::Number(number),
                None => Shown::Text((*text).to_owned()),
            },
            setting,
        }
    };
    let levels = texts.iter().zip(settings).map(level).collect();
    let unit = unit.unwrap_or_default();
    Ok(Axis {
        knob,
        name: name(knob, unit),
        unit: unit.to_owned(),
        levels: Levels::Listed(levels),
    })
}

/// The unit that all of some texts have after a plain number.
fn one_unit<'t>(texts: &[&'t str]) -> Option<&'t str> {
    let mut units = texts.iter().map(|text| {
        let (_, unit) = split_number(text).ok()?;
        // A size has numbers in its unit.
        (!unit.starts_with(|c: char| c.is_ascii_digit()) && !unit.contains(" x ")).then_some(unit)
    });
    let first = units.next()??;
    units.all(|unit| unit == Some(first)).then_some(first)
}

/// The name of a column: `cap.depth_mm`, `plants[0].amount_pct`.
fn name(knob: Knob, unit: &str) -> String {
    let mut suffix = String::new();
    for c in unit.chars() {
        match c {
            '%' => suffix.push_str("pct"),
            'µ' | 'μ' => suffix.push('u'),
            '²' => suffix.push('2'),
            '³' => suffix.push('3'),
            c if c.is_alphanumeric() => suffix.extend(c.to_lowercase()),
            _ => suffix.push('_'),
        }
    }
    if suffix.is_empty() {
        knob.path()
    } else {
        format!("{}_{suffix}", knob.path())
    }
}
