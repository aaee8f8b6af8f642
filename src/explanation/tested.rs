//! How far the models were held against what others observed.

use crate::catalogue::{ObservedComparison, comparisons};
use crate::units::show::significant;

/// What no observation was found of, by section.
const NOT_FOUND: &[(&str, &str)] = &[
    (
        "startup",
        "No measured start of a potting-mix tank was found.",
    ),
    (
        "flush",
        "No measured start of a potting-mix tank was found.",
    ),
    ("night", "No measured night of a small tank was found."),
    ("air", "No measured night of a small tank was found."),
];

/// How far the figures of a section lay from observations, in a line.
///
/// # Example
/// ```
/// use lentic::explanation::tested;
/// assert!(tested("night").contains("dawn oxygen"));
/// assert_eq!(tested("weight"), "Never tested against a measurement.");
/// ```
pub fn tested(section: &str) -> String {
    let section = section.split(['.', '[', '*']).next().unwrap_or(section);
    let about: Vec<&ObservedComparison> = comparisons()
        .iter()
        .filter(|one| one.sections.iter().any(|about| about == section))
        .collect();
    let (in_view, counted): (Vec<&ObservedComparison>, Vec<&ObservedComparison>) =
        about.into_iter().partition(|one| one.in_view);
    let mut parts = Vec::new();
    if !counted.is_empty() {
        parts.push(format!(
            "Predicted for observed: {}.",
            listed(counted.iter().copied())
        ));
    }
    if !in_view.is_empty() {
        parts.push(seen(&in_view));
    }
    if parts.is_empty() {
        parts.push("Never tested against a measurement.".to_owned());
    }
    let missing = NOT_FOUND.iter().filter(|(of, _)| *of == section);
    parts.extend(missing.map(|(_, says)| (*says).to_owned()));
    parts.join(" ")
}

/// Observations that numbers were set with: how many lie in the band, and those that do not.
fn seen(in_view: &[&ObservedComparison]) -> String {
    let missed: Vec<&ObservedComparison> = in_view
        .iter()
        .copied()
        .filter(|one| !one.is_inside())
        .collect();
    let inside = in_view.len() - missed.len();
    let but = if missed.is_empty() {
        String::new()
    } else {
        format!(", not {}", listed(missed.into_iter()))
    };
    format!(
        "Of {} that were in view while numbers were set, {inside} lie within 10 to 90 % of the members{but}.",
        in_view.len()
    )
}

fn listed<'a>(some: impl Iterator<Item = &'a ObservedComparison>) -> String {
    some.map(in_words).collect::<Vec<_>>().join(", ")
}

fn in_words(one: &ObservedComparison) -> String {
    let said = format!(
        "{} {} for {} {}",
        one.what,
        significant(one.band().typical, 2),
        significant(one.observed(), 2),
        one.unit
    );
    said.trim_end().to_owned()
}
