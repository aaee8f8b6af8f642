//! A check of an existing tank as a document.

use super::finding;
use crate::design::Design;
use crate::plan::Check;
use crate::report::document::{Block, Document, Fact};
use crate::units::Length;

/// A check, next step first.
pub fn check(design: &Design, check: &Check) -> Document {
    let units = design.draft().units;
    let cm = |value| units.depth(Length::from_cm(value));
    let layer = |thinnest: f64, deepest: f64, mean: f64| {
        if cm(thinnest) == cm(deepest) {
            format!("{} everywhere", cm(mean))
        } else {
            format!(
                "{} to {}, {} on the mean",
                cm(thinnest),
                cm(deepest),
                cm(mean)
            )
        }
    };
    let (soil, cap) = (&check.soil, &check.cap);
    let mut blocks = vec![
        Block::Verdict(check.status(), check.next_step.says.clone()),
        Block::Heading("Bed".to_owned()),
        Block::Facts(vec![
            Fact::new(
                "soil",
                &design.draft().soil.material.label,
                layer(soil.thinnest_cm, soil.deepest_cm, soil.depth_cm),
            ),
            Fact::new(
                "cap",
                &design.draft().cap.material.label,
                layer(cap.thinnest_cm, cap.deepest_cm, cap.depth_cm),
            ),
        ]),
    ];
    let draft = design.draft();
    if !draft.readings.is_empty() {
        blocks.push(Block::Text(
            "The readings are not weighed here: lentic startup sets them against the run."
                .to_owned(),
        ));
    }
    if !draft.signs.is_empty() {
        blocks.push(Block::Text(
            "The signs observed are read but not weighed: only the bed is judged here.".to_owned(),
        ));
    }
    blocks.extend(finding::findings(&check.findings, design.draft().units));
    blocks.extend(finding::cautions(&check.cautions));
    Document {
        title: check.name.clone(),
        blocks,
    }
}
