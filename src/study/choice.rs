//! Which rows are good enough, and which of them no other beats.

use super::cell::{Cell, status};
use super::column::ResultColumn;

/// What a result has to keep to.
#[derive(Debug, Clone, PartialEq)]
pub struct Condition {
    /// The result.
    pub column: ResultColumn,
    /// How it is held against the bound.
    pub comparison: Relation,
    /// The bound.
    pub bound: Bound,
}

/// How a result is held against a bound.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Relation {
    /// `>=`
    AtLeast,
    /// `<=`
    AtMost,
    /// `>`
    Above,
    /// `<`
    Below,
    /// `=`
    Equal,
    /// `!=`
    Unequal,
}

/// What a result is held against.
#[derive(Debug, Clone, PartialEq)]
pub enum Bound {
    /// A number in the unit of the result.
    Number(f64),
    /// A word; those of a status stand in order.
    Word(String),
}

impl Condition {
    /// Whether a value keeps to it; one that is not there does not.
    pub fn holds(&self, cell: Option<&Cell>) -> bool {
        let Some(cell) = cell else {
            return false;
        };
        match (&self.bound, cell) {
            (Bound::Word(word), Cell::Word(found)) => match (status(word), status(found)) {
                (Some(bound), Some(found)) => self.compare(&found, &bound),
                _ => self.compare_words(found, word),
            },
            (Bound::Word(word), Cell::Flag(flag)) => self.compare_words(&flag.to_string(), word),
            (Bound::Number(bound), cell) => cell
                .number()
                .is_some_and(|found| self.compare(&found, bound)),
            (Bound::Word(_), _) => false,
        }
    }

    fn compare<T: PartialOrd>(&self, found: &T, bound: &T) -> bool {
        match self.comparison {
            Relation::AtLeast => found >= bound,
            Relation::AtMost => found <= bound,
            Relation::Above => found > bound,
            Relation::Below => found < bound,
            Relation::Equal => found == bound,
            Relation::Unequal => found != bound,
        }
    }

    /// Words without an order are alike or not.
    fn compare_words(&self, found: &str, bound: &str) -> bool {
        match self.comparison {
            Relation::Equal => found == bound,
            Relation::Unequal => found != bound,
            _ => false,
        }
    }
}

/// Whether less or more of a result is better.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Aim {
    /// Less.
    Least,
    /// More.
    Most,
}

/// The items that no other beats.
///
/// One beats another where it is no worse by any aim and better by one; equals stay
/// together.
///
/// # Source
/// Pareto's efficient set, in the wording of Miettinen 1999 (`miettinen_1999`,
/// from memory), definition 2.2.1.
///
/// # Example
/// ```
/// use lentic::study::{Aim, Front};
/// let mut front = Front::new(vec![Aim::Least, Aim::Most]);
/// for (cost, index) in [(10.0, 1.0), (12.0, 3.0), (13.0, 2.0)] {
///     front.add((cost, index), &[Some(cost), Some(index)]);
/// }
/// let kept: Vec<(f64, f64)> = front.into_items().collect();
/// assert_eq!(kept, [(10.0, 1.0), (12.0, 3.0)]);
/// ```
#[derive(Debug, Clone)]
pub struct Front<T> {
    aims: Vec<Aim>,
    items: Vec<(T, Vec<f64>)>,
}

impl<T> Front<T> {
    /// An empty front.
    pub const fn new(aims: Vec<Aim>) -> Self {
        Self {
            aims,
            items: Vec::new(),
        }
    }

    /// Takes an item in unless another beats it, and those out that it beats. An item
    /// without one of the values is left out.
    pub fn add(&mut self, item: T, values: &[Option<f64>]) {
        let losses: Option<Vec<f64>> = self
            .aims
            .iter()
            .zip(values)
            .map(|(aim, value)| match aim {
                Aim::Least => *value,
                Aim::Most => value.map(|value| -value),
            })
            .collect();
        let Some(losses) = losses else {
            return;
        };
        if self.items.iter().any(|(_, other)| beats(other, &losses)) {
            return;
        }
        self.items.retain(|(_, other)| !beats(&losses, other));
        self.items.push((item, losses));
    }

    /// The items, in the order they came.
    pub fn into_items(self) -> impl Iterator<Item = T> {
        self.items.into_iter().map(|(item, _)| item)
    }
}

fn beats(one: &[f64], other: &[f64]) -> bool {
    let mut pairs = one.iter().zip(other);
    pairs.clone().all(|(one, other)| one <= other) && pairs.any(|(one, other)| one < other)
}
