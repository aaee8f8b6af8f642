//! The dictionary of results: what each is, by its path in the JSON of a command, and in
//! the words of lists and explanations.

mod compared;
mod row;
mod subject;

pub use row::{ResultCommand, ResultRow, result, results};
pub use subject::{ExplainSubject, Named};

use serde::Serialize;

use crate::result::{Ground, Origin, Spread};

/// A row of the dictionary as lists and explanations have it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Listed {
    /// The name that no other result has.
    pub name: String,
    /// The command whose JSON holds it.
    pub command: ResultCommand,
    /// Its path there.
    pub path: String,
    /// Its unit.
    pub unit: &'static str,
    /// What it is.
    pub says: &'static str,
    /// What its low, typical and high are; empty where it has none.
    pub band: &'static str,
    /// The code of the topic that it rests on, or in words what it comes from.
    pub rests_on: &'static str,
}

impl Listed {
    /// A row in words.
    pub fn of(row: &ResultRow) -> Self {
        Self {
            name: row.name(),
            command: row.command,
            path: row.path.clone(),
            unit: row.unit(),
            says: row.says,
            band: row.band.map_or("", spread),
            rests_on: rests_on(row.ground),
        }
    }
}

/// The code of the topic that a result rests on, or in words what it comes from.
pub const fn rests_on(ground: Ground) -> &'static str {
    match ground {
        Ground::Topic(code) => code,
        Ground::From(from) => origin(from),
    }
}

/// What a result comes from that rests on no rule and no formula.
pub const fn origin(origin: Origin) -> &'static str {
    match origin {
        Origin::Spec => "your spec, and the catalogue's rows that it names; no formula",
        Origin::Option => "the options of the command, or their defaults; no formula",
        Origin::Count => "counting; no formula",
        Origin::Program => "this program's own words; no formula",
        Origin::Finding => "the rule of the finding's code: lentic explain CODE",
        Origin::Caution => "the source that stands beside the caution: lentic explain SOURCE",
    }
}

/// What the low, typical and high of a result are.
pub const fn spread(spread: Spread) -> &'static str {
    match spread {
        Spread::Members => {
            "a tenth of the members lie under low, half under typical, a tenth over high; with --members 0 one number stands in their place"
        }
        Spread::Numbers => {
            "low and high follow from the low and high ends of the numbers that go in, not from an ensemble; with --members 0 the typical number stands alone"
        }
    }
}
