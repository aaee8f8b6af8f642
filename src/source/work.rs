//! The works that numbers and formulas are taken from.

use std::fmt;
use std::sync::OnceLock;

use serde::{Deserialize, Serialize};

use super::Source;

/// One work, under the key by which rows and formulas cite it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Work {
    /// What it is cited as.
    pub key: Source,
    /// The authors, or the body that issued it.
    pub author: String,
    /// The year of issue; absent where the work is undated or kept current.
    pub year: Option<u16>,
    /// The title; in square brackets where it describes the work instead.
    pub title: String,
    /// Journal with volume and pages, publisher, DOI or report number.
    pub published_in: String,
    /// How much of it was read for this program.
    pub seen: ReadExtent,
    /// What is taken from it, and what to beware of.
    pub note: String,
}

/// How much of a work was read for this program.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ReadExtent {
    /// The text, a page or a table of it.
    Text,
    /// The abstract.
    Abstract,
    /// Another work that quotes it.
    Quoted,
    /// Nothing: what is said of it was recalled.
    Memory,
}

impl ReadExtent {
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

impl Work {
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

impl fmt::Display for Work {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}", self.author)?;
        if let Some(year) = self.year {
            write!(f, " ({year})")?;
        }
        write!(f, ". {}. {}", self.title, self.published_in)
    }
}

/// Every work, in the order of [`Source::ALL`].
pub fn works() -> &'static [Work] {
    static WORKS: OnceLock<Vec<Work>> = OnceLock::new();
    WORKS.get_or_init(read)
}

impl Source {
    /// The work that is cited.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Source;
    /// assert_eq!(Source::Driever2005.work().short(), "Driever et al. 2005");
    /// ```
    pub fn work(self) -> &'static Work {
        &works()[self as usize]
    }
}

/// Reads the embedded table.
#[expect(
    clippy::expect_used,
    reason = "the table is embedded and a test parses it"
)]
fn read() -> Vec<Work> {
    #[derive(Deserialize)]
    #[serde(deny_unknown_fields)]
    struct Table {
        source: Vec<Work>,
    }
    let table: Table =
        toml::from_str(include_str!("sources.toml")).expect("the embedded sources are well formed");
    let mut works = table.source;
    works.sort_by_key(|work| work.key);
    works
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_source_is_one_work() {
        let told: Vec<Source> = works().iter().map(|work| work.key).collect();
        assert_eq!(told, Source::ALL);
        for &source in Source::ALL {
            assert_eq!(source.work().key, source);
        }
    }

    #[test]
    fn every_dated_work_of_an_author_has_its_year_in_its_key() {
        for source in works() {
            let dated = source.key.key().rsplit('_').next().unwrap_or_default();
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
        for source in works() {
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
        let two = Source::ReddyDebusk1985.work();
        assert_eq!(two.short(), "Reddy & DeBusk 1985");
        let one = Source::Larson2007.work();
        assert_eq!(one.short(), "Larson 2007");
        assert!(one.to_string().starts_with("Larson (2007). "), "{one}");
    }
}
