//! What an integrator asks of a system of differential equations.

use crate::numerics::linear::LuFactors;
use crate::numerics::real::Real;

/// A system of `N` ordinary differential equations.
pub trait System<R: Real, const N: usize> {
    /// Rate of change of each state at a time.
    fn rates(&self, time: f64, state: &[R; N]) -> [R; N];

    /// Number of states, the first ones, that the rates depend on. The rest are
    /// totals, which cost next to nothing.
    fn coupled(&self) -> usize {
        N
    }

    /// For each state the slopes of all rates with it; by differences unless
    /// the system knows better.
    fn jacobian(&self, time: f64, state: &[R; N], rates: &[R; N]) -> [[R; N]; N] {
        difference_jacobian(state, rates, self.coupled(), |shifted| {
            self.rates(time, shifted)
        })
    }

    /// Slope of each rate with time at a fixed state; by a difference unless
    /// the system knows better.
    fn time_slope(&self, time: f64, state: &[R; N], rates: &[R; N]) -> [R; N] {
        let shift = (f64::EPSILON * time.abs().max(1e-5)).sqrt();
        let later = self.rates(time + shift, state);
        std::array::from_fn(|row| (later[row] - rates[row]) / shift)
    }
}

/// Slopes of all rates with each of the first `coupled` states by forward
/// differences; the rates must not depend on the rest.
pub fn difference_jacobian<R: Real, const N: usize>(
    state: &[R; N],
    rates: &[R; N],
    coupled: usize,
    rates_at: impl Fn(&[R; N]) -> [R; N],
) -> [[R; N]; N] {
    let mut jacobian = [[R::splat(0.0); N]; N];
    let mut shifted = *state;
    for column in 0..coupled.min(N) {
        let wanted = (state[column].abs().max(R::splat(1e-5)) * f64::EPSILON).sqrt();
        shifted[column] = state[column] + wanted;
        let scale = R::splat(1.0) / (shifted[column] - state[column]);
        let there = rates_at(&shifted);
        for row in 0..N {
            jacobian[column][row] = (there[row] - rates[row]) * scale;
        }
        shifted[column] = state[column];
    }
    jacobian
}

/// Everything that depends on the start of a step but not on its length.
#[derive(Debug, Clone)]
pub struct Linearised<R, J, const N: usize> {
    /// Rate of change of each state.
    pub rates: [R; N],
    /// Slope of each rate with time at a fixed state.
    pub time_slope: [R; N],
    /// Slopes of the rates with the states, in a form of the system's own.
    pub jacobian: J,
}

/// A system as the integrator follows it. Every [`System`] is one as [`PlainSystem`]; what knows
/// more of itself than its rates, as where its slopes vanish, says so here instead.
pub trait Stepping<R: Real, const N: usize> {
    /// What the rates need of a time, whatever the state.
    type Moment;
    /// The slopes of the rates with the states.
    type Jacobian;
    /// A matrix split up for solving.
    type Factors;

    /// What the rates need of a time.
    fn moment(&self, time: f64) -> Self::Moment;

    /// Rate of change of each state.
    fn rates_at(&self, moment: &Self::Moment, state: &[R; N]) -> [R; N];

    /// Rates and their slopes.
    fn linearised(
        &self,
        time: f64,
        moment: &Self::Moment,
        state: &[R; N],
    ) -> Linearised<R, Self::Jacobian, N>;

    /// Splits `diagonal - J`.
    fn split(&self, jacobian: &Self::Jacobian, diagonal: f64) -> Self::Factors;

    /// The vector that `diagonal - J`, split up, maps to `right`.
    fn solve(&self, jacobian: &Self::Jacobian, factors: &Self::Factors, right: &[R; N]) -> [R; N];
}

/// A system of which no more is known than its rates and slopes.
#[derive(Debug, Clone, Copy)]
pub struct PlainSystem<'a, S>(pub &'a S);

impl<R: Real, S: System<R, N>, const N: usize> Stepping<R, N> for PlainSystem<'_, S> {
    type Moment = f64;
    type Jacobian = [[R; N]; N];
    type Factors = LuFactors<R, N>;

    fn moment(&self, time: f64) -> f64 {
        time
    }

    fn rates_at(&self, time: &f64, state: &[R; N]) -> [R; N] {
        self.0.rates(*time, state)
    }

    fn linearised(&self, time: f64, _: &f64, state: &[R; N]) -> Linearised<R, Self::Jacobian, N> {
        let rates = self.0.rates(time, state);
        Linearised {
            rates,
            time_slope: self.0.time_slope(time, state, &rates),
            jacobian: self.0.jacobian(time, state, &rates),
        }
    }

    fn split(&self, jacobian: &Self::Jacobian, diagonal: f64) -> LuFactors<R, N> {
        let mut matrix = jacobian.map(|column| column.map(|entry| -entry));
        for (row, entries) in matrix.iter_mut().enumerate() {
            entries[row] = entries[row] + diagonal;
        }
        LuFactors::of_coupled(matrix, self.0.coupled())
    }

    fn solve(&self, _: &Self::Jacobian, factors: &LuFactors<R, N>, right: &[R; N]) -> [R; N] {
        factors.solve(right)
    }
}
