//! The length of the next step.

const SAFETY: f64 = 0.9;
const LARGEST_GROWTH: f64 = 6.0;
const LARGEST_CUT: f64 = 5.0;
/// Cut after a step that left the numbers.
const BREAKDOWN_CUT: f64 = 4.0;

/// Chooses the next step from the error of this one and the one before.
pub(super) struct StepControl {
    previous: Option<(f64, f64)>,
    after_rejection: bool,
}

impl StepControl {
    pub(super) fn new() -> Self {
        Self {
            previous: None,
            after_rejection: false,
        }
    }

    /// Whether the step stands, and the length to try next.
    pub(super) fn judge(&mut self, length: f64, error: f64) -> (bool, f64) {
        if !error.is_finite() {
            self.after_rejection = true;
            return (false, length / BREAKDOWN_CUT);
        }
        let bounded = |cut: f64| cut.clamp(1.0 / LARGEST_GROWTH, LARGEST_CUT);
        let cut = bounded(error.powf(0.25) / SAFETY);
        if error >= 1.0 {
            self.after_rejection = true;
            return (false, length / cut);
        }
        let trend = self.previous.map_or(cut, |(before, error_before)| {
            before / length * (error * error / error_before).powf(0.25) / SAFETY
        });
        let mut next = length / bounded(cut.max(trend));
        if self.after_rejection {
            next = next.min(length);
        }
        self.previous = Some((length, error.max(1e-2)));
        self.after_rejection = false;
        (true, next)
    }
}
