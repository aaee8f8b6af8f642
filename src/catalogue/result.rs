//! The dictionary of results: what each is, by its path in the JSON of a command.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use crate::units::{unit_of_result, without_band_end};

/// The command in whose JSON a result stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Command {
    /// `plan`, which holds nearly all.
    Plan,
    /// `startup`.
    Startup,
    /// `night`.
    Night,
    /// `check`.
    Check,
    /// `compare`.
    Compare,
    /// `solve`.
    Solve,
}

impl Command {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Plan,
        Self::Startup,
        Self::Night,
        Self::Check,
        Self::Compare,
        Self::Solve,
    ];

    /// Its name, which stands before a path where another holds a different result there.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Plan => "plan",
            Self::Startup => "startup",
            Self::Night => "night",
            Self::Check => "check",
            Self::Compare => "compare",
            Self::Solve => "solve",
        }
    }
}

/// What a result comes from that rests on no rule and no formula.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Origin {
    /// The spec, with the rows of the catalogue that it names.
    Spec,
    /// What was asked for, or what stands for it by default.
    Option,
    /// Counting.
    Count,
    /// The program itself.
    Program,
    /// The rule of the finding that it belongs to.
    Finding,
    /// The source that stands beside the caution.
    Caution,
}

/// What the low, typical and high of a result are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Spread {
    /// Read off an ensemble.
    Members,
    /// By the low, typical and high of the numbers that go in.
    Numbers,
}

/// What one result is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ResultRow {
    /// The command whose JSON holds it; of several, `plan`.
    pub command: Command,
    /// Its path there; `[]` stands for any item of a list, a band has one for its three.
    pub path: String,
    /// What it is.
    pub says: String,
    /// The code of the topic that it rests on, where it rests on one.
    pub topic: Option<String>,
    /// What it comes from otherwise.
    pub from: Option<Origin>,
    /// What its low, typical and high are, where it has them.
    pub band: Option<Spread>,
}

impl ResultRow {
    /// The name that no other result has: its path, with the command in front where
    /// another command has a different result there.
    pub fn name(&self) -> String {
        let command = self.command.word();
        if self.command != Command::Plan && results().iter().any(|row| self.is_taken_for(row)) {
            format!("{command}.{}", self.path)
        } else {
            self.path.clone()
        }
    }

    /// Whether another result stands at the same path in the JSON of another command.
    fn is_taken_for(&self, other: &Self) -> bool {
        let shown_by = [Command::Startup, Command::Night].into_iter();
        let mut shown_by = shown_by.filter(|command| *command != self.command);
        self.command != other.command
            && (self.path == other.path
                || (other.command == Command::Plan
                    && shown_by
                        .any(|command| other.path == format!("{}.{}", command.word(), self.path))))
    }

    /// Its unit; empty for words, counts, lists and pure numbers.
    pub fn unit(&self) -> &'static str {
        if self.is_list() {
            ""
        } else {
            unit_of_result(&self.path)
        }
    }

    /// Whether it is listed as that command's own.
    pub fn is_of_command(&self, command: &str) -> bool {
        self.command.word() == command
    }

    /// Whether it is a list of things that have rows of their own.
    pub fn is_list(&self) -> bool {
        let item = format!("{}[]", self.path);
        results()
            .iter()
            .any(|row| row.command == self.command && row.path.starts_with(&item))
    }
}

/// Every result, command by command.
pub fn results() -> &'static [ResultRow] {
    static RESULTS: OnceLock<Vec<ResultRow>> = OnceLock::new();
    RESULTS.get_or_init(read)
}

/// The row of a path in the JSON of a command: of several that would do, the command's own.
///
/// # Example
/// ```
/// use lentic::catalogue::{Command, result};
/// let dawn = result(Command::Night, "dawn_oxygen_mg_l.low").ok_or("no such result")?;
/// assert_eq!(dawn.path, "night.dawn_oxygen_mg_l");
/// # Ok::<(), &str>(())
/// ```
pub fn result(command: Command, path: &str) -> Option<&'static ResultRow> {
    let in_a_row = format!("rows[].{path}");
    let in_a_plan = format!("{}.{path}", command.word());
    let own = || at(command, path);
    match command {
        Command::Compare => {
            let result = path.strip_prefix("rows[].").unwrap_or(path);
            own()
                .or_else(|| at(command, &in_a_row))
                .or_else(|| at(Command::Plan, result))
        }
        _ => own()
            .or_else(|| at(Command::Plan, &in_a_plan))
            .or_else(|| at(Command::Plan, path)),
    }
}

/// The row with this path, or with that of its band.
fn at(command: Command, path: &str) -> Option<&'static ResultRow> {
    let of_command = || results().iter().filter(|row| row.command == command);
    let band = without_band_end(path);
    of_command()
        .find(|row| row.path == path)
        .or_else(|| of_command().find(|row| row.band.is_some() && row.path == band))
}

/// Reads the embedded table.
#[expect(
    clippy::expect_used,
    reason = "the table is embedded and a test parses it"
)]
fn read() -> Vec<ResultRow> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Line {
        path: String,
        says: String,
        topic: Option<String>,
        from: Option<Origin>,
        band: Option<Spread>,
    }
    let table: BTreeMap<Command, Vec<Line>> = toml::from_str(include_str!("data/results.toml"))
        .expect("the embedded dictionary is well formed");
    let lines = table
        .into_iter()
        .flat_map(|(command, lines)| lines.into_iter().map(move |line| (command, line)));
    lines
        .map(|(command, line)| ResultRow {
            command,
            path: line.path,
            says: line.says,
            topic: line.topic,
            from: line.from,
            band: line.band,
        })
        .collect()
}
