//! `[[plants]]`, `[[animals]]`, `[feed]` and `[harvest]`: what lives there.

use super::catalogued::row;
use super::misfit::{Misfit, listed, nearest};
use super::section::Section;
use super::value::{Entry, count, number, quantity, unread};
use crate::catalogue::{self, Plant, Portion};
use crate::design::{Amount, Feed, Harvest, Planting, Stock, usual};
use crate::units::error::{QuantityError, QuantityProblem};
use crate::units::show::significant;
use crate::units::{Mass, Quantity, Share, parse};

/// Reads a list of plantings: `[[plants]]`, `plants_added`, `plants_removed`.
pub(super) fn plants(section: &Section<'_>, name: &str) -> Option<Vec<Planting>> {
    section.list(name, planting)
}

fn planting(section: &Section<'_>) -> Option<Planting> {
    let plant = section.required("name", row::<Plant>);
    let amount = section.required("amount", amount);
    let emergent = section.optional("emergent", quantity::<Share>);
    let price = section.optional("price", number);
    Some(Planting {
        plant: plant?,
        amount: amount?,
        emergent: emergent.unwrap_or(Share::ZERO),
        price,
    })
}

/// A cover, a fresh mass, or a number of portions.
pub(super) fn amount(entry: &Entry<'_>) -> Result<Amount, Misfit> {
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

fn whole_cover(cover: Share) -> Result<Share, Misfit> {
    if cover.fraction() <= 1.0 {
        return Ok(cover);
    }
    Err(Misfit::new(
        format!(
            "a cover of {} % is too high",
            significant(cover.percent(), 4)
        ),
        "a cover is at most 100 %",
        "for a denser planting give the fresh mass, for example amount = \"200 g\"",
    ))
}

fn unknown_portion(unit: &str) -> Misfit {
    let words: Vec<&str> = Portion::ALL
        .iter()
        .map(|portion| portion.plural())
        .collect();
    let help = match nearest(unit, words.iter().copied()) {
        Some(near) => format!("did you mean {near}?"),
        None => "for example \"30 %\", \"12 g\", \"15 stems\" or \"2 pots\"".to_owned(),
    };
    Misfit::new(
        format!("\"{}\" is no portion or unit", unit.escape_debug()),
        format!("amount is in %, g, {}", listed(&words)),
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

/// Reads `[[animals]]`.
pub(super) fn animals(root: &Section<'_>) -> Option<Vec<Stock>> {
    root.list("animals", stock)
}

fn stock(section: &Section<'_>) -> Option<Stock> {
    let animal = section.required("name", row::<catalogue::Animal>);
    let count = section.required("count", count);
    let from_day = if section.has("from_day") {
        section.optional("from_day", number)
    } else {
        animal.map(|animal| usual_day(section, animal))
    };
    Some(Stock {
        animal: animal?,
        count: count?,
        from_day: from_day?,
    })
}

/// The earliest day by practice, noted as assumed.
fn usual_day(section: &Section<'_>, animal: &catalogue::Animal) -> f64 {
    let why = format!("practice: the earliest day for a {}", animal.label);
    section.assume("from_day", &animal.first_day.to_string(), &why);
    f64::from(animal.first_day)
}

/// Reads `[feed]`; without it animals are fed as is usual for their mass.
pub(super) fn feed(section: &Section<'_>, animals: &[Stock]) -> Option<Feed> {
    let fed = animals.iter().any(|stock| stock.count > 0);
    if !fed && !section.is_there() {
        return Some(Feed {
            mass_per_day: Mass::ZERO,
            protein: Share::ZERO,
        });
    }
    let mass_per_day = if section.has("mass_per_day") {
        section.optional("mass_per_day", quantity::<Mass>)
    } else {
        Some(usual_feed(section, animals))
    };
    let protein = section.defaulted("protein", quantity::<Share>);
    Some(Feed {
        mass_per_day: mass_per_day?,
        protein: protein?,
    })
}

/// Feed by the animals' mass, noted as assumed.
fn usual_feed(section: &Section<'_>, animals: &[Stock]) -> Mass {
    let mass = usual::feed(animals);
    section.assume("mass_per_day", &usual::feed_in_words(mass), usual::FEED_WHY);
    mass
}

/// Reads `[harvest]`.
pub(super) fn harvest(section: &Section<'_>) -> Option<Harvest> {
    let floaters_above = section.defaulted("floaters_above", quantity::<Share>)?;
    Some(Harvest { floaters_above })
}
