//! Roots of functions of one number, and the first number that satisfies a
//! monotone condition.

use thiserror::Error;

const MOST_STEPS: u32 = 200;

/// Why no root was found, with the bracket at which the search ended.
#[derive(Debug, Clone, Copy, PartialEq, Error)]
pub enum RootError {
    /// Both ends have the same sign.
    #[error("no sign change between {low} (value {at_low}) and {high} (value {at_high})")]
    NotBracketed {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
        /// Value at the lower end.
        at_low: f64,
        /// Value at the upper end.
        at_high: f64,
    },
    /// The function gave something that is not a finite number.
    #[error("the function has no finite value at {at}, between {low} and {high}")]
    NotFinite {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
        /// Where it failed.
        at: f64,
    },
    /// The condition holds nowhere that was asked.
    #[error("the condition is not met anywhere between {low} and {high}")]
    NotMet {
        /// Lower end.
        low: f64,
        /// Upper end.
        high: f64,
    },
}

/// Root of a function between two ends at which its signs differ, to within
/// `tolerance`.
///
/// Interpolates, but stays so close to bisection that it never needs more
/// than one evaluation beyond it.
///
/// # Source
/// Oliveira and Takahashi 2021 (`oliveira_takahashi_2021`), the ITP
/// method with exponent 2 and slack 1; the truncation is 0.2 over the width.
///
/// # Errors
/// [`RootError::NotBracketed`] and [`RootError::NotFinite`].
///
/// # Example
/// ```
/// use lentic::numerics::root::root;
/// let x = root(|x| x * x - 2.0, 0.0, 2.0, 1e-12).unwrap();
/// assert!((x - 2.0_f64.sqrt()).abs() < 1e-12);
/// ```
pub fn root(
    mut function: impl FnMut(f64) -> f64,
    low: f64,
    high: f64,
    tolerance: f64,
) -> Result<f64, RootError> {
    let (mut a, mut b) = (low.min(high), low.max(high));
    let (at_a, at_b) = (function(a), function(b));
    for (at, value) in [(a, at_a), (b, at_b)] {
        if !value.is_finite() {
            return Err(RootError::NotFinite {
                low: a,
                high: b,
                at,
            });
        }
        if value == 0.0 {
            return Ok(at);
        }
    }
    if at_a.signum() == at_b.signum() {
        return Err(RootError::NotBracketed {
            low: a,
            high: b,
            at_low: at_a,
            at_high: at_b,
        });
    }
    let rising = at_b.signum();
    let (mut below, mut above) = (at_a * rising, at_b * rising);
    let tolerance = tolerance.max(4.0 * f64::EPSILON * a.abs().max(b.abs()));
    let truncation = 0.2 / (b - a);
    let mut reach = tolerance * 2.0_f64.powi(halvings(b - a, tolerance));
    for _ in 0..MOST_STEPS {
        if b - a <= 2.0 * tolerance {
            break;
        }
        let middle = f64::midpoint(a, b);
        let slack = reach - (b - a) / 2.0;
        let x = projected((a, below), (b, above), middle, truncation, slack);
        let value = function(x) * rising;
        if !value.is_finite() {
            return Err(RootError::NotFinite {
                low: a,
                high: b,
                at: x,
            });
        }
        if value > 0.0 {
            (b, above) = (x, value);
        } else if value < 0.0 {
            (a, below) = (x, value);
        } else {
            return Ok(x);
        }
        reach /= 2.0;
    }
    Ok(f64::midpoint(a, b))
}

/// Halvings that bring a bracket down to the tolerance on either side, and one.
fn halvings(width: f64, tolerance: f64) -> i32 {
    let mut count = 1;
    let mut left = width;
    while left > 2.0 * tolerance {
        left /= 2.0;
        count += 1;
    }
    count
}

/// Next point to try: the straight-line root, moved towards the middle and
/// held within the slack around it.
fn projected(
    (a, below): (f64, f64),
    (b, above): (f64, f64),
    middle: f64,
    truncation: f64,
    slack: f64,
) -> f64 {
    let line = (above * a - below * b) / (above - below);
    let towards = (middle - line).signum();
    let shift = truncation * (b - a).powi(2);
    let moved = if shift <= (middle - line).abs() {
        line + towards * shift
    } else {
        middle
    };
    if (moved - middle).abs() <= slack {
        moved
    } else {
        middle - towards * slack
    }
}

/// Smallest number between two ends that meets a condition, to within
/// `resolution`; the condition, once met, must stay met.
///
/// The number given always meets the condition itself: it is the upper end of
/// the last bracket.
///
/// # Errors
/// [`RootError::NotMet`] if even the upper end does not meet it.
///
/// # Example
/// ```
/// use lentic::numerics::root::first_crossing;
/// let x = first_crossing(|x| x * x >= 2.0, 0.0, 2.0, 1e-9).unwrap();
/// assert!(x * x >= 2.0 && x < 2.0_f64.sqrt() + 1e-9);
/// ```
pub fn first_crossing(
    mut meets: impl FnMut(f64) -> bool,
    low: f64,
    high: f64,
    resolution: f64,
) -> Result<f64, RootError> {
    if meets(low) {
        return Ok(low);
    }
    if !meets(high) {
        return Err(RootError::NotMet { low, high });
    }
    let (mut unmet, mut met) = (low, high);
    for _ in 0..MOST_STEPS {
        if (met - unmet).abs() <= resolution {
            break;
        }
        let middle = f64::midpoint(unmet, met);
        if meets(middle) {
            met = middle;
        } else {
            unmet = middle;
        }
    }
    Ok(met)
}

/// A bracket around the number at which something ends, by doubling: a number at which
/// it still `goes_on`, or 0, and one at which it does not; none where it goes on beyond
/// `most`.
///
/// # Errors
/// Those of `goes_on`.
///
/// # Example
/// ```
/// use lentic::numerics::root::doubled;
/// let bracket = doubled(1.0, 100.0, |x| Ok::<_, ()>(x < 5.0));
/// assert_eq!(bracket, Ok(Some((4.0, 8.0))));
/// ```
pub fn doubled<E>(
    first: f64,
    most: f64,
    mut goes_on: impl FnMut(f64) -> Result<bool, E>,
) -> Result<Option<(f64, f64)>, E> {
    let (mut below, mut number) = (0.0, first);
    while goes_on(number)? {
        below = number;
        number *= 2.0;
        if number > most {
            return Ok(None);
        }
    }
    Ok(Some((below, number)))
}

/// The least whole number over one that does not meet a condition and up to one that
/// does; the condition, once met, must stay met.
///
/// # Errors
/// Those of `meets`.
///
/// # Example
/// ```
/// use lentic::numerics::root::first_whole;
/// assert_eq!(first_whole(0.0, 8.0, |x| Ok::<_, ()>(x >= 4.5)), Ok(5.0));
/// ```
pub fn first_whole<E>(
    mut unmet: f64,
    mut met: f64,
    mut meets: impl FnMut(f64) -> Result<bool, E>,
) -> Result<f64, E> {
    while met - unmet > 1.0 {
        let middle = f64::midpoint(unmet, met).floor();
        if meets(middle)? {
            met = middle;
        } else {
            unmet = middle;
        }
    }
    Ok(met)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_real_root_of_wallis_cubic_is_found() {
        // x^3 - 2x - 5, Wallis 1685: 2.0945514815423265
        let x = root(|x| x * x * x - 2.0 * x - 5.0, 0.0, 10.0, 1e-13).unwrap();
        assert!((x - 2.094_551_481_542_326_5).abs() < 1e-12);
    }

    #[test]
    fn a_falling_function_and_swapped_ends_work_too() {
        let x = root(|x| 0.3 - x.powi(9), 2.0, 0.0, 1e-12).unwrap();
        assert!((x - 0.3_f64.powf(1.0 / 9.0)).abs() < 1e-11);
    }

    #[test]
    fn a_flat_function_needs_at_most_one_evaluation_more_than_bisection() {
        let mut count = 0;
        let x = root(
            |x| {
                count += 1;
                (x - 0.9).powi(21)
            },
            0.0,
            1.0,
            1e-9,
        )
        .unwrap();
        assert!((x - 0.9).abs() <= 2e-9);
        // 29 halvings of the unit interval, one more, and the two ends
        assert!(count <= 32, "{count} evaluations");
    }

    #[test]
    fn a_missing_sign_change_is_told_with_the_bracket() {
        assert_eq!(
            root(|x| x * x + 1.0, -1.0, 2.0, 1e-9),
            Err(RootError::NotBracketed {
                low: -1.0,
                high: 2.0,
                at_low: 2.0,
                at_high: 5.0
            })
        );
    }

    #[test]
    fn a_hole_in_the_function_is_told_with_its_place() {
        let error = root(
            |x| {
                if x > 0.2 && x < 0.8 {
                    f64::NAN
                } else {
                    x - 0.5
                }
            },
            0.0,
            1.0,
            1e-9,
        );
        assert!(matches!(error, Err(RootError::NotFinite { at, .. }) if at > 0.2 && at < 0.8));
    }

    #[test]
    fn the_first_crossing_meets_the_condition_and_just_so() {
        let x = first_crossing(|x| x >= 0.123, 0.0, 1.0, 1e-6).unwrap();
        assert!((0.123..0.123 + 1e-6).contains(&x));
        assert_eq!(first_crossing(|_| true, 3.0, 9.0, 0.1), Ok(3.0));
        assert_eq!(
            first_crossing(|_| false, 3.0, 9.0, 0.1),
            Err(RootError::NotMet {
                low: 3.0,
                high: 9.0
            })
        );
    }
}
