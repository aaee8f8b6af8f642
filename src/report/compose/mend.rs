//! What was changed about a spec so that its plan holds.

use crate::finding::Status;
use crate::mend::{KeyChange, Mended, Unmet};
use crate::report::document::{Block, Document, Table, TableColumn as Head};
use crate::units::show;

/// The outcome in a sentence, then every change with its reason, and what is not met.
pub fn mend(mended: &Mended) -> Document {
    let mut blocks = vec![Block::Verdict(mended.status_after, verdict(mended))];
    blocks.push(Block::Text(odds(mended)));
    if !mended.changes.is_empty() {
        blocks.push(Block::Heading("Changes".to_owned()));
        blocks.push(Block::Table(changes(mended)));
        blocks.push(Block::Items(reasons(&mended.changes)));
    }
    if !mended.unmet.is_empty() {
        blocks.push(Block::Heading("Not met".to_owned()));
        blocks.push(Block::Items(mended.unmet.iter().map(unmet).collect()));
    }
    Document {
        title: mended.name.clone(),
        blocks,
        ..Document::default()
    }
}

fn verdict(mended: &Mended) -> String {
    let count = show::counted(mended.changes.len() as f64, "key");
    match (mended.holds, mended.changes.is_empty()) {
        (true, true) => "holds as it is: nothing to change".to_owned(),
        (true, false) => format!("holds with {count} changed"),
        (false, true) => "no change brings it nearer to a plan that holds".to_owned(),
        (false, false) => format!("no plan holds; the nearest has {count} changed"),
    }
}

fn odds(mended: &Mended) -> String {
    let of_100 = |share: f64| format!("{:.0} of 100 starts", (share * 100.0).floor());
    let stood = |status: Status| match status {
        Status::Ok | Status::Note => "nothing to watch or mend",
        Status::Watch => "something to watch",
        Status::Act => "something to mend first",
    };
    format!(
        "before: {}, {} hold; after: {}, {} hold; {} tried",
        stood(mended.status_before),
        of_100(mended.odds_before),
        stood(mended.status_after),
        of_100(mended.odds_after),
        show::counted(f64::from(mended.plans_tried), "plan")
    )
}

fn changes(mended: &Mended) -> Table {
    let is_priced = mended.changes.iter().any(|change| change.cost.is_some());
    let mut columns = vec![Head::words("key"), Head::words("was"), Head::words("is")];
    if is_priced {
        columns.push(Head::numbers("cost"));
    }
    let none = || "-".to_owned();
    let row = |change: &KeyChange| {
        let mut row = vec![
            change.key.clone(),
            change.from.clone().unwrap_or_else(none),
            change.to.clone().unwrap_or_else(none),
        ];
        if is_priced {
            let cost = change.cost.map(|cost| show::fixed(cost, 2));
            row.push(cost.unwrap_or_default());
        }
        row
    };
    Table {
        columns,
        rows: mended.changes.iter().map(row).collect(),
    }
}

/// A line for each reason, with the keys that share it.
fn reasons(changes: &[KeyChange]) -> Vec<String> {
    let mut reasons: Vec<(Vec<&str>, &str)> = Vec::new();
    for change in changes {
        match reasons.last_mut() {
            Some((keys, why)) if *why == change.why => keys.push(&change.key),
            _ => reasons.push((vec![&change.key], &change.why)),
        }
    }
    let lines = reasons.into_iter();
    lines
        .map(|(keys, why)| format!("{}: {why}", keys.join(", ")))
        .collect()
}

fn unmet(unmet: &Unmet) -> String {
    format!("{}: {}; nearest: {}", unmet.code, unmet.why, unmet.nearest)
}
