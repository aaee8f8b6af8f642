//! Plants by their form: six ways in which leaves stand, from the side and from above.

use super::canvas::{At, Canvas, tenth};
use crate::catalogue::GrowthForm;

/// Leaves of a rosette as leans from upright, of its width.
const LEANS: [f64; 5] = [-0.5, 0.46, -0.24, 0.2, -0.02];

/// A plant from the side, `variant` telling neighbours apart.
pub(super) fn plant(canvas: &mut Canvas, form: GrowthForm, foot: At, size: At, variant: usize) {
    let (width, height) = size;
    let sway = [0.10, -0.14, 0.03, -0.05, 0.16][variant % 5] * width;
    match form {
        GrowthForm::SubmergedStem => {
            canvas.path("stem green", &stem(foot, height, sway));
            let whorls = pairs(foot, (width * 0.3, height), sway, 7.0);
            canvas.stroke("bead green", &whorls, 1.3, [0.0; 2]);
        }
        GrowthForm::AmphibiousStem => {
            canvas.path("stem lime", &stem(foot, height, sway));
            let broad = (width * 0.16).clamp(2.0, 7.0);
            let leaves = pairs(foot, (width * 0.3, height), sway, broad * 2.1);
            canvas.stroke("bead lime", &leaves, broad, [0.0; 2]);
        }
        GrowthForm::RunnerRosette => canvas.stroke(
            "ribbon green",
            &ribbons(foot, size, variant),
            (width * 0.07).max(1.1),
            [0.0; 2],
        ),
        GrowthForm::SlowRosette => canvas.path("foliage teal", &leaves(foot, size, 0.16)),
        GrowthForm::Epiphyte => canvas.path("foliage teal", &leaves(foot, size, 0.30)),
        GrowthForm::Moss => canvas.path("foliage lime", &cushion(foot, size)),
        GrowthForm::SmallFloating | GrowthForm::LargeFloating => {}
    }
}

fn stem((x, y): At, height: f64, sway: f64) -> String {
    format!(
        "M{} {}q{} {} {} {}",
        tenth(x),
        tenth(y),
        tenth(sway),
        tenth(-height / 2.0),
        tenth(sway * 0.4),
        tenth(-height)
    )
}

/// More pairs than that on a stem are drawn further apart.
const MOST_PAIRS: f64 = 11.0;

/// Leaves in pairs along a stem, at least so far apart and smaller towards the tip.
fn pairs((x, y): At, (reach, height): At, sway: f64, apart: f64) -> String {
    let count = (height / apart).floor().clamp(1.0, MOST_PAIRS);
    let pair = |i: usize| {
        let share = i as f64 / count;
        // the stem's curve: its handle at half height, swayed
        let bend = 2.0 * share * (1.0 - share) * sway + share * share * sway * 0.4;
        let half = reach * (1.0 - 0.45 * share);
        let lift = half * 0.45;
        format!(
            "M{} {}l{half} {lift}l{half} -{lift}",
            tenth(x + bend - half),
            tenth(y - height * share - lift),
            half = tenth(half),
            lift = tenth(lift),
        )
    };
    (1..=count as usize).map(pair).collect()
}

/// Long narrow leaves that bend over at their ends.
fn ribbons((x, y): At, (width, height): At, variant: usize) -> String {
    let leaf = |(i, lean): (usize, &f64)| {
        let lean = lean * width * 1.2;
        let long = height * (1.0 - 0.09 * ((i + variant) % 5) as f64);
        format!(
            "M{} {}q{} {} {} {}",
            tenth(x),
            tenth(y),
            tenth(lean * 0.1),
            tenth(-long),
            tenth(lean),
            tenth(-long * 0.96)
        )
    };
    LEANS.iter().enumerate().map(leaf).collect()
}

/// Blades on stalks, as broad as a share of the plant's width.
fn leaves((x, y): At, (width, height): At, breadth: f64) -> String {
    let leaf = |lean: &f64| {
        let across = lean * width;
        let up = height * (1.0 - 0.7 * lean.abs());
        let (base_x, base_y) = (x + across * 0.55, y - up * 0.5);
        let (tip_x, tip_y) = (x + across, y - up);
        let side = breadth * width * (1.0 - lean.abs() * 0.5);
        let middle = (f64::midpoint(base_x, tip_x), f64::midpoint(base_y, tip_y));
        format!(
            "M{} {}L{bx} {by}Q{} {} {} {}Q{} {} {bx} {by}",
            tenth(x),
            tenth(y),
            tenth(middle.0 - side),
            tenth(middle.1 - side * lean),
            tenth(tip_x),
            tenth(tip_y),
            tenth(middle.0 + side),
            tenth(middle.1 + side * lean),
            bx = tenth(base_x),
            by = tenth(base_y),
        )
    };
    LEANS.iter().map(leaf).collect()
}

fn cushion((x, y): At, (width, height): At) -> String {
    let (quarter, high) = (tenth(width / 4.0), tenth(-height * 1.5));
    let bump = format!("q{} {high} {quarter} 0", tenth(width / 8.0));
    format!(
        "M{} {}q{} {} {quarter} {}{bump}{bump}q{} {high} {quarter} {}z",
        tenth(x - width / 2.0),
        tenth(y),
        tenth(width / 8.0),
        high,
        tenth(-height * 0.3),
        tenth(width / 8.0),
        tenth(height * 0.3),
    )
}

/// A plant from above.
pub(super) fn crown(canvas: &mut Canvas, form: GrowthForm, at: At, width: f64) {
    match form {
        GrowthForm::SubmergedStem => canvas.path("crown green", &star(at, width * 0.40, 8)),
        GrowthForm::AmphibiousStem => canvas.path("crown lime", &star(at, width * 0.36, 4)),
        GrowthForm::RunnerRosette => canvas.path("crown green", &star(at, width * 0.48, 6)),
        GrowthForm::SlowRosette | GrowthForm::Epiphyte => {
            canvas.path("crown teal", &star(at, width * 0.44, 5));
        }
        GrowthForm::Moss => canvas.circle("moss lime", at, width * 0.4),
        GrowthForm::SmallFloating | GrowthForm::LargeFloating => {}
    }
}

/// So many leaves around a middle.
fn star((x, y): At, radius: f64, leaves: usize) -> String {
    let leaves: Vec<String> = (0..leaves)
        .map(|i| {
            let angle = std::f64::consts::TAU * (i as f64 + 0.2) / leaves as f64;
            let (sin, cos) = angle.sin_cos();
            format!(
                "M{} {}l{} {}",
                tenth(x),
                tenth(y),
                tenth(cos * radius),
                tenth(sin * radius)
            )
        })
        .collect();
    leaves.concat()
}
