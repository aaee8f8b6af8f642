//! The values at a path of a result's JSON.

use serde::Serialize;
use serde_json::{Map, Value};

use crate::units::TYPICAL_END;

/// A value with its own path, items of lists numbered.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ValueAt {
    /// Where it stands.
    pub path: String,
    /// What stands there.
    pub value: Value,
}

/// Every value at a path: `[]` stands for all items of a list, `[2]` for its third. The
/// typical value of a band stands for it where there is one number alone. Nothing where
/// the result has no such part.
pub fn values(object: &Map<String, Value>, path: &str) -> Vec<ValueAt> {
    let mut found = Vec::new();
    let whole = Value::Object(object.clone());
    descend(&whole, "", path, &mut found);
    found
}

fn descend(value: &Value, done: &str, rest: &str, found: &mut Vec<ValueAt>) {
    if rest.is_empty() || (value.is_number() && rest == TYPICAL_END) {
        found.push(ValueAt {
            path: done.to_owned(),
            value: value.clone(),
        });
        return;
    }
    if let Some((index, after)) = item(rest) {
        let items = value.as_array().into_iter().flatten().enumerate();
        let is_meant = |place: usize| index.is_empty() || index.parse() == Ok(place);
        for (place, value) in items.filter(|(place, _)| is_meant(*place)) {
            let done = format!("{done}[{place}]");
            descend(value, &done, after, found);
        }
        return;
    }
    let rest = rest.trim_start_matches('.');
    let end = rest.find(['.', '[']).unwrap_or(rest.len());
    let (key, after) = rest.split_at(end);
    if let Some(value) = value.get(key) {
        let dot = if done.is_empty() { "" } else { "." };
        descend(value, &format!("{done}{dot}{key}"), after, found);
    }
}

/// The item that a rest of a path begins with, empty for all, and what follows it.
fn item(rest: &str) -> Option<(&str, &str)> {
    rest.strip_prefix('[')?.split_once(']')
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(path: &str) -> Vec<(String, Value)> {
        let text = r#"{"a": {"b": 1, "c": {"low": 1, "typical": 2, "high": 3}}, "l": [{"x": 5}, {"x": 6}]}"#;
        let object: Map<String, Value> = serde_json::from_str(text).unwrap();
        let found = values(&object, path).into_iter();
        found.map(|at| (at.path, at.value)).collect()
    }

    #[test]
    fn keys_items_and_ends_of_bands_are_found() {
        let one = |path: &str, value: i32| vec![(path.to_owned(), Value::from(value))];
        assert_eq!(at("a.b"), one("a.b", 1));
        assert_eq!(at("a.c.high"), one("a.c.high", 3));
        assert_eq!(at("l[1].x"), one("l[1].x", 6));
        let all = [one("l[0].x", 5), one("l[1].x", 6)].concat();
        assert_eq!(at("l[].x"), all);
    }

    #[test]
    fn a_single_number_is_its_own_typical_value_and_what_is_absent_is_not_made_up() {
        assert_eq!(at("a.b.typical"), vec![("a.b".to_owned(), Value::from(1))]);
        for absent in [
            "a.b.low",
            "a.z",
            "l[2].x",
            "l[99999999999999999999999].x",
            "l[-1].x",
            "b[]",
            "a.c.d",
        ] {
            assert!(at(absent).is_empty(), "{absent}");
        }
    }
}
