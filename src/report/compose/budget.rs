//! Where nitrogen comes from and goes by the day.

use crate::plan::BudgetRow;
use crate::report::document::{Block, Table, TableColumn};
use crate::units::show::significant;

/// What it is called where it is asked for, and its heading.
pub(super) const HEADING: &str = "Nitrogen by the day";
/// The days of the table.
const DAYS: [f64; 6] = [1.0, 7.0, 14.0, 28.0, 60.0, 90.0];
/// Nitrogen that is not worth a figure, mg a day.
const NEXT_TO_NOTHING: f64 = 5e-3;

/// A part of the budget, and where it stands in a row.
type Part = (&'static str, fn(&BudgetRow) -> f64);

const PARTS: [Part; 7] = [
    ("out of soil", |row| row.from_soil),
    ("feed, dead", |row| row.from_matter),
    ("to plants", |row| row.to_plants),
    ("algae, air", |row| row.to_others),
    ("changed", |row| row.changed),
    ("stays", BudgetRow::left),
    ("bacteria", |row| row.oxidised),
];

/// The budget of the typical run on some of its days.
pub(super) fn blocks(rows: &[BudgetRow]) -> Vec<Block> {
    if rows.is_empty() {
        return Vec::new();
    }
    vec![
        Block::Heading(HEADING.to_owned()),
        Block::Table(table(rows)),
        Block::Text(
            "mg a day dissolved in the whole tank, by the typical run as written: what comes from soil, feed and dead matter, less what plants, algae, the air and changed water take, stays. What bacteria oxidise stays too."
                .to_owned(),
        ),
    ]
}

fn table(rows: &[BudgetRow]) -> Table {
    let columns = PARTS.map(|(name, _)| TableColumn::numbers(name));
    let shown = rows
        .iter()
        .filter(|row| DAYS.iter().any(|day| day.total_cmp(&row.day).is_eq()));
    let cells = shown.map(|row| {
        let parts = PARTS.map(|(_, of)| figure(of(row)));
        [significant(row.day, 3)].into_iter().chain(parts).collect()
    });
    Table {
        columns: [TableColumn::numbers("day")]
            .into_iter()
            .chain(columns)
            .collect(),
        rows: cells.collect(),
    }
}

fn figure(mg: f64) -> String {
    if mg.abs() < NEXT_TO_NOTHING {
        "0".to_owned()
    } else {
        significant(mg, 2)
    }
}
