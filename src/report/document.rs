//! A result as a document: headings, facts, tables, figures, findings; no layout.
//!
//! Every way of showing a result to people renders the same document, so that
//! two of them cannot disagree.

use super::bars::{Bars, Weight};
use super::chart::Chart;
use super::grid::Grid;
use super::scatter::Scatter;
use crate::catalogue::Topic;
use crate::finding::Status;
use crate::plan::Drawing;
use crate::units::UnitSystem;

/// A document, verdict first.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Document {
    /// What it is about.
    pub title: String,
    /// Its parts, in reading order.
    pub blocks: Vec<Block>,
    /// What its figures rest on; `lentic explain` says the same in a terminal.
    pub reasons: Vec<Reason>,
}

impl Document {
    /// What stands before the first heading, and what stands under some headings.
    #[must_use]
    pub fn only(mut self, headings: &[&str]) -> Self {
        let mut is_asked = true;
        self.blocks.retain(|block| {
            if let Block::Heading(heading) = block {
                is_asked = headings.contains(&heading.as_str());
            }
            is_asked
        });
        self
    }
}

/// One part of a document.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// The result in one sentence, with its status.
    Verdict(Status, String),
    /// The title of what follows.
    Heading(String),
    /// An empty line in a terminal, before what needs no title.
    Gap,
    /// A paragraph.
    Text(String),
    /// Labelled values.
    Facts(Vec<Fact>),
    /// Rows under column heads.
    Table(Table),
    /// Rows that may be put in another order.
    Sortable(Sortable),
    /// Things to get, with what they come to.
    Checklist(Checklist),
    /// The tank to scale.
    Drawing(Box<Sheet>),
    /// Several tanks at one scale.
    Fleet(Vec<Sheet>),
    /// Values over time, or over what is varied.
    Chart(Chart),
    /// Values over two things that are varied.
    Grid(Grid),
    /// Shares side by side.
    Bars(Bars),
    /// What speaks for and against something.
    Balance(Vec<Weight>),
    /// Two results of several tanks.
    Scatter(Scatter),
    /// Judged results.
    Findings(Vec<FindingEntry>),
    /// Short items of equal rank.
    Items(Vec<String>),
    /// What is done when.
    Timeline(Timeline),
    /// Parts under a summary, which a page unfolds; a terminal shows them as they are.
    Folded(Folded),
    /// A part for a page alone: a terminal has little room for it.
    OnPage(Box<Block>),
    /// A part for a terminal alone: a page says it at greater length.
    InText(Box<Block>),
}

/// A labelled value.
#[derive(Debug, Clone, PartialEq)]
pub struct Fact {
    /// What it is.
    pub label: String,
    /// The value with its unit.
    pub value: String,
    /// A remark, may be empty.
    pub note: String,
    /// The code of the rule that the value rests on, where there is one.
    pub reason: Option<&'static str>,
}

impl Fact {
    /// A labelled value with a remark.
    pub fn new(
        label: impl Into<String>,
        value: impl Into<String>,
        note: impl Into<String>,
    ) -> Self {
        Self {
            label: label.into(),
            value: value.into(),
            note: note.into(),
            reason: None,
        }
    }

    /// The same, resting on the rule with a code.
    #[must_use]
    pub fn by(self, code: &'static str) -> Self {
        Self {
            reason: Some(code),
            ..self
        }
    }
}

/// What is done when, a row for each thing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Timeline {
    /// The last day; the first is that of the earliest moment, no later than 0.
    pub until: f64,
    /// What is done, and on which days.
    pub rows: Vec<(String, Vec<f64>)>,
}

/// Parts under a summary.
#[derive(Debug, Clone, PartialEq)]
pub struct Folded {
    /// What is there.
    pub summary: String,
    /// Whether it is seen without being asked for.
    pub is_open: bool,
    /// The parts.
    pub blocks: Vec<Block>,
}

impl Folded {
    /// Parts under a summary, as a block.
    pub fn block(summary: impl Into<String>, is_open: bool, blocks: Vec<Block>) -> Block {
        Block::Folded(Self {
            summary: summary.into(),
            is_open,
            blocks,
        })
    }
}

/// A tank to be drawn, in the units shown.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    /// The tank.
    pub drawing: Drawing,
    /// How lengths are written.
    pub units: UnitSystem,
    /// What a terminal tells beside it.
    pub beside: Vec<String>,
}

/// Things to get, to be ticked off.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Checklist {
    /// A row for each thing.
    pub table: Table,
    /// A last row with what they come to; may be empty.
    pub total: Vec<String>,
}

/// The rule behind some figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason {
    /// What it asks, how it is computed, what it rests on.
    pub topic: &'static Topic,
    /// The works it is taken from.
    pub sources: Vec<String>,
    /// The formula followed through with this tank's numbers.
    pub working: Vec<Fact>,
}

/// Rows under column heads.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Table {
    /// The columns.
    pub columns: Vec<TableColumn>,
    /// One cell a column.
    pub rows: Vec<Vec<String>>,
}

/// Rows that may be put in another order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Sortable {
    /// The rows.
    pub table: Table,
    /// For each row its place in the order of each column.
    pub ranks: Vec<Vec<usize>>,
}

/// One column of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableColumn {
    /// Its head.
    pub head: String,
    /// How its cells are set.
    pub align: Align,
}

/// How cells are set.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Align {
    /// Words.
    Left,
    /// Numbers.
    Right,
    /// Words of a status.
    Status,
}

impl TableColumn {
    /// A column of words.
    pub fn words(head: impl Into<String>) -> Self {
        Self {
            head: head.into(),
            align: Align::Left,
        }
    }

    /// A column of the words of a status.
    pub fn status(head: impl Into<String>) -> Self {
        Self {
            head: head.into(),
            align: Align::Status,
        }
    }

    /// A column of numbers.
    pub fn numbers(head: impl Into<String>) -> Self {
        Self {
            head: head.into(),
            align: Align::Right,
        }
    }
}

/// A finding as people read it.
#[derive(Debug, Clone, PartialEq)]
pub struct FindingEntry {
    /// How it stands.
    pub status: Status,
    /// Its code.
    pub code: String,
    /// What was found.
    pub says: String,
    /// What to do, may be empty.
    pub remedy: String,
    /// The limits with what they rest on, may be empty.
    pub basis: String,
}
