//! `[water]`: the water filled in, kept and changed.

use super::section::SpecSection;
use crate::design::key::Value;
use crate::design::{FillWater, WaterChange, usual};
use crate::source::Band;
use crate::startup::Parameters;
use crate::units::show::fixed;
use crate::units::{Analyte, Duration};

/// Reads `[water]`.
pub(super) fn read(section: &SpecSection<'_>) -> FillWater {
    section.plain();
    if !section.has("phosphate") {
        assume_phosphate(section);
    }
    section.child("softened").plain();
    goal(&section.child("goal"));
    let change = section
        .has("change")
        .then(|| change(&section.child("change")));
    FillWater {
        change: change.flatten(),
        ..FillWater::default()
    }
}

/// Reads `[water.goal]`.
fn goal(section: &SpecSection<'_>) {
    if section.is_there() && !section.has("hardness") && !section.has("alkalinity") {
        section.missing(
            "hardness",
            "[water.goal] needs hardness or alkalinity".to_owned(),
        );
    }
    section.plain();
}

/// Tap water whose phosphate nobody stated has the start-up model's, with its range.
fn assume_phosphate(section: &SpecSection<'_>) {
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

fn change(section: &SpecSection<'_>) -> Option<WaterChange> {
    if !section.is_there() {
        return None;
    }
    let share = section.required("share", Value::read);
    let every = section.required("every", Value::read);
    let from = if section.has("from") {
        section.optional("from", Value::read)
    } else {
        every.map(|every| first_change(section, every))
    };
    let until = section.defaulted("until", Value::read);
    Some(WaterChange {
        share: share?,
        every: every?,
        from: from?,
        until: until?,
    })
}

/// One interval after flooding, noted as assumed.
fn first_change(section: &SpecSection<'_>, every: Duration) -> f64 {
    let day = every.days();
    section.assume(
        "from",
        &usual::day_in_words(day),
        "judgement: the first change after one interval",
    );
    day
}
