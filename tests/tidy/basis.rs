//! The word behind a number is as true as the number: what was not read, or is called a
//! judgement beside the number, is not published.

use std::collections::BTreeSet;

use lentic::catalogue::{self, CatalogueRow};
use lentic::explanation;
use lentic::parameters::descriptions;
use lentic::source::{Basis, ReadExtent, Source};

use crate::tree;

/// Whether sources bear the word "published": one at least was read, in part or as quoted.
fn bear(sources: &[Source]) -> bool {
    sources
        .iter()
        .any(|source| source.work().seen != ReadExtent::Memory)
}

/// Whether a number may bear its label on its sources.
fn is_borne(basis: Basis, sources: &[Source]) -> bool {
    basis != Basis::Published || bear(sources)
}

fn assert_borne(what: &str, basis: Basis, sources: &[Source]) {
    assert!(
        is_borne(basis, sources),
        "{what} is published on what nobody read: {sources:?}"
    );
}

/// The search itself has to find what it is for.
#[test]
fn a_label_on_a_source_that_nobody_read_is_found_out() {
    let mut all = Source::ALL.iter().copied();
    let recalled = all.find(|source| source.work().seen == ReadExtent::Memory);
    let recalled = recalled.expect("a work that was recalled");
    assert!(!is_borne(Basis::Published, &[recalled]));
    assert!(!is_borne(Basis::Published, &[]));
    assert!(is_borne(Basis::Memory, &[recalled]));
    let item = format!("basis: Basis::Published,\n    source: Some(Source::{recalled:?}),");
    assert_eq!(source_after_label(&item), Some(recalled));
}

fn assert_rows_borne<R: CatalogueRow>() {
    for row in R::all() {
        assert_borne(row.name(), row.basis(), row.sources());
    }
}

#[test]
fn no_row_is_published_from_memory() {
    assert_rows_borne::<catalogue::Soil>();
    assert_rows_borne::<catalogue::Cap>();
    assert_rows_borne::<catalogue::Stone>();
    assert_rows_borne::<catalogue::Plant>();
    assert_rows_borne::<catalogue::Animal>();
    assert_rows_borne::<catalogue::Device>();
    assert_rows_borne::<catalogue::TankSize>();
    assert_rows_borne::<catalogue::Sign>();
    for topic in explanation::topics() {
        let rests = topic.source.is_empty() || topic.basis != Basis::Published;
        assert!(rests || bear(&topic.source), "{}", topic.code);
    }
}

#[test]
fn no_parameter_is_published_from_memory_or_as_a_judgement() {
    for parameter in descriptions() {
        assert_borne(parameter.name, parameter.basis, parameter.source);
        let is_own = ["judgement", "fitted", "guess"]
            .iter()
            .any(|word| parameter.note.contains(word));
        assert!(
            !is_own || parameter.basis != Basis::Published,
            "{}",
            parameter.name
        );
    }
}

/// The items of a text that stand at its margin, each with its comment.
fn items(text: &str) -> impl Iterator<Item = &str> {
    text.split("\n}\n")
}

/// How a finding or a verdict is labelled where its basis does not vary.
const PUBLISHED: &str = "basis: Basis::Published,";

/// The source that an item names after its label.
fn source_after_label(item: &str) -> Option<Source> {
    let (_, after) = item.split_once("Basis::Published")?;
    let (_, name) = after.split_once("Source::")?;
    let name: String = name
        .chars()
        .take_while(|c| c.is_alphanumeric() || *c == '_')
        .collect();
    let mut sources = Source::ALL.iter().copied();
    sources.find(|source| format!("{source:?}") == name)
}

#[test]
fn no_finding_is_published_from_memory() {
    let mut labelled = 0;
    for path in tree::files("src", "rs") {
        let text = tree::text(&path);
        for source in items(&text).filter_map(source_after_label) {
            labelled += 1;
            assert!(bear(&[source]), "{}: {source}", tree::short(&path));
        }
    }
    assert!(labelled > 4, "{labelled} labels");
}

/// The constants whose comment calls them a judgement.
fn judged() -> BTreeSet<String> {
    let mut found = BTreeSet::new();
    for path in tree::files("src", "rs") {
        let mut is_judged = false;
        for line in tree::text(&path).lines().map(str::trim) {
            if let Some(comment) = line.strip_prefix("///") {
                is_judged |= comment.contains("judgement");
                continue;
            }
            let name = line
                .split_once("const ")
                .and_then(|(_, rest)| rest.split_once(':'));
            if let Some((name, _)) = name.filter(|_| is_judged) {
                found.insert(name.to_owned());
            }
            is_judged = is_judged && line.starts_with('#');
        }
    }
    found
}

/// What makes a judgement of an item that is labelled published: a comment of its own, or
/// the name of a number whose comment says so.
fn judgements<'a>(item: &'a str, judged: &BTreeSet<String>) -> Vec<&'a str> {
    if !item.contains(PUBLISHED) {
        return Vec::new();
    }
    let comments = item.lines().filter(|line| line.starts_with("///"));
    let says_so = comments.filter(|line| line.contains("judgement"));
    let words = item.split(|c: char| !(c.is_alphanumeric() || c == '_'));
    let rests_on = words.filter(|word| judged.contains(*word));
    says_so.chain(rests_on).collect()
}

#[test]
fn no_finding_is_published_on_what_its_comment_calls_a_judgement() {
    let judged = judged();
    assert!(judged.contains("OPEN_WATER_CM_S"), "{judged:?}");
    for path in tree::files("src", "rs") {
        let text = tree::text(&path);
        for item in items(&text) {
            let found = judgements(item, &judged);
            assert!(found.is_empty(), "{}: {found:?}", tree::short(&path));
        }
    }
}

/// The search itself has to find what it is for.
#[test]
fn a_judgement_that_is_labelled_published_is_found_out() {
    let judged = BTreeSet::from(["MOST_CM".to_owned()]);
    let label = format!("    {PUBLISHED}");
    let own = format!("/// At most 3 cm (judgement).\nfn rule() {{\n{label}");
    assert_eq!(judgements(&own, &judged).len(), 1);
    let of_number = format!("fn rule() {{\n    high: Some(MOST_CM),\n{label}");
    assert_eq!(judgements(&of_number, &judged), ["MOST_CM"]);
    let sound = format!("fn rule() {{\n    high: Some(OTHER_CM),\n{label}");
    assert_eq!(judgements(&sound, &judged), Vec::<&str>::new());
}
