//! How a test kit turns water into a mark on its card.

use super::measurement::{Reported, Subject};
use crate::numerics::normal::share_below;

/// Marks of the colour cards in common use, on each nutrient's own scale (common
/// practice, no source).
const AMMONIA_MARKS: &[f64] = &[0.0, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0];
const NITRITE_MARKS: &[f64] = &[0.0, 0.25, 0.5, 1.0, 2.0, 5.0];
const NITRATE_MARKS: &[f64] = &[0.0, 5.0, 10.0, 20.0, 40.0, 80.0, 160.0];
/// Standard error of a reading in its logarithm: judgement, a fifth.
pub const KIT_ERROR: f64 = 0.20;
/// What the model itself may be off by, in its logarithm, on a day whose numbers are all
/// right (judgement).
const MODEL_ERROR: f64 = 0.6;
/// A number between two marks was read off a meter: within a tenth (judgement).
const METER_SHARE: f64 = 0.1;
/// How near a mark a number counts as that mark, as a share.
const AT_MARK: f64 = 0.02;
/// Share of readings that have nothing to do with the water (judgement).
const BLUNDERS: f64 = 0.08;

/// A kit for one nutrient.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Kit {
    marks: &'static [f64],
    /// Less than this cannot be told from nothing, in the nutrient's own unit.
    floor: f64,
}

impl Kit {
    /// The kit for a subject that the start-up model follows.
    pub const fn of(subject: Subject) -> Option<Self> {
        let (marks, floor) = match subject {
            Subject::Ammonia => (AMMONIA_MARKS, 0.05),
            Subject::Nitrite => (NITRITE_MARKS, 0.05),
            Subject::Nitrate => (NITRATE_MARKS, 2.0),
            Subject::Phosphate | Subject::Ph | Subject::Temperature | Subject::Oxygen => {
                return None;
            }
        };
        Some(Self { marks, floor })
    }

    /// The marks of its card.
    pub const fn marks(&self) -> &'static [f64] {
        self.marks
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
                share_below((bound / (expected.max(0.0) + self.floor)).ln() / spread)
            }
        };
        let read = (below(high) - below(low)).max(0.0);
        (1.0 - BLUNDERS) * read + self.blunder()
    }

    /// Probability of any report that has nothing to do with the water.
    pub fn at_random(&self) -> f64 {
        1.0 / self.marks.len() as f64
    }

    fn blunder(&self) -> f64 {
        BLUNDERS * self.at_random()
    }

    /// Between what amounts the water lies for a report without error.
    pub fn bounds(&self, report: Reported) -> (f64, f64) {
        match report {
            Reported::Below(mark) => (0.0, mark.max(self.first_bound())),
            Reported::Above(mark) => (mark, f64::INFINITY),
            Reported::Value(number) => {
                let near = |mark: f64| (number - mark).abs() <= AT_MARK * mark;
                match self.marks.iter().position(|mark| near(*mark)) {
                    Some(place) => (self.bound_below(place), self.bound_above(place)),
                    None if number < self.first_bound() => (0.0, self.first_bound()),
                    None => (number * (1.0 - METER_SHARE), number * (1.0 + METER_SHARE)),
                }
            }
        }
    }

    /// The mark that water of an amount shows without error.
    pub fn mark(&self, amount: f64) -> f64 {
        let place = (1..self.marks.len())
            .take_while(|place| amount >= self.bound_below(*place))
            .last();
        self.marks[place.unwrap_or_default()]
    }

    fn first_bound(&self) -> f64 {
        self.bound_above(0)
    }

    fn bound_below(&self, place: usize) -> f64 {
        match place.checked_sub(1) {
            None => 0.0,
            Some(lower) => self.bound_above(lower),
        }
    }

    /// The geometric mean of two marks; half the first over nothing.
    fn bound_above(&self, place: usize) -> f64 {
        match (self.marks.get(place), self.marks.get(place + 1)) {
            (Some(mark), Some(next)) if *mark > 0.0 => (mark * next).sqrt(),
            (Some(_), Some(next)) => next / 2.0,
            _ => f64::INFINITY,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_marks_of_a_card_share_out_what_may_be_read() {
        for subject in [Subject::Ammonia, Subject::Nitrite, Subject::Nitrate] {
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
        let kit = Kit::of(Subject::Nitrate).unwrap();
        assert!(kit.probability(Reported::Value(160.0), 1000.0) > 0.9);
        assert!(kit.probability(Reported::Above(80.0), 600.0) > 0.9);
        assert!(kit.probability(Reported::Above(80.0), 2.0) < 0.02);
        assert!(kit.probability(Reported::Below(20.0), 0.5) > 0.9);
        let of = |mark: f64| kit.probability(Reported::Value(mark), 0.0);
        assert!(of(0.0) > of(5.0) && of(5.0) > of(10.0));
    }

    #[test]
    fn water_between_two_marks_shows_the_nearer_in_ratio() {
        let kit = Kit::of(Subject::Ammonia).unwrap();
        for (amount, mark) in [
            (0.0, 0.0),
            (0.2, 0.25),
            (0.69, 0.5),
            (0.72, 1.0),
            (50.0, 8.0),
        ] {
            assert!((kit.mark(amount) - mark).abs() < 1e-12, "{amount}");
        }
    }
}
