//! Rows of a comparison on their way out, in each format.

use std::ops::ControlFlow;

use serde_json::{Map, Value};

use super::choice::RowFormat;
use super::failure::Failure;
use super::output::Stream;
use crate::report::{json, row};
use crate::study::{Axis, KeyInfluence, ResultColumn, TankRow};

/// The schema of a comparison.
const SCHEMA: &str = "lentic/compare/1";

/// What could not be compared.
pub(super) struct FailedRow {
    pub(super) file: String,
    /// What the varied keys were, for a row of a file that is well in itself.
    pub(super) vary: Map<String, Value>,
    pub(super) error: String,
}

impl FailedRow {
    /// As an object.
    fn object(&self) -> Map<String, Value> {
        let mut object = Map::new();
        object.insert("file".to_owned(), Value::from(self.file.as_str()));
        if !self.vary.is_empty() {
            object.insert("vary".to_owned(), Value::Object(self.vary.clone()));
        }
        object.insert("error".to_owned(), Value::from(self.error.as_str()));
        object
    }
}

/// Rows written one by one for scripts.
pub(super) struct RowWriter<'a> {
    format: RowFormat,
    axes: &'a [Axis],
    columns: &'a [ResultColumn],
    stream: Stream,
    count: u64,
}

impl<'a> RowWriter<'a> {
    /// Begins with what stands before the first row.
    pub(super) fn begin(
        format: RowFormat,
        axes: &'a [Axis],
        columns: &'a [ResultColumn],
        mut stream: Stream,
    ) -> Result<Self, Failure> {
        let head = match format {
            RowFormat::Csv => row::csv_head(axes, columns),
            RowFormat::Json => {
                format!("{{\n  \"schema\": \"{SCHEMA}\",\n  \"rows\": [")
            }
            RowFormat::Jsonl | RowFormat::Text | RowFormat::Html => String::new(),
        };
        // Nobody reading is found out at the first row.
        let _ = stream.write(&head)?;
        Ok(Self {
            format,
            axes,
            columns,
            stream,
            count: 0,
        })
    }

    /// Writes a row; breaks where nobody reads any longer.
    pub(super) fn write(&mut self, row: &TankRow, file: &str) -> Result<ControlFlow<()>, Failure> {
        let text = match self.format {
            RowFormat::Csv => row::csv_line(row, file, self.columns),
            RowFormat::Jsonl | RowFormat::Text | RowFormat::Html => {
                json::line(&row::object(row, file, self.axes, self.columns))
            }
            RowFormat::Json => {
                let comma = if self.count == 0 { "" } else { "," };
                let line = json::line(&row::object(row, file, self.axes, self.columns));
                format!("{comma}\n    {}", line.trim_end())
            }
        };
        self.count += 1;
        self.stream.write(&text)
    }

    /// Ends with what could not be compared and what moves a result.
    pub(super) fn end<'f>(
        mut self,
        failed: impl Iterator<Item = &'f FailedRow>,
        influences: Option<&(&str, Vec<KeyInfluence>)>,
    ) -> Result<(), Failure> {
        if self.format == RowFormat::Json {
            let failed = failed.map(|failed| Value::Object(failed.object()));
            let failed: Vec<Value> = failed.collect();
            let mut text = format!(
                "{}],\n  \"failed\": {}",
                if self.count == 0 { "" } else { "\n  " },
                Value::Array(failed)
            );
            if let Some((result, influences)) = influences {
                let moved = influences
                    .iter()
                    .map(|influence| Value::Object(moving(result, influence)));
                let moved = Value::Array(moved.collect());
                text.extend([",\n  \"sensitivity\": ", &moved.to_string()]);
            }
            text.push_str("\n}\n");
            let _ = self.stream.write(&text)?;
        }
        self.stream.finish()
    }
}

fn moving(result: &str, influence: &KeyInfluence) -> Map<String, Value> {
    let number = |value: Option<f64>| value.map_or(Value::Null, json::number);
    Map::from_iter([
        ("result".to_owned(), Value::from(result)),
        ("key".to_owned(), Value::from(influence.key.as_str())),
        (
            "variance_share".to_owned(),
            number(influence.variance_share),
        ),
        (
            "rank_correlation".to_owned(),
            number(influence.rank_correlation),
        ),
    ])
}
