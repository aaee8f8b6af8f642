//! A row of a comparison as a JSON object and as a line of CSV, under the same names.

use serde_json::{Map, Value};

use super::{csv, json};
use crate::study::{Axis, Cell, ResultColumn, Shown, TankRow};

/// What stands before the name of what is varied in CSV.
const VARY: &str = "vary";

/// A row as an object; results that it does not have are left out.
pub fn object(
    row: &TankRow,
    file: &str,
    axes: &[Axis],
    columns: &[ResultColumn],
) -> Map<String, Value> {
    let mut object = Map::new();
    object.insert("name".to_owned(), Value::from(row.name.as_str()));
    object.insert("file".to_owned(), Value::from(file));
    if !axes.is_empty() {
        object.insert(VARY.to_owned(), Value::Object(varied(row, axes)));
    }
    let cells = row.cells.as_deref().unwrap_or_default();
    for (column, cell) in columns.iter().zip(cells) {
        if let Some(cell) = cell {
            object.insert(column.name().to_owned(), value(cell));
        }
    }
    object
}

/// What the varied keys are in a row.
pub fn varied(row: &TankRow, axes: &[Axis]) -> Map<String, Value> {
    let pairs = axes.iter().zip(&row.levels);
    pairs
        .map(|(axis, level)| (axis.name.clone(), shown(&level.shown)))
        .collect()
}

/// The head line of CSV.
pub fn csv_head(axes: &[Axis], columns: &[ResultColumn]) -> String {
    let axes = axes.iter().map(|axis| format!("{VARY}.{}", axis.name));
    let columns = columns.iter().map(|column| column.name().to_owned());
    let fixed = ["name", "file"].map(str::to_owned);
    csv::line(fixed.into_iter().chain(axes).chain(columns))
}

/// A row as a line of CSV; results that it does not have are empty.
pub fn csv_line(row: &TankRow, file: &str, columns: &[ResultColumn]) -> String {
    let fixed = [row.name.as_str(), file].map(|text| csv::cell(&Value::from(text)));
    let levels = row
        .levels
        .iter()
        .map(|level| csv::cell(&shown(&level.shown)));
    let cells = row.cells.as_deref().unwrap_or_default();
    let cells = cells.iter().take(columns.len()).map(|cell| {
        let value = cell.as_ref().map_or(Value::Null, value);
        csv::cell(&value)
    });
    csv::line(fixed.into_iter().chain(levels).chain(cells))
}

fn value(cell: &Cell) -> Value {
    match cell {
        Cell::Number(number) => json::number(*number),
        Cell::Whole(whole) => Value::from(*whole),
        Cell::Word(word) => Value::from(word.as_str()),
        Cell::Flag(flag) => Value::from(*flag),
    }
}

fn shown(shown: &Shown) -> Value {
    match shown {
        Shown::Number(number) => json::number(*number),
        Shown::Text(text) => Value::from(text.as_str()),
    }
}
