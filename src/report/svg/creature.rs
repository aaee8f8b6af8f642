//! Animals from the side.

use super::canvas::{At, Canvas, tenth};
use crate::plan::Build;

/// Draws an animal of a length about its middle, looking left or right.
pub(super) fn creature(canvas: &mut Canvas, build: Build, middle: At, length: f64, right: bool) {
    let (x, y) = middle;
    let l = if right { length } else { -length };
    let size = l.abs();
    match build {
        Build::Fish => {
            let (nose, base) = (tenth(x + l * 0.5), tenth(x - l * 0.28));
            let back = tenth(y - size * 0.26);
            let belly = tenth(y + size * 0.26);
            let (mid, level) = (tenth(x + l * 0.1), tenth(y));
            let (fin, notch) = (tenth(-l * 0.22), tenth(l * 0.06));
            let (high, low) = (tenth(-size * 0.15), tenth(size * 0.15));
            let back_again = tenth(-l * 0.06);
            canvas.path("animal", &format!(
                "M{nose} {level}Q{mid} {back} {base} {level}Q{mid} {belly} {nose} {level}M{base} {level}l{fin} {high}l{notch} {low}l{back_again} {low}z"
            ));
        }
        Build::Shrimp => {
            let (head, tail) = (tenth(x + l * 0.5), tenth(x - l * 0.5));
            let (hump, foot) = (tenth(y - size * 0.42), tenth(y));
            canvas.stroke(
                "creature",
                &format!("M{head} {foot}Q{} {hump} {tail} {foot}", tenth(x)),
                (size * 0.16).max(1.0),
                [0.0; 2],
            );
        }
        Build::Snail => {
            canvas.circle("animal", (x, y - size * 0.42), size * 0.42);
            let (from, to) = (tenth(x - l * 0.4), tenth(x + l * 0.6));
            canvas.path("creature", &format!("M{from} {0}L{to} {0}", tenth(y)));
        }
    }
}
