//! `[water]`: the water filled in, kept and changed.

use super::section::Section;
use super::value::{analyte, number, quantity};
use crate::design::{Water, WaterChange, usual};
use crate::source::Band;
use crate::startup::Parameters;
use crate::units::show::fixed;
use crate::units::{Alkalinity, Analyte, Concentration, Duration, Hardness, Share, Temperature};

/// Reads `[water]`.
pub(super) fn read(section: &Section<'_>) -> Option<Water> {
    let temperature = section.defaulted("temperature", quantity::<Temperature>);
    let ph = section.defaulted("ph", number);
    let alkalinity = section.defaulted("alkalinity", quantity::<Alkalinity>);
    let hardness = section.defaulted("hardness", quantity::<Hardness>);
    let stated = |name, kind| section.optional(name, analyte(kind));
    let ammonia = stated("ammonia", Analyte::Ammonia).unwrap_or(Concentration::ZERO);
    let nitrite = stated("nitrite", Analyte::Nitrite).unwrap_or(Concentration::ZERO);
    let nitrate = section.defaulted("nitrate", analyte(Analyte::Nitrate));
    let phosphate = stated("phosphate", Analyte::Phosphate);
    if !section.has("phosphate") {
        assume_phosphate(section);
    }
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

/// Tap water whose phosphate nobody stated has the start-up model's, with its range.
fn assume_phosphate(section: &Section<'_>) {
    let ion = Analyte::Phosphate.per_element();
    let Band { low, typical, high } = Parameters::reference().tap.phosphate.scaled(ion);
    section.assume(
        "phosphate",
        &format!("{} mg/L", fixed(typical, 2)),
        &format!(
            "judgement: common tap water, {} to {} mg/L; the supplier's report says yours",
            fixed(low, 2),
            fixed(high, 1)
        ),
    );
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
        &usual::day_in_words(day),
        "judgement: the first change after one interval",
    );
    day
}
