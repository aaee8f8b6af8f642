//! The value of a key that just meets a condition.

use super::sweep::{self, in_words, named};
use crate::report::document::{Block, Document, Table, TableColumn as Head};
use crate::report::solved::{Reached, Solved, with_unit};
use crate::study::{Answer, Bound, Cell, Condition, Relation, Tried};
use crate::units::{MONEY, parted, show};

/// The answer in a sentence, with what was looked at.
pub fn solve(solved: &Solved, answer: &Answer, condition: &Condition) -> Document {
    let mut blocks = vec![Block::Text(sentence(solved, condition))];
    let curve = curve(solved, answer, condition);
    blocks.extend(curve.map(|curve| Block::OnPage(Box::new(curve))));
    if !solved.notes.is_empty() {
        blocks.push(Block::Items(solved.notes.clone()));
    }
    blocks.push(Block::Heading("Looked at".to_owned()));
    blocks.push(Block::Table(looks(solved, answer)));
    Document {
        title: format!(
            "Which {} gives {}?",
            named(&solved.key),
            condition_in_words(condition)
        ),
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

/// The result at every value looked at, with the bound.
fn curve(solved: &Solved, answer: &Answer, condition: &Condition) -> Option<Block> {
    let look = |look: &Tried| Some((look.number, look.result.as_ref()?.number()?));
    let line: Vec<(f64, f64)> = answer.looks.iter().filter_map(look).collect();
    let unit = match solved.unit.as_str() {
        "" => String::new(),
        unit => format!(", {unit}"),
    };
    let title = format!(
        "{} over {}{unit}",
        in_words(&solved.result),
        in_words(&solved.key)
    );
    let bound = match condition.bound {
        Bound::Number(bound) => Some(bound),
        Bound::Word(_) => None,
    };
    let bounds: Vec<f64> = bound.into_iter().collect();
    (line.len() > 1).then(|| sweep::over(title, line, &bounds))
}

/// "weight total at most 33 kg".
pub fn condition_in_words(condition: &Condition) -> String {
    let name = condition.column.name();
    let unit = match (&condition.bound, parted(name).1) {
        (Bound::Word(_), _) | (_, "" | MONEY) => String::new(),
        (Bound::Number(_), unit) => format!(" {unit}"),
    };
    format!("{} {}{unit}", named(name), asked(condition))
}

fn asked(condition: &Condition) -> String {
    let words = match condition.comparison {
        Relation::AtLeast => "at least",
        Relation::AtMost => "at most",
        Relation::Above => "over",
        Relation::Below => "under",
        Relation::Equal => "just",
        Relation::Unequal => "other than",
    };
    match &condition.bound {
        Bound::Number(bound) => format!("{words} {bound}"),
        Bound::Word(word) => format!("{words} {word}"),
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
