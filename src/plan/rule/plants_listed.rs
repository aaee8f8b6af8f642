//! `plants.listed`: plants on a list of restricted species.

use super::declaration::{About, Judge, Rule};
use crate::catalogue::LISTS_AS_OF;
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, Status};
use crate::plan::words;
use crate::source::{Basis, Source};

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::PlantsListed,
    about: About::Tank,
    judge: Judge::Design(judged),
    orders: &[Action::Plant],
    steps: |_, _| Vec::new(),
    explanation: Explanation {
        asks: "Is a plant on a list of restricted species?",
        limits: || "a note for each list that names it; never a clearance".to_owned(),
        formula: || {
            "the species and its synonyms against the whole lists, genera and lists taken over included".to_owned()
        },
        symbols: &[],
        range: || {
            format!("lists as of {LISTS_AS_OF}, as far as read; countries and states add their own")
        },
        basis: Basis::Published,
        sources: &[Source::Eu1143_2014, Source::Cfr7_360],
    },
};

/// One finding for each plant on a list of restricted plants.
fn judged(design: &Design) -> Vec<Finding> {
    design
        .draft()
        .plants
        .iter()
        .map(|planting| planting.plant)
        .filter(|plant| !plant.listed.is_empty())
        .map(|plant| {
            let lists: Vec<String> = plant
                .listed
                .iter()
                .map(|listing| match listing.since {
                    Some(year) => format!("{} ({year})", listing.list.label()),
                    None => listing.list.label().to_owned(),
                })
                .collect();
            Finding {
                code: Code::PlantsListed,
                status: Status::Note,
                subject: plant.name.clone(),
                value: None,
                unit: "",
                low: None,
                high: None,
                says: format!(
                    "{} ({}) is on the {} as of {LISTS_AS_OF}; other lists, and parts of these that were not read, may name it too",
                    plant.label,
                    plant.latin,
                    words::listed(&lists)
                ),
                remedy: None,
                basis: Basis::Published,
                source: plant.listed.first().map(|listing| listing.source),
            }
        })
        .collect()
}
