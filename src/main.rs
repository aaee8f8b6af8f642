//! The `lentic` command.

use std::process::ExitCode;

fn main() -> ExitCode {
    lentic::cli::run(std::env::args_os())
}
