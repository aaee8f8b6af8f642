//! What is wrong with the keys of a section, in words.

use std::ops::Range;

use toml::de::DeValue;

use super::SpecSection;
use crate::design::Violation;
use crate::design::key::{KEYS, nearest};
use crate::spec::fault::Fault;
use crate::spec::key::{self, Key, join};
use crate::spec::remark::Remark;
use crate::spec::trade;
use crate::spec::value::raw;
use crate::units::list::either;

impl SpecSection<'_> {
    /// Reports all but the first of keys of which only one may be given.
    pub(in crate::spec) fn refuse_second(&self, given: &[&str], rule: &str) {
        let mut given = given.to_vec();
        given.sort_by_key(|name| self.span(name).start);
        let Some((first, others)) = given.split_first() else {
            return;
        };
        for name in others {
            self.report(
                name,
                Violation::new(
                    format!("given beside {first}"),
                    rule,
                    format!("remove {first} or {name}"),
                )
                .beside(self.span(first), format!("{first} stands here")),
            );
        }
    }

    /// Reports that a key is not there although `rule` asks for it.
    pub(in crate::spec) fn missing(&self, name: &str, rule: String) {
        self.miss(
            name,
            rule,
            format!("for example {}", self.key(name).written()),
        );
    }

    /// The same with a way out of its own.
    pub(in crate::spec) fn miss(&self, name: &str, rule: String, help: String) {
        if !self.misspells(name) {
            self.push(
                name,
                self.span.clone(),
                Violation::new("missing", rule, help),
            );
        }
    }

    /// Whether a misspelt key was taken for this one.
    pub(in crate::spec) fn misspells(&self, name: &str) -> bool {
        self.misspelt.contains(&name)
    }

    /// Reports what is wrong at a key, at its value or the section's heading.
    pub(in crate::spec) fn report(&self, name: &str, remark: impl Into<Remark>) {
        self.push(name, self.span(name), remark);
    }

    /// Reports what is wrong with the section as a whole.
    pub(in crate::spec) fn report_here(&self, violation: Violation) {
        self.push_at(self.path.clone(), self.span.clone(), violation);
    }

    /// The section's heading in words.
    pub(in crate::spec) fn heading(&self) -> String {
        heading(&self.pattern)
    }

    pub(super) fn push(&self, name: &str, span: Range<usize>, remark: impl Into<Remark>) {
        self.push_at(join(&self.path, name), span, remark);
    }

    pub(super) fn push_at(&self, key: String, span: Range<usize>, remark: impl Into<Remark>) {
        self.log.faults.borrow_mut().push(fault(key, span, remark));
    }

    pub(super) fn no_section(&self, name: &str, value: &DeValue<'_>) -> Violation {
        let key = self.key(name);
        let help = if value.is_array() && self.path.is_empty() {
            format!("head it with [{name}], once")
        } else {
            format!("for example {}", key.written())
        };
        Violation::new(
            format!("found {}", raw(value).shown()),
            format!("{name} is a section with keys of its own"),
            help,
        )
    }

    pub(super) fn no_list(&self, name: &str, value: &DeValue<'_>) -> Violation {
        let key = self.key(name);
        let help = if value.is_table() && self.path.is_empty() {
            format!("head each of them with [[{name}]]")
        } else {
            format!("for example {}", key.written())
        };
        Violation::new(
            format!("found {}", raw(value).shown()),
            format!("{name} is a list of sections"),
            help,
        )
    }

    /// Reports a key that the section does not have, with the one that may be meant.
    pub(super) fn refuse_unknown(&mut self, name: &str, span: Range<usize>) {
        let keys: Vec<&'static str> = key::within(&self.pattern).map(Key::leaf).collect();
        let meant = trade::meant(name);
        let near = match meant {
            Some(meant) => keys.iter().copied().find(|key| *key == meant),
            None => nearest(name, keys.iter().copied()),
        };
        self.misspelt.extend(near);
        let help = match near {
            Some(near) => format!("did you mean {near}?"),
            None => trade::not_taken(name)
                .map(str::to_owned)
                .or_else(|| elsewhere(meant.unwrap_or(name)))
                .unwrap_or_else(|| format!("its keys are {}", keys.join(", "))),
        };
        let rule = format!("{} has no such key", self.heading());
        self.push(name, span, Violation::new("unknown key", rule, help));
    }
}

/// What is wrong at a place.
pub(super) fn fault(key: String, span: Range<usize>, remark: impl Into<Remark>) -> Fault {
    let Remark { violation, related } = remark.into();
    let Violation {
        found, rule, help, ..
    } = violation;
    Fault {
        key,
        span,
        found,
        rule,
        help,
        related,
    }
}

/// That a list is longer than any tank needs.
pub(super) fn too_many(name: &str, found: usize, most: u32) -> Violation {
    Violation::new(
        format!("a list of {found} is too long"),
        format!("{name} has at most {most}"),
        "check that this file is the spec of one tank, and put like things together",
    )
}

/// Where a key belongs that stands in the wrong section.
fn elsewhere(name: &str) -> Option<String> {
    let owners: Vec<&'static Key> = KEYS.iter().filter(|key| key.leaf() == name).collect();
    if owners.iter().any(|key| key.section().is_empty()) {
        return Some(format!(
            "{name} belongs before the first section, or is a section of its own"
        ));
    }
    let sections: Vec<String> = owners.iter().map(|key| heading(key.section())).collect();
    let sections: Vec<&str> = sections.iter().map(String::as_str).collect();
    (!sections.is_empty()).then(|| format!("{name} is a key of {}", either(&sections)))
}

/// The heading of a section by its path in the table of keys: `[[soil.bags]]`.
fn heading(pattern: &str) -> String {
    let plain = pattern.replace("[]", "");
    match pattern {
        "" => "a spec".to_owned(),
        list if list.ends_with("[]") => format!("[[{plain}]]"),
        _ => format!("[{plain}]"),
    }
}
