//! Words that an option may be: formats, units, colour, statuses, lists, shells.

use clap::ValueEnum;

use crate::finding::Status;
use crate::units::UnitSystem;

/// When colour is used.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ColorWhen {
    /// On a terminal, unless `NO_COLOR` is set.
    Auto,
    /// Always.
    Always,
    /// Never.
    Never,
}

/// Units of the text shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum UnitsChoice {
    /// Centimetres, litres, kilograms.
    Metric,
    /// Inches, US gallons, pounds.
    Us,
}

impl From<UnitsChoice> for UnitSystem {
    fn from(choice: UnitsChoice) -> Self {
        match choice {
            UnitsChoice::Metric => Self::Metric,
            UnitsChoice::Us => Self::Us,
        }
    }
}

/// A status that a script may wait for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum FailOn {
    /// From watch on.
    Watch,
    /// Act alone.
    Act,
}

impl From<FailOn> for Status {
    fn from(level: FailOn) -> Self {
        match level {
            FailOn::Watch => Self::Watch,
            FailOn::Act => Self::Act,
        }
    }
}

/// How a mended spec is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum MendFormat {
    /// What was changed, for people.
    Text,
    /// The spec itself.
    Toml,
    /// One JSON object.
    Json,
}

/// How one result is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum Format {
    /// For people.
    Text,
    /// One JSON object.
    Json,
    /// One header and one row, columns named by the JSON path.
    Csv,
    /// One page for a browser or a printer, complete in itself.
    Html,
}

/// How rows are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum RowFormat {
    /// For people.
    Text,
    /// One JSON object with all rows.
    Json,
    /// A header and a row each.
    Csv,
    /// One JSON object a line.
    Jsonl,
    /// One page for a browser or a printer, complete in itself.
    Html,
}

impl RowFormat {
    /// Whether it shows a chosen few results to people, and not all to scripts.
    pub(super) const fn is_for_people(self) -> bool {
        matches!(self, Self::Text | Self::Html)
    }
}

/// What can be listed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ListTopic {
    /// Soils for the lower layer.
    Soils,
    /// Sands and grits for the cap.
    Caps,
    /// Stones.
    Stones,
    /// Plants with their group and portions.
    Plants,
    /// Animals.
    Animals,
    /// Devices that move air or water.
    Devices,
    /// Nominal tank sizes and what they hold.
    Sizes,
    /// Signs that can be observed.
    Signs,
    /// Where the numbers come from.
    Sources,
    /// Rules and formulas by their codes.
    Rules,
    /// Every result by its path in JSON: unit, what it is, what it rests on.
    Results,
}

/// A shell that completes commands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(super) enum ShellChoice {
    /// The Bourne-again shell.
    Bash,
    /// The Z shell.
    Zsh,
    /// The friendly interactive shell.
    Fish,
}
