//! The dictionary of results: what each is, by its path in the JSON of a command.

use std::sync::OnceLock;

use serde::Serialize;

use super::compared;
use crate::diagnosis::Diagnosis;
use crate::makeup::Makeup;
use crate::mend::Mended;
use crate::plan::{Night, Plan, Startup};
use crate::report::solved::Solved;
use crate::result::{Declared, Ground, Origin, ResultKind, Spread, within};
use crate::units::{unit_of_result, without_band_end};
use crate::upkeep::Upkeep;

/// The command in whose JSON a result stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum ResultCommand {
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
    /// `mend`.
    Mend,
    /// `upkeep`.
    Upkeep,
    /// `water`.
    Water,
}

impl ResultCommand {
    /// All of them.
    pub const ALL: [Self; 9] = [
        Self::Plan,
        Self::Startup,
        Self::Night,
        Self::Check,
        Self::Compare,
        Self::Solve,
        Self::Mend,
        Self::Upkeep,
        Self::Water,
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
            Self::Mend => "mend",
            Self::Upkeep => "upkeep",
            Self::Water => "water",
        }
    }

    /// What its JSON holds, as it is declared.
    fn declared(self) -> Vec<Declared> {
        match self {
            Self::Plan => [schema()].into_iter().chain(within::<Plan>()).collect(),
            Self::Startup => within::<Startup>(),
            Self::Night => within::<Night>(),
            Self::Check => within::<Diagnosis>(),
            Self::Compare => compared::results(),
            Self::Solve => within::<Solved>(),
            Self::Mend => within::<Mended>(),
            Self::Upkeep => within::<Upkeep>(),
            Self::Water => within::<Makeup>(),
        }
    }
}

/// What stands first in the JSON of every command.
fn schema() -> Declared {
    Declared {
        path: "schema".to_owned(),
        says: "name and version of the form of this JSON",
        ground: Ground::From(Origin::Program),
        band: None,
        kind: ResultKind::Word,
    }
}

/// What one result is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ResultRow {
    /// The command whose JSON holds it; of several, `plan`.
    pub command: ResultCommand,
    /// Its path there; `[]` stands for any item of a list, a band has one for its three.
    pub path: String,
    /// What it is.
    pub says: &'static str,
    /// What it rests on.
    pub ground: Ground,
    /// What its low, typical and high are, where it has them.
    pub band: Option<Spread>,
    /// What stands there.
    pub kind: ResultKind,
}

impl ResultRow {
    /// The name that no other result has: its path, with the command in front where
    /// another command has a different result there.
    pub fn name(&self) -> String {
        let command = self.command.word();
        if self.command != ResultCommand::Plan && results().iter().any(|row| self.is_taken_for(row))
        {
            format!("{command}.{}", self.path)
        } else {
            self.path.clone()
        }
    }

    /// The code of the topic that it rests on, where it rests on one.
    pub const fn topic(&self) -> Option<&'static str> {
        match self.ground {
            Ground::Topic(code) => Some(code),
            Ground::From(_) => None,
        }
    }

    /// What it comes from where it rests on no topic.
    pub const fn from(&self) -> Option<Origin> {
        match self.ground {
            Ground::Topic(_) => None,
            Ground::From(origin) => Some(origin),
        }
    }

    /// Whether it is what a plan has at the same path, or below the command's name.
    fn is_told_by(&self, other: &Self) -> bool {
        let in_a_plan = format!("{}.{}", self.command.word(), self.path);
        other.command == ResultCommand::Plan
            && [&self.path, &in_a_plan].contains(&&other.path)
            && (self.says, self.ground) == (other.says, other.ground)
    }

    /// Whether another result stands at the same path in the JSON of another command.
    fn is_taken_for(&self, other: &Self) -> bool {
        let shown_by = [ResultCommand::Startup, ResultCommand::Night].into_iter();
        let mut shown_by = shown_by.filter(|command| *command != self.command);
        self.command != other.command
            && (self.path == other.path
                || (other.command == ResultCommand::Plan
                    && shown_by
                        .any(|command| other.path == format!("{}.{}", command.word(), self.path))))
    }

    /// Its unit; empty for words, counts, lists and pure numbers.
    pub fn unit(&self) -> &'static str {
        if self.kind == ResultKind::List {
            ""
        } else {
            unit_of_result(&self.path)
        }
    }

    /// Whether it is listed as that command's own.
    pub fn is_of_command(&self, command: &str) -> bool {
        self.command.word() == command
    }
}

/// Every result, command by command.
pub fn results() -> &'static [ResultRow] {
    static RESULTS: OnceLock<Vec<ResultRow>> = OnceLock::new();
    RESULTS.get_or_init(gathered)
}

/// The row of a path in the JSON of a command: of several that would do, the command's own.
///
/// # Example
/// ```
/// use lentic::report::dictionary::{ResultCommand, result};
/// let dawn = result(ResultCommand::Night, "dawn_oxygen_mg_l.low").ok_or("no such result")?;
/// assert_eq!(dawn.path, "night.dawn_oxygen_mg_l");
/// # Ok::<(), &str>(())
/// ```
pub fn result(command: ResultCommand, path: &str) -> Option<&'static ResultRow> {
    let in_a_row = format!("rows[].{path}");
    let in_a_plan = format!("{}.{path}", command.word());
    let own = || at(command, path);
    match command {
        ResultCommand::Compare => {
            let result = path.strip_prefix("rows[].").unwrap_or(path);
            own()
                .or_else(|| at(command, &in_a_row))
                .or_else(|| at(ResultCommand::Plan, result))
        }
        _ => own()
            .or_else(|| at(ResultCommand::Plan, &in_a_plan))
            .or_else(|| at(ResultCommand::Plan, path)),
    }
}

/// The row with this path, or with that of its band.
fn at(command: ResultCommand, path: &str) -> Option<&'static ResultRow> {
    let of_command = || results().iter().filter(|row| row.command == command);
    let band = without_band_end(path);
    of_command()
        .find(|row| row.path == path)
        .or_else(|| of_command().find(|row| row.band.is_some() && row.path == band))
}

/// What every command declares; what a plan has too, once.
fn gathered() -> Vec<ResultRow> {
    let mut rows: Vec<ResultRow> = Vec::new();
    for command in ResultCommand::ALL {
        for result in command.declared() {
            let row = ResultRow {
                command,
                path: result.path,
                says: result.says,
                ground: result.ground,
                band: result.band,
                kind: result.kind,
            };
            if !rows.iter().any(|other| row.is_told_by(other)) {
                rows.push(row);
            }
        }
    }
    rows
}
