//! Logistic growth, `y' = r y (1 - y/K)`, with its closed form
//! `K / (1 + (K/y0 - 1) exp(-r t))` (Verhulst 1838).

use lentic::numerics::real::Real;
use lentic::numerics::rodas::{Control, Step, System, integrate};

pub(crate) struct Logistic<R> {
    pub(crate) rate: R,
    pub(crate) capacity: R,
}

impl<R: Real> System<R, 1> for Logistic<R> {
    fn rates(&self, _time: f64, [y]: &[R; 1]) -> [R; 1] {
        [*y * self.rate * (*y / self.capacity).complement()]
    }
}

#[test]
fn the_closed_form_is_met_on_every_day() {
    let exact = |day: f64| 100.0 / (1.0 + 99.0 * (-0.3 * day).exp());
    let system = Logistic {
        rate: 0.3,
        capacity: 100.0,
    };
    let mut checked = 0;
    let look = |step: &Step<f64, 1>| {
        for day in (0..=60).map(f64::from) {
            if step.start < day && day <= step.end {
                let [value] = step.at(day);
                assert!((value - exact(day)).abs() < 2e-5 * exact(day), "day {day}");
                checked += 1;
            }
        }
    };
    let control = Control::new(1e-7, [1e-9]);
    let (_, statistics) = integrate(&system, (0.0, 60.0), [1.0], &control, look).unwrap();
    assert_eq!(checked, 60);
    insta::assert_snapshot!(format!("{statistics:?}"));
}
