//! Values of a result by their path, gathered without writing the result out.

mod serializer;

use std::collections::HashMap;
use std::fmt;

use serde::Serialize;

use super::cell::Cell;
use super::column::ResultColumn;

/// Where each path that is asked for goes.
#[derive(Debug)]
pub(super) struct Places {
    by_path: HashMap<String, Vec<usize>>,
    count: usize,
}

impl Places {
    pub(super) fn of(columns: &[ResultColumn]) -> Self {
        let mut by_path: HashMap<String, Vec<usize>> = HashMap::new();
        for (place, column) in columns.iter().enumerate() {
            for path in column.places() {
                by_path.entry(path).or_default().push(place);
            }
        }
        Self {
            by_path,
            count: columns.len(),
        }
    }
}

/// Gathers the values asked for from whatever can be serialised.
pub(super) struct Gatherer<'p> {
    places: &'p Places,
    path: String,
    cells: Vec<Option<Cell>>,
}

impl<'p> Gatherer<'p> {
    pub(super) fn new(places: &'p Places) -> Self {
        Self {
            places,
            path: String::with_capacity(64),
            cells: vec![None; places.count],
        }
    }

    /// Takes what is asked for from a result.
    pub(super) fn gather(&mut self, result: &impl Serialize) {
        // Gathering has no way to fail.
        let _ = result.serialize(&mut *self);
    }

    /// Takes one value if it is asked for.
    pub(super) fn offer(&mut self, path: &str, cell: &Cell) {
        for place in self.places.by_path.get(path).into_iter().flatten() {
            self.cells[*place] = Some(cell.clone());
        }
    }

    pub(super) fn into_cells(self) -> Vec<Option<Cell>> {
        self.cells
    }

    fn leaf(&mut self, cell: impl FnOnce() -> Cell) {
        let Some(places) = self.places.by_path.get(&self.path) else {
            return;
        };
        let cell = cell();
        for place in places {
            self.cells[*place] = Some(cell.clone());
        }
    }

    fn field(&mut self, key: &str, value: &(impl Serialize + ?Sized)) -> Result<(), fmt::Error> {
        let length = self.path.len();
        if length > 0 {
            self.path.push('.');
        }
        self.path.push_str(key);
        let done = value.serialize(&mut *self);
        self.path.truncate(length);
        done
    }
}
