//! Water changed by what a test reads.

use super::state::State;
use crate::units::{Concentration, Duration, Share};

/// A keeper's rule: test now and then, and change water where a test reads too much.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChangesByReading {
    /// Share of the water replaced by tap water.
    pub share: Share,
    /// Water is changed where ammonia nitrogen lies over this.
    pub ammonia: Concentration,
    /// And where the nitrogen of nitrite does.
    pub nitrite_n: Concentration,
    /// From one test to the next, and from filling to the first: whole days.
    pub every: Duration,
}

impl ChangesByReading {
    /// Whether a test of this water asks for a change.
    pub fn asks_at(&self, state: &State) -> bool {
        state.ammonia > self.ammonia.mg_l() || state.nitrite > self.nitrite_n.mg_l()
    }

    /// Whether there is a test on a whole day.
    pub fn tests_on(&self, day: f64) -> bool {
        day > 0.0 && (day / self.every.days()).fract() < f64::EPSILON
    }

    /// The first test after a moment, up to another, that asks for a change, with the water
    /// as it is then.
    pub(super) fn first_within(
        &self,
        (after, until): (f64, f64),
        state_at: impl Fn(f64) -> State,
    ) -> Option<(f64, State)> {
        let every = self.every.days();
        let mut test = (after / every).floor() + 1.0;
        while test * every <= until {
            let state = state_at(test * every);
            if self.asks_at(&state) {
                return Some((test * every, state));
            }
            test += 1.0;
        }
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::startup::state::STATES;

    fn rule() -> ChangesByReading {
        ChangesByReading {
            share: Share::from_percent(30.0),
            ammonia: Concentration::from_mg_l(0.25),
            nitrite_n: Concentration::from_mg_l(0.1),
            every: Duration::from_days(2.0),
        }
    }

    fn water(ammonia: f64, nitrite: f64) -> State {
        State {
            ammonia,
            nitrite,
            ..State::from_array([0.0; STATES])
        }
    }

    #[test]
    fn a_reading_at_the_threshold_asks_for_nothing() {
        assert!(!rule().asks_at(&water(0.25, 0.1)));
        assert!(rule().asks_at(&water(0.26, 0.0)));
        assert!(rule().asks_at(&water(0.0, 0.11)));
    }

    #[test]
    fn what_rises_between_two_tests_is_found_at_the_later() {
        // over the threshold from day 5 on: days 4 and 6 are tested
        let rising = |day: f64| water(day / 20.0, 0.0);
        let found = |span| rule().first_within(span, rising).map(|(day, _)| day);
        assert_eq!(found((0.0, 30.0)), Some(6.0));
        assert_eq!(found((5.5, 6.0)), Some(6.0));
        assert_eq!(found((6.0, 7.9)), None);
        assert_eq!(found((6.0, 8.0)), Some(8.0));
    }
}
