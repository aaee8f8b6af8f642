//! Order of the method and of its continuous solution, and how the error
//! follows the tolerance.

use lentic::numerics::rodas::{Control, Step, integrate};

use crate::waves::{Waves, WavesByDifferences, solution};

const END: f64 = 2.0;

fn distance(state: [f64; 2], time: f64) -> f64 {
    let exact = solution(time);
    (state[0] - exact[0]).abs().max((state[1] - exact[1]).abs())
}

/// Largest error at the ends of equal steps, and between them.
fn errors_with_equal_steps(steps: u32) -> (f64, f64) {
    let length = END / f64::from(steps);
    // so loose that no step is ever shortened
    let control = Control {
        first_step: Some(length),
        longest_step: length,
        ..Control::new(1e6, [1e6; 2])
    };
    let (mut at_ends, mut between) = (0.0_f64, 0.0_f64);
    let mut count = 0;
    let look = |step: &Step<f64, 2>| {
        count += 1;
        at_ends = at_ends.max(distance(step.to, step.end));
        for share in [0.2, 0.5, 0.7] {
            let time = step.start + share * (step.end - step.start);
            between = between.max(distance(step.at(time), time));
        }
    };
    let run = integrate(&Waves, (0.0, END), [1.0, 1.0], &control, look);
    assert!(run.is_ok());
    assert_eq!(count, steps);
    (at_ends, between)
}

/// Order that two halvings of the step show, between 80 and 640 steps.
fn orders(error: impl Fn(u32) -> f64) -> Vec<f64> {
    [80, 160, 320]
        .map(|steps| (error(steps) / error(2 * steps)).log2())
        .to_vec()
}

#[test]
fn halving_the_step_shows_order_4() {
    for order in orders(|steps| errors_with_equal_steps(steps).0) {
        assert!((3.95..4.15).contains(&order), "order {order}");
    }
}

/// A local error of order 4 everywhere between the ends is order 3 and better.
#[test]
fn the_continuous_solution_has_at_least_order_3() {
    for order in orders(|steps| errors_with_equal_steps(steps).1) {
        assert!((2.95..4.15).contains(&order), "order {order}");
    }
}

#[test]
fn ten_times_the_tolerance_gives_about_ten_times_the_error() {
    let error = |tolerance: f64| {
        let control = Control::new(tolerance, [tolerance; 2]);
        let (state, _) = integrate(&Waves, (0.0, END), [1.0, 1.0], &control, |_| ()).unwrap();
        distance(state, END)
    };
    for exponent in -9..-4 {
        let tolerance = 10.0_f64.powi(exponent);
        let ratio = error(tolerance * 10.0) / error(tolerance);
        assert!((3.0..35.0).contains(&ratio), "{ratio} at {tolerance:e}");
        assert!(error(tolerance) < 10.0 * tolerance);
    }
}

#[test]
fn slopes_by_differences_cost_no_accuracy() {
    let control = Control::new(1e-8, [1e-8; 2]);
    let by_differences = integrate(
        &WavesByDifferences,
        (0.0, END),
        [1.0, 1.0],
        &control,
        |_| (),
    );
    let written_out = integrate(&Waves, (0.0, END), [1.0, 1.0], &control, |_| ());
    let ((state, statistics), (other, same)) = (by_differences.unwrap(), written_out.unwrap());
    assert_eq!(statistics, same);
    assert!((state[0] - other[0]).abs().max((state[1] - other[1]).abs()) < 1e-10);
}
