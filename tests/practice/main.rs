//! What the trade expects of a plan: common practice, no source.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

mod amounts;
mod bed;
mod cases;
mod diagnosis;
mod mature;
mod mend;
mod night;
mod remedies;
mod spec;
mod startup;
mod steps;
mod told;
