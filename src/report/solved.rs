//! The answer to what value of a key meets a condition, named as in JSON.

use serde::Serialize;

use crate::result::{plain, results};
use crate::study::{Answer, Axis, Cell, Condition};
use crate::units::show;

results! {
    /// An answer, named as in JSON.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Solved {
        /// the key that was turned
        pub key: String => Option,
        /// the value nearest to --from that meets the condition, or null where none does
        pub value: Option<f64> => "study.search",
        /// unit of that value
        pub unit: String => Option,
        /// the result that was asked for
        pub result: String => Option,
        /// the result at that value
        #[serde(skip_serializing_if = "Option::is_none")]
        pub reached: Option<Reached> => "study.search",
        /// whether the result only rises, or only falls, over the range
        pub monotone: bool => "study.search",
        /// how often the condition turns between met and missed over the range
        pub turns: usize => "study.search",
        /// what to know about the answer
        #[serde(skip_serializing_if = "Vec::is_empty")]
        pub notes: Vec<String> => "study.search" each "one of them",
    }
}

plain! { Number: Reached; }

/// A result that was reached.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Reached {
    /// A number.
    Number(f64),
    /// A word.
    Word(String),
}

impl Solved {
    /// The answer to what was asked.
    pub fn of(answer: &Answer, axis: &Axis, condition: &Condition) -> Self {
        let found = answer.found.as_ref();
        Self {
            key: axis.knob.path(),
            value: found.map(|found| found.number),
            unit: axis.unit.clone(),
            result: condition.column.name().to_owned(),
            reached: found.and_then(|found| found.result.as_ref()).map(reached),
            monotone: answer.monotone,
            turns: answer.crossings().len(),
            notes: notes(answer, axis),
        }
    }
}

fn reached(cell: &Cell) -> Reached {
    match cell {
        Cell::Number(number) => Reached::Number(*number),
        Cell::Whole(whole) => Reached::Number(*whole as f64),
        Cell::Word(word) => Reached::Word(word.clone()),
        Cell::Flag(flag) => Reached::Word(flag.to_string()),
    }
}

fn notes(answer: &Answer, axis: &Axis) -> Vec<String> {
    let number = |number: f64| with_unit(number, &axis.unit);
    let mut notes = Vec::new();
    let looks = &answer.looks;
    let ends = looks.first().zip(looks.last());
    match (&answer.found, ends) {
        (None, Some((first, last))) => notes.push(format!(
            "no value from {} to {} meets it",
            number(first.number),
            number(last.number)
        )),
        (Some(_), Some((first, _))) if first.met => {
            notes.push("it is met where the search begins".to_owned());
        }
        _ => {}
    }
    let turns = answer.crossings();
    if turns.len() > 1 {
        let places: Vec<String> = turns
            .iter()
            .map(|pair| {
                format!(
                    "{} between {} and {}",
                    if pair[1].met { "met" } else { "missed again" },
                    number(pair[0].number),
                    number(pair[1].number)
                )
            })
            .collect();
        notes.push(format!(
            "the condition comes and goes: {}",
            places.join(", ")
        ));
    }
    if !answer.monotone {
        notes.push("the result is not monotone over the range: it rises and falls".to_owned());
    }
    if let Some(failed) = looks.iter().find_map(|look| {
        let failed = look.failed.as_ref()?;
        Some(format!("no tank at {}: {failed}", number(look.number)))
    }) {
        notes.push(failed);
    }
    notes
}

/// `24.5 mm`, in five digits.
pub(super) fn with_unit(number: f64, unit: &str) -> String {
    let number = show::significant(number, 5);
    if unit.is_empty() {
        number
    } else {
        format!("{number} {unit}")
    }
}
