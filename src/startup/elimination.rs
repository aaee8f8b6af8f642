//! The linear systems of a step: which rates change with which states.

use super::clock::Moment;
use super::model::StartupModel;
use super::slopes::Slopes;
use super::state::{COUPLED_STATES, STATES, State};
use crate::numerics::rodas::{Linearised, Stepping};
use crate::numerics::sparse::{Pattern, SparseFactors};

/// Which rates change with which states.
#[derive(Debug, Clone, Copy)]
pub(super) struct Coupling;

/// The same: a row for each rate, a column for each state, in the order of a state's fields.
const COUPLED: [&[u8; COUPLED_STATES]; STATES] = [
    b"x.....................",
    b".x....................",
    b"..x...................",
    b"...x..................",
    b"....x........x.xx.xxx.",
    b"xxx..xxxxxxx.x..xx.xx.",
    b"xxxxxxxxxxx..x..x.xxx.",
    b"xxx..xxxxxxx.xx.xx.xxx",
    b"xxx..xxxxxxxxxx.xx.xx.",
    b"xxx..xxxxxxxxxx.xx.xx.",
    b"xxx..xxxxxx..x.xx.xxx.",
    b".....x.x...x..........",
    b"........x...x.........",
    b".............xxx......",
    b".......xxx...xx.......",
    b"..........x..x.x......",
    b".............x..xxxxx.",
    b"xxx..x.xxx......xx....",
    b"......x...x.....x.x...",
    b"xxx..xxxxxx..x..x..xx.",
    b".......xxxx..x..x..xx.",
    b".............xx.xx.xxx",
    b".....x.x...x..........",
    b"......x...x...........",
    b"........xx............",
    b".............xx.xx....",
    b".............x.xx.x...",
    b"......................",
    b"......................",
    b"xxx..xxxxxxx.xx.xx.xxx",
];

impl Pattern<STATES, COUPLED_STATES> for Coupling {
    const KNOWN: [[bool; COUPLED_STATES]; STATES] = {
        let mut known = [[false; COUPLED_STATES]; STATES];
        let mut row = 0;
        while row < STATES {
            let mut column = 0;
            while column < COUPLED_STATES {
                known[row][column] = COUPLED[row][column] == b'x';
                column += 1;
            }
            row += 1;
        }
        known
    };
}

impl Stepping<f64, STATES> for StartupModel {
    type Moment = Moment;
    type Jacobian = Box<Slopes>;
    type Factors = SparseFactors<Coupling, f64, STATES, COUPLED_STATES>;

    fn moment(&self, day: f64) -> Self::Moment {
        self.moment_on(day)
    }

    fn rates_at(&self, moment: &Self::Moment, state: &[f64; STATES]) -> [f64; STATES] {
        self.change(moment, &State::from_array(*state)).into_array()
    }

    fn linearised(
        &self,
        day: f64,
        moment: &Self::Moment,
        state: &[f64; STATES],
    ) -> Linearised<f64, Box<Slopes>, STATES> {
        let state = State::from_array(*state);
        let pace = self.pace_on(day, moment);
        let (rates, slopes) = self.sloping_change(moment, &pace, &state);
        Linearised {
            rates: rates.into_array(),
            time_slope: slopes.time,
            jacobian: slopes,
        }
    }

    fn split(&self, slopes: &Box<Slopes>, diagonal: f64) -> Self::Factors {
        SparseFactors::of_shifted(&slopes.columns, diagonal)
    }

    fn solve(
        &self,
        slopes: &Box<Slopes>,
        factors: &Self::Factors,
        right: &[f64; STATES],
    ) -> [f64; STATES] {
        factors.solve(&slopes.columns, right)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::sparse::operations;

    #[test]
    fn a_step_is_solved_in_few_operations() {
        // by an elimination of the same pattern in Python; dense 3 542 and 484 with the totals'
        // 176
        assert_eq!(operations::<Coupling, STATES, COUPLED_STATES>(), (395, 222));
    }
}
