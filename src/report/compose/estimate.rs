//! A value with its band in words.

use crate::plan::Estimate;
use crate::units::show::significant;

/// Smaller values are told as smaller than this.
const LEAST_TOLD: f64 = 0.001;

/// "0.33", or "0.33 (0.1-1.2)".
pub(super) fn ranged(value: Estimate) -> String {
    match value {
        Estimate::Exact(value) => shown(value),
        Estimate::Band(band) => {
            let [low, typical, high] = [band.low, band.typical, band.high].map(shown);
            if low == high {
                typical
            } else {
                format!("{typical} ({low}-{high})")
            }
        }
    }
}

/// The same of a gain, or of a loss below zero: "+0.33 (-0.1 to 1.2)".
pub(super) fn signed(value: Estimate) -> String {
    let with_sign = |value: f64| {
        let shown = significant(value, 2);
        if value > 0.0 {
            format!("+{shown}")
        } else {
            shown
        }
    };
    let band = value.band();
    let [low, typical, high] = [band.low, band.typical, band.high].map(with_sign);
    if low == high {
        typical
    } else {
        format!("{typical} ({low} to {high})")
    }
}

/// Two digits, down to what no test kit would tell from nothing.
fn shown(value: f64) -> String {
    if value > 0.0 && value < LEAST_TOLD {
        format!("<{LEAST_TOLD}")
    } else {
        significant(value.max(0.0), 2)
    }
}
