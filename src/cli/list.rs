//! `lentic list`.

use serde::Serialize;
use serde_json::{Map, Value};

use super::Outcome;
use super::args::ListOptions;
use super::choice::{Format, ListTopic};
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

fn document(what: ListTopic) -> Document {
    match what {
        ListTopic::Soils => listing::soils(),
        ListTopic::Caps => listing::caps(),
        ListTopic::Stones => listing::stones(),
        ListTopic::Plants => listing::plants(),
        ListTopic::Animals => listing::animals(),
        ListTopic::Devices => listing::devices(),
        ListTopic::Sizes => listing::sizes(),
        ListTopic::Signs => listing::signs(),
        ListTopic::Sources => listing::sources(),
        ListTopic::Rules => listing::rules(),
        ListTopic::Results => listing::results(),
    }
}

fn rows(what: ListTopic) -> Map<String, Value> {
    match what {
        ListTopic::Soils => object(catalogue::soils()),
        ListTopic::Caps => object(catalogue::caps()),
        ListTopic::Stones => object(catalogue::stones()),
        ListTopic::Plants => object(catalogue::plants()),
        ListTopic::Animals => object(catalogue::animals()),
        ListTopic::Devices => object(catalogue::devices()),
        ListTopic::Sizes => object(catalogue::sizes()),
        ListTopic::Signs => object(catalogue::signs()),
        ListTopic::Sources => object(source::works()),
        ListTopic::Rules => object(explanation::topics()),
        ListTopic::Results => object(&listed()),
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
