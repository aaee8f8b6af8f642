//! What is asked of a comparison, from its options.

use super::args::CompareOptions;
use super::condition;
use super::failure::Failure;
use crate::report::compose;
use crate::spec;
use crate::study::{Aim, Condition, Question, ResultColumn, Shard, Space, SpaceError};
use crate::units::TYPICAL_END;

/// Members of each tank's ensemble unless said otherwise.
pub(super) const MEMBERS: u32 = 64;
/// The word for every result.
const ALL: &str = "all";

/// What is asked of the rows.
pub(super) struct RowRequest {
    pub(super) question: Question,
    /// How many of the question's columns are shown.
    pub(super) shown: usize,
    /// Whether these are the standard ones.
    pub(super) standard: bool,
    pub(super) conditions: Vec<(usize, Condition)>,
    pub(super) aims: Vec<(usize, Aim)>,
    pub(super) sort: Option<(usize, Aim)>,
    pub(super) sensitivity: Option<usize>,
    pub(super) status: Option<usize>,
}

impl RowRequest {
    pub(super) fn of(options: &CompareOptions) -> Result<Self, Failure> {
        let space = space(options)?;
        let followed = options.ensemble.options(MEMBERS);
        let mut columns = Columns(shown_columns(options)?);
        if followed.members == 0 {
            columns = Columns(without_bands(columns.0));
        }
        let standard = options.columns.is_empty() && options.format.is_for_people();
        let shown = columns.0.len();
        if standard && space.axes().is_empty() {
            columns.0.extend(compose::standard_columns().1);
        }
        let conditions = options.subject_to.iter();
        let conditions = conditions.map(|text| columns.condition(text));
        let conditions = conditions.collect::<Result<_, Failure>>()?;
        let mut aims = columns.aims(&options.minimise, Aim::Least)?;
        aims.extend(columns.aims(&options.maximise, Aim::Most)?);
        let sort = options.sort.as_deref();
        let sort = sort.map(|name| columns.sort(name)).transpose()?;
        let sensitivity = options.sensitivity.as_deref();
        let sensitivity = sensitivity.map(|name| columns.named(name)).transpose()?;
        let fail_on = options.common.fail_on;
        let status = fail_on.map(|_| columns.named("status")).transpose()?;
        Ok(Self {
            question: Question {
                space,
                columns: columns.0,
                options: followed,
                shard: options.shard.unwrap_or(Shard::WHOLE),
            },
            shown,
            standard,
            conditions,
            aims,
            sort,
            sensitivity,
            status,
        })
    }

    pub(super) fn shown_columns(&self) -> &[ResultColumn] {
        &self.question.columns[..self.shown]
    }
}

/// The columns of every row: those shown, and after them those only looked at.
struct Columns(Vec<ResultColumn>);

impl Columns {
    fn place(&mut self, column: ResultColumn) -> usize {
        let known = self.0.iter().position(|other| *other == column);
        known.unwrap_or_else(|| {
            self.0.push(column);
            self.0.len() - 1
        })
    }

    fn named(&mut self, name: &str) -> Result<usize, Failure> {
        condition::column(name).map(|column| self.place(column))
    }

    fn condition(&mut self, text: &str) -> Result<(usize, Condition), Failure> {
        let condition = condition::condition(text)?;
        Ok((self.place(condition.column.clone()), condition))
    }

    fn aims(&mut self, names: &[String], aim: Aim) -> Result<Vec<(usize, Aim)>, Failure> {
        let aims = names.iter().map(|name| Ok((self.named(name)?, aim)));
        aims.collect()
    }

    fn sort(&mut self, name: &str) -> Result<(usize, Aim), Failure> {
        Ok(match name.strip_prefix('-') {
            Some(name) => (self.named(name)?, Aim::Most),
            None => (self.named(name)?, Aim::Least),
        })
    }
}

/// What is shown: as asked, or the standard ones for people and the main ones for scripts.
fn shown_columns(options: &CompareOptions) -> Result<Vec<ResultColumn>, Failure> {
    if options.columns.is_empty() {
        return Ok(if options.format.is_for_people() {
            compose::standard_columns().0
        } else {
            ResultColumn::main().collect()
        });
    }
    let mut columns: Vec<ResultColumn> = Vec::new();
    for name in &options.columns {
        let named = if name.trim() == ALL {
            ResultColumn::every().collect()
        } else {
            ResultColumn::all_of(name).map_err(|unknown| condition::unknown_result(&unknown))?
        };
        for column in named {
            if !columns.contains(&column) {
                columns.push(column);
            }
        }
    }
    Ok(columns)
}

/// Results of the central numbers alone, which have no ends of a band.
fn without_bands(columns: Vec<ResultColumn>) -> Vec<ResultColumn> {
    let single = |column: ResultColumn| {
        let name = column.name();
        let end = name.strip_suffix(".low").or(name.strip_suffix(".high"));
        if end.is_some() {
            return None;
        }
        match name.strip_suffix(TYPICAL_END) {
            Some(name) => ResultColumn::of(name).ok(),
            None => Some(column),
        }
    };
    columns.into_iter().filter_map(single).collect()
}

fn space(options: &CompareOptions) -> Result<Space, Failure> {
    let axes = options
        .vary
        .iter()
        .map(|text| spec::axis(text).map_err(|violation| condition::refused(&violation)))
        .collect::<Result<Vec<_>, Failure>>()?;
    let space = match options.sample {
        Some(points) => Space::samples(axes, points, options.ensemble.seed),
        None => Space::grid(axes),
    };
    space.map_err(|error| {
        let help = match error {
            SpaceError::NoCount { .. } => {
                "say how many points, for example cap.depth=20..60mm/5, or draw samples with --sample N"
            }
            SpaceError::Twice { .. } => "give all its values in one --vary",
            SpaceError::TooMany => "vary less, take fewer values of each, or draw fewer samples with --sample N",
        };
        Failure::BadInput(format!("error: {error}\nhelp: {help}"))
    })
}
