//! `lentic list`.

use serde::Serialize;
use serde_json::{Map, Value};

use super::Outcome;
use super::args::ListOptions;
use super::choice::{Format, Listing};
use super::failure::Failure;
use super::output;
use crate::catalogue;
use crate::explanation;
use crate::report::dictionary::{self, Listed};
use crate::report::document::Document;
use crate::report::{csv, html, json, listing, text};
use crate::source;

/// The schema of a list.
const SCHEMA: &str = "lentic/list/1";

pub(super) fn run(options: &ListOptions) -> Result<Outcome, Failure> {
    let out = options.out.as_deref();
    let text = match options.format {
        Format::Text => text::render(&document(options.what), output::layout(options.color, out)),
        Format::Html => html::render(&document(options.what)),
        Format::Json => json::pretty(&rows(options.what)),
        Format::Csv => csv::table(&cells(&rows(options.what))),
    };
    output::write(&text, out)?;
    Ok(Outcome::Done)
}

fn document(what: Listing) -> Document {
    match what {
        Listing::Soils => listing::soils(),
        Listing::Caps => listing::caps(),
        Listing::Stones => listing::stones(),
        Listing::Plants => listing::plants(),
        Listing::Animals => listing::animals(),
        Listing::Devices => listing::devices(),
        Listing::Sizes => listing::sizes(),
        Listing::Signs => listing::signs(),
        Listing::Sources => listing::sources(),
        Listing::Rules => listing::rules(),
        Listing::Results => listing::results(),
    }
}

fn rows(what: Listing) -> Map<String, Value> {
    match what {
        Listing::Soils => object(catalogue::soils()),
        Listing::Caps => object(catalogue::caps()),
        Listing::Stones => object(catalogue::stones()),
        Listing::Plants => object(catalogue::plants()),
        Listing::Animals => object(catalogue::animals()),
        Listing::Devices => object(catalogue::devices()),
        Listing::Sizes => object(catalogue::sizes()),
        Listing::Signs => object(catalogue::signs()),
        Listing::Sources => object(source::works()),
        Listing::Rules => object(explanation::topics()),
        Listing::Results => object(&listed()),
    }
}

fn listed() -> Vec<Listed> {
    dictionary::results().iter().map(Listed::of).collect()
}

/// Rows under the key `rows`.
#[derive(Serialize)]
struct Rows<'a, T> {
    rows: &'a [T],
}

fn object<T: Serialize>(rows: &[T]) -> Map<String, Value> {
    json::object(SCHEMA, &Rows { rows })
}

/// A row of cells for each row of the list.
fn cells(object: &Map<String, Value>) -> Vec<Vec<(String, Value)>> {
    let rows = object.get("rows").and_then(Value::as_array);
    rows.into_iter()
        .flatten()
        .filter_map(Value::as_object)
        .map(|row| csv::flattened(row, csv::Lists::Numbered))
        .collect()
}
