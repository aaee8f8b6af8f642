//! What all rows share: a name, a basis, and being found by what people type.

use std::collections::BTreeMap;

use serde::Deserialize;
use serde::de::DeserializeOwned;
use thiserror::Error;

use crate::source::{Basis, Source};

/// A row of an embedded table.
pub trait CatalogueRow: Sized + 'static {
    /// What one row is, as in "no soil of this name".
    const KIND: &'static str;
    /// What the whole table is called, as in "a name from the list of soils".
    const LIST: &'static str;

    /// The whole table, in its own order.
    fn all() -> &'static [Self];

    /// The name in snake case, as specs write it and results repeat it.
    fn name(&self) -> &str;

    /// The name for people.
    fn label(&self) -> &str;

    /// Further spellings: trade words, synonyms.
    fn aliases(&self) -> &[String];

    /// What the row's numbers mainly rest on.
    fn basis(&self) -> Basis;

    /// The sources its numbers come from.
    fn sources(&self) -> &[Source];

    /// Every spelling under which the row is found.
    fn spellings(&self) -> impl Iterator<Item = &str> {
        let aliases = self.aliases().iter().map(String::as_str);
        [self.name(), self.label()].into_iter().chain(aliases)
    }
}

/// A name that no row bears.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("no {kind} \"{text}\" in the catalogue")]
pub struct Unknown {
    /// What was looked for, as in "soil".
    pub kind: &'static str,
    /// The name as written.
    pub text: String,
    /// The nearest spelling that would have been found.
    pub suggestion: Option<&'static str>,
    /// A spelling of each row, of several, that bears all the words typed: what "sand"
    /// may stand for.
    pub choices: Vec<&'static str>,
}

/// The row that bears a name, whatever its case, spacing, hyphens and plural.
///
/// # Errors
/// No row bears it; the nearest spelling is suggested if one is near.
///
/// # Example
/// ```
/// use lentic::catalogue::{self, Cap, Plant};
/// let cap = catalogue::find::<Cap>("Pool filter sand")?;
/// assert_eq!(cap.name, "filter_sand");
/// let unknown = catalogue::find::<Plant>("dukweed").unwrap_err();
/// assert_eq!(unknown.suggestion, Some("duckweed"));
/// # Ok::<(), catalogue::Unknown>(())
/// ```
pub fn find<R: CatalogueRow>(text: &str) -> Result<&'static R, Unknown> {
    let wanted = plain(text);
    let found = R::all()
        .iter()
        .find(|row| row.spellings().any(|spelling| plain(spelling) == wanted));
    found.ok_or_else(|| unknown::<R>(text))
}

/// Says of a name that no row bears what was meant: the rows that bear all its words,
/// the nearest spelling, or the longest spelling that its words hold.
fn unknown<R: CatalogueRow>(text: &str) -> Unknown {
    let mut choices = bearing::<R>(text);
    let suggestion = match choices[..] {
        [] => nearest::<R>(text).or_else(|| within::<R>(text)),
        [one] => Some(one),
        _ => None,
    };
    if suggestion.is_some() {
        choices.clear();
    }
    Unknown {
        kind: R::KIND,
        text: text.to_owned(),
        suggestion,
        choices,
    }
}

/// For each row that bears all words of a text in one spelling, the first such spelling.
fn bearing<R: CatalogueRow>(text: &str) -> Vec<&'static str> {
    let wanted = words(text);
    let bears = |spelling: &&str| {
        let words = words(spelling);
        wanted.iter().all(|word| words.contains(word))
    };
    if wanted.is_empty() {
        return Vec::new();
    }
    R::all()
        .iter()
        .filter_map(|row| row.spellings().find(bears))
        .collect()
}

/// The longest spelling whose words are all in a text: "tetra" in "glowlight tetra".
fn within<R: CatalogueRow>(text: &str) -> Option<&'static str> {
    let typed = words(text);
    R::all()
        .iter()
        .flat_map(CatalogueRow::spellings)
        .filter(|spelling| words(spelling).iter().all(|word| typed.contains(word)))
        .max_by_key(|spelling| spelling.len())
}

/// The spelling nearest to a text, if it is off by one letter or a third, counted in the words
/// that the two do not share: "cory sand" is not near "coral sand".
fn nearest<R: CatalogueRow>(text: &str) -> Option<&'static str> {
    let wanted = words(text);
    let without = |of: &[String], shared: &[String]| -> String {
        of.iter()
            .filter(|word| !shared.contains(word))
            .cloned()
            .collect()
    };
    let distance = |spelling: &'static str| {
        let known = words(spelling);
        let (own, other) = (without(&wanted, &known), without(&known, &wanted));
        let distance = strsim::damerau_levenshtein(&own, &other);
        let allowed = (own.chars().count() / 3).max(1);
        (distance <= allowed).then_some((distance, spelling))
    };
    R::all()
        .iter()
        .flat_map(CatalogueRow::spellings)
        .filter_map(distance)
        .min_by_key(|&(distance, _)| distance)
        .map(|(_, spelling)| spelling)
}

/// A spelling without case, plural and what parts its words.
///
/// A mark between two digits stays, as a hyphen: "2.5" is not "25".
pub(super) fn plain(text: &str) -> String {
    let mut joined = String::new();
    for word in words(text) {
        if joined.ends_with(char::is_numeric) && word.starts_with(char::is_numeric) {
            joined.push('-');
        }
        joined.push_str(&word);
    }
    joined
}

/// The words of a spelling, in lower case and the singular.
fn words(text: &str) -> Vec<String> {
    text.to_lowercase()
        .replace(['\'', '\u{2019}'], "")
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(singular)
        .collect()
}

/// A word without its English plural; Latin endings lose their `s` alike in
/// query and table, so that they still meet.
fn singular(word: &str) -> String {
    if let Some(stem) = word.strip_suffix("ies") {
        return format!("{stem}y");
    }
    if let Some(stem) = word.strip_suffix("sses") {
        return format!("{stem}ss");
    }
    let keeps = ["ss", "us", "is"].iter().any(|end| word.ends_with(end));
    match word.strip_suffix('s') {
        Some(stem) if !keeps && stem.len() > 1 => stem.to_owned(),
        _ => word.to_owned(),
    }
}

/// Reads an embedded table.
#[expect(
    clippy::expect_used,
    reason = "the tables are embedded and a test parses each"
)]
pub(super) fn parsed<T: DeserializeOwned>(table: &str) -> T {
    toml::from_str(table).expect("the embedded table is well formed")
}

/// Reads an embedded table, whose rows stand under `[[row]]`.
pub(super) fn read<R: DeserializeOwned>(table: &str) -> Vec<R> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Table<R> {
        row: Vec<R>,
    }
    parsed::<Table<R>>(table).row
}

/// Adds what the fields of a table rest on to what a row says itself; what the row rests on
/// as a whole needs no word.
pub(super) fn complete(
    basis_of: &mut BTreeMap<String, Basis>,
    row: Basis,
    fields: &[(&str, Basis)],
) {
    for (field, basis) in fields {
        if *basis != row {
            basis_of.entry((*field).to_owned()).or_insert(*basis);
        }
    }
}

/// Makes a struct with the shared fields the row of an embedded table; the last
/// argument finishes each row as it is read.
macro_rules! row {
    ($row:ident, $kind:literal, $all:ident, $file:literal) => {
        super::row::row!($row, $kind, $all, $file, std::convert::identity);
    };
    ($row:ident, $kind:literal, $all:ident, $file:literal, $finish:expr) => {
        #[doc = concat!("Every ", $kind, " of the catalogue.")]
        pub fn $all() -> &'static [$row] {
            static TABLE: std::sync::OnceLock<Vec<$row>> = std::sync::OnceLock::new();
            TABLE.get_or_init(|| {
                let rows: Vec<$row> = super::row::read(include_str!($file));
                rows.into_iter().map($finish).collect()
            })
        }

        super::row::impl_row!($row, $kind, $all);
    };
}
pub(super) use row;

/// Lets a struct with the shared fields be found as a row of a table.
macro_rules! impl_row {
    ($row:ident, $kind:literal, $all:ident) => {
        impl super::row::CatalogueRow for $row {
            const KIND: &'static str = $kind;
            const LIST: &'static str = stringify!($all);

            fn all() -> &'static [Self] {
                $all()
            }

            fn name(&self) -> &str {
                &self.name
            }

            fn label(&self) -> &str {
                &self.label
            }

            fn aliases(&self) -> &[String] {
                &self.aliases
            }

            fn basis(&self) -> crate::source::Basis {
                self.basis
            }

            fn sources(&self) -> &[crate::source::Source] {
                &self.source
            }
        }
    };
}
pub(super) use impl_row;
