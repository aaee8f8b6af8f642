//! Results and conditions as they are typed.

use super::failure::Failure;
use crate::design::Violation;
use crate::finding::Status;
use crate::study::{Bound, Condition, Relation, ResultColumn, UnknownResult};

/// The signs, longer ones before those they begin with.
const SIGNS: [(&str, Relation); 7] = [
    (">=", Relation::AtLeast),
    ("<=", Relation::AtMost),
    ("!=", Relation::Unequal),
    ("==", Relation::Equal),
    (">", Relation::Above),
    ("<", Relation::Below),
    ("=", Relation::Equal),
];

/// A key or value that is refused.
pub(super) fn refused(violation: &Violation) -> Failure {
    Failure::BadInput(format!(
        "error: {}: {}: {}\nhelp: {}",
        violation.key, violation.found, violation.rule, violation.help
    ))
}

/// The result of a name.
///
/// # Errors
/// When there is no such result.
pub(super) fn column(name: &str) -> Result<ResultColumn, Failure> {
    ResultColumn::of(name).map_err(|unknown| unknown_result(&unknown))
}

pub(super) fn unknown_result(unknown: &UnknownResult) -> Failure {
    let help = match &unknown.suggestion {
        Some(near) => format!("did you mean {near}?"),
        None => "results are named by their path in plan --format json, such as weight.total_kg"
            .to_owned(),
    };
    Failure::BadInput(format!(
        "error: no result \"{}\"\nhelp: {help}",
        unknown.name.escape_debug()
    ))
}

/// Reads `RESULT>=V`.
///
/// # Errors
/// When the result, the sign or the bound cannot be read.
pub(super) fn condition(text: &str) -> Result<Condition, Failure> {
    let place = text.find(['<', '>', '=', '!']);
    let found = place.and_then(|place| {
        let (name, rest) = text.split_at(place);
        let (sign, comparison) = SIGNS.iter().find(|(sign, _)| rest.starts_with(sign))?;
        Some((name, *comparison, rest[sign.len()..].trim()))
    });
    let Some((name, comparison, bound)) = found else {
        return Err(unreadable(
            text,
            "a condition is a result, a sign and a bound",
        ));
    };
    let column = column(name)?;
    let bound = read_bound(text, &column, bound)?;
    Ok(Condition {
        column,
        comparison,
        bound,
    })
}

fn read_bound(text: &str, column: &ResultColumn, bound: &str) -> Result<Bound, Failure> {
    if column.is_status() {
        let statuses = [Status::Ok, Status::Note, Status::Watch, Status::Act];
        return if statuses.iter().any(|status| status.word() == bound) {
            Ok(Bound::Word(bound.to_owned()))
        } else {
            Err(unreadable(text, "a status is ok, note, watch or act"))
        };
    }
    if column.is_word() {
        return Ok(Bound::Word(bound.to_owned()));
    }
    let number = bound.parse::<f64>().ok().filter(|bound| bound.is_finite());
    number.map(Bound::Number).ok_or_else(|| {
        unreadable(
            text,
            "a bound is a plain number, in the unit that the result's name ends in",
        )
    })
}

fn unreadable(text: &str, rule: &str) -> Failure {
    Failure::BadInput(format!(
        "error: cannot read \"{}\": {rule}\nhelp: for example planting.index>=2 or status<=note",
        text.escape_debug()
    ))
}
