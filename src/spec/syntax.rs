//! Text to a TOML table with positions, and what keeps it from being one.

use std::collections::HashMap;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue, Error};

use super::fault::{Fault, boundary};
use super::key::{self, join};

/// The longest text that is read; a tank takes a few thousand bytes.
pub const MAX_BYTES: u64 = 1 << 20;

/// What toml says of a key or section that stands twice.
const TWICE: &str = "duplicate key";
/// What toml says of text without quotes.
const UNQUOTED: &[&str] = &["string values must be quoted", "invalid boolean"];
/// What toml says of anything behind a value.
const TRAILING: &str = "unexpected key or value";

/// What toml says of values in values in values.
const TOO_DEEP: &[&str] = &[
    "recursion limit",
    "cannot recurse further; max recursion depth met",
];

/// A text read as TOML, as far as it is TOML.
pub(super) struct TomlDocument<'d> {
    /// The table of the file.
    pub(super) root: Spanned<DeTable<'d>>,
    /// Where it is no TOML.
    pub(super) faults: Vec<Fault>,
    /// Whether each of these faults ends with its line, so that the rest can be judged.
    pub(super) whole: bool,
    /// The lines of these faults, in order.
    upset: Vec<Range<usize>>,
}

impl TomlDocument<'_> {
    /// Whether a byte stands in a line that is no TOML.
    pub(super) fn is_upset(&self, byte: usize) -> bool {
        let next = self.upset.partition_point(|line| line.end < byte);
        self.upset
            .get(next)
            .is_some_and(|line| (line.start..=line.end).contains(&byte))
    }
}

/// Reads a text, unless it is too long.
pub(super) fn read(text: &str) -> TomlDocument<'_> {
    if text.len() as u64 > MAX_BYTES {
        return TomlDocument {
            root: Spanned::new(0..0, DeTable::new()),
            faults: vec![too_long()],
            whole: false,
            upset: Vec::new(),
        };
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    let in_one_line = |error: &Error| says(error, &[TWICE, TRAILING]) || says(error, UNQUOTED);
    let whole = errors.iter().all(in_one_line);
    let places = Places::of(root.get_ref(), !errors.is_empty());
    let fault = |error: &Error| {
        if says(error, &[TWICE]) {
            twice(error, &places, text)
        } else if says(error, UNQUOTED) {
            unquoted(error, &places)
        } else {
            unread(error, whole, text)
        }
    };
    let mut faults: Vec<Fault> = errors.iter().map(fault).collect();
    faults.sort_by_key(|fault| fault.span.start);
    // One slip upsets the rest of its line: its first fault says enough.
    let mut upset: Vec<Range<usize>> = Vec::new();
    faults.retain(|fault| {
        let is_first = upset.last().is_none_or(|line| fault.span.start > line.end);
        if is_first {
            upset.push(line(fault.span.start, text));
        }
        is_first
    });
    TomlDocument {
        root,
        faults,
        whole,
        upset,
    }
}

fn says(error: &Error, messages: &[&str]) -> bool {
    messages
        .iter()
        .any(|message| error.message().starts_with(message))
}

/// The line of a byte, without its newline.
pub(super) fn line(byte: usize, text: &str) -> Range<usize> {
    let byte = boundary(byte, text);
    let start = text[..byte].rfind('\n').map_or(0, |newline| newline + 1);
    let end = text[byte..].find('\n');
    start..end.map_or(text.len(), |length| byte + length)
}

fn too_long() -> Fault {
    Fault {
        key: String::new(),
        span: 0..0,
        found: "the text is too long".to_owned(),
        rule: format!("a spec is at most {MAX_BYTES} bytes (1 MiB) long"),
        help: "check that this file is the spec of one tank".to_owned(),
        related: None,
    }
}

/// Values in values deeper than toml follows them.
fn too_deep(error: &Error) -> Fault {
    Fault {
        key: String::new(),
        span: error.span().unwrap_or(0..0),
        found: "values are nested too deep".to_owned(),
        rule: "lists, tables and dotted keys nest at most 80 deep; a spec needs 5".to_owned(),
        help: "check that this file is the spec of one tank".to_owned(),
        related: None,
    }
}

/// A place that is no TOML.
fn unread(error: &Error, whole: bool, text: &str) -> Fault {
    let message = error.message();
    if TOO_DEEP.contains(&message) {
        return too_deep(error);
    }
    let (found, rule) = match message.split_once(", expected ") {
        Some((found, expected)) => (found, format!("TOML expects {expected} here")),
        None => (message, "the text is not TOML here".to_owned()),
    };
    let span = error.span().unwrap_or(0..0);
    let comma = text
        .get(span.start..)
        .is_some_and(|rest| rest.starts_with(','));
    let help = if comma {
        "a number has a decimal point, for example 7.4"
    } else if whole {
        "give one key a line"
    } else {
        "mend this first; the rest of the file is judged once it can be read"
    };
    Fault {
        key: String::new(),
        span,
        found: found.to_owned(),
        rule,
        help: help.to_owned(),
        related: None,
    }
}

/// A value that is neither quoted text nor number, flag or date.
fn unquoted(error: &Error, places: &Places<'_>) -> Fault {
    let span = error.span().unwrap_or(0..0);
    let path = places
        .by_value
        .get(&span.start)
        .cloned()
        .unwrap_or_default();
    let help = match key::find(&key::pattern(&path)) {
        Some(key) if !key.kind.is_quoted() => format!("for example {}", key.written()),
        _ => "put it in double quotes".to_owned(),
    };
    Fault {
        key: path,
        span,
        found: "text without quotes".to_owned(),
        rule: "text stands in quotes".to_owned(),
        help,
        related: None,
    }
}

/// A key or section that stands a second time.
fn twice(error: &Error, places: &Places<'_>, text: &str) -> Fault {
    let span = error.span().unwrap_or(0..0);
    let name = text.get(span.clone()).unwrap_or_default();
    let (path, first) = first_place(places, name, span.start, text);
    Fault {
        key: path,
        span,
        found: "given twice".to_owned(),
        rule: "a key or section stands once".to_owned(),
        help: "remove one of the two".to_owned(),
        related: first.map(|span| (span, "first given here".to_owned())),
    }
}

/// The path of a key given twice, and where it stands first: the nearest key
/// of that name, or the nearest heading, before the second.
fn first_place(
    places: &Places<'_>,
    name: &str,
    second: usize,
    text: &str,
) -> (String, Option<Range<usize>>) {
    let named = places.by_name.get(name).map_or(&[][..], Vec::as_slice);
    let earlier = named.partition_point(|(key, _)| key.end <= second);
    if let Some((key, path)) = named[..earlier].last() {
        return (path.clone(), Some(key.clone()));
    }
    let heading = format!("[{name}]");
    let start = text
        .get(..second)
        .unwrap_or_default()
        .rmatch_indices(&heading)
        .map(|(start, _)| start)
        .find(|start| line(*start, text).start == *start);
    let path = name.to_owned();
    (path, start.map(|start| start..start + heading.len()))
}

/// The keys of a document by name, and its paths by where their values begin.
#[derive(Default)]
struct Places<'d> {
    /// In order of position for each name.
    by_name: HashMap<&'d str, Vec<(Range<usize>, String)>>,
    by_value: HashMap<usize, String>,
}

impl<'d> Places<'d> {
    /// Every key of the document, or none where they are not wanted.
    fn of(root: &'d DeTable<'d>, wanted: bool) -> Self {
        let mut places = Self::default();
        if wanted {
            places.add_table(root, "");
            for named in places.by_name.values_mut() {
                named.sort_by_key(|(key, _)| key.end);
            }
        }
        places
    }

    fn add_table(&mut self, table: &'d DeTable<'d>, above: &str) {
        for (key, value) in table {
            let name = key.get_ref().as_ref();
            let path = join(above, name);
            let place = (key.span(), path.clone());
            self.by_name.entry(name).or_default().push(place);
            self.add_value(value.get_ref(), &path);
            self.by_value.insert(value.span().start, path);
        }
    }

    fn add_value(&mut self, value: &'d DeValue<'d>, path: &str) {
        match value {
            DeValue::Table(table) => self.add_table(table, path),
            DeValue::Array(items) => {
                for (index, item) in items.iter().enumerate() {
                    self.add_value(item.get_ref(), &format!("{path}[{index}]"));
                }
            }
            _ => {}
        }
    }
}

/// Where the value of a path stands: `plants[2].amount`.
pub(super) fn locate<'d>(root: &'d DeTable<'d>, path: &str) -> Option<&'d Spanned<DeValue<'d>>> {
    let (first, rest) = path.split_once('.').unwrap_or((path, ""));
    let (name, index) = match first.split_once('[') {
        Some((name, index)) => (name, index.trim_end_matches(']').parse::<usize>().ok()),
        None => (first, None),
    };
    let mut value = root.get(name)?;
    if let Some(index) = index {
        value = value.get_ref().as_array()?.get(index)?;
    }
    if rest.is_empty() {
        return Some(value);
    }
    locate(value.get_ref().as_table()?, rest)
}
