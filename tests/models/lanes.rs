//! Eight members in step against each of them alone.

use lentic::numerics::lanes::Lanes;
use lentic::numerics::real::{Real, Scalar};
use lentic::numerics::rodas::{Control, integrate};

use crate::logistic::Logistic;
use crate::waves::{Waves, solution};

const RATES: [f64; 8] = [0.05, 0.1, 0.2, 0.3, 0.5, 0.8, 1.3, 2.0];

#[test]
fn each_lane_agrees_with_its_own_scalar_run() {
    let control = Control::new(1e-7, [1e-9]);
    let together = Logistic {
        rate: Lanes(RATES),
        capacity: Lanes::splat(50.0),
    };
    let start = [Lanes::splat(1.0)];
    let ([lanes], statistics) = integrate(&together, (0.0, 20.0), start, &control, |_| ()).unwrap();
    for (rate, lane) in RATES.into_iter().zip(lanes.0) {
        let system = Logistic {
            rate,
            capacity: 50.0,
        };
        let ([alone], own) = integrate(&system, (0.0, 20.0), [1.0], &control, |_| ()).unwrap();
        assert!((lane - alone).abs() < 2e-5 * alone, "{lane} for {alone}");
        // the worst lane decides, so the group never steps further than one
        assert!(statistics.accepted + statistics.rejected >= own.accepted);
    }
}

#[test]
fn lanes_that_are_alike_step_like_one_number() {
    let control = Control::new(1e-7, [1e-9; 2]);
    let (alone, one) = integrate(&Waves, (0.0, 2.0), [1.0, 1.0], &control, |_| ()).unwrap();
    let start = [Lanes::splat(1.0); 2];
    let (lanes, eight) = integrate(&Waves, (0.0, 2.0), start, &control, |_| ()).unwrap();
    assert_eq!(one, eight);
    for row in 0..2 {
        assert!((lanes[row] - alone[row]).abs().largest() < 1e-12);
        assert!((lanes[row] - solution(2.0)[row]).abs().largest() < 1e-6);
    }
}
