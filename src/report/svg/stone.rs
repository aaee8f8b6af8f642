//! Stones: irregular, and each as large as the ball of its volume.

use std::f64::consts::{PI, TAU};

use super::canvas::{At, Canvas};

/// Corners of a stone, and how far they stray from an ellipse.
const CORNERS: usize = 11;
const ROUGH: f64 = 0.16;
/// Half axes over the radius of the ball of the same volume, across, to the back and up:
/// their product is 1.
const ACROSS: f64 = 1.22;
const BACK: f64 = 1.0;
const UP: f64 = 1.0 / (ACROSS * BACK);

/// From where a stone is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Face {
    Front,
    Side,
    Above,
}

impl Face {
    /// Half axes across and up the sheet over the ball's radius.
    pub(super) const fn axes(self) -> At {
        match self {
            Self::Front => (ACROSS, UP),
            Self::Side => (BACK, UP),
            Self::Above => (ACROSS, BACK),
        }
    }
}

/// Draws a stone about its middle; `radius` is that of the ball of its volume.
pub(super) fn stone(canvas: &mut Canvas, face: Face, middle: At, radius: f64, variant: usize) {
    let outline = outline(face, middle, radius, variant);
    canvas.polygon("stone", &outline);
    // the side that the light falls on
    let shift = (middle.0 - radius * 0.12, middle.1 - radius * 0.05);
    let lit = outline
        .iter()
        .filter(|at| at.1 < middle.1 && at.0 < middle.0 + radius * 0.5);
    let lit: Vec<At> = lit
        .map(|at| (at.0 * 0.86 + shift.0 * 0.14, at.1 * 0.86 + shift.1 * 0.14))
        .chain([shift])
        .collect();
    canvas.polygon("lit", &lit);
}

/// Corners around an ellipse, nearer and further, with the area of the ellipse.
fn outline(face: Face, (x, y): At, radius: f64, variant: usize) -> Vec<At> {
    let (across, up) = face.axes();
    let corner = |i: usize| {
        let angle = TAU * i as f64 / CORNERS as f64;
        let stray = ((i + 1 + variant * 3) as f64 * 0.618_034).fract() - 0.5;
        let (sin, cos) = angle.sin_cos();
        let far = 1.0 + stray * ROUGH * 2.0;
        (cos * far, sin * far)
    };
    let corners: Vec<At> = (0..CORNERS).map(corner).collect();
    let next = corners.iter().cycle().skip(1);
    let pairs = corners.iter().zip(next);
    let twice: f64 = pairs.map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
    let to_size = (PI / (twice / 2.0).abs()).sqrt();
    let at = |corner: &At| {
        (
            x + corner.0 * across * radius * to_size,
            y - corner.1 * up * radius * to_size,
        )
    };
    corners.iter().map(at).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_stone_is_as_large_as_the_ball_of_its_volume() {
        for variant in 0..5 {
            for face in [Face::Front, Face::Side, Face::Above] {
                let (across, up) = face.axes();
                let corners = outline(face, (7.0, 9.0), 10.0, variant);
                let next = corners.iter().cycle().skip(1);
                let pairs = corners.iter().zip(next);
                let twice: f64 = pairs.map(|(a, b)| a.0 * b.1 - b.0 * a.1).sum();
                let expected = PI * 100.0 * across * up;
                assert!((twice.abs() / 2.0 - expected).abs() < 1e-9, "{face:?}");
            }
        }
        let (across, up) = Face::Front.axes();
        assert!((across * up * Face::Above.axes().1 - 1.0).abs() < 1e-12);
    }
}
