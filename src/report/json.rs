//! Results as JSON: the result structs themselves, named by their schema.

use serde::Serialize;
use serde_json::{Map, Value};

use crate::units::is_printable;

/// Significant digits that a computed number keeps; more would be noise of the arithmetic.
const SIGNIFICANT_DIGITS: i32 = 9;

/// The object that a result becomes, with its schema first.
///
/// Numbers that are not finite would be written as `null`; results hold none.
pub fn object(schema: &str, result: &impl Serialize) -> Map<String, Value> {
    let mut object = Map::new();
    object.insert("schema".to_owned(), Value::from(schema));
    if let Ok(Value::Object(fields)) = serde_json::to_value(result) {
        object.extend(fields.into_iter().map(|(key, value)| (key, rounded(value))));
    }
    object
}

/// A result as indented JSON with a final newline.
pub fn pretty(object: &Map<String, Value>) -> String {
    // A map with string keys always serialises.
    let text = serde_json::to_string_pretty(object).unwrap_or_default();
    escaped(&text) + "\n"
}

/// A result as one line of JSON with its newline.
pub fn line(object: &Map<String, Value>) -> String {
    let text = serde_json::to_string(object).unwrap_or_default();
    escaped(&text) + "\n"
}

/// The same JSON with everything that could drive a terminal written as its number;
/// what is left of it unescaped stands within strings, but for newlines.
fn escaped(text: &str) -> String {
    let mut escaped = String::with_capacity(text.len());
    for c in text.chars() {
        if c == '\n' || is_printable(c) {
            escaped.push(c);
        } else {
            let number = format!("\\u{:04x}", u32::from(c));
            escaped.push_str(&number);
        }
    }
    escaped
}

fn rounded(value: Value) -> Value {
    match value {
        Value::Number(value) if value.is_f64() => number(value.as_f64().unwrap_or_default()),
        Value::Array(items) => Value::Array(items.into_iter().map(rounded).collect()),
        Value::Object(fields) => Value::Object(
            fields
                .into_iter()
                .map(|(key, value)| (key, rounded(value)))
                .collect(),
        ),
        other => other,
    }
}

/// A computed number, to the digits that are no noise.
pub fn number(value: f64) -> Value {
    if value == 0.0 {
        return Value::from(0.0);
    }
    let magnitude = value.abs().log10().floor() as i32;
    let step = 10_f64.powi(SIGNIFICANT_DIGITS - 1 - magnitude);
    Value::from((value * step).round() / step)
}
