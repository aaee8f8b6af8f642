//! One value of a row.

use crate::finding::Status;

/// One value of a row.
#[derive(Debug, Clone, PartialEq)]
pub enum Cell {
    /// A number.
    Number(f64),
    /// A whole number.
    Whole(u64),
    /// A name or word.
    Word(String),
    /// Yes or no.
    Flag(bool),
}

impl Cell {
    /// Its number; of a status, its place from ok (0) to act (3).
    pub fn number(&self) -> Option<f64> {
        match self {
            Self::Number(number) => Some(*number),
            Self::Whole(whole) => Some(*whole as f64),
            Self::Word(word) => status(word).map(|status| f64::from(status as u8)),
            Self::Flag(_) => None,
        }
    }
}

/// The status of a word.
pub(super) fn status(word: &str) -> Option<Status> {
    let all = [Status::Ok, Status::Note, Status::Watch, Status::Act];
    all.into_iter().find(|status| status.word() == word)
}
