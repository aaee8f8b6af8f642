//! Waiting: what is left where water changes alone do not hold the limits.

use super::super::case::CaseHistory;
use super::super::hypotheses::AHEAD_D;
use super::dilution::MOST_WORTH_DOING;
use super::{CauseRemedy, Treatment};
use crate::finding::Action;
use crate::source::Band;
use crate::units::show::counted;

/// How long the forecast has ammonia or nitrite up if nothing is done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Patience {
    is_stocked: bool,
    /// The keeper's day from which both stay low, and the days until then; none where
    /// that is beyond what is followed.
    ready: Option<(f64, f64)>,
}

impl Patience {
    pub(super) fn of(case: &CaseHistory<'_>, ready: Option<Band>) -> Self {
        let day = ready.map(|band| band.typical.round());
        Self {
            is_stocked: case.is_stocked(),
            ready: day.map(|day| (day, (day - case.age_d).ceil().max(0.0))),
        }
    }

    /// "water alone does not do it ...: move the animals out ...".
    pub(super) fn says(self) -> String {
        let does = match (self.ready, self.is_stocked) {
            (Some((_, days)), _) if days < 1.0 => "test twice a week".to_owned(),
            (_, true) => format!("move the animals out: {}", self.until()),
            (_, false) => format!("keep animals out and wait: {}", self.until()),
        };
        format!(
            "water alone does not do it, and {} would not either: {does}",
            MOST_WORTH_DOING.says()
        )
    }

    /// "left alone, ammonia and nitrite stay low from about day 39, in 22 days".
    fn until(self) -> String {
        match self.ready {
            Some((day, days)) => format!(
                "left alone, ammonia and nitrite stay low from about day {day:.0}, in {}",
                counted(days, "day")
            ),
            None => format!("left alone, it takes more than {AHEAD_D} days"),
        }
    }

    /// Waiting, with the bed laid anew as the second choice; that alone where the forecast
    /// has no end of the wait. What is followed is the tank laid anew.
    pub(super) fn before(self, anew: Treatment) -> Treatment {
        let Some((_, days)) = self.ready else {
            return anew;
        };
        let wait = format!(
            "keep animals out and test once a week: {}; before any go in, change water until nitrate is under its limit too",
            self.until()
        );
        let sooner = format!("sooner, but with all the work: {}", anew.remedy.says);
        let mut actions = anew.remedy.actions.clone();
        actions.push(Action::ChangeWater);
        Treatment {
            remedy: CauseRemedy {
                says: format!("{wait}; {sooner}"),
                now: vec![wait],
                then: vec![sooner],
                actions,
                quantity: Some(days),
                unit: "d",
                ..anew.remedy
            },
            ..anew
        }
    }
}
