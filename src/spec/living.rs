//! `[[plants]]`, `[[animals]]`, `[feed]` and `[harvest]`: what lives there.

use super::section::SpecSection;
use crate::catalogue;
use crate::design::key::Value;
use crate::design::{Feed, Harvest, Planting, Stock, Taken, Violation, usual};
use crate::units::{Mass, Share};

/// Reads a list of plantings: `[[plants]]`, `plants_added`, `plants_removed`.
pub(super) fn plants(section: &SpecSection<'_>, name: &str) -> Option<Vec<Planting>> {
    section.list(name, planting)
}

fn planting(section: &SpecSection<'_>) -> Option<Planting> {
    let plant = section.required("name", Value::read);
    let amount = section.required("amount", Value::read);
    let emergent = section.optional("emergent", Value::read);
    let price = section.optional("price", Value::read);
    Some(Planting {
        plant: plant?,
        amount: amount?,
        emergent: emergent.unwrap_or(Share::ZERO),
        price,
    })
}

/// Reads `[harvest]`.
pub(super) fn harvest(section: &SpecSection<'_>) -> Option<Harvest> {
    section.plain();
    Some(Harvest {
        taken: section.list("taken", taken)?,
        ..Harvest::default()
    })
}

fn taken(section: &SpecSection<'_>) -> Option<Taken> {
    let day = section.required("day", Value::read);
    if !section.has("floaters") && !section.has("stems") {
        section.report_here(Violation::new(
            "nothing was taken out",
            "a pruning has floaters or stems, or both",
            "for example floaters = \"9 g\"",
        ));
    }
    let floaters = section.optional("floaters", Value::read);
    let stems = section.optional("stems", Value::read);
    Some(Taken {
        day: day?,
        floaters,
        stems,
    })
}

/// Reads `[[animals]]`.
pub(super) fn animals(root: &SpecSection<'_>) -> Option<Vec<Stock>> {
    root.list("animals", stock)
}

fn stock(section: &SpecSection<'_>) -> Option<Stock> {
    let animal = section.required("name", Value::read);
    let count = section.required("count", Value::read);
    let from_day = if section.has("from_day") {
        section.optional("from_day", Value::read)
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
fn usual_day(section: &SpecSection<'_>, animal: &catalogue::Animal) -> f64 {
    let why = format!("practice: the earliest day for a {}", animal.label);
    section.assume("from_day", &animal.first_day.to_string(), &why);
    f64::from(animal.first_day)
}

/// Reads `[feed]`; without it animals are fed as is usual for their mass.
pub(super) fn feed(section: &SpecSection<'_>, animals: &[Stock]) -> Option<Feed> {
    let fed = animals.iter().any(|stock| stock.count > 0);
    if !fed && !section.is_there() {
        return Some(Feed {
            mass_per_day: Mass::ZERO,
            protein: Share::ZERO,
        });
    }
    let mass_per_day = if section.has("mass_per_day") {
        section.optional("mass_per_day", Value::read)
    } else {
        Some(usual_feed(section, animals))
    };
    let protein = section.defaulted("protein", Value::read);
    Some(Feed {
        mass_per_day: mass_per_day?,
        protein: protein?,
    })
}

/// Feed by the animals' mass, noted as assumed.
fn usual_feed(section: &SpecSection<'_>, animals: &[Stock]) -> Mass {
    let mass = usual::feed(animals);
    section.assume("mass_per_day", &usual::feed_in_words(mass), usual::FEED_WHY);
    mass
}
