//! Runs that cannot be finished say where they stopped.

use lentic::numerics::rodas::{Control, IntegrationError, System, integrate};

/// `y' = y^2` from 1: reaches infinity at time 1.
struct Explosion;

impl System<f64, 1> for Explosion {
    fn rates(&self, _time: f64, [y]: &[f64; 1]) -> [f64; 1] {
        [y * y]
    }
}

/// No rate from time 2 on.
struct Cliff;

impl System<f64, 1> for Cliff {
    fn rates(&self, time: f64, _state: &[f64; 1]) -> [f64; 1] {
        [(2.0 - time).ln()]
    }
}

#[test]
fn a_pole_stops_the_run_just_before_it() {
    let control = Control::new(1e-6, [1e-6]);
    let error = integrate(&Explosion, (0.0, 2.0), [1.0], &control, |_| ()).unwrap_err();
    let (IntegrationError::StepTooSmall { time, .. } | IntegrationError::NotFinite { time }) =
        error
    else {
        panic!("{error}");
    };
    assert!((time - 1.0).abs() < 1e-3, "{error}");
}

#[test]
fn a_rate_that_is_no_number_is_told_with_its_time() {
    let control = Control::new(1e-6, [1e-6]);
    let error = integrate(&Cliff, (0.0, 3.0), [0.0], &control, |_| ()).unwrap_err();
    assert!(matches!(error, IntegrationError::NotFinite { time } if (time - 2.0).abs() < 1e-3));
}

#[test]
fn the_allowed_number_of_steps_is_kept() {
    let control = Control {
        most_steps: 7,
        ..Control::new(1e-10, [1e-10])
    };
    let error = integrate(&Explosion, (0.0, 0.9), [1.0], &control, |_| ()).unwrap_err();
    assert!(matches!(error, IntegrationError::TooManySteps { time, steps: 7 } if time < 0.9));
}

#[test]
fn a_run_without_length_changes_nothing_and_one_backwards_is_refused() {
    let control = Control::new(1e-6, [1e-6]);
    let (state, _) = integrate(&Explosion, (0.5, 0.5), [3.0], &control, |_| ()).unwrap();
    assert!((state[0] - 3.0).abs() < 1e-15);
    assert_eq!(
        integrate(&Explosion, (0.5, 0.4), [3.0], &control, |_| ()).unwrap_err(),
        IntegrationError::Backward {
            start: 0.5,
            end: 0.4
        }
    );
}
