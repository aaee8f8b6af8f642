//! A non-linear problem of two states that depends on time, with the solution
//! `1/(1 + t^2)` and `exp(sin t)`. Both rates hold a product of the states less
//! its value on the solution, so every entry of the Jacobian and of the time
//! slope counts.

use lentic::numerics::real::Real;
use lentic::numerics::rodas::System;

/// With slopes written out.
pub(crate) struct Waves;

/// With slopes by differences.
pub(crate) struct WavesByDifferences;

pub(crate) fn solution(time: f64) -> [f64; 2] {
    [1.0 / (1.0 + time * time), time.sin().exp()]
}

fn slope_of_solution(time: f64) -> [f64; 2] {
    let [x, y] = solution(time);
    [-2.0 * time * x * x, time.cos() * y]
}

fn rates<R: Real>(time: f64, [x, y]: [R; 2]) -> [R; 2] {
    let [exact_x, exact_y] = solution(time);
    [
        x * x * (-2.0 * time) - x * y + exact_x * exact_y,
        y * time.cos() - x * y * 3.0 + 3.0 * exact_x * exact_y,
    ]
}

impl<R: Real> System<R, 2> for Waves {
    fn rates(&self, time: f64, state: &[R; 2]) -> [R; 2] {
        rates(time, *state)
    }

    fn jacobian(&self, time: f64, [x, y]: &[R; 2], _rates: &[R; 2]) -> [[R; 2]; 2] {
        [
            [*x * (-4.0 * time) - *y, *y * -3.0],
            [-*x, *x * -3.0 + time.cos()],
        ]
    }

    fn time_slope(&self, time: f64, [x, y]: &[R; 2], _rates: &[R; 2]) -> [R; 2] {
        let ([exact_x, exact_y], [slope_x, slope_y]) = (solution(time), slope_of_solution(time));
        let product = slope_x * exact_y + exact_x * slope_y;
        [*x * *x * -2.0 + product, *y * -time.sin() + 3.0 * product]
    }
}

impl<R: Real> System<R, 2> for WavesByDifferences {
    fn rates(&self, time: f64, state: &[R; 2]) -> [R; 2] {
        rates(time, *state)
    }
}
