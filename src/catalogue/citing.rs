//! The rows of the catalogue that rest on a source, and the plants that it restricts.

use super::row::CatalogueRow;
use super::{Animal, Cap, Device, Plant, Sign, Soil, Stone, TankSize, plants};
use crate::source::Source;

/// A row that cites a source, or a plant on a list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CitingRow {
    /// What it is a row of: "plant"; "restricted plant" where a list of these names it.
    pub kind: &'static str,
    /// Its name.
    pub name: &'static str,
}

/// Every row that cites a source.
pub fn citing_rows(source: Source) -> Vec<CitingRow> {
    let mut found = Vec::new();
    found.extend(of::<Soil>(source));
    found.extend(of::<Cap>(source));
    found.extend(of::<Stone>(source));
    found.extend(of::<Plant>(source));
    found.extend(listed(source));
    found.extend(of::<Animal>(source));
    found.extend(of::<Device>(source));
    found.extend(of::<TankSize>(source));
    found.extend(of::<Sign>(source));
    found
}

fn of<R: CatalogueRow>(source: Source) -> impl Iterator<Item = CitingRow> {
    let cites = move |row: &&R| row.sources().contains(&source);
    R::all().iter().filter(cites).map(|row| CitingRow {
        kind: R::KIND,
        name: row.name(),
    })
}

/// The plants that the source restricts.
fn listed(source: Source) -> impl Iterator<Item = CitingRow> {
    let restricts = move |plant: &&Plant| plant.listed.iter().any(|list| list.source == source);
    plants().iter().filter(restricts).map(|plant| CitingRow {
        kind: "restricted plant",
        name: &plant.name,
    })
}
