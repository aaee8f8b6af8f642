//! The integrator on problems whose answers are known, and the models against programs of our
//! own that solve the same equations another way.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/compare.rs"]
mod compare;
#[path = "../support/synthetic.rs"]
mod synthetic;

mod bags;
mod checks;
mod grid;
mod kaps;
mod lanes;
mod levers;
mod limits;
mod logistic;
mod night;
mod order;
mod plants_nitrogen;
mod recovery;
mod robertson;
mod startup;
mod waves;
