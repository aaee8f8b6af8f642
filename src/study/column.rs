//! The results that a row can show, named by their path in a plan.

use std::sync::OnceLock;

use thiserror::Error;

use crate::catalogue::{FINDINGS, nearest_path};
use crate::finding::Code;
use crate::plan::{Plan, PlanPart};
use crate::result::{Declared, ResultKind, within};
use crate::units::{BAND_ENDS, TYPICAL_END};

/// A result that a row shows.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct ResultColumn {
    name: String,
}

/// A name that is no result.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("no result {name}")]
pub struct UnknownResult {
    /// The name as given.
    pub name: String,
    /// The nearest that is one.
    pub suggestion: Option<String>,
}

impl ResultColumn {
    /// The result of a name: a path of a plan's JSON such as `startup.ready_day.high`, where
    /// a band without an end is its typical value; `status`; or `findings.` and a code, for
    /// the status of that finding.
    ///
    /// # Errors
    /// When there is no such result; the nearest is suggested.
    ///
    /// # Example
    /// ```
    /// use lentic::study::ResultColumn;
    /// assert!(ResultColumn::of("startup.ammonia_peak_mg_l").is_ok());
    /// let wrong = ResultColumn::of("weight.totl_kg").unwrap_err();
    /// assert_eq!(wrong.suggestion.as_deref(), Some("weight.total_kg"));
    /// ```
    pub fn of(name: &str) -> Result<Self, UnknownResult> {
        let name = name.trim();
        let column = Self {
            name: name.to_owned(),
        };
        if known().iter().any(|(path, _)| column.is_at(path)) {
            return Ok(column);
        }
        Err(UnknownResult {
            name: name.to_owned(),
            suggestion: nearest_path(name, known().iter().map(|(path, _)| path.as_str()))
                .map(str::to_owned),
        })
    }

    /// The result of a name, or every result of a section such as `tank`.
    ///
    /// # Errors
    /// As [`ResultColumn::of`].
    pub fn all_of(name: &str) -> Result<Vec<Self>, UnknownResult> {
        Self::of(name)
            .map(|column| vec![column])
            .or_else(|unknown| {
                let section = format!("{}.", name.trim());
                let within: Vec<Self> = Self::every()
                    .filter(|column| column.name.starts_with(&section))
                    .collect();
                if within.is_empty() {
                    Err(unknown)
                } else {
                    Ok(within)
                }
            })
    }

    /// Every result.
    pub fn every() -> impl Iterator<Item = Self> {
        known().iter().map(|(path, _)| Self { name: path.clone() })
    }

    /// The results that no search has to be made for, and of the findings the worst.
    pub fn main() -> impl Iterator<Item = Self> {
        Self::every()
            .filter(|column| column.part() < PlanPart::Air && !column.name.starts_with(FINDINGS))
    }

    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// What it takes to compute.
    pub fn part(&self) -> PlanPart {
        PlanPart::of(&self.name)
    }

    /// Whether its values are names or words.
    pub fn is_word(&self) -> bool {
        let is_word =
            |(path, kind): &(String, ResultKind)| *path == self.name && *kind == ResultKind::Word;
        known().iter().any(is_word)
    }

    /// Whether its values are statuses, which stand in order.
    pub fn is_status(&self) -> bool {
        self.name == "status" || self.name.starts_with(FINDINGS)
    }

    /// Whether a path of a plan is that of this result, or of the typical value of its band.
    fn is_at(&self, path: &str) -> bool {
        path == self.name || path.strip_suffix(TYPICAL_END) == Some(&self.name)
    }

    /// The paths at which its value may stand: with members, and without.
    pub(super) fn places(&self) -> [String; 2] {
        let end = BAND_ENDS.iter().find(|end| self.name.ends_with(*end));
        match end {
            Some(end) => [
                self.name.clone(),
                self.name.trim_end_matches(end).to_owned(),
            ],
            None => [self.name.clone(), format!("{}{TYPICAL_END}", self.name)],
        }
    }
}

/// Every path of a plan that holds one value, the worst status and that of each finding,
/// with what stands there.
fn known() -> &'static [(String, ResultKind)] {
    static KNOWN: OnceLock<Vec<(String, ResultKind)>> = OnceLock::new();
    KNOWN.get_or_init(|| {
        let of_plan = within::<Plan>().into_iter().filter(is_of_section);
        let of_plan = of_plan.flat_map(|result| {
            let kind = result.kind;
            values(result).into_iter().map(move |path| (path, kind))
        });
        let statuses = Code::ALL
            .iter()
            .map(|code| (format!("{FINDINGS}{}", code.text()), ResultKind::Word));
        [("status".to_owned(), ResultKind::Word)]
            .into_iter()
            .chain(of_plan)
            .chain(statuses)
            .collect()
    })
}

/// Whether a result is one number, word or flag of a section.
fn is_of_section(result: &Declared) -> bool {
    let is_single = !matches!(result.kind, ResultKind::List | ResultKind::Section);
    is_single && result.path.contains('.') && !result.path.contains("[]")
}

/// The paths of a result's values: the three of a band, or its own.
fn values(result: Declared) -> Vec<String> {
    match result.band {
        Some(_) => BAND_ENDS
            .map(|end| format!("{}{end}", result.path))
            .to_vec(),
        None => vec![result.path],
    }
}
