//! The JSON Schema of a spec, for editors: built from the table of keys.
//!
//! It knows each key alone: kind, words, names, the pattern of a quantity, what its
//! section cannot do without. Limits of quantities stand in the descriptions; rules
//! between keys are left to the reader, but for the dimensions that a shape needs.

use serde_json::{Map, Value, json};

use super::key::{self, Key, KeyKind};
use super::tank::FORMS;
use crate::catalogue::{self, CatalogueRow, Portion};
use crate::design::key::MOST_CHARACTERS;
use crate::units::size::Size;
use crate::units::{
    Alkalinity, Analyte, ArealDensity, Concentration, Conductivity, Content, Density, Duration,
    Flow, Hardness, Length, Mass, PhotonFlux, Quantity, Share, Sorption, Temperature, Volume,
    pattern,
};

/// The dialect it is written in.
const DIALECT: &str = "https://json-schema.org/draft/2020-12/schema";

/// The edges of a sloped layer that need each other.
const OPPOSITE: [(&str, &str); 2] = [("back", "front"), ("left", "right")];

/// Two numbers with a hyphen between them, and a unit.
const TWO_MARKS: &str = r"^\s*[0-9]*\.?[0-9]+\s*[-–]\s*[0-9]*\.?[0-9]+\s*\S";

/// The JSON Schema of a spec, draft 2020-12.
///
/// # Example
/// ```
/// let schema = lentic::spec::schema();
/// assert_eq!(schema["properties"]["cap"]["required"][0], "material");
/// ```
pub fn schema() -> Map<String, Value> {
    let mut schema = Map::new();
    schema.insert("$schema".to_owned(), json!(DIALECT));
    schema.insert("title".to_owned(), json!("The spec of one planted tank"));
    schema.extend(section(""));
    schema.insert("$defs".to_owned(), Value::Object(definitions()));
    schema
}

/// The quantities by name, with the pattern of what is read as one, and the lists of
/// the catalogue.
fn definitions() -> Map<String, Value> {
    let portions = Portion::ALL
        .iter()
        .flat_map(|portion| [portion.singular(), portion.plural()])
        .chain(["plant", "plants"]);
    quantities()
        .into_iter()
        .chain([
            ("a size", pattern::lengths::<Length>(Size::DIMENSIONS)),
            ("portions", pattern::portion(portions)),
        ])
        .map(|(name, pattern)| {
            let definition = json!({ "type": "string", "pattern": pattern });
            (bare(name), definition)
        })
        .chain(lists().map(|(list, names)| (list.to_owned(), names)))
        .collect()
}

/// Every quantity that a key takes, by its name with its article.
fn quantities() -> [(&'static str, String); 20] {
    fn of<Q: Quantity>() -> (&'static str, String) {
        (Q::NAME, pattern::quantity::<Q>())
    }
    let analyte = |analyte: Analyte| (analyte.phrase(), analyte.pattern());
    [
        of::<Length>(),
        of::<Volume>(),
        of::<Mass>(),
        of::<Share>(),
        of::<Density>(),
        of::<ArealDensity>(),
        of::<Content>(),
        of::<Sorption>(),
        of::<Temperature>(),
        of::<Alkalinity>(),
        of::<Hardness>(),
        of::<Conductivity>(),
        of::<Concentration>(),
        of::<Duration>(),
        of::<PhotonFlux>(),
        of::<Flow>(),
        analyte(Analyte::Ammonia),
        analyte(Analyte::Nitrite),
        analyte(Analyte::Nitrate),
        analyte(Analyte::Phosphate),
    ]
}

/// A quantity's name without its article, as one word.
fn bare(name: &str) -> String {
    let bare = name.strip_prefix("an ").or(name.strip_prefix("a "));
    bare.unwrap_or(name).replace(' ', "_")
}

fn reference(name: &str) -> Value {
    json!({ "$ref": format!("#/$defs/{}", bare(name)) })
}

/// The section at a path, with every key that stands in it.
fn section(path: &str) -> Map<String, Value> {
    let keys: Vec<&Key> = key::within(path).collect();
    let properties: Map<String, Value> = keys
        .iter()
        .map(|key| (key.leaf().to_owned(), Value::Object(property(key))))
        .collect();
    let needed: Vec<&str> = keys
        .iter()
        .filter(|key| key.needed)
        .map(|key| key.leaf())
        .collect();
    let mut section = Map::new();
    section.insert("type".to_owned(), json!("object"));
    section.insert("properties".to_owned(), Value::Object(properties));
    if !needed.is_empty() {
        section.insert("required".to_owned(), json!(needed));
    }
    section.insert("additionalProperties".to_owned(), json!(false));
    if path == "tank" {
        let either = json!([{ "required": ["shape"] }, { "required": ["size"] }]);
        section.insert("anyOf".to_owned(), either);
        section.insert("allOf".to_owned(), dimensions());
    }
    section
}

/// What each shape needs: a box its size or three lengths, any other all its dimensions.
fn dimensions() -> Value {
    FORMS
        .iter()
        .map(|form| {
            let needed = match form.keys {
                ["size", apart @ ..] => {
                    json!({ "oneOf": [{ "required": ["size"] }, { "required": apart }] })
                }
                keys => json!({ "required": keys }),
            };
            let mut spellings = otherwise_parted(form.word);
            spellings.insert(0, form.word.to_owned());
            json!({
                "if": { "properties": { "shape": { "enum": spellings } }, "required": ["shape"] },
                "then": needed,
            })
        })
        .collect()
}

/// What may stand at a key, what it says, its default and an example.
fn property(key: &Key) -> Map<String, Value> {
    let mut property = Map::new();
    property.insert("description".to_owned(), json!(description(key)));
    property.extend(kind(key));
    if let Some(default) = key.default.and_then(|found| written(found.written)) {
        property.insert("default".to_owned(), default);
    }
    if let Some(example) = written(&key.example_value()) {
        property.insert("examples".to_owned(), json!([example]));
    }
    property
}

/// What a key says, with the limits that a pattern cannot hold.
fn description(key: &Key) -> String {
    if key.limits.low.is_none() && key.limits.high.is_none() {
        key.says.to_owned()
    } else {
        format!("{}; {}", key.says, key.limits.words())
    }
}

fn kind(key: &Key) -> Map<String, Value> {
    let kind = match key.kind {
        KeyKind::Text => {
            json!({ "type": "string", "pattern": "\\S", "maxLength": MOST_CHARACTERS })
        }
        KeyKind::Date => json!({ "type": "string", "format": "date" }),
        KeyKind::Flag => json!({ "type": "boolean" }),
        KeyKind::Number => bounded("number", key),
        KeyKind::Count => bounded("integer", key),
        KeyKind::Quantity(name) => reference(name),
        KeyKind::Size => reference("a size"),
        KeyKind::Depth => json!({
            "anyOf": [reference(Length::NAME), { "const": "unknown" }, slope(key)]
        }),
        KeyKind::Span(name) => json!({
            "anyOf": [reference(name), { "type": "string", "pattern": TWO_MARKS }]
        }),
        KeyKind::BagSize => {
            json!({ "anyOf": [reference(Volume::NAME), reference(Mass::NAME)] })
        }
        KeyKind::Amount => json!({
            "anyOf": [reference(Share::NAME), reference(Mass::NAME), reference("portions")]
        }),
        KeyKind::Dose => json!({ "type": "string", "pattern": pattern::dose::<Volume>() }),
        KeyKind::WordOrShare(words) => {
            json!({ "anyOf": [{ "enum": words }, reference(Share::NAME)] })
        }
        KeyKind::Word(words) => {
            let others = words.iter().flat_map(|word| otherwise_parted(word));
            alternatives(words, "other spellings", &others.collect::<Vec<_>>())
        }
        KeyKind::Name(list) => reference(list),
        KeyKind::Numbers => list(key, bounded("number", key)),
        KeyKind::Names(names) => list(key, reference(names)),
        KeyKind::Section => Value::Object(section(key.path)),
        KeyKind::Sections => {
            let items = section(&format!("{}[]", key.path));
            list(key, Value::Object(items))
        }
    };
    match kind {
        Value::Object(kind) => kind,
        _ => Map::new(),
    }
}

/// A number with the limits of its key.
fn bounded(kind: &str, key: &Key) -> Value {
    let mut number = Map::from_iter([("type".to_owned(), json!(kind))]);
    let low = if key.limits.open {
        "exclusiveMinimum"
    } else {
        "minimum"
    };
    for (name, bound) in [(low, key.limits.low), ("maximum", key.limits.high)] {
        if let Some(bound) = bound.and_then(written) {
            number.insert(name.to_owned(), bound);
        }
    }
    Value::Object(number)
}

/// A list of sections or names.
fn list(key: &Key, items: Value) -> Value {
    let mut list = Map::from_iter([("type".to_owned(), json!("array"))]);
    list.insert("items".to_owned(), items);
    if let Some(most) = key.most {
        list.insert("maxItems".to_owned(), json!(most));
    }
    Value::Object(list)
}

/// A table of depths at opposite edges.
fn slope(key: &Key) -> Value {
    let mut slope = section(key.path);
    slope.insert("minProperties".to_owned(), json!(2));
    let both = OPPOSITE.map(|(one, other)| [(one, other), (other, one)]);
    let needs: Map<String, Value> = both
        .into_iter()
        .flatten()
        .map(|(one, other)| (one.to_owned(), json!([other])))
        .collect();
    slope.insert("dependentRequired".to_owned(), Value::Object(needs));
    Value::Object(slope)
}

/// The lists of the catalogue that keys name rows of.
fn lists() -> [(&'static str, Value); 7] {
    [
        ("soils", names(catalogue::soils())),
        ("caps", names(catalogue::caps())),
        ("stones", names(catalogue::stones())),
        ("plants", names(catalogue::plants())),
        ("animals", names(catalogue::animals())),
        ("devices", names(catalogue::devices())),
        ("signs", names(catalogue::signs())),
    ]
}

/// A name of a list, or another spelling that the list knows.
fn names<R: CatalogueRow>(rows: &'static [R]) -> Value {
    let (names, others) = spellings(rows);
    alternatives(&names, "trade names", &others)
}

/// Words to be offered, and others that are taken too.
fn alternatives(words: &[&str], title: &str, others: &[String]) -> Value {
    if others.is_empty() {
        return json!({ "enum": words });
    }
    json!({ "anyOf": [{ "enum": words }, { "title": title, "enum": others }] })
}

/// A word with a blank or a hyphen for each underscore, as the reader takes it.
fn otherwise_parted(word: &str) -> Vec<String> {
    let marks = if word.contains('_') { " -" } else { "" };
    marks
        .chars()
        .map(|mark| word.replace('_', &mark.to_string()))
        .collect()
}

/// The names of a list, and the other spellings of its rows, each once. The reader
/// forgives more than can be listed: any case, any mark between words, any plural.
fn spellings<R: CatalogueRow>(rows: &'static [R]) -> (Vec<&'static str>, Vec<String>) {
    let names: Vec<&str> = rows.iter().map(CatalogueRow::name).collect();
    let mut others: Vec<String> = Vec::new();
    let spelled = |row: &R| -> Vec<String> { row.spellings().flat_map(written_as).collect() };
    for spelling in rows.iter().flat_map(spelled) {
        if !names.contains(&spelling.as_str()) && !others.contains(&spelling) {
            others.push(spelling);
        }
    }
    (names, others)
}

/// A spelling as it is, in lower case, in snake case, and with blanks for underscores;
/// a name also as Latin is printed.
fn written_as(spelling: &str) -> Vec<String> {
    let lower = spelling.to_lowercase();
    let (snake, words) = (lower.replace(' ', "_"), lower.replace('_', " "));
    let mut written = vec![spelling.to_owned(), lower, snake, words.clone()];
    if spelling.contains('_') {
        let mut letters = words.chars();
        let first = letters.next().into_iter().flat_map(char::to_uppercase);
        written.push(first.chain(letters).collect());
    }
    written
}

/// A value written in TOML, as JSON has it.
fn written(value: &str) -> Option<Value> {
    let mut table: toml::Table = format!("value = {value}").parse().ok()?;
    Some(plain(table.remove("value")?))
}

fn plain(value: toml::Value) -> Value {
    match value {
        toml::Value::String(text) => json!(text),
        toml::Value::Integer(number) => json!(number),
        toml::Value::Float(number) => json!(number),
        toml::Value::Boolean(flag) => json!(flag),
        toml::Value::Datetime(moment) => json!(moment.to_string()),
        toml::Value::Array(items) => items.into_iter().map(plain).collect(),
        toml::Value::Table(table) => {
            let fields = table.into_iter().map(|(key, value)| (key, plain(value)));
            Value::Object(fields.collect())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spec::KEYS;

    #[test]
    fn every_quantity_of_the_table_has_a_pattern() {
        let quantities = quantities();
        for key in KEYS {
            if let KeyKind::Quantity(name) | KeyKind::Span(name) = key.kind {
                assert!(
                    quantities.iter().any(|(known, _)| *known == name),
                    "{}: {name}",
                    key.path
                );
            }
        }
    }

    #[test]
    fn every_list_of_the_table_is_a_list_of_the_catalogue() {
        for key in KEYS {
            if let KeyKind::Name(list) | KeyKind::Names(list) = key.kind {
                assert!(
                    lists().iter().any(|(known, _)| *known == list),
                    "{}: {list}",
                    key.path
                );
            }
        }
    }

    #[test]
    fn a_section_below_a_list_is_found_by_its_path() {
        let bags = section("soil.bags[]");
        assert_eq!(bags["required"], json!(["size"]));
    }
}
