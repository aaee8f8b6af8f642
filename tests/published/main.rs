//! Results against published numbers; each check names its source and tolerance.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/compare.rs"]
mod compare;
#[path = "../support/panes.rs"]
mod panes;

mod air;
mod heat;
mod structure_glass;
mod structure_safety;
mod structure_units;
mod substrate;
mod water;
