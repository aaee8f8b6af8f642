//! What can be explained, found by what people type.

use super::row::{ResultCommand, ResultRow, result, results};
use crate::catalogue::{FINDINGS, Topic, bracketed, nearest_path, within_lists};
use crate::explanation::{topic, topics};
use crate::source::Source;
use crate::units::without_band_end;

/// Something that can be explained.
#[derive(Debug, Clone, PartialEq)]
pub enum ExplainSubject {
    /// The rule behind a finding, or the formula behind figures.
    Topic(&'static Topic),
    /// A result.
    Result(Named),
    /// A work that numbers are taken from.
    Source(Source),
    /// A section of results, or several that share a name.
    Section {
        /// As it was typed.
        name: String,
        /// The results in it.
        results: Vec<&'static ResultRow>,
        /// The topics of the same name.
        topics: Vec<&'static Topic>,
    },
}

/// A result with the path at which it was asked for.
#[derive(Debug, Clone, PartialEq)]
pub struct Named {
    /// What it is.
    pub row: &'static ResultRow,
    /// Its path in the JSON of the row's command; an item of a list may be numbered, an end
    /// of a band named.
    pub path: String,
}

impl ExplainSubject {
    /// What a code, a path, a column of `compare`, a section or a source's key stands for.
    ///
    /// # Errors
    /// When it stands for nothing; the nearest of all names is given where one is near.
    ///
    /// # Example
    /// ```
    /// use lentic::report::dictionary::ExplainSubject;
    /// assert!(matches!(ExplainSubject::find("cap.thin"), Ok(ExplainSubject::Topic(_))));
    /// assert!(matches!(ExplainSubject::find("soil.bags.0.size"), Ok(ExplainSubject::Result(_))));
    /// assert!(matches!(ExplainSubject::find("night"), Ok(ExplainSubject::Section { .. })));
    /// assert_eq!(ExplainSubject::find("total_kq"), Err(Some("weight.total_kg".to_owned())));
    /// ```
    pub fn find(text: &str) -> Result<Self, Option<String>> {
        let text = text.trim();
        let code = text.strip_prefix(FINDINGS).unwrap_or(text);
        if let Some(topic) = topic(text).or_else(|| topic(code)) {
            return Ok(Self::Topic(topic));
        }
        if let Some(source) = Source::find(text) {
            return Ok(Self::Source(source));
        }
        let path = bracketed(text);
        match named(&path).as_slice() {
            [] => section(text).ok_or_else(|| nearest(text)),
            [row] => Ok(Self::Result(Named {
                row,
                path: path_of(row, &path),
            })),
            several => Ok(Self::Section {
                name: text.to_owned(),
                results: several.to_vec(),
                topics: Vec::new(),
            }),
        }
    }
}

/// The results at a path of any command, or at one with the command in front.
fn named(path: &str) -> Vec<&'static ResultRow> {
    let plain = within_lists(path);
    let in_a_plan =
        result(ResultCommand::Plan, &plain).filter(|row| row.command == ResultCommand::Plan);
    if let Some(row) = in_a_plan {
        return vec![row];
    }
    let mut found: Vec<&ResultRow> = Vec::new();
    let by_path = ResultCommand::ALL
        .iter()
        .filter_map(|command| result(*command, &plain));
    for row in by_path {
        if !found.contains(&row) {
            found.push(row);
        }
    }
    if found.is_empty() {
        let by_name = ResultCommand::ALL.iter().find_map(|command| {
            let rest = plain.strip_prefix(command.word())?.strip_prefix('.')?;
            result(*command, rest)
        });
        found.extend(by_name);
    }
    found
}

/// The path of a result in its own command's JSON, with what was typed of items and ends.
fn path_of(row: &ResultRow, typed: &str) -> String {
    let plain = within_lists(typed);
    let plain = if plain == row.path {
        &plain
    } else {
        without_band_end(&plain)
    };
    let parts = |path: &str| path.split('.').count();
    let same = plain.rsplit('.').zip(row.path.rsplit('.'));
    let shared = same.take_while(|(typed, own)| typed == own).count();
    let before = row.path.split('.').take(parts(&row.path) - shared);
    let after = typed.split('.').skip(parts(plain) - shared);
    before.chain(after).collect::<Vec<_>>().join(".")
}

/// The results and topics below a name.
fn section(text: &str) -> Option<ExplainSubject> {
    let section = text.trim_end_matches(['.', '*']);
    let within = format!("{section}.");
    let results: Vec<_> = results()
        .iter()
        .filter(|row| row.path.starts_with(&within) || row.is_of_command(section))
        .collect();
    let topics: Vec<_> = topics()
        .iter()
        .filter(|topic| topic.code.starts_with(&within))
        .collect();
    let is_empty = results.is_empty() && topics.is_empty();
    (!is_empty).then(|| ExplainSubject::Section {
        name: text.to_owned(),
        results,
        topics,
    })
}

/// The nearest of all codes, sources and results, these by their name or their path alone.
fn nearest(text: &str) -> Option<String> {
    let names: Vec<String> = results().iter().map(ResultRow::name).collect();
    let paths = results().iter().map(|row| row.path.as_str());
    let codes = topics().iter().map(|topic| topic.code.as_str());
    let sources = Source::ALL.iter().map(|source| source.key());
    let known = codes
        .chain(names.iter().map(String::as_str))
        .chain(paths)
        .chain(sources);
    nearest_path(text, known).map(str::to_owned)
}
