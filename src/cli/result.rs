//! One result in the format asked for.

use serde::Serialize;

use super::choice::Format;
use super::failure::Failure;
use super::output;
use super::shared::SpecOptions;
use crate::report::document::Document;
use crate::report::{csv, html, json, text};

/// Writes a result: as a document for people, or under its schema for scripts.
///
/// # Errors
/// When the output cannot be written.
pub(super) fn write(
    common: &SpecOptions,
    format: Format,
    schema: &str,
    result: &impl Serialize,
    document: impl FnOnce() -> Document,
) -> Result<(), Failure> {
    let (color, out) = (common.color, common.out.as_deref());
    let text = match format {
        Format::Text => text::render(&document(), output::layout(color, out)),
        Format::Json => json::pretty(&json::object(schema, result)),
        Format::Html => html::render(&document()),
        Format::Csv => csv::table(&[csv::flattened(
            &json::object(schema, result),
            csv::Lists::Numbered,
        )]),
    };
    output::write(&text, out)
}

/// A row for each of some items of a list.
pub(super) fn rows(items: &[impl Serialize]) -> String {
    let rows: Vec<_> = items
        .iter()
        .map(|item| csv::flattened(&json::object("", item), csv::Lists::Omitted))
        .map(|cells| {
            let named = cells.into_iter().filter(|(path, _)| path != "schema");
            named.collect()
        })
        .collect();
    csv::table(&rows)
}
