//! The names of every list of the catalogue.

use super::{Animal, Cap, CatalogueRow, Device, Plant, Sign, Soil, Stone};

/// The names of a list, by what it is called; none of a list that there is not.
pub fn names_in(list: &str) -> Vec<&'static str> {
    fn of<R: CatalogueRow>() -> (&'static str, Vec<&'static str>) {
        (R::LIST, R::all().iter().map(CatalogueRow::name).collect())
    }
    let lists = [
        of::<Soil>(),
        of::<Cap>(),
        of::<Stone>(),
        of::<Plant>(),
        of::<Animal>(),
        of::<Device>(),
        of::<Sign>(),
    ];
    let found = lists.into_iter().find(|(name, _)| *name == list);
    found.map(|(_, names)| names).unwrap_or_default()
}
