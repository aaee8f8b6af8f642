//! Results as CSV: one row a result, columns named by the dotted JSON path.

use std::collections::HashMap;

use serde_json::{Map, Value};

use crate::units::printable;

/// Whether lists become columns of their own (`soil.bags.0.size`) or are left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lists {
    /// A column for each item and field.
    Numbered,
    /// No column.
    Omitted,
}

/// Dotted paths with their scalar values, in the order of the object.
pub fn flattened(object: &Map<String, Value>, lists: Lists) -> Vec<(String, Value)> {
    let mut cells = Vec::new();
    for (key, value) in object {
        flatten(key.clone(), value, lists, &mut cells);
    }
    cells
}

fn flatten(path: String, value: &Value, lists: Lists, cells: &mut Vec<(String, Value)>) {
    match value {
        Value::Object(fields) => {
            for (key, value) in fields {
                flatten(format!("{path}.{key}"), value, lists, cells);
            }
        }
        Value::Array(items) if lists == Lists::Numbered => {
            for (index, item) in items.iter().enumerate() {
                flatten(format!("{path}.{index}"), item, lists, cells);
            }
        }
        Value::Array(_) => {}
        scalar => cells.push((path, scalar.clone())),
    }
}

/// Rows under the union of their columns, in order of first appearance.
pub fn table(rows: &[Vec<(String, Value)>]) -> String {
    if rows.is_empty() {
        return String::new();
    }
    let mut columns: Vec<&str> = Vec::new();
    let mut known: HashMap<&str, usize> = HashMap::new();
    for (path, _) in rows.iter().flatten() {
        known.entry(path).or_insert_with(|| {
            columns.push(path);
            columns.len() - 1
        });
    }
    let mut lines = vec![columns.iter().map(ToString::to_string).collect::<Vec<_>>()];
    for row in rows {
        let mut cells = vec![String::new(); columns.len()];
        for (path, value) in row {
            cells[known[path.as_str()]] = cell(value);
        }
        lines.push(cells);
    }
    written(&lines)
}

/// One line of cells.
pub fn line(cells: impl Iterator<Item = String>) -> String {
    written(&[cells.collect()])
}

/// A scalar as a cell. A text that a spreadsheet would take for a formula, also behind
/// blanks, is marked as text by a leading apostrophe; a number below zero stays one.
pub fn cell(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => {
            let text = printable(text);
            if text.trim_start().starts_with(['=', '+', '-', '@']) {
                format!("'{text}")
            } else {
                text
            }
        }
        other => other.to_string(),
    }
}

fn written(lines: &[Vec<String>]) -> String {
    let mut writer = csv::Writer::from_writer(Vec::new());
    for line in lines {
        // Writing to memory cannot fail, and all lines have the same length.
        let _ = writer.write_record(line);
    }
    let bytes = writer.into_inner().unwrap_or_default();
    String::from_utf8(bytes).unwrap_or_default()
}
