//! One section of a spec, read key by key; faults and defaults are collected
//! on the way, so that one pass finds them all.

mod report;

use std::cell::RefCell;
use std::ops::Range;

use toml::Spanned;
use toml::de::{DeTable, DeValue};

use self::report::{fault, too_many};
use super::fault::Fault;
use super::key::{self, Key, KeyKind, join};
use super::value::raw;
use crate::design::key::{KeyEntry, Prepared};
use crate::design::{Assumption, Violation};

/// What reading a spec brings up.
#[derive(Debug, Default)]
pub(super) struct SpecLog {
    /// What is wrong.
    pub(super) faults: RefCell<Vec<Fault>>,
    /// Which defaults were taken.
    pub(super) assumed: RefCell<Vec<Assumption>>,
    /// What is said to be unknown, and is missed where the tank is not only checked.
    pub(super) unknown: RefCell<Vec<Fault>>,
    /// Plain values, each to be put into the draft.
    pub(super) prepared: RefCell<Vec<Prepared>>,
}

/// A section, there or not.
pub(super) struct SpecSection<'d> {
    /// Where it stands: `plants[2]`; empty for the file itself.
    path: String,
    /// The same with `[]` for any item: `plants[]`.
    pattern: String,
    /// Its heading, or the start of the file where it is absent.
    span: Range<usize>,
    table: Option<&'d DeTable<'d>>,
    /// The keys that misspelt ones were taken for, and so are not missing.
    misspelt: Vec<&'static str>,
    log: &'d SpecLog,
}

/// Stands in where the table of keys has no such key; no file can name it.
static NO_KEY: Key = Key::new("", KeyKind::Text, "", "");

impl<'d> SpecSection<'d> {
    /// The file itself.
    pub(super) fn root(table: &'d DeTable<'d>, log: &'d SpecLog) -> Self {
        Self::open(String::new(), String::new(), 0..0, Some(table), log)
    }

    /// Opens a section and finds its unknown keys.
    fn open(
        path: String,
        pattern: String,
        span: Range<usize>,
        table: Option<&'d DeTable<'d>>,
        log: &'d SpecLog,
    ) -> Self {
        let mut section = Self {
            path,
            pattern,
            span,
            table,
            misspelt: Vec::new(),
            log,
        };
        for (name, _) in table.into_iter().flatten() {
            if key::find(&join(&section.pattern, name.get_ref())).is_none() {
                section.refuse_unknown(name.get_ref(), name.span());
            }
        }
        section
    }

    /// A section below this one, there or not.
    pub(super) fn child(&self, name: &str) -> Self {
        let (span, table) = match self.value(name) {
            None => (self.span.clone(), None),
            Some(value) => {
                let table = value.get_ref().as_table();
                if table.is_none() {
                    self.report(name, self.no_section(name, value.get_ref()));
                }
                (value.span(), table)
            }
        };
        let (path, pattern) = (join(&self.path, name), join(&self.pattern, name));
        Self::open(path, pattern, span, table, self.log)
    }

    /// A section below this one that must be there.
    pub(super) fn needed_child(&self, name: &str) -> Option<Self> {
        if self.has(name) {
            return Some(self.child(name)).filter(Self::is_there);
        }
        let key = self.key(name);
        let below = key
            .example
            .trim_matches(['{', '}', ' '])
            .replace(", ", " and ");
        self.miss(
            name,
            format!("{} needs [{name}], {}", self.heading(), key.says),
            format!("add [{name}] and below it {below}"),
        );
        None
    }

    /// The sections of a list below this one, each read alike; nothing unless all can be.
    pub(super) fn list<T>(
        &self,
        name: &str,
        read: impl Fn(&SpecSection<'d>) -> Option<T>,
    ) -> Option<Vec<T>> {
        let Some(value) = self.value(name) else {
            return Some(Vec::new());
        };
        let Some(items) = value.get_ref().as_array() else {
            self.report(name, self.no_list(name, value.get_ref()));
            return None;
        };
        self.within_most(name, items.len())?;
        // Every item is read before the first fault counts, so that all are found.
        let read_all: Vec<Option<T>> = items
            .iter()
            .enumerate()
            .map(|(index, item)| read(&self.item(name, index, item)?))
            .collect();
        read_all.into_iter().collect()
    }

    /// Reports a list that is longer than any tank's; nothing where it is.
    fn within_most(&self, name: &str, found: usize) -> Option<()> {
        let most = self.key(name).most.filter(|most| found > *most as usize);
        if let Some(most) = most {
            self.report(name, too_many(name, found, most));
            return None;
        }
        Some(())
    }

    /// One section of a list.
    fn item(&self, name: &str, index: usize, item: &'d Spanned<DeValue<'d>>) -> Option<Self> {
        let path = format!("{}[{index}]", join(&self.path, name));
        let Some(table) = item.get_ref().as_table() else {
            let violation = self.no_section(name, item.get_ref());
            self.push_at(path, item.span(), violation);
            return None;
        };
        let pattern = format!("{}[]", join(&self.pattern, name));
        Some(Self::open(
            path,
            pattern,
            item.span(),
            Some(table),
            self.log,
        ))
    }

    /// Whether the section stands in the file.
    pub(super) fn is_there(&self) -> bool {
        self.table.is_some()
    }

    /// Whether a key stands in the section.
    pub(super) fn has(&self, name: &str) -> bool {
        self.value(name).is_some()
    }

    /// Whether a key of the section holds a table.
    pub(super) fn has_table(&self, name: &str) -> bool {
        self.value(name)
            .is_some_and(|value| value.get_ref().is_table())
    }

    /// Whether a key is said to be unknown.
    pub(super) fn is_unknown(&self, name: &str) -> bool {
        let text = self.value(name).and_then(|value| value.get_ref().as_str());
        text.is_some_and(|text| text.trim().eq_ignore_ascii_case("unknown"))
    }

    /// Notes what stands in for a key that is said to be unknown.
    pub(super) fn stand_in(&self, name: &str, value: &str, why: &str, missed: Violation) {
        self.assume(name, value, why);
        let fault = fault(join(&self.path, name), self.span(name), missed);
        self.log.unknown.borrow_mut().push(fault);
    }

    /// Where a key's value stands; the section's heading where it is absent.
    pub(super) fn span(&self, name: &str) -> Range<usize> {
        self.value(name)
            .map_or_else(|| self.span.clone(), Spanned::span)
    }

    /// A key that may be left out.
    pub(super) fn optional<T>(
        &self,
        name: &str,
        read: impl Fn(&KeyEntry<'_>) -> Result<T, Violation>,
    ) -> Option<T> {
        let value = raw(self.value(name)?.get_ref());
        let key = self.key(name);
        read(&KeyEntry { key, value })
            .map_err(|violation| self.report(name, violation))
            .ok()
    }

    /// A key that must be there.
    pub(super) fn required<T>(
        &self,
        name: &str,
        read: impl Fn(&KeyEntry<'_>) -> Result<T, Violation>,
    ) -> Option<T> {
        if !self.has(name) {
            self.missing(name, format!("{} needs {name}", self.heading()));
        }
        self.optional(name, read)
    }

    /// A key whose default stands, and is noted, where it is left out. It also
    /// stands in for a faulty value, so that the rest can be judged.
    pub(super) fn defaulted<T>(
        &self,
        name: &str,
        read: impl Fn(&KeyEntry<'_>) -> Result<T, Violation>,
    ) -> Option<T> {
        if let Some(value) = self.optional(name, &read) {
            return Some(value);
        }
        let default = self.key(name).default?;
        if !self.has(name) {
            self.assume(name, default.written.trim_matches('"'), default.why);
        }
        let value = DeValue::parse(default.written).ok()?;
        let key = self.key(name);
        let value = raw(value.get_ref());
        read(&KeyEntry { key, value }).ok()
    }

    /// The plain keys of the section, in the order of the table: each is put into the draft
    /// as it stands, as its default, or not at all.
    pub(super) fn plain(&self) {
        let keys = key::within(&self.pattern).filter(|key| key.is_plain);
        for (key, prepare) in keys.filter_map(|key| Some((key, key.prepare?))) {
            let prepared = if key.default.is_some() {
                self.defaulted(key.leaf(), prepare)
            } else {
                self.optional(key.leaf(), prepare)
            };
            self.log.prepared.borrow_mut().extend(prepared);
        }
    }

    /// The items of a list that must be there, each read alike.
    pub(super) fn each<T>(
        &self,
        name: &str,
        read: impl Fn(&KeyEntry<'_>) -> Result<T, Violation>,
    ) -> Option<Vec<T>> {
        let key = self.key(name);
        let value = self.value(name)?.get_ref();
        let Some(items) = value.as_array() else {
            let entry = KeyEntry {
                key,
                value: raw(value),
            };
            self.report(name, entry.wrong_type());
            return None;
        };
        self.within_most(name, items.len())?;
        let item = |(index, item): (usize, &Spanned<DeValue<'_>>)| {
            let value = raw(item.get_ref());
            let violation = match read(&KeyEntry { key, value }) {
                Ok(item) => return Some(item),
                Err(violation) => violation,
            };
            let path = format!("{}[{index}]", join(&self.path, name));
            self.push_at(path, item.span(), violation);
            None
        };
        let items: Vec<Option<T>> = items.iter().enumerate().map(item).collect();
        items.into_iter().collect()
    }

    /// Notes a value taken for a key that was left out.
    pub(super) fn assume(&self, name: &str, value: &str, why: &str) {
        self.log.assumed.borrow_mut().push(Assumption {
            key: join(&self.path, name),
            value: value.to_owned(),
            why: why.to_owned(),
        });
    }

    fn value(&self, name: &str) -> Option<&'d Spanned<DeValue<'d>>> {
        self.table.and_then(|table| table.get(name))
    }

    fn key(&self, name: &str) -> &'static Key {
        key::find(&join(&self.pattern, name)).unwrap_or(&NO_KEY)
    }
}
