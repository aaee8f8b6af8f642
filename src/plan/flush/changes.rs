//! The least water changes that reach the probability asked for.

use std::sync::atomic::{AtomicUsize, Ordering};

use rayon::prelude::*;

use super::course::{is_under, wanted};
use super::section::ChangePlan;
use crate::design::{Design, WaterChange};
use crate::plan::options::Options;
use crate::source::Band;
use crate::startup::ensemble::{self, Member};
use crate::startup::{Inputs, Parameters};
use crate::units::{Duration, Share};

/// A plan is sought with this many members at most; one that is enough is then held
/// against all.
const MEMBERS: u32 = 64;
/// Shares of the water, %, and days between, each more than the one before; half the
/// water every second day is the most that is asked of a keeper.
pub const CHANGE_PACES: [(f64, f64); 5] = [
    (25.0, 7.0),
    (25.0, 4.0),
    (50.0, 4.0),
    (50.0, 3.0),
    (50.0, 2.0),
];
/// Last days of a plan, each later than the one before; never beyond the days followed.
const UNTIL: [f64; 4] = [21.0, 42.0, 60.0, f64::INFINITY];
/// First days of a plan, each later than the one before; the first comes before the day
/// from which the water is judged.
const FROM: [f64; 4] = [2.0, 7.0, 14.0, 21.0];
/// Kept off the next whole number where a share is turned into a count.
const ROUNDING: f64 = 1e-9;

/// A plan with the probability that it reaches.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sought {
    pub(super) plan: ChangePlan,
    pub(super) probability: f64,
}

/// The plan, in place of a design's own regular changes, that uses the least water of
/// those that reach the probability asked for; the strongest, with the probability among
/// the first members alone, where none does. `members` are the design's own.
///
/// The search takes a plan that changes more, longer or earlier to be no worse than one
/// that does less; what it settles on is run in every member, for some do worse with
/// changes than without.
pub(super) fn smallest(
    design: &Design,
    bands: &Parameters<Band>,
    options: Options,
    members: &[Member],
) -> Sought {
    let all = Trial::new(design, bands, options, members);
    let few = all.of_first(MEMBERS);
    let Some(mut place) = few.least() else {
        return few.sought(Place::STRONGEST);
    };
    loop {
        let sought = all.sought(place);
        match place.stronger() {
            Some(stronger) if sought.probability < wanted(design) => place = stronger,
            _ => return sought,
        }
    }
}

/// A plan by its places in the lists.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Place {
    pace: usize,
    until: usize,
    from: usize,
}

impl Place {
    const STRONGEST: Self = Self {
        pace: CHANGE_PACES.len() - 1,
        until: UNTIL.len() - 1,
        from: 0,
    };

    fn changes(self, days: u32) -> WaterChange {
        let (share_pct, every_d) = CHANGE_PACES[self.pace];
        WaterChange {
            share: Share::from_percent(share_pct),
            every: Duration::from_days(every_d),
            from: FROM[self.from],
            until: UNTIL[self.until].min(f64::from(days)),
        }
    }

    fn plan(self, days: u32) -> ChangePlan {
        let changes = self.changes(days);
        ChangePlan {
            from: changes.from,
            until: changes.until,
            every_d: changes.every.days(),
            share_pct: changes.share.percent(),
        }
    }

    /// Water used, in fillings of the tank.
    fn water(self, days: u32) -> f64 {
        let changes = self.changes(days);
        changes.share.fraction() * changes.days().count() as f64
    }

    fn shorter(self) -> Option<Self> {
        let until = self.until.checked_sub(1)?;
        Some(Self { until, ..self })
    }

    fn later(self, days: u32) -> Option<Self> {
        let from = self.from + 1;
        let later = Self { from, ..self };
        (from < FROM.len() && FROM[from] < later.changes(days).until).then_some(later)
    }

    /// The next plan that does more: an earlier start, then more at a time, then
    /// a later end.
    fn stronger(self) -> Option<Self> {
        if self.from > 0 {
            Some(Self {
                from: self.from - 1,
                ..self
            })
        } else if self.pace < Self::STRONGEST.pace {
            Some(Self {
                pace: self.pace + 1,
                ..self
            })
        } else if self.until < Self::STRONGEST.until {
            Some(Self {
                until: self.until + 1,
                ..self
            })
        } else {
            None
        }
    }
}

/// The members on which plans are tried.
struct Trial<'a> {
    design: &'a Design,
    bands: &'a Parameters<Band>,
    options: Options,
    /// Members in all.
    members: usize,
    /// Their indices.
    open: Vec<u32>,
}

impl<'a> Trial<'a> {
    fn new(
        design: &'a Design,
        bands: &'a Parameters<Band>,
        options: Options,
        members: &[Member],
    ) -> Self {
        Self {
            design,
            bands,
            options,
            members: members.len(),
            open: members.iter().map(|member| member.index).collect(),
        }
    }

    /// The same with the first members alone.
    fn of_first(&self, members: u32) -> Self {
        let open = self.open.iter().copied();
        Self {
            members: self.members.min(members as usize),
            open: open.filter(|index| *index < members).collect(),
            ..*self
        }
    }

    /// What a plan comes to.
    fn sought(&self, place: Place) -> Sought {
        let failed = self.failures_up_to(place, usize::MAX);
        Sought {
            plan: place.plan(self.options.days),
            probability: self.members.saturating_sub(failed) as f64 / self.members.max(1) as f64,
        }
    }

    /// How many members may fail.
    fn spare(&self) -> usize {
        let share = 1.0 - wanted(self.design);
        (share * self.members as f64 + ROUNDING).floor() as usize
    }

    /// Whether no more members fail under a plan than may.
    fn is_enough(&self, place: Place) -> bool {
        self.failures_up_to(place, self.spare()) <= self.spare()
    }

    /// How many members fail under a plan, or any number beyond `most` where that is
    /// passed; one that cannot be followed counts as failed.
    fn failures_up_to(&self, place: Place, most: usize) -> usize {
        let Options { days, seed, .. } = self.options;
        let inputs = Inputs::with_changes(self.design, Some(place.changes(days)));
        let failed = AtomicUsize::new(0);
        self.open.par_iter().for_each(|&index| {
            if failed.load(Ordering::Relaxed) > most {
                return;
            }
            let member = ensemble::member(&inputs, self.bands, days, seed, index);
            if !member.is_ok_and(|member| is_under(self.design, &member)) {
                failed.fetch_add(1, Ordering::Relaxed);
            }
        });
        failed.into_inner()
    }

    /// The place that uses the least water of those that are enough, if any is.
    fn least(&self) -> Option<Place> {
        if !self.is_enough(Place::STRONGEST) {
            return None;
        }
        let shortest = self.while_enough(Place::STRONGEST, Place::shorter);
        let slowest = self.slower_than(shortest);
        Some(self.while_enough(slowest, |place| place.later(self.options.days)))
    }

    /// Goes from place to place as long as each is enough.
    fn while_enough(&self, from: Place, next: impl Fn(Place) -> Option<Place>) -> Place {
        let mut place = from;
        while let Some(weaker) = next(place).filter(|&weaker| self.is_enough(weaker)) {
            place = weaker;
        }
        place
    }

    /// The least water among slower paces, which may have to go on for longer.
    fn slower_than(&self, shortest: Place) -> Place {
        let mut best = shortest;
        let mut until = shortest.until;
        for pace in (0..shortest.pace).rev() {
            loop {
                let place = Place {
                    pace,
                    until,
                    ..shortest
                };
                if place.water(self.options.days) >= best.water(self.options.days) {
                    break;
                }
                if self.is_enough(place) {
                    best = place;
                    break;
                }
                if until == Place::STRONGEST.until {
                    return best;
                }
                until += 1;
            }
        }
        best
    }
}
