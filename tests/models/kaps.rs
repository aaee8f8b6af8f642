//! The problem of Kaps: stiff to any degree, with the same smooth solution
//! `exp(-2t)`, `exp(-t)`.
//!
//! Source: Kaps, in Dekker and Verwer, *Stability of Runge-Kutta Methods for
//! Stiff Nonlinear Differential Equations*, 1984.

use lentic::numerics::rodas::{Control, IntegrationError, Statistics, System, integrate};

struct Kaps {
    stiffness: f64,
}

impl System<f64, 2> for Kaps {
    fn rates(&self, _time: f64, [x, y]: &[f64; 2]) -> [f64; 2] {
        let pull = self.stiffness;
        [-(2.0 + pull) * x + pull * y * y, x - y * (1.0 + y)]
    }
}

fn run(stiffness: f64) -> Result<([f64; 2], Statistics), IntegrationError> {
    let control = Control::new(1e-7, [1e-9; 2]);
    integrate(
        &Kaps { stiffness },
        (0.0, 1.0),
        [1.0, 1.0],
        &control,
        |_| (),
    )
}

#[test]
fn a_hundred_million_times_stiffer_needs_no_more_than_a_few_times_the_steps() {
    let (_, mild) = run(1.0).unwrap();
    for stiffness in [1e2, 1e4, 1e6, 1e8] {
        let (state, statistics) = run(stiffness).unwrap();
        assert!((state[0] - (-2.0_f64).exp()).abs() < 1e-6, "{stiffness:e}");
        assert!((state[1] - (-1.0_f64).exp()).abs() < 1e-6, "{stiffness:e}");
        assert!(statistics.accepted < 5 * mild.accepted, "{stiffness:e}");
    }
}
