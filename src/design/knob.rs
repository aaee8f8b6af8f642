//! Knobs: what may be varied about a tank, and the settings it is varied through.

use super::key::{self, KEYS, Key, KeyEntry, Needs, Prepared, Raw};
use super::{Draft, Violation, follow};

/// One thing that may be varied about a tank: a key, of a list that of one item.
///
/// # Example
/// ```
/// # let text = "[tank]\nshape = \"box\"\nsize = \"60 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"";
/// # let mut draft = lentic::spec::parse(text)?.into_draft();
/// let cap = lentic::spec::knob("cap.depth")?;
/// lentic::spec::setting(cap, "30 mm")?.apply(&mut draft)?;
/// assert_eq!(draft.cap.depth.middle().mm(), 30.0);
/// assert_eq!(cap.path(), "cap.depth");
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Knob {
    key: &'static Key,
    item: usize,
}

impl Knob {
    /// The knob of a path in the table of keys, where that key may be varied; of a list
    /// that of an item, counted from 0.
    pub fn find(pattern: &str, item: usize) -> Option<Self> {
        let key = key::find(pattern).filter(|key| key.prepare.is_some())?;
        Some(Self { key, item })
    }

    /// The keys that may be varied.
    pub fn keys() -> impl Iterator<Item = &'static Key> {
        KEYS.iter().filter(|key| key.prepare.is_some())
    }

    /// The key that is varied.
    pub fn key(&self) -> &'static Key {
        self.key
    }

    /// The path of what is varied: `plants[2].amount`.
    pub fn path(&self) -> String {
        self.key.path.replace("[]", &format!("[{}]", self.item))
    }

    /// What the key is set to by a value as it was written.
    pub(crate) fn setting(self, value: Raw<'_>) -> Result<Setting, Violation> {
        let entry = KeyEntry {
            key: self.key,
            value,
        };
        let Some(prepare) = self.key.prepare else {
            return Err(entry.wrong_type());
        };
        prepare(&entry).map(|prepared| Setting {
            knob: self,
            prepared,
        })
    }

    /// That a draft has nothing there to vary.
    fn nothing(self, needs: Needs) -> Violation {
        let path = self.path();
        Violation::new(
            "there is nothing to vary",
            format!("to vary {path} the tank needs {needs}"),
            "add it to the spec, or vary something else",
        )
        .at(path)
    }
}

/// What a key is set to: read once, for any draft.
#[derive(Debug, Clone)]
pub struct Setting {
    knob: Knob,
    prepared: Prepared,
}

impl Setting {
    /// Sets the key in a draft; what stood for a key not said follows where it hangs on it.
    ///
    /// # Errors
    /// When the draft has nothing there to vary.
    pub fn apply(&self, draft: &mut Draft) -> Result<(), Violation> {
        let Knob { key, item } = self.knob;
        let applied = self.prepared.apply(draft, item);
        applied.map_err(|needs| self.knob.nothing(needs))?;
        follow::forget(&self.knob.path(), draft);
        if let Some(follow) = key.follow {
            follow(draft, item);
        }
        Ok(())
    }

    /// Whether only whole numbers make sense there.
    pub fn is_whole(&self) -> bool {
        self.prepared.is_whole()
    }
}
