//! Names of the catalogue.

use super::KeyEntry;
use crate::catalogue::{self, CatalogueRow};
use crate::design::Violation;

/// The lists that a command shows.
const LISTED: &[&str] = &["soils", "caps", "plants", "animals"];

/// The row a name stands for.
pub(crate) fn row<R: CatalogueRow>(entry: &KeyEntry<'_>) -> Result<&'static R, Violation> {
    catalogue::find::<R>(entry.text()?).map_err(|unknown| {
        let list = R::LIST;
        let help = match unknown.suggestion {
            Some(near) => did_you_mean::<R>(near),
            None if !unknown.choices.is_empty() => which(&unknown.choices, list),
            None if LISTED.contains(&list) => format!("the command list {list} shows all of them"),
            None => format!("the {list} are {}", names::<R>()),
        };
        Violation::new(
            format!("no {} {}", unknown.kind, entry.value.shown()),
            format!("{} is a name from the list of {list}", entry.key.leaf()),
            help,
        )
    })
}

/// "did you mean ...?", with the label where that says more: the grains of a gravel.
fn did_you_mean<R: CatalogueRow>(near: &str) -> String {
    let label = catalogue::find::<R>(near).map_or("", |row| row.label());
    if label.to_lowercase() == near.replace('_', " ").to_lowercase() {
        format!("did you mean \"{near}\"?")
    } else {
        format!("did you mean \"{near}\" ({label})?")
    }
}

/// Names told of those that may be meant.
const TOLD: usize = 6;

/// "say which: ...", of those that bear the words typed.
fn which(choices: &[&str], list: &str) -> String {
    let told: Vec<String> = choices
        .iter()
        .take(TOLD)
        .map(|name| format!("\"{name}\""))
        .collect();
    let more = if choices.len() > TOLD {
        format!("; the command list {list} shows all of them")
    } else {
        String::new()
    };
    format!("say which: {}{more}", told.join(", "))
}

fn names<R: CatalogueRow>() -> String {
    let names: Vec<&str> = R::all().iter().map(CatalogueRow::name).collect();
    names.join(", ")
}
