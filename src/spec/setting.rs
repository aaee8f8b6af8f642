//! Key paths to knobs, and texts to what a key is set to.

use toml::de::DeValue;

use super::key;
use super::value::raw;
use crate::design::key::nearest;
use crate::design::{Knob, Setting, Violation};

/// The knob that turns the key at a path: `cap.depth`, `plants[1].amount`.
///
/// # Errors
/// When no such key may be varied; the nearest that may is suggested.
///
/// # Example
/// ```
/// let knob = lentic::spec::knob("plants[1].amount")?;
/// assert_eq!(knob.path(), "plants[1].amount");
/// let wrong = lentic::spec::knob("cap.dpeth").unwrap_err();
/// assert_eq!(wrong.help, "did you mean cap.depth?");
/// # Ok::<(), lentic::design::Violation>(())
/// ```
pub fn knob(path: &str) -> Result<Knob, Violation> {
    let path = path.trim();
    let pattern = key::pattern(path);
    if Knob::find(&pattern, 0).is_none() {
        return Err(unknown(path, &pattern));
    }
    item(path, &pattern)
        .and_then(|item| Knob::find(&pattern, item))
        .ok_or_else(|| {
            let help = format!("for example {}", pattern.replace("[]", "[0]"));
            Violation::new(
                "no item is named",
                "an item of a list is counted from 0",
                help,
            )
            .at(path)
        })
}

/// The number in the brackets; 0 where a path has none.
fn item(path: &str, pattern: &str) -> Option<usize> {
    if !pattern.contains("[]") {
        return Some(0);
    }
    let (_, after) = path.split_once('[')?;
    after.split_once(']')?.0.trim().parse().ok()
}

fn unknown(path: &str, pattern: &str) -> Violation {
    let help = if key::find(pattern).is_some() {
        format!("{path} is a key of a spec, but not one that can be varied")
    } else {
        suggestion(pattern)
    };
    Violation::new("no such key", "what is varied is a key of the spec", help).at(path)
}

fn suggestion(pattern: &str) -> String {
    let patterns = || Knob::keys().map(|key| key.path);
    let leaf = pattern.rsplit('.').next().unwrap_or(pattern);
    let same_leaf: Vec<&str> = patterns()
        .filter(|known| known.rsplit('.').next() == Some(leaf))
        .collect();
    let near = nearest(pattern, patterns());
    let shown = |known: &str| known.replace("[]", "[0]");
    match (near, same_leaf.as_slice()) {
        (Some(near), _) => format!("did you mean {}?", shown(near)),
        (None, []) => "the command schema lists all keys".to_owned(),
        (None, known) => {
            let known: Vec<String> = known.iter().map(|known| shown(known)).collect();
            format!("did you mean {}?", known.join(" or "))
        }
    }
}

/// What a text sets a key to, as it would stand in a spec, without quotes.
///
/// # Errors
/// When a spec would refuse it too.
///
/// # Example
/// ```
/// let knob = lentic::spec::knob("animals[0].count")?;
/// assert!(lentic::spec::setting(knob, "4")?.is_whole());
/// assert!(lentic::spec::setting(knob, "a few").is_err());
/// # Ok::<(), lentic::design::Violation>(())
/// ```
pub fn setting(knob: Knob, text: &str) -> Result<Setting, Violation> {
    let text = text.trim();
    let quoted = DeValue::String(text.into());
    let bare = if knob.key().kind.is_quoted() {
        None
    } else {
        DeValue::parse(text).ok()
    };
    let value = bare.as_ref().map_or(&quoted, |bare| bare.get_ref());
    let read = knob.setting(raw(value));
    read.map_err(|violation| violation.at(knob.path()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::spec::KeyKind;

    #[test]
    fn every_knob_takes_the_example_of_its_key() {
        for key in Knob::keys() {
            let knob = Knob::find(key.path, 0).expect("a knob");
            assert!(setting(knob, key.example).is_ok(), "{}", key.path);
            assert_eq!(super::knob(&knob.path()), Ok(knob));
        }
    }

    /// Whether a key tells of something that happened, or was given once.
    fn happens(path: &str) -> bool {
        let incidents = [
            "dosed",
            "fed",
            "topped_up",
            "away",
            "off",
            "drained",
            "medicine",
            "filter_washed",
            "lamp_changed",
            "animals_added",
            "sprayed",
            "gas_added",
        ];
        path.strip_prefix("events[].")
            .is_some_and(|event| incidents.iter().any(|incident| event.starts_with(incident)))
    }

    #[test]
    fn every_key_is_a_knob_but_those_that_only_name_or_list() {
        let apart = ["name", "units", "start", "tank.shape"];
        for key in crate::spec::KEYS {
            let is_value = !matches!(key.kind, KeyKind::Section | KeyKind::Sections);
            let is_apart = apart.contains(&key.path)
                || key.path.contains("bags[]")
                || key.path.contains("readings[]")
                || key.path.contains("taken[]")
                || key.path.starts_with("signs.")
                || key.path.starts_with("kit.")
                || happens(key.path)
                || key.path.contains("plants_");
            assert_eq!(
                Knob::find(key.path, 0).is_some(),
                is_value && !is_apart,
                "{}",
                key.path
            );
        }
    }
}
