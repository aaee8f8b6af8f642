//! Water changed by what the keeper's tests read: whether it helps, and how often it comes to.

use rayon::prelude::*;

use super::members::{MemberSource, follow, is_under, known_at};
use super::section::ReadingChanges;
use crate::design::Design;
use crate::numerics::quantile::quantiles;
use crate::plan::limits::watch_limit_mg_l;
use crate::plan::words::of_100;
use crate::source::Band;
use crate::startup::ensemble::Member;
use crate::startup::{ChangesByReading, Inputs};
use crate::units::{Analyte, Concentration, Duration, Share};

/// Share of the water changed where a test asks for it, %: judgement. In eight demo tanks, 100
/// members of one seed each, half the water held up to 4 of 100 starts more, a fifth up to 5
/// fewer.
const SHARE_PCT: f64 = 30.0;
/// Days from one test to the next: judgement. Daily tests held 3 to 15 of 100 starts more
/// there, with about twice as many changes.
const TESTS_EVERY_D: f64 = 2.0;
/// Share of a limit that the threshold does not pass, so that a change comes before the
/// limit does: judgement, what nitrite grows by between two tests.
const OF_LIMIT: f64 = 0.8;

/// The members of a start with water changed by readings.
#[derive(Clone)]
pub(super) struct ByReading {
    rule: ChangesByReading,
    pub(super) members: Vec<Member>,
    /// Share of the members asked for that stay under the limits.
    pub(super) probability: f64,
}

impl ByReading {
    /// The members of a start, each with water changed by the rule in place of the regular
    /// changes of the design; `inputs` have the rule. One of which no test asks for a change
    /// stays as it was; one that cannot be followed counts as failed. Beside the members as
    /// written stand those that are known already.
    pub(super) fn of(
        rule: ChangesByReading,
        inputs: &Inputs,
        drawn: &MemberSource<'_>,
        (as_written, known): (&[Member], &[&Member]),
    ) -> Self {
        let MemberSource { design, .. } = *drawn;
        let changes_anyway = design.draft().water.change.is_some();
        let members: Vec<Member> = as_written
            .par_iter()
            .filter_map(|member| {
                let index = member.index;
                if changes_anyway || asks_in(rule, member) {
                    known_at(known, index)
                        .or_else(|| follow(inputs, drawn, drawn.options.days, index).ok())
                } else {
                    Some(member.clone())
                }
            })
            .collect();
        let held = members.iter().filter(|member| is_under(design, member));
        Self {
            rule,
            probability: held.count() as f64 / as_written.len().max(1) as f64,
            members,
        }
    }

    /// The rule, and how often water is changed by it.
    pub(super) fn section(&self) -> ReadingChanges {
        let counts = self.across(|member| member.changed_on.len() as f64);
        let last = self.across(|member| member.changed_on.last().copied().unwrap_or(0.0));
        let nitrite_n = self.rule.nitrite_n.mg_l();
        ReadingChanges {
            share: self.rule.share.fraction(),
            threshold_ammonia_mg_l: self.rule.ammonia.mg_l(),
            threshold_nitrite_mg_l: nitrite_n * Analyte::Nitrite.per_element(),
            least_days_between: self.rule.every.days(),
            expected: counts.typical.ceil(),
            expected_low: counts.low.ceil(),
            expected_high: counts.high.ceil(),
            last_day: Some(last.high.ceil()).filter(|day| *day > 0.0),
            fillings_per_week: self.across(|member| self.fillings_per_week(member)).typical,
        }
    }

    /// Water used up to the last change, in fillings of the tank.
    fn fillings_per_week(&self, member: &Member) -> f64 {
        let weeks = member.changed_on.last().map_or(1.0, |last| last / 7.0);
        member.changed_on.len() as f64 * self.rule.share.fraction() / weeks.max(1.0)
    }

    /// Why it is not advised, where it holds no more starts than the plan as written.
    pub(super) fn reason(&self, as_written: f64) -> Option<String> {
        let (with, without) = (of_100(self.probability), of_100(as_written));
        let never = self
            .members
            .iter()
            .all(|member| member.changed_on.is_empty());
        if self.probability > as_written {
            None
        } else if self.probability < as_written {
            Some(format!(
                "changing water by readings makes it worse: {with} of 100 starts hold with it, {without} without"
            ))
        } else if never {
            Some("no test of any start asks for a change of water".to_owned())
        } else {
            Some(format!(
                "changing water by readings holds no more starts: {with} of 100 with it as without"
            ))
        }
    }

    /// 10, 50 and 90 % of a number of the members.
    fn across(&self, value: impl Fn(&Member) -> f64) -> Band {
        let [low, typical, high] =
            quantiles(self.members.iter().map(value), [0.1, 0.5, 0.9]).unwrap_or_default();
        Band { low, typical, high }
    }
}

/// The rule of a design: its thresholds lie at the first mark of the kits' cards, or below
/// where a limit asks for it.
pub(super) fn rule(design: &Design) -> ChangesByReading {
    let threshold = |analyte: Analyte| {
        let limit = watch_limit_mg_l(design, analyte).unwrap_or(f64::INFINITY);
        let own_scale = design.draft().first_mark(analyte).min(OF_LIMIT * limit);
        analyte.element(Concentration::from_mg_l(own_scale))
    };
    ChangesByReading {
        share: Share::from_percent(SHARE_PCT),
        ammonia: threshold(Analyte::Ammonia),
        nitrite_n: threshold(Analyte::Nitrite),
        every: Duration::from_days(TESTS_EVERY_D),
    }
}

/// Whether a test of a member as it goes would ask for a change.
fn asks_in(rule: ChangesByReading, member: &Member) -> bool {
    let mut tested = member.days.iter().filter(|day| rule.tests_on(day.day));
    tested.any(|day| rule.asks_at(&day.state))
}
