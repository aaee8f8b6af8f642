//! The works that numbers and formulas are taken from.

use std::fmt;
use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

/// One work, under the key by which rows and formulas cite it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Source {
    /// Author and year in snake case, or the number of a standard or rule.
    pub key: String,
    /// The authors, or the body that issued it.
    pub author: String,
    /// The year of issue; absent where the work is undated or kept current.
    pub year: Option<u16>,
    /// The title; in square brackets where it describes the work instead.
    pub title: String,
    /// Journal with volume and pages, publisher, DOI or report number.
    pub published_in: String,
    /// How much of it was read for this program.
    pub seen: Seen,
    /// What is taken from it, and what to beware of.
    pub note: String,
}

/// How much of a work was read for this program.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Seen {
    /// The text, a page or a table of it.
    Text,
    /// The abstract.
    Abstract,
    /// Another work that quotes it.
    Quoted,
    /// Nothing: what is said of it was recalled.
    Memory,
}

impl Seen {
    /// The same in words for people.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Text => "text or table read",
            Self::Abstract => "abstract read",
            Self::Quoted => "read as quoted elsewhere",
            Self::Memory => "from memory, not read again",
        }
    }
}

impl Source {
    /// Author and year, as in "Driever et al. 2005".
    pub fn short(&self) -> String {
        let mut names = self.author.split(", ");
        let first = names.next().unwrap_or_default();
        let who = match (names.next(), names.next()) {
            (None, _) => first.to_owned(),
            (Some(second), None) => format!("{first} & {second}"),
            (Some(_), Some(_)) => format!("{first} et al."),
        };
        match self.year {
            Some(year) => format!("{who} {year}"),
            None => who,
        }
    }
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.author)?;
        if let Some(year) = self.year {
            write!(f, " ({year})")?;
        }
        write!(f, ". {}. {}", self.title, self.published_in)
    }
}

/// Every source, sorted by key.
pub fn all() -> &'static [Source] {
    static SOURCES: OnceLock<Vec<Source>> = OnceLock::new();
    SOURCES.get_or_init(read)
}

/// The source with this key.
///
/// # Example
/// ```
/// let source = lentic::source::find("driever_2005").ok_or("no such source")?;
/// assert_eq!(source.short(), "Driever et al. 2005");
/// # Ok::<(), &str>(())
/// ```
pub fn find(key: &str) -> Option<&'static Source> {
    let sources = all();
    let place = sources.binary_search_by(|source| source.key.as_str().cmp(key));
    place.ok().map(|place| &sources[place])
}

/// Reads the embedded table.
#[expect(
    clippy::expect_used,
    reason = "the table is embedded and a test parses it"
)]
fn read() -> Vec<Source> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Table {
        source: Vec<Source>,
    }
    let table: Table =
        toml::from_str(include_str!("sources.toml")).expect("the embedded sources are well formed");
    let mut sources = table.source;
    sources.sort_by(|a, b| a.key.cmp(&b.key));
    sources
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_key_is_snake_case_and_stands_once() {
        let mut last = "";
        for source in all() {
            let key = source.key.as_str();
            let plain = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_';
            assert!(key.chars().all(plain), "{key}");
            assert!(last < key, "{key} stands twice");
            assert_eq!(find(key), Some(source));
            last = key;
        }
        assert_eq!(find("nobody_1900"), None);
    }

    #[test]
    fn every_dated_work_of_an_author_has_its_year_in_its_key() {
        for source in all() {
            let dated = source.key.rsplit('_').next().unwrap_or_default();
            if let Ok(year) = dated.parse::<u16>()
                && (1800..2100).contains(&year)
                && source.year.is_some()
            {
                assert_eq!(source.year, Some(year), "{}", source.key);
            }
        }
    }

    #[test]
    fn no_source_leaves_a_field_empty() {
        for source in all() {
            for field in [
                &source.author,
                &source.title,
                &source.published_in,
                &source.note,
            ] {
                assert!(!field.trim().is_empty(), "{}", source.key);
            }
        }
    }

    #[test]
    fn a_source_is_cited_as_people_cite() {
        let two = find("reddy_debusk_1985").unwrap();
        assert_eq!(two.short(), "Reddy & DeBusk 1985");
        let one = find("larson_2007").unwrap();
        assert_eq!(one.short(), "Larson 2007");
        assert!(one.to_string().starts_with("Larson (2007). "), "{one}");
    }
}
