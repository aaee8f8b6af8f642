//! Laws that hold for every design: balances, monotonicity, limits.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/command.rs"]
#[expect(dead_code, reason = "only the root is wanted here")]
mod command;
#[path = "../support/demo.rs"]
mod demo;
#[path = "../support/odd.rs"]
mod odd;
#[path = "../support/random_spec.rs"]
mod random_spec;
#[path = "../support/states.rs"]
mod states;

mod accepted;
mod animals;
mod changes;
mod energy;
mod ensemble;
mod extremes;
mod geometry;
mod levers;
mod night;
mod nitrogen;
mod plan;
mod random;
mod ranges;
mod remedies;
mod rewritten;
mod startup;
mod study;
mod turned;
mod units;
mod upkeep;
