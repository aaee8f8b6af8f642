//! Designs and checks low-tech planted freshwater tanks: a nutrient soil under
//! a sand cap, planted heavily from the first day.
//!
//! Modules stand in layers; each may use only those above it in this list.

pub mod units;

pub mod numerics;

pub mod source;

pub mod finding;

pub mod catalogue;

pub mod geometry;

pub mod substrate;

pub mod plants;

pub mod water;

pub mod air;

pub mod heat;

pub mod design;

pub mod state;

pub mod startup;

pub mod night;

pub mod plan;

pub mod study;

pub mod spec;

pub mod report;

#[cfg(feature = "cli")]
pub mod cli;
