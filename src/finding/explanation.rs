//! What stands behind a finding or a figure, in words.

use crate::source::{Basis, Source};

/// A sentence, its numbers filled in from where they are declared.
pub type Sentence = fn() -> String;

/// The rule behind a finding: what it asks, its limits, its formula, and what they rest on.
#[derive(Debug, Clone, Copy)]
pub struct Explanation {
    /// The question it answers.
    pub asks: &'static str,
    /// The limits.
    pub limits: Sentence,
    /// The formula.
    pub formula: Sentence,
    /// What its symbols mean.
    pub symbols: &'static [&'static str],
    /// How far it holds.
    pub range: Sentence,
    /// What it rests on.
    pub basis: Basis,
    /// The works that it is taken from.
    pub sources: &'static [Source],
}
