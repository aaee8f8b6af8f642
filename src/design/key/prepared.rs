//! A value read for a key, and the place in a draft that takes it.

use std::fmt;
use std::sync::Arc;

use super::read::analyte;
use super::value::Value;
use super::{KeyEntry, KeyKind};
use crate::design::{Draft, Violation};
use crate::units::{Analyte, Concentration};

/// What a draft needs before it has a place for a value.
pub(crate) type Needs = &'static str;

/// Where a draft holds the value of a key, of an item of a list the one at that index.
pub(super) type DraftPlace<V> = fn(&mut Draft, usize) -> Result<&mut V, Needs>;

/// Takes a value into a draft where no single place holds it.
pub(super) type Taker<V> = fn(&mut Draft, usize, V) -> Result<(), Needs>;

/// Reads what stands at a key, so that it can be put into any draft.
pub(crate) type Prepare = fn(&KeyEntry<'_>) -> Result<Prepared, Violation>;

/// Puts a value that it holds into a draft.
type Into = dyn Fn(&mut Draft, usize) -> Result<(), Needs> + Send + Sync;

/// A value that has been read and can be put into any draft.
#[derive(Clone)]
pub(crate) struct Prepared {
    is_whole: bool,
    into: Arc<Into>,
}

impl Prepared {
    /// Whether only whole numbers make sense for the value.
    pub(crate) fn is_whole(&self) -> bool {
        self.is_whole
    }

    /// Puts the value of a plain key, which has its place in every draft.
    pub(crate) fn fill(&self, draft: &mut Draft) {
        let filled = self.apply(draft, 0);
        debug_assert_eq!(filled, Ok(()), "a plain key has its place in every draft");
    }

    /// Puts the value into a draft.
    pub(crate) fn apply(&self, draft: &mut Draft, item: usize) -> Result<(), Needs> {
        (self.into)(draft, item)
    }
}

impl fmt::Debug for Prepared {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Prepared")
            .field("is_whole", &self.is_whole)
            .finish_non_exhaustive()
    }
}

/// The kind of what a place holds.
pub(super) const fn kind_of<V: Value>(_: DraftPlace<V>) -> KeyKind {
    V::KIND
}

/// Reads what a place holds.
pub(super) fn put<V: Value>(
    entry: &KeyEntry<'_>,
    place: DraftPlace<V>,
) -> Result<Prepared, Violation> {
    V::read(entry).map(|value| held(value, value.is_whole(), place))
}

/// Reads a concentration on the analyte's own scale for the place that holds it.
pub(super) fn put_scaled<V>(
    entry: &KeyEntry<'_>,
    scale: Analyte,
    place: DraftPlace<V>,
) -> Result<Prepared, Violation>
where
    V: From<Concentration> + Copy + Send + Sync + 'static,
{
    analyte(scale)(entry).map(|value| held(V::from(value), false, place))
}

/// Reads a value that a draft takes in a way of its own.
pub(super) fn put_by<V: Value>(
    entry: &KeyEntry<'_>,
    take: Taker<V>,
) -> Result<Prepared, Violation> {
    V::read(entry).map(|value| Prepared {
        is_whole: value.is_whole(),
        into: Arc::new(move |draft, item| take(draft, item, value)),
    })
}

fn held<V: Copy + Send + Sync + 'static>(
    value: V,
    is_whole: bool,
    place: DraftPlace<V>,
) -> Prepared {
    Prepared {
        is_whole,
        into: Arc::new(move |draft, item| {
            *place(draft, item)? = value;
            Ok(())
        }),
    }
}
