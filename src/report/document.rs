//! A result as a document: headings, facts, tables, findings; no layout.
//!
//! Every way of showing a result to people renders the same document, so that
//! two of them cannot disagree.

use super::chart::Chart;
use crate::finding::Status;

/// A document, verdict first.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Document {
    /// What it is about.
    pub title: String,
    /// Its parts, in reading order.
    pub blocks: Vec<Block>,
}

/// One part of a document.
#[derive(Debug, Clone, PartialEq)]
pub enum Block {
    /// The result in one sentence, with its status.
    Verdict(Status, String),
    /// The title of what follows.
    Heading(String),
    /// A paragraph.
    Text(String),
    /// Labelled values.
    Facts(Vec<Fact>),
    /// Rows under column heads.
    Table(Table),
    /// A line with its band over days.
    Chart(Chart),
    /// Judged results.
    Findings(Vec<Judged>),
    /// Short items of equal rank.
    Items(Vec<String>),
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
        }
    }
}

/// Rows under column heads.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Table {
    /// The columns.
    pub columns: Vec<Column>,
    /// One cell a column.
    pub rows: Vec<Vec<String>>,
}

/// One column of a table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
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
}

impl Column {
    /// A column of words.
    pub fn words(head: impl Into<String>) -> Self {
        Self {
            head: head.into(),
            align: Align::Left,
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
pub struct Judged {
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
