//! Candidates: the keeper's text with some levers turned, read and judged.

use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

use super::lever::{Lever, Now, Rung};
use super::{GLANCED, MendError, MendRequest, SCREENED};
use crate::design::Design;
use crate::finding::{Code, Status};
use crate::plan::{JudgedPlan, Options, Reach, judged, screened};
use crate::spec::{self, Edit};

/// More than that is never asked of a few members.
const MOST_ASKED: f64 = 0.99;

/// Differences under this are no difference.
const ALIKE: f64 = 0.004;

/// The levers that are turned, each to a rung.
pub(super) type Turned = BTreeMap<Lever, Rung>;

/// A candidate, judged.
#[derive(Debug, Clone)]
pub(super) struct JudgedCandidate {
    pub(super) turned: Turned,
    pub(super) text: String,
    pub(super) design: Design,
    pub(super) judged: JudgedPlan,
}

impl JudgedCandidate {
    /// Whether there is nothing left to do.
    pub(super) fn holds(&self) -> bool {
        self.judged.holds()
    }

    /// The codes of what is to be watched or mended.
    pub(super) fn standing(&self) -> Vec<Code> {
        let findings = self.judged.findings.iter();
        let standing = findings.filter(|finding| finding.status >= Status::Watch);
        standing.map(|finding| finding.code).collect()
    }

    /// What levers are turned from.
    pub(super) fn now<'t>(&'t self, base: &'t Design) -> Now<'t> {
        Now {
            base,
            design: &self.design,
            judged: &self.judged,
        }
    }

    /// By how much it is nearer to holding than another.
    pub(super) fn gain_over(&self, other: &Self) -> f64 {
        other.judged.missed() - self.judged.missed()
    }

    /// Whether it is nearer to holding than another by more than nothing.
    pub(super) fn is_better_than(&self, other: &Self) -> bool {
        self.gain_over(other) > ALIKE || (self.holds() && !other.holds())
    }

    /// What all its changes ask of a keeper, and one more for each, so that few win.
    pub(super) fn effort(&self) -> f64 {
        self.turned.values().map(|rung| rung.effort + 1.0).sum()
    }
}

/// How closely a candidate is looked at.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Scrutiny {
    pub(super) reach: Reach,
    pub(super) members: u32,
    /// How much more is asked than the spec asks, as a share of the starts.
    pub(super) margin: f64,
}

/// Where candidates are made and judged, and counted.
pub(super) struct Bench<'a> {
    pub(super) request: &'a MendRequest<'a>,
    advance: &'a (dyn Fn() + Sync),
    /// What was judged, by its text and how closely it was looked at.
    judged: Mutex<BTreeMap<(String, Reach, u32), JudgedPlan>>,
}

impl<'a> Bench<'a> {
    pub(super) fn new(request: &'a MendRequest<'a>, advance: &'a (dyn Fn() + Sync)) -> Self {
        Self {
            request,
            advance,
            judged: Mutex::default(),
        }
    }

    /// The tank as the keeper has it.
    pub(super) const fn base(&self) -> &Design {
        self.request.design
    }

    /// Whether a rung touches nothing that is kept.
    pub(super) fn is_free(&self, rung: &Rung) -> bool {
        self.held(rung).is_none()
    }

    /// The kept key that a rung touches.
    pub(super) fn held(&self, rung: &Rung) -> Option<&str> {
        let mut keys = rung.edits.iter();
        keys.find_map(|edit| self.request.keep.touched_by(&edit.key))
    }

    /// Plans tried so far.
    pub(super) fn tried(&self) -> u32 {
        let judged = self.judged.lock().unwrap_or_else(PoisonError::into_inner);
        u32::try_from(judged.len()).unwrap_or(u32::MAX)
    }

    /// By very few members, as far as is asked: enough to tell what helps most.
    pub(super) fn glance(&self, reach: Reach, margin: f64) -> Scrutiny {
        Scrutiny {
            reach,
            members: self.request.options.members.min(GLANCED),
            margin,
        }
    }

    /// By few members, the night included.
    pub(super) fn screen(&self, margin: f64) -> Scrutiny {
        Scrutiny {
            reach: Reach::Night,
            members: self.request.options.members.min(SCREENED),
            margin,
        }
    }

    /// By all members.
    pub(super) fn proof(&self) -> Scrutiny {
        Scrutiny {
            reach: Reach::Night,
            members: self.request.options.members,
            margin: 0.0,
        }
    }

    /// The spec as it was given, judged by all members.
    ///
    /// # Errors
    /// When it cannot be followed.
    pub(super) fn as_written(&self) -> Result<JudgedCandidate, MendError> {
        Ok(JudgedCandidate {
            turned: Turned::new(),
            text: self.request.text.to_owned(),
            design: self.base().clone(),
            judged: self.judge(self.request.text, self.base(), self.proof())?,
        })
    }

    /// A candidate with these levers turned; none where that makes no tank.
    pub(super) fn attempt(&self, turned: Turned, look: Scrutiny) -> Option<JudgedCandidate> {
        let edits: Vec<Edit> = turned
            .values()
            .flat_map(|rung| rung.edits.clone())
            .collect();
        let text = spec::edit(self.request.text, &edits).ok()?;
        let draft = self.base().draft();
        let design = spec::parse_named(&text, &draft.name, Some(draft.units)).ok()?;
        let judged = self.judge(&text, &design, look).ok()?;
        Some(JudgedCandidate {
            turned,
            text,
            design,
            judged,
        })
    }

    /// The same candidate, looked at in another way.
    pub(super) fn again(&self, trial: &JudgedCandidate, look: Scrutiny) -> Option<JudgedCandidate> {
        Some(JudgedCandidate {
            judged: self.judge(&trial.text, &trial.design, look).ok()?,
            ..trial.clone()
        })
    }

    /// Judges a candidate, each once.
    fn judge(&self, text: &str, design: &Design, look: Scrutiny) -> Result<JudgedPlan, MendError> {
        let key = (text.to_owned(), look.reach, look.members);
        let known = || self.judged.lock().unwrap_or_else(PoisonError::into_inner);
        let found = known().get(&key).cloned();
        let mut judged = if let Some(judged) = found {
            judged
        } else {
            (self.advance)();
            let judged = self.judged_anew(design, look)?;
            known().insert(key, judged.clone());
            judged
        };
        judged.asked = (judged.asked + look.margin).min(MOST_ASKED);
        Ok(judged)
    }

    /// With all members as a plan is judged, else at less cost.
    fn judged_anew(&self, design: &Design, look: Scrutiny) -> Result<JudgedPlan, MendError> {
        let options = Options {
            members: look.members,
            ..self.request.options
        };
        Ok(if look.members == self.request.options.members {
            judged(design, options, look.reach)?
        } else {
            screened(design, options, look.reach)?
        })
    }
}
