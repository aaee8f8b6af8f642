//! The integrator on problems whose answers are known, the models against programs of our own
//! that solve the same equations another way, and formulas against their values worked out by
//! hand.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/compare.rs"]
mod compare;
#[path = "../support/panes.rs"]
mod panes;
#[path = "../support/synthetic.rs"]
mod synthetic;

mod air;
mod bags;
mod checks;
mod dosing;
mod geometry;
mod glass;
mod grid;
mod heat;
mod kaps;
mod lanes;
mod levers;
mod limits;
mod logistic;
mod night;
mod nominal;
mod order;
mod plants_nitrogen;
mod preparation;
mod recovery;
mod robertson;
mod safety;
mod salts;
mod startup;
mod substrate;
mod upkeep;
mod water;
mod waves;
mod weight;
