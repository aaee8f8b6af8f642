//! Candidates: the keeper's text with some levers turned, read and judged.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicU32, Ordering};

use super::lever::{Lever, Now, Rung};
use super::{MendError, MendRequest, SCREENED};
use crate::design::Design;
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

    /// What all its changes ask of a keeper.
    pub(super) fn effort(&self) -> f64 {
        self.turned.values().map(|rung| rung.effort).sum()
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
    tried: AtomicU32,
}

impl<'a> Bench<'a> {
    pub(super) fn new(request: &'a MendRequest<'a>, advance: &'a (dyn Fn() + Sync)) -> Self {
        Self {
            request,
            advance,
            tried: AtomicU32::new(0),
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
        self.tried.load(Ordering::Relaxed)
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
            judged: self.judge(self.base(), self.proof())?,
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
        let judged = self.judge(&design, look).ok()?;
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
            judged: self.judge(&trial.design, look).ok()?,
            ..trial.clone()
        })
    }

    fn judge(&self, design: &Design, look: Scrutiny) -> Result<JudgedPlan, MendError> {
        self.tried.fetch_add(1, Ordering::Relaxed);
        (self.advance)();
        let options = Options {
            members: look.members,
            ..self.request.options
        };
        let mut judged = if look == self.proof() {
            judged(design, options, look.reach)?
        } else {
            screened(design, options, look.reach)?
        };
        judged.asked = (judged.asked + look.margin).min(MOST_ASKED);
        Ok(judged)
    }
}
