//! Even numbers along an axis.

/// Steps that people count in, per power of ten.
const STEPS: [f64; 3] = [1.0, 2.0, 5.0];

/// Steps in days.
pub(super) const DAY_STEPS: [f64; 9] = [1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 90.0, 180.0];
/// Days counted along a timeline.
const MOST_DAYS: usize = 7;

/// Days to be counted from one to another.
pub(in crate::report) fn day_ticks(from: f64, to: f64) -> Vec<f64> {
    ticks_by(from, to, MOST_DAYS, &DAY_STEPS)
}

/// Multiples of 1, 2 or 5 times a power of ten from one value to another, at most so many.
pub(super) fn ticks(from: f64, to: f64, most: usize) -> Vec<f64> {
    let span = to - from;
    if !span.is_finite() || span <= 0.0 {
        return vec![from];
    }
    let power = 10_f64.powf((span / most as f64).log10().floor());
    let fits = |step: &f64| span / step <= most as f64;
    let step = STEPS
        .iter()
        .map(|step| step * power)
        .find(fits)
        .unwrap_or(10.0 * power);
    multiples(from, to, step)
}

/// Multiples of the first of some steps that leaves at most so many.
pub(super) fn ticks_by(from: f64, to: f64, most: usize, steps: &[f64]) -> Vec<f64> {
    let fits = |step: &&f64| (to - from) / **step <= most as f64;
    match steps.iter().find(fits) {
        Some(step) => multiples(from, to, *step),
        None => ticks(from, to, most),
    }
}

fn multiples(from: f64, to: f64, step: f64) -> Vec<f64> {
    let first = (from / step - 1e-9).ceil() as i64;
    let last = (to / step + 1e-9).floor() as i64;
    (first..=last).map(|i| i as f64 * step).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ticks_are_even_numbers_within_the_axis() {
        assert_eq!(ticks(0.0, 2.5, 5), [0.0, 0.5, 1.0, 1.5, 2.0, 2.5]);
        assert_eq!(ticks(0.0, 47.0, 5), [0.0, 10.0, 20.0, 30.0, 40.0]);
        assert_eq!(ticks(13.0, 29.0, 4), [15.0, 20.0, 25.0]);
        assert_eq!(ticks(3.0, 3.0, 4), [3.0]);
        assert_eq!(
            ticks_by(0.0, 90.0, 6, &[1.0, 5.0, 15.0, 30.0]),
            [0.0, 15.0, 30.0, 45.0, 60.0, 75.0, 90.0]
        );
    }
}
