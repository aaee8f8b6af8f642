//! Options that several commands share.

use std::path::PathBuf;

use clap::Args;

use super::choice::{ColorWhen, FailOn, UnitsChoice};
use crate::plan;

/// Heading of the options on what is written where.
pub(super) const OUTPUT: &str = "Output";

/// Options of every command that reads specs.
#[derive(Debug, Args)]
#[command(next_help_heading = OUTPUT)]
pub(super) struct SpecOptions {
    /// Units of the text: metric, or us (inches, US gallons, pounds); by itself those of the
    /// spec. Input may mix units, JSON and CSV keep theirs.
    #[arg(long, value_enum, hide_possible_values = true)]
    pub(super) units: Option<UnitsChoice>,
    /// Colour: auto (on a terminal, unless `NO_COLOR` is set), always or never.
    #[arg(long, value_enum, value_name = "WHEN", default_value = "auto", hide_possible_values = true, help_heading = OUTPUT)]
    pub(super) color: ColorWhen,
    /// Write to this file, whole or not at all, instead of standard output.
    #[arg(long, value_name = "FILE")]
    pub(super) out: Option<PathBuf>,
    /// Exit with 1 when a finding stands at watch or act (watch), or at act (act).
    #[arg(long, value_enum, value_name = "STATUS", hide_possible_values = true)]
    pub(super) fail_on: Option<FailOn>,
}

/// How the first weeks are followed.
#[derive(Debug, Args)]
#[command(next_help_heading = "Uncertainty")]
pub(super) struct EnsembleOptions {
    /// How often the tank is run, each time with other values of what is not known well. By
    /// itself 200 times for one tank, 64 in compare, solve and upkeep, 128 for each cause in check; 0
    /// runs it once with typical values.
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u32).range(0..=MOST_MEMBERS))]
    pub(super) members: Option<u32>,
    /// Number that these values are drawn by: the same seed gives the same result.
    #[arg(long, value_name = "N", default_value_t = plan::Options::default().seed)]
    pub(super) seed: u64,
}

/// More members than that only cost time.
const MOST_MEMBERS: i64 = 65_536;

impl EnsembleOptions {
    /// As the library takes them, with as many members as the command takes by itself.
    pub(super) fn options(&self, members: u32) -> plan::Options {
        plan::Options {
            members: self.members.unwrap_or(members),
            seed: self.seed,
            ..plan::Options::default()
        }
    }

    /// As the library takes them for one tank.
    pub(super) fn for_one(&self) -> plan::Options {
        self.options(plan::Options::default().members)
    }
}
