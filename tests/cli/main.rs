//! Commands, files and exit codes of the real command.
// The lint file lifts these inside test functions alone, not in those that they call.
#![allow(clippy::unwrap_used, clippy::expect_used)]

#[path = "../support/command.rs"]
mod command;
#[path = "../support/demo.rs"]
mod demo;

mod check;
mod compare;
mod editor;
mod explain;
mod files;
mod help;
mod list;
mod mend;
mod new;
mod night;
mod out;
mod overwrite;
mod plan;
mod stopped;
mod study;
mod tame;
mod upkeep;
mod water;
