//! Rows of results, in order, as many at a time as the machine has threads for.

use std::collections::VecDeque;

use rayon::prelude::*;
use thiserror::Error;

use super::axis::Level;
use super::cell::Cell;
use super::column::ResultColumn;
use super::field::{Gatherer, Places};
use super::space::Space;
use crate::catalogue::FINDINGS;
use crate::design::{Design, Draft, Violation};
use crate::finding::Status;
use crate::numerics::rodas::IntegrationError;
use crate::plan::{self, Options, Partial, PlanPart};
use crate::units::UnitSystem;

/// Rows computed before the first is given; each further batch is twice as large.
const FIRST_BATCH: usize = 16;
/// Rows of a batch at most: of quantities alone, and where starts are followed.
const LARGEST_BATCH: usize = 1024;
const LARGEST_BATCH_OF_STARTS: usize = 64;

/// What is asked of some tanks.
#[derive(Debug, Clone)]
pub struct Question {
    /// What is varied.
    pub space: Space,
    /// What is shown of each.
    pub columns: Vec<ResultColumn>,
    /// How starts are followed.
    pub options: Options,
    /// Which of the rows are wanted.
    pub shard: Shard,
}

impl Question {
    /// The main numbers at every point.
    pub fn about(space: Space, options: Options) -> Self {
        Self {
            space,
            columns: ResultColumn::main().collect(),
            options,
            shard: Shard::WHOLE,
        }
    }
}

/// Every n-th row, so that several processes share the rows between them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Shard {
    /// Which of them, from 1.
    pub part: u64,
    /// Of how many.
    pub of: u64,
}

impl Shard {
    /// All rows.
    pub const WHOLE: Self = Self { part: 1, of: 1 };

    /// Whether a row, counted from 0, is in it.
    pub const fn holds(self, row: u64) -> bool {
        row % self.of == self.part - 1
    }
}

/// A tank to start from.
#[derive(Debug, Clone)]
pub struct BaseTank {
    /// Its place among all tanks asked about, from 0.
    pub number: u64,
    /// The tank.
    pub draft: Draft,
}

impl BaseTank {
    /// A tank by its place.
    pub const fn of(number: u64, draft: Draft) -> Self {
        Self { number, draft }
    }
}

/// One tank at one point.
#[derive(Debug, Clone)]
pub struct TankRow {
    /// Its place among all rows, from 0.
    pub number: u64,
    /// The place of the tank it comes from among those given.
    pub base: usize,
    /// What that tank is called.
    pub name: String,
    /// The units that tank is shown in.
    pub units: UnitSystem,
    /// What the varied keys are at this point; empty where one has no such value.
    pub levels: Vec<Level>,
    /// A value for each column, where there is one.
    pub cells: Result<Vec<Option<Cell>>, RowError>,
}

/// Why a row has no results.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum RowError {
    /// The point makes no tank.
    #[error("{}", .0.iter().map(ToString::to_string).collect::<Vec<_>>().join("; "))]
    NoTank(Vec<Violation>),
    /// The numbers of its start left the finite ones.
    #[error("the start-up run failed: {0}")]
    Run(#[from] IntegrationError),
}

impl From<Violation> for RowError {
    fn from(violation: Violation) -> Self {
        Self::NoTank(vec![violation])
    }
}

/// Rows for every tank at every point, tank by tank, in order.
///
/// Each number is that of [`plan::plan`] for the same tank, and does not depend on the
/// number of threads. Only what the columns need is computed.
///
/// # Example
/// ```
/// use lentic::Options;
/// use lentic::study::{BaseTank, Cell, ResultColumn, Question, Space, compare};
/// let text = r#"
/// [tank]
/// shape = "box"
/// size = "60 x 30 x 36 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "25 mm"
/// [cap]
/// material = "filter_sand"
/// depth = "40 mm"
/// "#;
/// let bases = [BaseTank::of(0, lentic::spec::parse(text)?.into_draft())];
/// let space = Space::grid(vec![lentic::spec::axis("soil.depth=20mm,30mm")?])?;
/// let question = Question {
///     columns: vec![ResultColumn::of("soil.volume_l")?],
///     ..Question::about(space, Options::default())
/// };
/// let mut litres = Vec::new();
/// for row in compare(&question, &bases) {
///     litres.push(row.cells?[0].as_ref().and_then(Cell::number).ok_or("no volume")?);
/// }
/// // 60 cm x 30 cm x 2 cm, and x 3 cm
/// assert!((litres[0] - 3.6).abs() < 1e-9 && (litres[1] - 5.4).abs() < 1e-9);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn compare<'a>(question: &'a Question, bases: &'a [BaseTank]) -> TankRows<'a> {
    let parts = parts(&question.columns);
    let follows_starts = parts.iter().any(|part| *part >= PlanPart::Start);
    TankRows {
        question,
        bases,
        reader: Reader::of(question),
        next: 0,
        batch: FIRST_BATCH,
        largest: if follows_starts {
            LARGEST_BATCH_OF_STARTS
        } else {
            LARGEST_BATCH
        },
        ready: VecDeque::new(),
    }
}

fn parts(columns: &[ResultColumn]) -> Vec<PlanPart> {
    let mut parts: Vec<PlanPart> = columns.iter().map(ResultColumn::part).collect();
    parts.sort_unstable();
    parts.dedup();
    parts
}

/// See [`compare()`].
#[derive(Debug)]
pub struct TankRows<'a> {
    question: &'a Question,
    bases: &'a [BaseTank],
    reader: Reader,
    next: u64,
    batch: usize,
    largest: usize,
    ready: VecDeque<TankRow>,
}

impl Iterator for TankRows<'_> {
    type Item = TankRow;

    fn next(&mut self) -> Option<TankRow> {
        if self.ready.is_empty() {
            self.fill();
        }
        self.ready.pop_front()
    }
}

impl TankRows<'_> {
    fn fill(&mut self) {
        let points = self.question.space.points();
        let all = points * self.bases.len() as u64;
        let mut wanted: Vec<(usize, u64)> = Vec::with_capacity(self.batch);
        while wanted.len() < self.batch && self.next < all {
            let (base, point) = ((self.next / points) as usize, self.next % points);
            let number = self.bases[base].number * points + point;
            if self.question.shard.holds(number) {
                wanted.push((base, point));
            }
            self.next += 1;
        }
        self.batch = (self.batch * 2).min(self.largest);
        let rows: Vec<TankRow> = wanted
            .into_par_iter()
            .map(|(base, point)| self.row(base, point))
            .collect();
        self.ready.extend(rows);
    }

    fn row(&self, base: usize, point: u64) -> TankRow {
        let BaseTank { number, draft } = &self.bases[base];
        let space = &self.question.space;
        let levels = space.point(point);
        let cells = match &levels {
            Ok(levels) => at_levels(draft, levels)
                .and_then(|design| self.reader.cells(&design, self.question.options)),
            Err(violation) => Err(violation.clone().into()),
        };
        TankRow {
            number: number * space.points() + point,
            base,
            name: draft.name.clone(),
            units: draft.units,
            levels: levels.unwrap_or_default(),
            cells,
        }
    }
}

/// The tank of a point.
fn at_levels(draft: &Draft, levels: &[Level]) -> Result<Design, RowError> {
    let mut draft = draft.clone();
    for level in levels {
        level.setting.apply(&mut draft)?;
    }
    draft.check().map_err(RowError::NoTank)
}

/// Takes the values of some columns from designs.
#[derive(Debug)]
pub(super) struct Reader {
    parts: Vec<PlanPart>,
    places: Places,
}

impl Reader {
    fn of(question: &Question) -> Self {
        Self::new(&question.columns)
    }

    pub(super) fn new(columns: &[ResultColumn]) -> Self {
        Self {
            parts: parts(columns),
            places: Places::of(columns),
        }
    }

    pub(super) fn cells(
        &self,
        design: &Design,
        options: Options,
    ) -> Result<Vec<Option<Cell>>, RowError> {
        let partial = plan::partial(design, options, &self.parts)?;
        let mut gatherer = Gatherer::new(&self.places);
        gatherer.gather(&partial);
        if let Some(whole) = &partial.whole {
            gatherer.gather(whole);
        }
        offer_standing(&partial, &mut gatherer);
        Ok(gatherer.into_cells())
    }
}

/// The status of each finding; of several with one code, the worst.
fn offer_standing(partial: &Partial, gatherer: &mut Gatherer<'_>) {
    let mut rest = partial.standing.as_slice();
    while let Some(&(code, _)) = rest.first() {
        let same = rest.iter().take_while(|(other, _)| *other == code);
        let worst = same.clone().map(|(_, status)| *status).max();
        let word = worst.unwrap_or(Status::Ok).word().to_owned();
        let count = same.count();
        gatherer.offer(&format!("{FINDINGS}{}", code.text()), &Cell::Word(word));
        rest = &rest[count..];
    }
}
