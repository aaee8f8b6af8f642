//! The rows of the catalogue that rest on a source, and the plants that it restricts.

use super::row::Row;
use super::{Animal, Cap, Device, Plant, Sign, Soil, Stone, TankSize, plants};

/// A row that cites a source, or a plant on a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CitingRow {
    /// What it is a row of: "plant"; "restricted plant" where a list of these names it.
    pub kind: &'static str,
    /// Its name.
    pub name: &'static str,
}

/// Every row that cites the source with this key.
pub fn citing_rows(key: &str) -> Vec<CitingRow> {
    let mut found = Vec::new();
    found.extend(of::<Soil>(key));
    found.extend(of::<Cap>(key));
    found.extend(of::<Stone>(key));
    found.extend(of::<Plant>(key));
    found.extend(listed(key));
    found.extend(of::<Animal>(key));
    found.extend(of::<Device>(key));
    found.extend(of::<TankSize>(key));
    found.extend(of::<Sign>(key));
    found
}

fn of<R: Row>(key: &str) -> impl Iterator<Item = CitingRow> {
    let cites = move |row: &&R| row.sources().iter().any(|source| source == key);
    R::all().iter().filter(cites).map(|row| CitingRow {
        kind: R::KIND,
        name: row.name(),
    })
}

/// The plants that the source restricts.
fn listed(key: &str) -> impl Iterator<Item = CitingRow> {
    let restricts = move |plant: &&Plant| plant.listed.iter().any(|list| list.source == key);
    plants().iter().filter(restricts).map(|plant| CitingRow {
        kind: "restricted plant",
        name: &plant.name,
    })
}
