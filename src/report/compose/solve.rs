//! The value of a key that just meets a condition.

use serde::Serialize;

use crate::report::document::{Block, Column as Head, Document, Table};
use crate::study::{Answer, Axis, Cell, Comparison, Condition, Tried};
use crate::units::show;

/// An answer, named as in JSON.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Solved {
    /// The key that was turned.
    pub key: String,
    /// The value that just meets the condition; none where no value looked at does.
    pub value: Option<f64>,
    /// Its unit.
    pub unit: String,
    /// The result that was asked for.
    pub result: String,
    /// The result at that value.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reached: Option<Reached>,
    /// Whether the result only rises or only falls over the range.
    pub monotone: bool,
    /// How often the condition turns between met and missed over the range.
    pub turns: usize,
    /// What to know about the answer.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub notes: Vec<String>,
}

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
            turns: answer.turns().len(),
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
    let turns = answer.turns();
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

fn with_unit(number: f64, unit: &str) -> String {
    let number = show::significant(number, 5);
    if unit.is_empty() {
        number
    } else {
        format!("{number} {unit}")
    }
}

/// The answer in a sentence, with what was looked at.
pub fn solve(solved: &Solved, answer: &Answer, condition: &Condition) -> Document {
    let mut blocks = vec![Block::Text(sentence(solved, condition))];
    if !solved.notes.is_empty() {
        blocks.push(Block::Items(solved.notes.clone()));
    }
    blocks.push(Block::Heading("Looked at".to_owned()));
    blocks.push(Block::Table(looks(solved, answer)));
    Document {
        title: String::new(),
        blocks,
        ..Document::default()
    }
}

fn sentence(solved: &Solved, condition: &Condition) -> String {
    let asked = asked(condition);
    match (solved.value, &solved.reached) {
        (Some(value), Some(reached)) => format!(
            "{} = {}: {} is {}, {asked} was asked",
            solved.key,
            with_unit(value, &solved.unit),
            solved.result,
            match reached {
                Reached::Number(number) => show::significant(*number, 4),
                Reached::Word(word) => word.clone(),
            }
        ),
        _ => format!(
            "{} does not do it: {} {asked} is never met",
            solved.key, solved.result
        ),
    }
}

fn asked(condition: &Condition) -> String {
    let words = match condition.comparison {
        Comparison::AtLeast => "at least",
        Comparison::AtMost => "at most",
        Comparison::Above => "over",
        Comparison::Below => "under",
        Comparison::Equal => "just",
        Comparison::Unequal => "other than",
    };
    match &condition.bound {
        crate::study::Bound::Number(bound) => format!("{words} {bound}"),
        crate::study::Bound::Word(word) => format!("{words} {word}"),
    }
}

fn looks(solved: &Solved, answer: &Answer) -> Table {
    let head = if solved.unit.is_empty() {
        solved.key.clone()
    } else {
        format!("{}, {}", solved.key, solved.unit)
    };
    let row = |look: &Tried| {
        let result = match &look.result {
            Some(Cell::Word(word)) => word.clone(),
            Some(cell) => cell
                .number()
                .map_or_else(|| "-".to_owned(), |number| show::significant(number, 4)),
            None => "-".to_owned(),
        };
        let met = if look.met { "yes" } else { "no" };
        vec![show::significant(look.number, 5), result, met.to_owned()]
    };
    Table {
        columns: vec![
            Head::numbers(head),
            Head::numbers(solved.result.as_str()),
            Head::words("met"),
        ],
        rows: answer.looks.iter().map(row).collect(),
    }
}
