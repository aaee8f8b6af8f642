//! Integration by the linearly implicit Euler method: coarse, but it goes on where an
//! accurate method finds no step short enough.
//!
//! # Source
//! Hairer and Wanner 1996, section IV.7: the Rosenbrock method of one stage.

use super::rodas::{IntegrationError, Step, Stepping};

/// Share of the stretch that the first step takes.
const FIRST_SHARE: f64 = 1e-4;
/// Share of the stretch that no step is longer than.
const LONGEST_SHARE: f64 = 1e-3;
/// Share of the stretch under which a step that does not stand ends the run.
const SHORTEST_SHARE: f64 = 1e-12;
/// How much longer the step after one that stands is.
const GROWTH: f64 = 1.5;

/// Brings a system from a start to an end without asking for accuracy; a step that takes a
/// state below `lowest`, or further below, is halved. Its error is of the order of the
/// longest step, a thousandth of the stretch.
///
/// # Errors
/// [`IntegrationError::NotFinite`] where no step stands.
///
/// # Example
/// ```
/// use lentic::numerics::implicit_euler::integrate;
/// use lentic::numerics::rodas::{PlainSystem, System};
/// struct Decay;
/// impl System<f64, 1> for Decay {
///     fn rates(&self, _: f64, state: &[f64; 1]) -> [f64; 1] {
///         [-1e4 * state[0]]
///     }
/// }
/// let end = integrate(&PlainSystem(&Decay), (0.0, 1.0), [1.0], &[0.0], |_| ())?;
/// // exp(-10000)
/// assert!(end[0].abs() < 1e-9);
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
pub fn integrate<const N: usize>(
    system: &impl Stepping<f64, N>,
    (start, end): (f64, f64),
    initial: [f64; N],
    lowest: &[f64; N],
    mut on_step: impl FnMut(&Step<f64, N>),
) -> Result<[f64; N], IntegrationError> {
    let stretch = end - start;
    let (mut time, mut state) = (start, initial);
    let mut length = FIRST_SHARE * stretch;
    while time < end {
        let is_last = time + length >= end;
        let tried = if is_last { end - time } else { length };
        let next = advanced(system, time, &state, tried);
        let stands = next
            .iter()
            .zip(&state)
            .zip(lowest)
            .all(|((to, from), low)| to.is_finite() && *to >= from.min(*low));
        if stands {
            let reached = if is_last { end } else { time + tried };
            on_step(&Step::straight((time, reached), state, next));
            (time, state) = (reached, next);
            length = (length * GROWTH).min(LONGEST_SHARE * stretch);
        } else {
            length = tried / 2.0;
            if length < SHORTEST_SHARE * stretch {
                return Err(IntegrationError::NotFinite { time });
            }
        }
    }
    Ok(state)
}

/// `y + (1/h - J)^-1 f`.
fn advanced<const N: usize>(
    system: &impl Stepping<f64, N>,
    time: f64,
    state: &[f64; N],
    length: f64,
) -> [f64; N] {
    let base = system.linearised(time, &system.moment(time), state);
    let factors = system.split(&base.jacobian, 1.0 / length);
    let change = system.solve(&base.jacobian, &factors, &base.rates);
    std::array::from_fn(|row| state[row] + change[row])
}

#[cfg(test)]
mod tests {
    use super::super::rodas::{PlainSystem, System};
    use super::*;

    /// Two substances that turn into each other, one fast.
    struct Exchange;

    impl System<f64, 2> for Exchange {
        fn rates(&self, _: f64, [one, other]: &[f64; 2]) -> [f64; 2] {
            let flow = 1e3 * one - 0.5 * other;
            [-flow, flow]
        }
    }

    #[test]
    fn what_is_exchanged_is_neither_made_nor_lost() {
        let end = integrate(
            &PlainSystem(&Exchange),
            (0.0, 10.0),
            [1.0, 0.0],
            &[0.0; 2],
            |_| (),
        )
        .unwrap();
        assert!((end[0] + end[1] - 1.0).abs() < 1e-9, "{end:?}");
        // at rest 1000 one = 0.5 other
        assert!((end[0] - 0.5 / 1000.5).abs() < 1e-6, "{end:?}");
    }

    #[test]
    fn steps_join_from_start_to_end() {
        let mut ends = vec![0.0];
        let start = [1.0, 0.0];
        integrate(
            &PlainSystem(&Exchange),
            (0.0, 2.0),
            start,
            &[0.0; 2],
            |step| {
                assert!((step.start - ends.last().unwrap()).abs() < 1e-12);
                assert!((step.at(step.end)[0] - step.to[0]).abs() < 1e-12);
                ends.push(step.end);
            },
        )
        .unwrap();
        assert!((ends.last().unwrap() - 2.0).abs() < 1e-12);
    }

    #[test]
    fn rates_that_are_no_numbers_end_the_run() {
        struct Broken;
        impl System<f64, 1> for Broken {
            fn rates(&self, _: f64, _: &[f64; 1]) -> [f64; 1] {
                [f64::NAN]
            }
        }
        let ended = integrate(&PlainSystem(&Broken), (0.0, 1.0), [1.0], &[0.0], |_| ());
        assert!(matches!(ended, Err(IntegrationError::NotFinite { .. })));
    }
}
