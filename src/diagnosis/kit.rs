//! How a test kit turns water into a mark on its card.

use super::measurement::{Measurand, Reported};
use crate::numerics::normal::share_below;
use crate::water::card::Card;

/// Standard error of a reading in its logarithm: judgement, a fifth.
pub const KIT_ERROR: f64 = 0.20;
/// What the model itself may be off by, in its logarithm, on a day whose numbers are all
/// right (judgement).
const MODEL_ERROR: f64 = 0.6;
/// Share of readings that have nothing to do with the water (judgement).
const BLUNDERS: f64 = 0.08;

/// A kit for one nutrient.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kit<'a> {
    card: Card<'a>,
}

impl<'a> Kit<'a> {
    /// The kit for a subject that the start-up model follows, where nothing is said of its
    /// card.
    pub fn of(subject: Measurand) -> Option<Kit<'static>> {
        Card::of(subject.analyte()?).map(Kit::with)
    }

    /// The kit with a card.
    pub const fn with(card: Card<'a>) -> Self {
        Self { card }
    }

    /// The marks of its card.
    pub const fn marks(&self) -> &'a [f64] {
        self.card.marks()
    }

    /// Probability of a report where the model expects `expected`.
    ///
    /// ```text
    /// (1 - e) (P(ln(high/m)/s) - P(ln(low/m)/s)) + e/n      m = expected + floor
    /// s^2 = kit^2 + model^2;  low, high: the bounds between the marks, n of them
    /// ```
    ///
    /// The lowest mark takes all below, the highest all above.
    ///
    /// # Source
    /// Log-normal error and its size, share of blunders: judgement.
    pub fn probability(&self, report: Reported, expected: f64) -> f64 {
        let (low, high) = self.bounds(report);
        let spread = KIT_ERROR.hypot(MODEL_ERROR);
        let below = |bound: f64| {
            if bound <= 0.0 {
                0.0
            } else {
                share_below((bound / (expected.max(0.0) + self.card.floor())).ln() / spread)
            }
        };
        let read = (below(high) - below(low)).max(0.0);
        (1.0 - BLUNDERS) * read + self.blunder()
    }

    /// Probability of any report that has nothing to do with the water.
    pub fn at_random(&self) -> f64 {
        1.0 / self.marks().len() as f64
    }

    fn blunder(&self) -> f64 {
        BLUNDERS * self.at_random()
    }

    /// Between what amounts the water lies for a report without error.
    pub fn bounds(&self, report: Reported) -> (f64, f64) {
        match report {
            Reported::Below(mark) => (0.0, mark.max(self.card.first_bound())),
            Reported::Above(mark) => (mark, f64::INFINITY),
            Reported::Value(number) => self.card.between(number),
            Reported::Between(low, high) => (self.card.between(low).0, self.card.between(high).1),
        }
    }

    /// The mark that water of an amount shows without error.
    pub fn mark(&self, amount: f64) -> f64 {
        self.card.mark(amount)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_marks_of_a_card_share_out_what_may_be_read() {
        for subject in [Measurand::Ammonia, Measurand::Nitrite, Measurand::Nitrate] {
            let kit = Kit::of(subject).unwrap();
            for expected in [0.0, 0.1, 0.7, 3.0, 50.0, 1e4] {
                let sum: f64 = kit
                    .marks()
                    .iter()
                    .map(|mark| kit.probability(Reported::Value(*mark), expected))
                    .sum();
                assert!((sum - 1.0).abs() < 1e-6, "{subject:?} {expected}: {sum}");
            }
        }
    }

    #[test]
    fn the_ends_of_a_card_are_open() {
        let kit = Kit::of(Measurand::Nitrate).unwrap();
        assert!(kit.probability(Reported::Value(160.0), 1000.0) > 0.9);
        assert!(kit.probability(Reported::Above(80.0), 600.0) > 0.9);
        assert!(kit.probability(Reported::Above(80.0), 2.0) < 0.02);
        assert!(kit.probability(Reported::Below(20.0), 0.5) > 0.9);
        let of = |mark: f64| kit.probability(Reported::Value(mark), 0.0);
        assert!(of(0.0) > of(5.0) && of(5.0) > of(10.0));
    }
}
