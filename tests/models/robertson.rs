//! The kinetics of Robertson 1966, stiff over eleven decades of time.
//!
//! Expected values: an independent run by scipy 1.17 (Radau, relative tolerance
//! 1e-12), which agrees with the digits printed for the example `cvRoberts` of
//! SUNDIALS and, at the end, with the problem ROBER of the *Test Set for IVP
//! Solvers* (Mazzia and Magherini 2008), both known from memory.

use lentic::numerics::rodas::{Control, Step, System, integrate};

struct Robertson;

impl System<f64, 3> for Robertson {
    fn rates(&self, _time: f64, [x, y, z]: &[f64; 3]) -> [f64; 3] {
        let (slow, back, fast) = (0.04 * x, 1e4 * y * z, 3e7 * y * y);
        [back - slow, slow - back - fast, fast]
    }

    fn jacobian(&self, _time: f64, [_, y, z]: &[f64; 3], _rates: &[f64; 3]) -> [[f64; 3]; 3] {
        [
            [-0.04, 0.04, 0.0],
            [1e4 * z, -1e4 * z - 6e7 * y, 6e7 * y],
            [1e4 * y, -1e4 * y, 0.0],
        ]
    }
}

const EXPECTED: [(f64, [f64; 3]); 7] = [
    (0.4, [9.851_721e-1, 3.386_395e-5, 1.479_402e-2]),
    (40.0, [7.158_271e-1, 9.185_535e-6, 2.841_637e-1]),
    (4e2, [4.505_187e-1, 3.222_901e-6, 5.494_781e-1]),
    (4e4, [3.898_338e-2, 1.621_768e-7, 9.610_165e-1]),
    (4e6, [5.168_096e-4, 2.068_294e-9, 9.994_832e-1]),
    (4e10, [5.208_345e-8, 2.083_338e-13, 9.999_999e-1]),
    (1e11, [2.083_340e-8, 8.333_361e-14, 1.0]),
];

#[test]
fn the_published_values_are_met_over_eleven_decades() {
    let control = Control::new(1e-7, [1e-15, 1e-20, 1e-11]);
    let mut left = EXPECTED.iter().peekable();
    let look = |step: &Step<f64, 3>| {
        while let Some((time, expected)) = left.next_if(|(time, _)| *time <= step.end) {
            for (value, wanted) in step.at(*time).iter().zip(expected) {
                let off = (value / wanted - 1.0).abs();
                assert!(off < 5e-6, "{value:e} for {wanted:e} at {time:e}");
            }
        }
    };
    let (state, statistics) =
        integrate(&Robertson, (0.0, 1e11), [1.0, 0.0, 0.0], &control, look).unwrap();
    assert!(left.next().is_none());
    // the three shares add up to one whatever happens
    assert!((state.iter().sum::<f64>() - 1.0).abs() < 1e-12);
    insta::assert_snapshot!(format!("{statistics:?}"));
}
