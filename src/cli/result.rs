//! One result in the format asked for.

use serde::Serialize;

use super::args::SpecOptions;
use super::choice::Format;
use super::failure::Failure;
use super::output;
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
    let out = common.out.as_deref();
    let text = match format {
        Format::Text => text::render(&document(), output::layout(common.color, out)),
        Format::Json => json::pretty(&json::object(schema, result)),
        Format::Html => html::render(&document()),
        Format::Csv => csv::table(&[csv::flattened(
            &json::object(schema, result),
            csv::Lists::Numbered,
        )]),
    };
    output::write(&text, out)
}
