//! Keys that stay as they are.

use thiserror::Error;

use crate::design::key::{KEYS, find, nearest, pattern};
use crate::spec::written;

/// The keys that a keeper wants kept.
#[derive(Debug, Clone, Default)]
pub struct Keep(Vec<String>);

/// A key that no spec has, or of an item that this spec has not.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{key}: {reason}")]
pub struct UnknownKey {
    /// As it was given.
    pub key: String,
    /// What is wrong with it.
    pub reason: &'static str,
    /// A way out.
    pub help: String,
}

impl Keep {
    /// The keys of some paths, sections and lists among them, in a spec.
    ///
    /// # Errors
    /// When a path is that of no key, or of an item that is not in the spec.
    ///
    /// # Example
    /// ```
    /// use lentic::mend::Keep;
    /// let text = "[light]\nhours = 12\n";
    /// assert!(Keep::of(["light.hours", "plants"], text).is_ok());
    /// let unknown = Keep::of(["light.hors"], text).unwrap_err();
    /// assert_eq!(unknown.help, "did you mean light.hours?");
    /// ```
    pub fn of<'k>(
        paths: impl IntoIterator<Item = &'k str>,
        text: &str,
    ) -> Result<Self, UnknownKey> {
        let paths = paths.into_iter().map(|path| kept(path.trim(), text));
        paths.collect::<Result<_, _>>().map(Self)
    }

    /// The kept key that a change of another would touch: itself, what it is part of, or
    /// a part of it.
    pub(super) fn touched_by(&self, key: &str) -> Option<&str> {
        let kept = self.0.iter().map(String::as_str);
        // a further item leaves those that are there as they are
        let is_added = key.ends_with("[]");
        let mut touched =
            kept.filter(|kept| is_within(key, kept) || (!is_added && is_within(kept, key)));
        touched.next()
    }
}

fn kept(path: &str, text: &str) -> Result<String, UnknownKey> {
    let pattern = pattern(path);
    if find(&pattern).is_none() {
        let help = nearest(&pattern, KEYS.iter().map(|key| key.path)).map_or_else(
            || "the command schema lists all keys".to_owned(),
            |near| format!("did you mean {}?", near.replace("[]", "[0]")),
        );
        return Err(UnknownKey {
            key: path.to_owned(),
            reason: "no such key",
            help,
        });
    }
    let item = path.rfind(']').map(|end| &path[..=end]);
    let is_missing = |item: &&str| !item.ends_with("[]") && written(text, item).is_none();
    if let Some(item) = item.filter(is_missing) {
        return Err(UnknownKey {
            key: path.to_owned(),
            reason: "no such item in this spec",
            help: format!("{item} is not there; items are counted from 0"),
        });
    }
    Ok(path.to_owned())
}

/// Whether a path is another or part of it; `[]` stands for every item.
fn is_within(path: &str, other: &str) -> bool {
    let matches = |path: &str| {
        let rest = path.strip_prefix(other);
        rest.is_some_and(|rest| rest.is_empty() || rest.starts_with(['.', '[']))
    };
    matches(path) || (other.contains("[]") && matches(&pattern(path)))
}
