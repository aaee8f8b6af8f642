//! Specs read well and badly: every key, every fault, drawn.
// The lint file lifts this inside test functions alone, not in those that they call.
#![allow(clippy::expect_used)]

mod bad;
mod base;
mod defaults;
mod fuzz;
mod keys;
mod limits;
mod schema;
mod slips;
mod starter;
mod values;
