//! When animals may move in.

use rayon::prelude::*;

use super::members::{MemberSource, follow, is_under};
use crate::catalogue::Animal;
use crate::design::Design;
use crate::plan::words::of_100;
use crate::startup::ensemble::Member;
use crate::startup::{Inputs, forecast};

/// Days that a start is followed where too few are ready by those asked for.
pub(super) const LONGEST_D: u32 = 365;

/// The days from which animals may move in, by what they bear; practice has its own floors.
/// The feed of the animals is left out, for none is given before they are in.
pub(in crate::plan) struct Readiness {
    sensitive: Days,
    hardy: Days,
    /// Share of the starts that are never ready, where that leaves no day.
    never: Option<f64>,
}

/// Days on which half of the starts and nine in ten of them are ready.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Days {
    typical: Option<f64>,
    late: Option<f64>,
}

impl Readiness {
    /// Of the members of a start before its animals; where no day is found within the days
    /// followed, those that are not ready are followed up to the longest.
    pub(super) fn of(
        mut members: Vec<Member>,
        inputs: &Inputs,
        drawn: &MemberSource<'_>,
        longest_d: u32,
    ) -> Self {
        let goes_on = longest_d > drawn.options.days;
        if goes_on && Days::sensitive(&members).late.is_none() {
            members = members
                .into_par_iter()
                .filter_map(|member| match member.ready_day {
                    Some(_) => Some(member),
                    None => follow(inputs, drawn, longest_d, member.index).ok(),
                })
                .collect();
        }
        let sensitive = Days::sensitive(&members);
        let never = forecast::share(&members, |member| member.ready_day.is_none());
        Self {
            sensitive,
            hardy: Days::of(&members, |member| member.hardy_ready_day),
            never: sensitive.late.is_none().then_some(never),
        }
    }

    /// The day from which nine in ten starts are ready for a kind, not before practice puts
    /// it in.
    pub(in crate::plan) fn advised(&self, animal: &Animal) -> Option<f64> {
        let floor = f64::from(animal.first_day);
        self.days(animal).late.map(|day| day.ceil().max(floor))
    }

    /// The day on which half of the starts are ready for a kind.
    pub(in crate::plan) fn typical(&self, animal: &Animal) -> Option<f64> {
        self.days(animal).typical
    }

    /// Why there is no day for a kind.
    pub(in crate::plan) fn reason(&self) -> Option<String> {
        self.never.map(|never| {
            format!(
                "ammonia or nitrite is still up after a year in {} of 100 starts",
                of_100(never)
            )
        })
    }

    fn days(&self, animal: &Animal) -> Days {
        if animal.is_hardy() {
            self.hardy
        } else {
            self.sensitive
        }
    }
}

/// Those of some starts that go alike, as far as it counts, before they are fed from a day
/// on and without that feed: ready before that day and ever after with the feed, they are
/// so without it, and what stood over a limit stood so before.
pub(super) fn settled<'m>(
    design: &Design,
    members: &'m [Member],
    fed_from: f64,
) -> Vec<&'m Member> {
    let before = |day: f64| day <= fed_from;
    let is_ready = |day: Option<f64>| day.is_some_and(before);
    let members = members.iter().filter(|member| {
        let peaked = before(member.ammonia.day) && before(member.nitrite.day);
        is_ready(member.ready_day)
            && is_ready(member.hardy_ready_day)
            && (peaked || is_under(design, member))
    });
    members.collect()
}

impl Days {
    fn sensitive(members: &[Member]) -> Self {
        Self::of(members, |member| member.ready_day)
    }

    fn of(members: &[Member], day: fn(&Member) -> Option<f64>) -> Self {
        let [_, typical, late] = forecast::days(members, day);
        Self { typical, late }
    }
}
