//! The colour cards of test kits: what water lies behind a mark.
//!
//! Where a keeper does not say which marks a kit has, it counts as one whose marks double.

use crate::units::Analyte;

/// Marks of a card of which nothing is said, on each nutrient's own scale: each twice the one
/// before (judgement; cards differ).
const AMMONIA: &[f64] = &[0.0, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0];
const NITRITE: &[f64] = &[0.0, 0.25, 0.5, 1.0, 2.0, 4.0, 8.0];
const NITRATE: &[f64] = &[0.0, 5.0, 10.0, 20.0, 40.0, 80.0, 160.0];
/// The first mark over nothing of the cards for phosphate, which nothing else reads.
const PHOSPHATE_FIRST: f64 = 0.25;
/// A number that is no mark of a keeper's own card was read off a meter: within a tenth
/// (judgement).
const METER_SHARE: f64 = 0.1;
/// Where the marks are not known it may be one itself: as far as half a doubling.
const HALF_DOUBLING: f64 = std::f64::consts::SQRT_2;
/// What cannot be told from nothing, of the first mark of a keeper's own card (judgement).
const FLOOR_SHARE: f64 = 0.2;
/// How near a mark a number counts as that mark, as a share.
const AT_MARK: f64 = 0.02;

/// The card of one nutrient.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Card<'a> {
    marks: &'a [f64],
    /// Less than this cannot be told from nothing.
    floor: f64,
    /// Whether the keeper said which marks it has.
    is_own: bool,
}

impl<'a> Card<'a> {
    /// The card with the marks that a keeper gives, rising, with or without the 0; none where
    /// there is no mark over it.
    ///
    /// # Example
    /// ```
    /// use lentic::water::card::Card;
    /// let card = Card::with(&[0.0, 0.1, 0.4]).unwrap();
    /// // between two marks lies their geometric mean
    /// assert!((card.between(0.4).0 - 0.2).abs() < 1e-12);
    /// ```
    pub fn with(marks: &'a [f64]) -> Option<Self> {
        let first = *marks.iter().find(|mark| **mark > 0.0)?;
        Some(Self {
            marks,
            floor: FLOOR_SHARE * first,
            is_own: true,
        })
    }

    /// The first mark over nothing.
    pub fn first(&self) -> f64 {
        let over = self.marks.iter().copied().find(|mark| *mark > 0.0);
        over.unwrap_or(self.floor)
    }

    /// The card for a nutrient that the start-up model follows.
    ///
    /// # Example
    /// ```
    /// use lentic::{units::Analyte, water::card::Card};
    /// let card = Card::of(Analyte::Nitrate).unwrap();
    /// // the mark 0 is shown by all water under half the next one
    /// assert_eq!(card.between(0.0), (0.0, 2.5));
    /// ```
    pub const fn of(analyte: Analyte) -> Option<Card<'static>> {
        let (marks, floor) = match analyte {
            Analyte::Ammonia => (AMMONIA, 0.05),
            Analyte::Nitrite => (NITRITE, 0.05),
            Analyte::Nitrate => (NITRATE, 2.0),
            Analyte::Phosphate => return None,
        };
        Some(Card {
            marks,
            floor,
            is_own: false,
        })
    }

    /// The first mark over nothing of the cards for a nutrient, on its own scale.
    ///
    /// # Example
    /// ```
    /// use lentic::{units::Analyte, water::card::Card};
    /// assert_eq!(Card::first_mark(Analyte::Nitrate), 5.0);
    /// ```
    pub const fn first_mark(analyte: Analyte) -> f64 {
        match Self::of(analyte) {
            Some(card) => card.marks[1],
            None => PHOSPHATE_FIRST,
        }
    }

    /// Less than this cannot be told from nothing.
    pub const fn floor(&self) -> f64 {
        self.floor
    }

    /// The marks.
    pub const fn marks(&self) -> &'a [f64] {
        self.marks
    }

    /// Between what amounts the water lies that reads as a number without error.
    pub fn between(&self, number: f64) -> (f64, f64) {
        let near = |mark: f64| (number - mark).abs() <= AT_MARK * mark;
        match self.marks.iter().position(|mark| near(*mark)) {
            Some(place) => (self.bound_below(place), self.bound_above(place)),
            None if number < self.floor => (0.0, self.floor),
            None if self.is_own => (number * (1.0 - METER_SHARE), number * (1.0 + METER_SHARE)),
            None => (number / HALF_DOUBLING, number * HALF_DOUBLING),
        }
    }

    /// The mark that water of an amount shows without error.
    pub fn mark(&self, amount: f64) -> f64 {
        let place = (1..self.marks.len())
            .take_while(|place| amount >= self.bound_below(*place))
            .last();
        self.marks[place.unwrap_or_default()]
    }

    /// What shows as the lowest mark lies under this.
    pub fn first_bound(&self) -> f64 {
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
    fn water_between_two_marks_shows_the_nearer_in_ratio() {
        let card = Card::of(Analyte::Ammonia).unwrap();
        for (amount, mark) in [
            (0.0, 0.0),
            (0.2, 0.25),
            (0.69, 0.5),
            (0.72, 1.0),
            (50.0, 8.0),
        ] {
            assert!((card.mark(amount) - mark).abs() < 1e-12, "{amount}");
        }
    }

    #[test]
    fn a_mark_reads_the_water_that_shows_it() {
        for analyte in [Analyte::Ammonia, Analyte::Nitrite, Analyte::Nitrate] {
            let card = Card::of(analyte).unwrap();
            for mark in card.marks() {
                let (low, high) = card.between(*mark);
                assert!(low <= *mark && *mark < high, "{analyte:?} {mark}");
                assert!((card.mark(low) - mark).abs() < 1e-12, "{analyte:?} {mark}");
            }
        }
        // a number that the keeper's own card does not bear was read off a meter
        let own = Card::with(&[0.0, 10.0, 25.0, 50.0]).unwrap();
        let (low, high) = own.between(30.0);
        assert!((low - 27.0).abs() < 1e-9 && (high - 33.0).abs() < 1e-9);
        let (low, high) = own.between(25.0);
        assert!((low * low - 250.0).abs() < 1e-9 && (high * high - 1250.0).abs() < 1e-9);
        // of a card that is not known it may be a mark: half a doubling either way
        let ammonia = Card::of(Analyte::Ammonia).unwrap();
        let (low, high) = ammonia.between(0.3);
        assert!((high / low - 2.0).abs() < 1e-9 && (low * high - 0.09).abs() < 1e-9);
        // what a kit cannot tell from nothing, a number does not either
        assert_eq!(ammonia.between(0.02), (0.0, 0.05));
    }

    #[test]
    fn a_trace_is_under_the_first_mark() {
        // 0.25, 0.25, 5 and 0.25 mg/L: common practice, no source
        let firsts = [
            (Analyte::Ammonia, 0.25),
            (Analyte::Nitrite, 0.25),
            (Analyte::Nitrate, 5.0),
            (Analyte::Phosphate, 0.25),
        ];
        for (analyte, first) in firsts {
            assert!((Card::first_mark(analyte) - first).abs() < 1e-12);
        }
    }
}
