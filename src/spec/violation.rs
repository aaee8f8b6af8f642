//! Where the rules that a draft breaks stand in its text.

use std::ops::Range;

use toml::de::DeTable;

use super::fault::{Fault, Faults};
use super::syntax::{locate, read};
use crate::design::{Assumption, Violation};

/// The violations of a draft as faults of the text it was read from.
pub(super) fn faults(violations: Vec<Violation>, assumed: &[Assumption], text: &str) -> Faults {
    let document = read(text);
    let root = document.root.get_ref();
    let faults = violations
        .into_iter()
        .map(|violation| fault(violation, assumed, root, text));
    Faults::sorted(faults.collect())
}

fn fault(violation: Violation, assumed: &[Assumption], root: &DeTable<'_>, text: &str) -> Fault {
    let Violation {
        key,
        other,
        found,
        rule,
        mut help,
    } = violation;
    let span = given(&key, root).map_or_else(|| heading(&key, root), |(_, place)| place);
    let related = other.as_ref().and_then(|other| {
        let (name, place) = given(other, root).filter(|(_, place)| *place != span)?;
        let value = text.get(place.clone()).unwrap_or_default();
        Some((place, format!("{name} is {value}")))
    });
    for key in [Some(&key), other.as_ref()].into_iter().flatten() {
        if let Some(default) = assumed.iter().find(|default| default.key == *key) {
            let value = &default.value;
            help = format!("{help}; {key} was left out and is taken as {value}");
        }
    }
    Fault {
        key,
        span,
        found,
        rule,
        help,
        related,
    }
}

/// The key and where its value stands; the dimensions of a box may stand in its size.
fn given<'k>(key: &'k str, root: &DeTable<'_>) -> Option<(&'k str, Range<usize>)> {
    let place = |key: &'k str| locate(root, key).map(|value| (key, value.span()));
    let in_size = ["tank.length", "tank.width", "tank.height"].contains(&key);
    place(key).or_else(|| in_size.then(|| place("tank.size")).flatten())
}

/// The nearest section above a key that is given, or the start of the file.
fn heading(key: &str, root: &DeTable<'_>) -> Range<usize> {
    let mut path = key;
    while let Some((above, _)) = path.rsplit_once('.') {
        if let Some(section) = locate(root, above) {
            return section.span();
        }
        path = above;
    }
    0..0
}
