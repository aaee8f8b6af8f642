//! The tree keeps its own rules: layers, module docs, sources, codes, examples.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod basis;
mod circles;
mod codes;
mod dependencies;
mod examples;
mod files;
mod formulas;
mod layers;
mod ranges;
mod readme;
mod sentences;
mod sources;
mod tree;
