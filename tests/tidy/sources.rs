//! Every source is cited. That every cited one exists, the compiler and the tables see to.

use std::collections::BTreeSet;

use lentic::source::Source;

use crate::tree;

/// Every word of the tree that could cite a source, outside the list of sources.
fn words() -> BTreeSet<String> {
    tree::files("src", "rs")
        .into_iter()
        .chain(tree::files("src", "toml"))
        .filter(|path| {
            !path
                .parent()
                .is_some_and(|folder| folder.ends_with("src/source"))
        })
        .flat_map(|path| {
            tree::text(&path)
                .split(|c: char| !(c.is_ascii_alphanumeric() || c == '_'))
                .map(str::to_owned)
                .collect::<Vec<_>>()
        })
        .collect()
}

#[test]
fn every_source_is_cited() {
    let words = words();
    for source in Source::ALL {
        let is_cited = words.contains(source.key()) || words.contains(&format!("{source:?}"));
        assert!(is_cited, "{source} is cited nowhere");
    }
}

/// A work as comments name it: "Losee and Wetzel 1993", "Klein et al. (2022)".
#[derive(Debug, PartialEq)]
struct Named {
    /// The author that stands last before the year.
    author: String,
    year: u16,
}

impl Named {
    /// The works that a comment names.
    fn all(comment: &str) -> Vec<Self> {
        let words: Vec<&str> = comment.split_whitespace().collect();
        let ends = (0..words.len()).filter_map(|end| Self::ending(&words[..=end]));
        ends.collect()
    }

    /// The work whose year is the last of some words.
    fn ending(words: &[&str]) -> Option<Self> {
        let (last, before) = words.split_last()?;
        let year = last.trim_matches(|c: char| c.is_ascii_punctuation());
        let year = year
            .parse()
            .ok()
            .filter(|year| (1800..2100).contains(year))?;
        let is_name = |word: &&&str| !["et", "al.", "al.,"].contains(*word);
        let author = before.iter().rev().find(is_name)?;
        let author = author.trim_end_matches(',').trim_start_matches('(');
        let is_one = author.starts_with(char::is_uppercase) && !author.ends_with('.');
        is_one.then(|| Self {
            author: author.to_owned(),
            year,
        })
    }

    fn is_listed(&self) -> bool {
        Source::ALL.iter().any(|source| {
            let work = source.work();
            let is_by = work.author.contains(&self.author)
                || source.key().contains(&self.author.to_lowercase());
            is_by && work.year == Some(self.year)
        })
    }
}

/// The comments of a text, each with all its lines.
fn comments(text: &str) -> Vec<String> {
    let mut found = vec![String::new()];
    for line in text.lines().map(str::trim) {
        match (line.strip_prefix("//"), found.last_mut()) {
            (Some(words), Some(comment)) => {
                comment.push_str(words.trim_start_matches(['/', '!']));
                comment.push('\n');
            }
            _ => found.push(String::new()),
        }
    }
    found
}

#[test]
fn a_work_is_read_out_of_a_comment_over_its_lines() {
    let text = "/// As Losee and\n/// Wetzel 1993, or Fang et al. (2007).\nlet a = 1;\n// In 1900 mm, of 2000.";
    let named: Vec<Named> = comments(text)
        .iter()
        .flat_map(|one| Named::all(one))
        .collect();
    let named: Vec<_> = named.iter().map(|one| (&*one.author, one.year)).collect();
    assert_eq!(named, [("Wetzel", 1993), ("Fang", 2007), ("In", 1900)]);
}

#[test]
fn a_work_named_in_a_comment_is_a_source() {
    let mut works = 0;
    for path in tree::files("src", "rs") {
        for named in comments(&tree::text(&path))
            .iter()
            .flat_map(|one| Named::all(one))
        {
            works += 1;
            assert!(named.is_listed(), "{}: {named:?}", tree::short(&path));
        }
    }
    assert!(works > 80, "{works} works");
}

#[test]
fn a_key_in_a_comment_is_a_source() {
    for path in tree::files("src", "rs") {
        for comment in comments(&tree::text(&path)) {
            for word in comment.split('`').skip(1).step_by(2) {
                let year = word.rsplit('_').next().filter(|year| year.len() == 4);
                let is_key = year.and_then(|year| year.parse::<u16>().ok()).is_some();
                assert!(
                    !is_key || Source::find(word).is_some(),
                    "{}: {word}",
                    tree::short(&path)
                );
            }
        }
    }
}
