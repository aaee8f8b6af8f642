//! The integrator on problems whose answers are known.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/synthetic.rs"]
mod synthetic;

mod kaps;
mod lanes;
mod limits;
mod logistic;
mod order;
mod recovery;
mod robertson;
mod startup;
mod waves;
