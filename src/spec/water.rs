//! `[water]`: the water filled in, kept and changed.

use super::section::Section;
use super::value::{analyte, number, quantity};
use crate::design::{Water, WaterChange};
use crate::units::show::fixed;
use crate::units::{Alkalinity, Analyte, Concentration, Duration, Hardness, Share, Temperature};

/// Reads `[water]`.
pub(super) fn read(section: &Section<'_>) -> Option<Water> {
    let temperature = section.defaulted("temperature", quantity::<Temperature>);
    let ph = section.defaulted("ph", number);
    let alkalinity = section.defaulted("alkalinity", quantity::<Alkalinity>);
    let hardness = section.defaulted("hardness", quantity::<Hardness>);
    let tap = |name, kind| {
        section
            .optional(name, analyte(kind))
            .unwrap_or(Concentration::ZERO)
    };
    let ammonia = tap("ammonia", Analyte::Ammonia);
    let nitrite = tap("nitrite", Analyte::Nitrite);
    let nitrate = section.defaulted("nitrate", analyte(Analyte::Nitrate));
    let phosphate = tap("phosphate", Analyte::Phosphate);
    let change = section
        .has("change")
        .then(|| change(&section.child("change")));
    Some(Water {
        temperature: temperature?,
        ph: ph?,
        alkalinity: alkalinity?,
        hardness: hardness?,
        ammonia,
        nitrite,
        nitrate: nitrate?,
        phosphate,
        change: change.flatten(),
    })
}

fn change(section: &Section<'_>) -> Option<WaterChange> {
    if !section.is_there() {
        return None;
    }
    let share = section.required("share", quantity::<Share>);
    let every = section.required("every", quantity::<Duration>);
    let from = if section.has("from") {
        section.optional("from", number)
    } else {
        every.map(|every| first_change(section, every))
    };
    let until = section.defaulted("until", number);
    Some(WaterChange {
        share: share?,
        every: every?,
        from: from?,
        until: until?,
    })
}

/// One interval after flooding, noted as assumed.
fn first_change(section: &Section<'_>, every: Duration) -> f64 {
    let day = every.days();
    section.assume(
        "from",
        &fixed(day, 1),
        "judgement: the first change after one interval",
    );
    day
}
