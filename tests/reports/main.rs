//! Every demo tank in every format, and the fixed set of JSON paths.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/command.rs"]
mod command;
#[path = "../support/demo.rs"]
mod demo;
#[path = "../support/designed.rs"]
mod designed;

mod agreement;
mod cautions;
mod dictionary;
mod drawing;
mod formats;
mod page;
mod paths;
mod profile;
mod typed;
