//! The keys of a spec: one row a key says what is written there, what it may be, what
//! stands where it is left out, and where a draft holds it.

mod amount;
mod choice;
mod entry;
mod named;
mod place;
mod prepared;
mod read;
mod table;
mod value;

pub(crate) use choice::nearest;
pub(crate) use entry::{KeyEntry, MOST_CHARACTERS, Raw};
pub(crate) use prepared::{Needs, Prepare, Prepared};
pub(crate) use read::{date, number, span, text, unread, word};
pub use table::KEYS;
pub(crate) use value::Value;

use super::Draft;

/// Brings what was assumed in line with the value of a key that was changed.
pub(crate) type Follow = fn(&mut Draft, usize);

/// One key of the spec.
#[derive(Debug, Clone, Copy)]
pub struct Key {
    /// Where it stands; `[]` stands for any item of a list: `plants[].amount`.
    pub path: &'static str,
    /// What is written there.
    pub kind: KeyKind,
    /// Whether its section cannot do without it.
    pub needed: bool,
    /// What the value may be.
    pub limits: KeyLimits,
    /// How many sections or names a list may have.
    pub most: Option<u32>,
    /// What stands, and is listed, where it is left out.
    pub default: Option<DefaultValue>,
    /// A value as a keeper would write it, without quotes.
    pub example: &'static str,
    /// What it says about the tank.
    pub says: &'static str,
    /// How it is read for its place in a draft, where it may be varied.
    pub(crate) prepare: Option<Prepare>,
    /// Whether it is read alone, without a look at other keys.
    pub(crate) is_plain: bool,
    /// What follows when it is varied.
    pub(crate) follow: Option<Follow>,
}

/// Keys are told apart by their paths.
impl PartialEq for Key {
    fn eq(&self, other: &Self) -> bool {
        self.path == other.path
    }
}

/// What is written at a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum KeyKind {
    /// Any text.
    Text,
    /// A date, year-month-day, without quotes.
    Date,
    /// `true` or `false`.
    Flag,
    /// A plain number.
    Number,
    /// A whole number from zero.
    Count,
    /// A number with its unit; holds the quantity's name with its article.
    Quantity(&'static str),
    /// The same, or two numbers of it with a hyphen between them.
    Span(&'static str),
    /// Length x width x height.
    Size,
    /// A length, or a table of lengths at the edges.
    Depth,
    /// A volume or a mass.
    BagSize,
    /// A cover, a fresh mass or a number of portions.
    Amount,
    /// So much of something to so much water.
    Dose,
    /// One of these words.
    Word(&'static [&'static str]),
    /// One of these words, or a share.
    WordOrShare(&'static [&'static str]),
    /// A name of this list in the catalogue.
    Name(&'static str),
    /// Several names of this list in the catalogue.
    Names(&'static str),
    /// Several plain numbers.
    Numbers,
    /// A section.
    Section,
    /// A section that may stand several times.
    Sections,
}

/// What a value may be, written as the value itself is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct KeyLimits {
    /// The least value.
    pub low: Option<&'static str>,
    /// Whether the least value itself is refused.
    pub open: bool,
    /// The greatest value.
    pub high: Option<&'static str>,
}

/// A value that stands where a key is left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DefaultValue {
    /// The value as TOML.
    pub written: &'static str,
    /// Why this value, with what it rests on.
    pub why: &'static str,
}

impl KeyLimits {
    /// In words: "from 3 to 11", "above 0 mm".
    pub fn words(&self) -> String {
        match (self.low, self.high) {
            (Some(low), Some(high)) if self.open => format!("above {low}, up to {high}"),
            (Some(low), Some(high)) => format!("from {low} to {high}"),
            (Some(low), None) if self.open => format!("above {low}"),
            (Some(low), None) => format!("at least {low}"),
            (None, Some(high)) => format!("at most {high}"),
            (None, None) => "any value".to_owned(),
        }
    }
}

impl Key {
    /// A key that may be left out and takes any value.
    pub(crate) const fn new(
        path: &'static str,
        kind: KeyKind,
        example: &'static str,
        says: &'static str,
    ) -> Self {
        let limits = KeyLimits {
            low: None,
            open: false,
            high: None,
        };
        Self {
            path,
            kind,
            needed: false,
            limits,
            most: None,
            default: None,
            example,
            says,
            prepare: None,
            is_plain: false,
            follow: None,
        }
    }

    /// The same key where it may be varied, by how it is read for its place.
    const fn varied(mut self, prepare: Prepare) -> Self {
        self.prepare = Some(prepare);
        self
    }

    /// The same key where it is read alone, without a look at other keys.
    const fn plain(mut self) -> Self {
        self.is_plain = true;
        self
    }

    /// The same key with what follows when it is varied.
    const fn then(mut self, follow: Follow) -> Self {
        self.follow = Some(follow);
        self
    }

    /// The same key where its section needs it.
    const fn needed(mut self) -> Self {
        self.needed = true;
        self
    }

    /// The same key with a least value.
    const fn from(mut self, low: &'static str) -> Self {
        self.limits.low = Some(low);
        self
    }

    /// The same key with a value that its own must exceed.
    const fn above(mut self, low: &'static str) -> Self {
        self.limits.low = Some(low);
        self.limits.open = true;
        self
    }

    /// The same key with a greatest value.
    const fn to(mut self, high: &'static str) -> Self {
        self.limits.high = Some(high);
        self
    }

    /// The same list with a greatest length.
    const fn at_most(mut self, most: u32) -> Self {
        self.most = Some(most);
        self
    }

    /// The same key with what stands where it is left out, as TOML, and why.
    const fn or(mut self, written: &'static str, why: &'static str) -> Self {
        self.default = Some(DefaultValue { written, why });
        self
    }

    /// The last part of the path.
    pub fn leaf(&self) -> &'static str {
        leaf(self.path)
    }

    /// The path of the section it stands in; empty for the file itself.
    pub fn section(&self) -> &'static str {
        parent(self.path)
    }

    /// The example as TOML: `wall = "5 mm"`.
    pub fn written(&self) -> String {
        format!("{} = {}", self.leaf(), self.example_value())
    }

    /// The example's value as TOML: `"5 mm"`.
    pub fn example_value(&self) -> String {
        match self.kind {
            KeyKind::Names(_) => format!("[\"{}\"]", self.example),
            KeyKind::Numbers => format!("[{}]", self.example),
            kind if kind.is_quoted() => format!("\"{}\"", self.example),
            _ => self.example.to_owned(),
        }
    }
}

impl KeyKind {
    /// Whether a value of this kind is text in quotes.
    pub fn is_quoted(self) -> bool {
        !matches!(
            self,
            Self::Date
                | Self::Flag
                | Self::Number
                | Self::Count
                | Self::Names(_)
                | Self::Numbers
                | Self::Section
                | Self::Sections
        )
    }
}

/// The key at a path.
pub(crate) fn find(path: &str) -> Option<&'static Key> {
    KEYS.iter().find(|key| key.path == path)
}

/// The keys that stand in a section.
pub(crate) fn within(section: &str) -> impl Iterator<Item = &'static Key> {
    KEYS.iter().filter(move |key| key.section() == section)
}

/// The last part of a path.
fn leaf(path: &str) -> &str {
    path.rsplit_once('.').map_or(path, |(_, leaf)| leaf)
}

/// All but the last part of a path.
fn parent(path: &str) -> &str {
    path.rsplit_once('.').map_or("", |(parent, _)| parent)
}

/// The path in the table of keys of a path in a file: `plants[2].name` is `plants[].name`.
pub(crate) fn pattern(path: &str) -> String {
    let mut pattern = String::new();
    let mut rest = path;
    while let Some((before, after)) = rest.split_once('[') {
        pattern.push_str(before);
        pattern.push_str("[]");
        rest = after.split_once(']').map_or("", |(_, rest)| rest);
    }
    pattern + rest
}

/// A path continued by a name.
pub(crate) fn join(path: &str, name: &str) -> String {
    if path.is_empty() {
        name.to_owned()
    } else {
        format!("{path}.{name}")
    }
}
