//! A spec's text with some of its keys changed; comments, order and all the rest stay.

use thiserror::Error;
use toml_edit::{ArrayOfTables, DocumentMut, InlineTable, Item, Table, TableLike, Value};

/// One key of a spec and what is to stand there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Edit {
    /// Its path: `soil.depth`, `plants[1].amount`; `plants[]` is one more item of the list.
    pub key: String,
    /// The value as a spec writes it, quotes included, of an item a table in one line; none
    /// takes the key out.
    pub value: Option<String>,
}

/// Why a text cannot be edited.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
pub enum EditError {
    /// The text is no TOML.
    #[error("the text is no TOML: {0}")]
    Unread(String),
    /// The value is none that TOML has.
    #[error("{value} is no value for {key}")]
    NoValue {
        /// What was to be changed.
        key: String,
        /// What was to stand there.
        value: String,
    },
    /// The text has something else where the path leads.
    #[error("the spec has no place for {0}")]
    NoPlace(String),
}

/// The text with every edit made, in order.
///
/// # Errors
/// See [`EditError`].
///
/// # Example
/// ```
/// use lentic::spec::{Edit, edit};
/// let text = "[soil]\ndepth = \"40 mm\" # too much\n";
/// let thinner = Edit { key: "soil.depth".into(), value: Some("\"25 mm\"".into()) };
/// assert_eq!(edit(text, &[thinner])?, "[soil]\ndepth = \"25 mm\" # too much\n");
/// # Ok::<(), lentic::spec::EditError>(())
/// ```
pub fn edit(text: &str, edits: &[Edit]) -> Result<String, EditError> {
    let mut document = read(text)?;
    for edit in edits {
        make(&mut document, edit)?;
    }
    Ok(document.to_string())
}

/// What a spec says at a path, as it is written there; nothing where it says nothing.
///
/// # Example
/// ```
/// use lentic::spec::written;
/// let text = "[soil]\ndepth = \"40 mm\" # too much\n";
/// assert_eq!(written(text, "soil.depth").as_deref(), Some("\"40 mm\""));
/// assert_eq!(written(text, "soil.soaked"), None);
/// ```
pub fn written(text: &str, key: &str) -> Option<String> {
    let document = read(text).ok()?;
    let mut item = document.as_item();
    for step in steps(key)? {
        let named = item.get(step.name)?;
        item = match step.place {
            EditTarget::Whole => named,
            EditTarget::Item(index) => named.get(index)?,
            EditTarget::Next => return None,
        };
    }
    let mut value = item.clone().into_value().ok()?;
    value.decor_mut().clear();
    Some(value.to_string())
}

fn read(text: &str) -> Result<DocumentMut, EditError> {
    text.parse()
        .map_err(|error: toml_edit::TomlError| EditError::Unread(error.message().to_owned()))
}

fn make(document: &mut DocumentMut, edit: &Edit) -> Result<(), EditError> {
    let value = edit.value.as_deref().map(str::parse::<Value>).transpose();
    let value = value.map_err(|_| EditError::NoValue {
        key: edit.key.clone(),
        value: edit.value.clone().unwrap_or_default(),
    })?;
    let steps = steps(&edit.key);
    steps
        .and_then(|steps| set(document.as_table_mut(), &steps, value))
        .ok_or_else(|| EditError::NoPlace(edit.key.clone()))
}

/// One step of a path: a name, and what of it.
struct PathStep<'k> {
    name: &'k str,
    place: EditTarget,
}

/// What a step leads to.
#[derive(Clone, Copy)]
enum EditTarget {
    /// What stands at the name.
    Whole,
    /// An item of the list there.
    Item(usize),
    /// One more item of the list there.
    Next,
}

fn steps(key: &str) -> Option<Vec<PathStep<'_>>> {
    key.split('.').map(step).collect()
}

fn step(part: &str) -> Option<PathStep<'_>> {
    let (name, place) = match part.split_once('[') {
        None => (part, EditTarget::Whole),
        Some((name, "]")) => (name, EditTarget::Next),
        Some((name, index)) => {
            let index = index.strip_suffix(']')?.parse().ok()?;
            (name, EditTarget::Item(index))
        }
    };
    (!name.is_empty()).then_some(PathStep { name, place })
}

/// Puts a value where a path leads; nothing where the table has no such place.
fn set(table: &mut dyn TableLike, path: &[PathStep<'_>], value: Option<Value>) -> Option<()> {
    let (step, rest) = path.split_first()?;
    match (step.place, rest) {
        (EditTarget::Whole, []) => put(table, step.name, value),
        (EditTarget::Whole, rest) => {
            let section = table.entry(step.name).or_insert_with(section);
            set(section.as_table_like_mut()?, rest, value)?;
        }
        (EditTarget::Item(index), rest) => {
            let list = table.get_mut(step.name)?;
            set(list.get_mut(index)?.as_table_like_mut()?, rest, value)?;
        }
        (EditTarget::Next, []) => {
            let Value::InlineTable(keys) = value? else {
                return None;
            };
            append(table.entry(step.name).or_insert_with(list), keys)?;
        }
        (EditTarget::Next, _) => return None,
    }
    Some(())
}

/// Puts a value at a name, in the surroundings of the one that stood there.
fn put(table: &mut dyn TableLike, name: &str, value: Option<Value>) {
    let Some(mut value) = value else {
        table.remove(name);
        return;
    };
    match table.get_mut(name) {
        Some(Item::Value(old)) => {
            *value.decor_mut() = old.decor().clone();
            *old = value;
        }
        _ => {
            table.insert(name, Item::Value(value));
        }
    }
}

/// Adds an item to a list, in the form in which the list is written.
fn append(list: &mut Item, keys: InlineTable) -> Option<()> {
    match list {
        Item::ArrayOfTables(tables) => {
            let mut table = spaced();
            for (name, mut value) in keys {
                value.decor_mut().clear();
                table.insert(&name, Item::Value(value));
            }
            tables.push(table);
        }
        Item::Value(Value::Array(tables)) => tables.push(keys),
        _ => return None,
    }
    Some(())
}

fn section() -> Item {
    Item::Table(spaced())
}

fn list() -> Item {
    Item::ArrayOfTables(ArrayOfTables::new())
}

/// A section with an empty line before it.
fn spaced() -> Table {
    let mut table = Table::new();
    table.decor_mut().set_prefix("\n");
    table
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "# A tank.\nname = \"Cube\"\n\n[soil]\nmaterial = \"loam_topsoil\" # sieved\ndepth = { back = \"40 mm\", front = \"20 mm\" }\n\n[[plants]]\nname = \"lemna_minor\"\namount = \"10 %\" # more later\n\n[light]\nhours = 8\n";

    fn edited(edits: &[(&str, Option<&str>)]) -> Result<String, EditError> {
        let edits: Vec<Edit> = edits
            .iter()
            .map(|(key, value)| Edit {
                key: (*key).to_owned(),
                value: value.map(str::to_owned),
            })
            .collect();
        edit(TEXT, &edits)
    }

    #[test]
    fn no_edit_leaves_the_text_as_it_is() {
        assert_eq!(edited(&[]), Ok(TEXT.to_owned()));
    }

    #[test]
    fn a_changed_value_keeps_its_comment() {
        let text = edited(&[("plants[0].amount", Some("\"30 %\""))]).unwrap();
        assert_eq!(text, TEXT.replace("10 %", "30 %"));
        let text = edited(&[("soil.depth.back", Some("\"30 mm\""))]).unwrap();
        assert_eq!(text, TEXT.replace("40 mm", "30 mm"));
    }

    #[test]
    fn sections_and_items_are_added_behind_an_empty_line() {
        let plant = "{ name = \"rotala_rotundifolia\", amount = \"5 bunches\" }";
        let text = edited(&[
            ("air.device", Some("\"air_stone\"")),
            ("plants[]", Some(plant)),
        ])
        .unwrap();
        let plant = "\n[[plants]]\nname = \"rotala_rotundifolia\"\namount = \"5 bunches\"\n";
        let air = "\n[air]\ndevice = \"air_stone\"\n";
        let expected = TEXT.replace("\n[light]", &format!("{plant}\n[light]")) + air;
        assert_eq!(text, expected);
    }

    #[test]
    fn a_list_in_one_line_takes_one_more() {
        let added = Edit {
            key: "plants[]".to_owned(),
            value: Some("{ name = \"b\" }".to_owned()),
        };
        let text = edit("plants = [{ name = \"a\" }] # few\n", &[added]);
        let expected = "plants = [{ name = \"a\" }, { name = \"b\" }] # few\n";
        assert_eq!(text, Ok(expected.to_owned()));
    }

    #[test]
    fn a_key_is_taken_out() {
        let text = edited(&[("light.hours", None)]).unwrap();
        assert_eq!(text, TEXT.replace("hours = 8\n", ""));
    }

    #[test]
    fn what_is_written_is_read_as_it_stands() {
        let found = |key| written(TEXT, key);
        assert_eq!(found("plants[0].amount").as_deref(), Some("\"10 %\""));
        assert_eq!(found("soil.material").as_deref(), Some("\"loam_topsoil\""));
        assert_eq!(found("light.hours").as_deref(), Some("8"));
        assert_eq!(found("plants[1].amount"), None);
        assert_eq!(found("plants[]"), None);
    }

    #[test]
    fn a_path_without_a_place_is_refused() {
        for (key, value) in [
            ("plants[3].amount", "\"1 %\""),
            ("soil.material.x", "1"),
            ("plants[].amount", "1"),
            ("", "1"),
        ] {
            let refused = edited(&[(key, Some(value))]);
            assert!(matches!(refused, Err(EditError::NoPlace(_))), "{key}");
        }
        let refused = edited(&[("light.hours", Some("eight"))]);
        assert!(matches!(refused, Err(EditError::NoValue { .. })));
    }
}
