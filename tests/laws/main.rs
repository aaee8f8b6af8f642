//! Laws that hold for every design: balances, monotonicity, limits.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod geometry;
mod plan;
mod startup;
mod units;
