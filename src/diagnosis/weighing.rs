//! Causes weighed by readings, signs and circumstances.

use serde::Serialize;

use super::case::CaseHistory;
use super::cause::{ByCause, Cause};
use super::circumstance::{self, Facts};
use super::dawn::Dawn;
use super::hypotheses::{Hypotheses, followed, subjects_of};
use super::measurement::{Measurand, Measurement};
use super::sign;
use crate::catalogue::{Odds, Sign, signs};
use crate::result::results;
use crate::units::show::significant;

/// One thing known of the tank, with its likelihood under each cause.
#[derive(Debug, Clone)]
pub struct Item {
    /// What was read, seen or described.
    pub reading: String,
    /// What it says, where that does not depend on the cause.
    says: String,
    /// The nutrient, where it is one.
    nutrient: Option<Measurement>,
    /// Why it speaks for a cause, where it is so.
    odds: Option<&'static Odds>,
    /// Its likelihood under each cause.
    pub likelihood: ByCause,
}

results! {
    /// One item as evidence on one cause.
    ///
    /// `weight` compares the likelihood under this cause with that under all causes as they
    /// stood before.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Evidence {
        /// the reading, sign or circumstance
        pub reading: String => "check.cause",
        /// what it tells
        pub says: String => "check.cause",
        /// why it speaks for the cause, where the table of evidence says so
        pub because: Option<&'static str> => "check.cause",
        /// logarithm to ten of how many times likelier it is with this cause; above 0 it speaks for
        /// it
        pub weight: f64 => "check.cause",
    }
}

/// Causes weighed.
#[derive(Debug, Clone)]
pub struct Weighing {
    /// Before any evidence.
    pub prior: ByCause,
    /// After all of it.
    pub posterior: ByCause,
    /// Everything that was weighed.
    pub items: Vec<Item>,
}

impl Weighing {
    /// Weighs every cause by all that is known of a case.
    ///
    /// ```text
    /// p(cause | all) ~ p(cause) mean_i P(readings | member i) prod P(sign) prod P(fact)
    /// ```
    pub fn of(case: &CaseHistory<'_>, hypotheses: &Hypotheses, dawn: Option<Dawn>) -> Self {
        let readings = followed(case);
        let by_readings = hypotheses.likelihood(case, &readings);
        let lacking = &case.design.draft().signs;
        let mut items = nutrients(case, hypotheses, &readings);
        items.extend(case.signs.iter().map(|sign| seen(sign)));
        items.extend(
            signs()
                .iter()
                .filter(|sign| !case.signs.contains(sign) && lacking.lacks(sign))
                .map(not_seen),
        );
        items.extend(circumstances(&Facts { case, dawn }));
        let prior = ByCause::even();
        let together = items
            .iter()
            .filter(|item| item.nutrient.is_none())
            .fold(prior.times(&by_readings).shared_out(), |product, item| {
                product.times(&item.likelihood).shared_out()
            });
        Self {
            prior,
            posterior: together,
            items,
        }
    }

    /// What moved a cause most, for and against.
    pub fn evidence(
        &self,
        case: &CaseHistory<'_>,
        hypotheses: &Hypotheses,
        cause: Cause,
    ) -> Vec<Evidence> {
        let mut all: Vec<(f64, &Item)> = self
            .items
            .iter()
            .map(|item| (self.weight(item, cause), item))
            .filter(|(weight, _)| weight.abs() >= LEAST_TOLD)
            .collect();
        all.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
        all.into_iter()
            .take(MOST_TOLD)
            .map(|(weight, item)| Evidence {
                reading: item.reading.clone(),
                says: item.says(case, hypotheses, cause),
                because: item.because(cause),
                weight,
            })
            .collect()
    }

    fn weight(&self, item: &Item, cause: Cause) -> f64 {
        let mean: f64 = self
            .prior
            .iter()
            .map(|(other, prior)| prior * item.likelihood.get(other))
            .sum();
        (item.likelihood.get(cause) / mean).log10()
    }
}

/// Pieces of evidence told for each cause, and the weight under which one is not.
const MOST_TOLD: usize = 5;
const LEAST_TOLD: f64 = 0.1;

impl Item {
    fn because(&self, cause: Cause) -> Option<&'static str> {
        let why = self.odds?.because.get(cause.name())?;
        Some(why.as_str())
    }

    fn says(&self, case: &CaseHistory<'_>, hypotheses: &Hypotheses, cause: Cause) -> String {
        let Some(reading) = self.nutrient else {
            return self.says.clone();
        };
        let day = case.model_day(reading.day);
        let band = |cause| {
            let band = hypotheses.band(cause, reading.of, day);
            band.map_or_else(String::new, |band| {
                let [low, high] = [band.low, band.high].map(|value| shown(value, reading.of));
                if low == high {
                    low
                } else {
                    format!("{low} to {high}")
                }
            })
        };
        if matches!(cause, Cause::KitError) {
            return format!("{}; a wrong test may show anything", self.says);
        }
        format!(
            "{}; {} expected with this cause, {} in a sound tank",
            self.says,
            band(cause),
            band(Cause::AsExpected)
        )
    }
}

/// An amount as far as a kit tells it.
fn shown(value: f64, of: Measurand) -> String {
    let least = if of == Measurand::Nitrate { 0.5 } else { 0.01 };
    if value < least {
        "0".to_owned()
    } else {
        significant(value, 2)
    }
}

/// One item for each nutrient: all its readings together.
fn nutrients(
    case: &CaseHistory<'_>,
    hypotheses: &Hypotheses,
    readings: &[Measurement],
) -> Vec<Item> {
    subjects_of(readings)
        .into_iter()
        .filter_map(|of| {
            let own: Vec<Measurement> = readings.iter().copied().filter(|r| r.of == of).collect();
            let last = *own.last()?;
            let count = match own.len() {
                1 => String::new(),
                count => format!(", the last of {count}"),
            };
            Some(Item {
                reading: of.word().to_owned(),
                says: format!(
                    "{} {} on day {}{count}",
                    of.word(),
                    format_args!("{} mg/L", last.value.shown(2)),
                    significant(last.day, 3)
                ),
                nutrient: Some(last),
                odds: None,
                likelihood: hypotheses.likelihood(case, &own),
            })
        })
        .collect()
}

fn seen(sign: &'static Sign) -> Item {
    Item {
        reading: sign.name.clone(),
        says: format!("{} is seen", sign.label),
        nutrient: None,
        odds: Some(&sign.odds),
        likelihood: sign::likelihood(sign, true),
    }
}

fn not_seen(sign: &Sign) -> Item {
    Item {
        reading: sign.name.clone(),
        says: format!("{} is not listed", sign.label),
        nutrient: None,
        odds: None,
        likelihood: sign::likelihood(sign, false),
    }
}

fn circumstances<'a>(facts: &'a Facts<'_>) -> impl Iterator<Item = Item> + 'a {
    circumstance::known(facts).map(|(fact, holds)| Item {
        reading: fact.reading.clone(),
        says: if holds { &fact.says } else { &fact.says_not }.clone(),
        nutrient: None,
        odds: holds.then_some(&fact.odds),
        likelihood: circumstance::likelihood(fact, holds),
    })
}
