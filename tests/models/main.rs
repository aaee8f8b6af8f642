//! The integrator on problems whose answers are known.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod kaps;
mod lanes;
mod limits;
mod logistic;
mod order;
mod robertson;
mod startup;
mod waves;
