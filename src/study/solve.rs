//! The value of one key that just meets a condition.

use rayon::prelude::*;

use super::axis::AxisRange;
use super::cell::Cell;
use super::choice::Condition;
use super::compare::{Reader, RowError};
use crate::design::Draft;
use crate::plan::Options;

/// Places at which the range is looked at first: more find narrower ways in and out.
const LOOKS: u32 = 16;
/// Steps into which the range is cut, a multiple of the looks; the answer is one of them.
const STEPS: u32 = 10_000;
/// A change by less than this share of the result is rounding, not a turn.
const ROUNDING: f64 = 1e-6;

/// What is sought.
#[derive(Debug, Clone)]
pub struct SolveProblem<'a> {
    /// The tank.
    pub draft: &'a Draft,
    /// What is varied, from one end, where the search begins, to the other.
    pub range: &'a AxisRange,
    /// What is to be met.
    pub condition: &'a Condition,
    /// How starts are followed.
    pub options: Options,
}

/// What was found.
#[derive(Debug, Clone, PartialEq)]
pub struct Answer {
    /// The value nearest to the first end that meets the condition, in the range's unit; it
    /// meets it itself. None where no value looked at does.
    pub found: Option<Tried>,
    /// Where the range was looked at first, from one end to the other.
    pub looks: Vec<Tried>,
    /// Whether the result only rises, or only falls, along the looks.
    pub monotone: bool,
}

/// One value that was tried.
#[derive(Debug, Clone, PartialEq)]
pub struct Tried {
    /// The value, in the range's unit.
    pub number: f64,
    /// The result there; none where there is no such tank or no such result.
    pub result: Option<Cell>,
    /// Whether it meets the condition.
    pub met: bool,
    /// Why there is no such tank.
    pub failed: Option<RowError>,
}

/// Varies a key until a condition holds.
///
/// The range is looked at from end to end; between the first two looks of which the second
/// alone meets the condition the place is found by halving.
///
/// # Example
/// ```
/// use lentic::plan::Options;
/// use lentic::study::{Bound, ResultColumn, Relation, Condition, Levels, SolveProblem, solve};
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"";
/// let draft = lentic::spec::parse(text)?.into_draft();
/// let axis = lentic::spec::axis("tank.height=30..60cm")?;
/// let Levels::Range(range) = &axis.levels else { panic!("a range") };
/// let condition = Condition {
///     column: ResultColumn::of("tank.brimful_l")?,
///     comparison: Relation::AtLeast,
///     bound: Bound::Number(72.0),
/// };
/// let answer = solve(&SolveProblem {
///     draft: &draft,
///     range,
///     condition: &condition,
///     options: Options::default(),
/// });
/// // 60 cm x 30 cm hold 1.8 L a centimetre
/// assert!((answer.found.map_or(0.0, |found| found.number) - 40.0).abs() < 0.01);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn solve(search: &SolveProblem<'_>) -> Answer {
    let reader = Reader::new(std::slice::from_ref(&search.condition.column));
    let looks: Vec<Tried> = (0..=LOOKS)
        .into_par_iter()
        .map(|look| search.attempt(&reader, look * (STEPS / LOOKS)))
        .collect();
    let found = search.first(&reader, &looks);
    let looks = distinct(looks);
    Answer {
        found,
        monotone: is_monotone(&looks),
        looks,
    }
}

impl Answer {
    /// The looks between which the condition turns from missed to met or back; where there
    /// is no tank it does neither.
    pub fn crossings(&self) -> Vec<[&Tried; 2]> {
        let tanks = self.looks.iter().filter(|look| look.failed.is_none());
        let tanks: Vec<&Tried> = tanks.collect();
        let pairs = tanks.windows(2).map(|pair| [pair[0], pair[1]]);
        pairs.filter(|[one, other]| one.met != other.met).collect()
    }

    /// Why there is no tank anywhere in the range, where there is none.
    pub fn all_failed(&self) -> Option<&RowError> {
        let all = self.looks.iter().all(|look| look.failed.is_some());
        self.looks.first().filter(|_| all)?.failed.as_ref()
    }
}

impl SolveProblem<'_> {
    fn attempt(&self, reader: &Reader, step: u32) -> Tried {
        let number = self.range.number(f64::from(step) / f64::from(STEPS));
        match self.result(reader, number) {
            Ok(result) => Tried {
                number,
                met: self.condition.holds(result.as_ref()),
                result,
                failed: None,
            },
            Err(failed) => Tried {
                number,
                met: false,
                result: None,
                failed: Some(failed),
            },
        }
    }

    fn result(&self, reader: &Reader, number: f64) -> Result<Option<Cell>, RowError> {
        let mut draft = self.draft.clone();
        (self.range.read)(number)?.apply(&mut draft)?;
        let design = draft.check().map_err(RowError::NoTank)?;
        Ok(reader.cells(&design, self.options)?.swap_remove(0))
    }

    /// The first value that meets the condition, found by halving from the first look that
    /// does towards the one before it.
    fn first(&self, reader: &Reader, looks: &[Tried]) -> Option<Tried> {
        let place = looks.iter().position(|look| look.met)?;
        let mut found = looks[place].clone();
        let Some(before) = place.checked_sub(1) else {
            return Some(found);
        };
        let step_of = |look: usize| look as u32 * (STEPS / LOOKS);
        let (mut missed, mut met) = (step_of(before), step_of(place));
        while met - missed > 1 {
            let middle = u32::midpoint(missed, met);
            let tried = self.attempt(reader, middle);
            if tried.met {
                met = middle;
                found = tried;
            } else {
                missed = middle;
            }
        }
        Some(found)
    }
}

/// The looks without those that rounding to whole numbers made alike.
fn distinct(looks: Vec<Tried>) -> Vec<Tried> {
    let mut distinct: Vec<Tried> = Vec::with_capacity(looks.len());
    for look in looks {
        if distinct
            .last()
            .is_none_or(|last| last.number.total_cmp(&look.number).is_ne())
        {
            distinct.push(look);
        }
    }
    distinct
}

fn is_monotone(looks: &[Tried]) -> bool {
    let results: Vec<f64> = looks
        .iter()
        .filter_map(|look| look.result.as_ref()?.number())
        .collect();
    let scale = results.iter().fold(0.0_f64, |most, y| most.max(y.abs()));
    let steps = results.windows(2).map(|pair| pair[1] - pair[0]);
    let (mut rises, mut falls) = (false, false);
    for step in steps.filter(|step| step.abs() > ROUNDING * scale) {
        rises |= step > 0.0;
        falls |= step < 0.0;
    }
    !(rises && falls)
}
