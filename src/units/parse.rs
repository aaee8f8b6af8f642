//! Reading a number with its unit, forgiving what cannot mislead.

use super::error::{QuantityError, QuantityProblem};
use super::quantity::{Quantity, Unit};

/// Reads `text` as the quantity `Q`.
pub(super) fn quantity<Q: Quantity>(text: &str) -> Result<Q, QuantityError> {
    let fail = |problem| QuantityError {
        quantity: Q::NAME,
        example: Q::EXAMPLE,
        problem,
    };
    let (number, unit_text) = split_number(text).map_err(fail)?;
    let unit = find_unit::<Q>(text, unit_text).map_err(fail)?;
    let base = (number + unit.shift) * unit.factor;
    check_value(text, base, Q::SIGNED).map_err(fail)?;
    Ok(Q::from_base(rounded(base)))
}

/// A number to thirteen digits: 24 in and 60.96 cm are one length to the last bit, so that
/// nothing computed from them differs.
fn rounded(value: f64) -> f64 {
    format!("{value:.12e}").parse().unwrap_or(value)
}

/// Refuses what is not finite, and what is below zero unless `signed`.
pub(super) fn check_value(text: &str, value: f64, signed: bool) -> Result<(), QuantityProblem> {
    let text = text.trim().to_owned();
    if !value.is_finite() {
        Err(QuantityProblem::NotFinite { text })
    } else if value < 0.0 && !signed {
        Err(QuantityProblem::Negative { text })
    } else {
        Ok(())
    }
}

/// The two numbers of a text such as `0-0.25 mg/L`, each with the unit; none where there is
/// but one.
pub(crate) fn two_of(text: &str) -> Option<(String, &str)> {
    let (low, high) = text.split_once(['-', '–'])?;
    low.trim().parse::<f64>().ok()?;
    let (_, unit) = split_number(high).ok()?;
    Some((format!("{} {unit}", low.trim()), high.trim()))
}

/// Splits a text into its number (`2`, `1.5`, `1/2`, `1 1/2`) and the rest.
pub(crate) fn split_number(text: &str) -> Result<(f64, &str), QuantityProblem> {
    let trimmed = text.trim();
    let lower = trimmed.to_ascii_lowercase();
    if ["nan", "inf", "+inf", "-inf"]
        .iter()
        .any(|word| lower.starts_with(word))
    {
        return Err(QuantityProblem::NotFinite {
            text: trimmed.to_owned(),
        });
    }
    let no_number = || QuantityProblem::NoNumber {
        text: trimmed.to_owned(),
    };
    let (sign, unsigned) = match trimmed.strip_prefix(['-', '−']) {
        Some(rest) => (-1.0, rest.trim_start()),
        None => (1.0, trimmed.strip_prefix('+').unwrap_or(trimmed)),
    };
    let length = decimal_length(unsigned);
    let whole: f64 = unsigned[..length].parse().map_err(|_| no_number())?;
    let rest = &unsigned[length..];
    if rest.starts_with(',') {
        return Err(QuantityProblem::Comma {
            text: trimmed.to_owned(),
        });
    }
    let (value, rest) = match fraction(whole, rest) {
        Some((value, rest)) => (value, rest),
        None => (whole, rest),
    };
    Ok((sign * value, rest.trim()))
}

/// How many bytes of `text` are digits, a point and an exponent.
fn decimal_length(text: &str) -> usize {
    let digits = |from: usize| from + text[from..].bytes().take_while(u8::is_ascii_digit).count();
    let mut end = digits(0);
    if text[end..].starts_with('.') {
        end = digits(end + 1);
    }
    if text[end..].starts_with(['e', 'E']) {
        let sign = usize::from(text[end + 1..].starts_with(['+', '-']));
        let exponent_end = digits(end + 1 + sign);
        if exponent_end > end + 1 + sign {
            end = exponent_end;
        }
    }
    end
}

/// Continues `1` by `/2`, ` 1/2` or `-1/2`.
fn fraction(whole: f64, rest: &str) -> Option<(f64, &str)> {
    if let Some(after) = rest.strip_prefix('/') {
        let (below, rest) = leading_integer(after)?;
        return Some((whole / below, rest));
    }
    let (above, after) = leading_integer(rest.strip_prefix('-').unwrap_or(rest).trim_start())?;
    let (below, rest) = leading_integer(after.strip_prefix('/')?)?;
    Some((whole + above / below, rest))
}

fn leading_integer(text: &str) -> Option<(f64, &str)> {
    let length = text.bytes().take_while(u8::is_ascii_digit).count();
    let value = text[..length].parse().ok()?;
    Some((value, &text[length..]))
}

/// The unit a spelling stands for.
fn find_unit<Q: Quantity>(text: &str, spelled: &str) -> Result<Unit, QuantityProblem> {
    if spelled.is_empty() {
        return Err(QuantityProblem::NoUnit {
            text: text.trim().to_owned(),
        });
    }
    let normal = normalised(spelled);
    let singular = normal.strip_suffix('s').unwrap_or(&normal);
    for candidate in [normal.as_str(), singular] {
        if let Some(ambiguity) = Q::AMBIGUOUS.iter().find(|a| a.spelling == candidate) {
            return Err(QuantityProblem::AmbiguousUnit {
                unit: spelled.to_owned(),
                choices: ambiguity.choices.to_vec(),
            });
        }
        if let Some(unit) = Q::UNITS.iter().find(|unit| is_spelling(unit, candidate)) {
            return Ok(*unit);
        }
    }
    Err(QuantityProblem::UnknownUnit {
        unit: spelled.to_owned(),
        choices: Q::UNITS.iter().map(|unit| unit.name).collect(),
    })
}

fn is_spelling(unit: &Unit, candidate: &str) -> bool {
    normalised(unit.name) == candidate || unit.also.contains(&candidate)
}

/// Lower case, one blank between words, plain digits and letters for raised
/// digits and the micro sign.
pub(super) fn normalised(unit: &str) -> String {
    let plain: String = unit
        .chars()
        .map(|c| match c {
            '²' => '2',
            '³' => '3',
            'µ' | 'μ' => 'u',
            '_' | '·' | '⋅' => ' ',
            other => other,
        })
        .filter(|c| *c != '^' && *c != '.')
        .flat_map(char::to_lowercase)
        .collect();
    plain
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .replace(" / ", "/")
}
