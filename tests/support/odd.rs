//! Numbers of a result that are none.

use serde::Serialize;
use toml::Value;

/// Paths of every number that is none or endless, and of words that say so.
fn odd(value: &Value, path: &str, found: &mut Vec<String>) {
    match value {
        Value::Float(number) if !number.is_finite() => found.push(format!("{path}: {number}")),
        Value::String(text) => {
            let mut words = text.split(|c: char| !c.is_alphanumeric());
            if words.any(|word| word == "NaN" || word == "inf") {
                found.push(format!("{path}: {text}"));
            }
        }
        Value::Array(items) => {
            for (place, item) in items.iter().enumerate() {
                odd(item, &format!("{path}[{place}]"), found);
            }
        }
        Value::Table(fields) => {
            for (name, field) in fields {
                odd(field, &format!("{path}.{name}"), found);
            }
        }
        _ => {}
    }
}

/// Written as TOML: JSON has one word for a number that is not finite and for a value
/// that is rightly missing.
pub(crate) fn odd_in(result: &impl Serialize) -> Vec<String> {
    let mut found = Vec::new();
    let value = Value::try_from(result).expect("TOML");
    odd(&value, "", &mut found);
    found
}
