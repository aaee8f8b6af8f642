//! How much of a plant, as a keeper writes it.

use super::read::unread;
use super::{KeyEntry, nearest};
use crate::catalogue::Portion;
use crate::design::{Amount, Violation};
use crate::units::error::{QuantityError, QuantityProblem};
use crate::units::list::either;
use crate::units::show::significant;
use crate::units::{Mass, Quantity, Share, parse};

/// A cover, a fresh mass, or a number of portions.
pub(crate) fn amount(entry: &KeyEntry<'_>) -> Result<Amount, Violation> {
    let text = entry.text()?;
    let fail = |problem| {
        let error = QuantityError {
            quantity: "an amount",
            example: entry.key.example,
            problem,
        };
        unread(entry, &error)
    };
    let (number, unit) = parse::split_number(text).map_err(fail)?;
    let positive = |value: f64| entry.within_limits(value, |bound| bound.parse().ok());
    if let Some(portion) = portion(unit) {
        finite(number).map_err(|()| {
            fail(QuantityProblem::NotFinite {
                text: text.to_owned(),
            })
        })?;
        positive(number)?;
        return Ok(Amount::Portions(number, portion));
    }
    if let Ok(cover) = Share::parse(text) {
        positive(cover.fraction())?;
        return whole_cover(cover).map(Amount::Cover);
    }
    match Mass::parse(text) {
        Ok(mass) => positive(mass.g()).map(|()| Amount::Fresh(mass)),
        Err(QuantityError {
            problem: QuantityProblem::UnknownUnit { unit, .. },
            ..
        }) => Err(unknown_portion(&unit)),
        Err(error) => Err(fail(error.problem)),
    }
}

fn finite(number: f64) -> Result<(), ()> {
    if number.is_finite() { Ok(()) } else { Err(()) }
}

fn whole_cover(cover: Share) -> Result<Share, Violation> {
    if cover.fraction() <= 1.0 {
        return Ok(cover);
    }
    Err(Violation::new(
        format!(
            "a cover of {} % is too high",
            significant(cover.percent(), 4)
        ),
        "a cover is at most 100 %",
        "for a denser planting give the fresh mass, for example amount = \"200 g\"",
    ))
}

fn unknown_portion(unit: &str) -> Violation {
    let words: Vec<&str> = Portion::ALL
        .iter()
        .map(|portion| portion.plural())
        .collect();
    let help = match nearest(unit, words.iter().copied()) {
        Some(near) => format!("did you mean {near}?"),
        None => "for example \"30 %\", \"12 g\", \"15 stems\" or \"2 pots\"".to_owned(),
    };
    Violation::new(
        format!("\"{}\" is no portion or unit", unit.escape_debug()),
        format!("amount is in %, g, {}", either(&words)),
        help,
    )
}

/// The portion a word names; a plant is a piece.
fn portion(word: &str) -> Option<Portion> {
    let word = word.to_lowercase();
    if word == "plant" || word == "plants" {
        return Some(Portion::Piece);
    }
    let is_named = |portion: &&Portion| word == portion.singular() || word == portion.plural();
    Portion::ALL.iter().find(is_named).copied()
}
