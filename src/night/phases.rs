//! What the integrator follows: one phase of the day, time in hours.

use super::model::{Fluxes, LEDGER, NightModel, NightState, Phase, STATES};
use crate::numerics::real::Real;
use crate::numerics::rodas::{Linearised, Stepping, System};
use crate::numerics::three::{Three, applied, inverse};

/// Oxygen, carbon and store.
pub(super) struct DayPhase<'a, R> {
    pub(super) model: &'a NightModel<R>,
    pub(super) phase: Phase,
}

impl<R: Real> Stepping<R, STATES> for DayPhase<'_, R> {
    type Moment = ();
    type Jacobian = Three<R>;
    type Factors = Three<R>;

    fn moment(&self, _: f64) {}

    fn rates_at(&self, (): &(), state: &NightState<R>) -> NightState<R> {
        let carbon = self.model.carbonate.split(state[1]);
        self.model.fluxes(self.phase, state, &carbon).change()
    }

    fn linearised(
        &self,
        _: f64,
        (): &(),
        state: &NightState<R>,
    ) -> Linearised<R, Three<R>, STATES> {
        let carbon = self.model.carbonate.split(state[1]);
        Linearised {
            rates: self.model.fluxes(self.phase, state, &carbon).change(),
            time_slope: [R::splat(0.0); STATES],
            jacobian: by_rows(&self.model.slopes(self.phase, state, &carbon)),
        }
    }

    fn split(&self, slopes: &Three<R>, diagonal: f64) -> Three<R> {
        let mut matrix = slopes.map(|row| row.map(|slope| -slope));
        for (place, row) in matrix.iter_mut().enumerate() {
            row[place] = row[place] + diagonal;
        }
        inverse(&matrix)
    }

    fn solve(&self, _: &Three<R>, inverse: &Three<R>, right: &NightState<R>) -> NightState<R> {
        applied(inverse, right)
    }
}

fn by_rows<R: Real>(slopes: &[Fluxes<R>; STATES]) -> Three<R> {
    let columns = [slopes[0].change(), slopes[1].change(), slopes[2].change()];
    std::array::from_fn(|row| std::array::from_fn(|column| columns[column][row]))
}

/// The same with what each process moved.
pub(super) struct Ledger<'a, R> {
    pub(super) model: &'a NightModel<R>,
    pub(super) phase: Phase,
}

impl<R: Real> System<R, LEDGER> for Ledger<'_, R> {
    fn rates(&self, _hour: f64, &[oxygen, carbon, store, ..]: &[R; LEDGER]) -> [R; LEDGER] {
        let split = self.model.carbonate.split(carbon);
        let state = [oxygen, carbon, store];
        self.model.fluxes(self.phase, &state, &split).ledger()
    }

    fn coupled(&self) -> usize {
        STATES
    }

    fn jacobian(
        &self,
        _hour: f64,
        &[oxygen, carbon, store, ..]: &[R; LEDGER],
        _rates: &[R; LEDGER],
    ) -> [[R; LEDGER]; LEDGER] {
        let split = self.model.carbonate.split(carbon);
        let state = [oxygen, carbon, store];
        let slopes = self.model.slopes(self.phase, &state, &split);
        let mut columns = [[R::splat(0.0); LEDGER]; LEDGER];
        for (column, slopes) in columns.iter_mut().zip(&slopes) {
            *column = slopes.ledger();
        }
        columns
    }

    fn time_slope(&self, _: f64, _: &[R; LEDGER], _: &[R; LEDGER]) -> [R; LEDGER] {
        [R::splat(0.0); LEDGER]
    }
}
