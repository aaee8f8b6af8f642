//! The command line: arguments, files, terminal, exit codes.
//!
//! This is the only place that reads files or the environment, or prints.

mod args;
mod check;
mod choice;
mod compare;
mod completions;
mod condition;
mod examples;
mod explain;
mod failure;
mod file;
mod first;
mod input;
mod list;
mod man;
mod mend;
mod new;
mod night;
mod output;
mod overwrite;
mod plan;
mod progress;
mod request;
mod result;
mod rows;
mod schema;
mod shared;
mod solve;
mod startup;
mod stopped;
mod typed;
mod upkeep;
mod water;
mod worked_example;

use std::ffi::OsString;
use std::process::ExitCode;

use clap::Parser;

use args::{Arguments, Command};
use failure::Failure;

use crate::finding::Status;
use crate::units::is_printable;

/// What a command ends with when it did its work.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Outcome {
    /// Nothing at or above the asked status.
    Done,
    /// A finding at or above `--fail-on`, or no plan that holds.
    Found,
    /// Some of the input was bad; the rest was done.
    PartlyBad,
}

impl Outcome {
    /// Done, unless the worst finding stands at `fail_on` or above.
    fn of(worst: Status, fail_on: Option<Status>) -> Self {
        if fail_on.is_some_and(|limit| worst >= limit) {
            Self::Found
        } else {
            Self::Done
        }
    }
}

/// Runs the command line and returns the exit code: 0 done, 1 a finding at or
/// above `--fail-on` or no plan that holds, 2 bad input, 3 a fault of the program.
pub fn run(arguments: impl IntoIterator<Item = OsString>) -> ExitCode {
    let typed: Vec<OsString> = arguments.into_iter().collect();
    let arguments = match Arguments::try_parse_from(&typed) {
        Ok(arguments) => arguments,
        Err(error) => return usage(&error, &typed),
    };
    let outcome = match &arguments.command {
        None => first::run(),
        Some(command) => carry_out(command),
    };
    match outcome {
        Ok(Outcome::Done) => ExitCode::SUCCESS,
        Ok(Outcome::Found) => ExitCode::from(1),
        Ok(Outcome::PartlyBad) => ExitCode::from(2),
        Err(failure) => {
            match &failure {
                Failure::BadSpec(drawn) => output::complain_drawn(drawn),
                failure => output::complain(&failure.to_string()),
            }
            ExitCode::from(failure.exit_code())
        }
    }
}

fn carry_out(command: &Command) -> Result<Outcome, Failure> {
    overwrite::refuse(command)?;
    match command {
        Command::New(options) => new::run(options),
        Command::Plan(options) => plan::run(options),
        Command::Mend(options) => mend::run(options),
        Command::Startup(options) => startup::run(options),
        Command::Night(options) => night::run(options),
        Command::Upkeep(options) => upkeep::run(options),
        Command::Water(options) => water::run(options),
        Command::Check(options) => check::run(options),
        Command::Compare(options) => compare::run(options),
        Command::Solve(options) => solve::run(options),
        Command::List(options) => list::run(options),
        Command::Explain(options) => explain::run(options),
        Command::Schema(options) => schema::run(options),
        Command::Completions(options) => completions::run(options),
        Command::Man(options) => man::run(options),
    }
}

/// Prints help, the version or what is wrong with the arguments, which it quotes: without
/// colour where one of them could drive the terminal.
fn usage(error: &clap::Error, typed: &[OsString]) -> ExitCode {
    let is_tame = |argument: &OsString| argument.to_string_lossy().chars().all(is_printable);
    if typed.iter().all(is_tame) {
        // Nothing is left to be done when the terminal is gone.
        let _ = error.print();
    } else {
        output::complain(&error.render().to_string());
    }
    if error.use_stderr() {
        ExitCode::from(2)
    } else {
        ExitCode::SUCCESS
    }
}
