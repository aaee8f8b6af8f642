//! Two results of several tanks against each other.

use super::axis::ticks;
use super::canvas::{Anchor, Canvas};
use crate::report::scatter::Scatter;
use crate::units::show::significant;

/// Size of the picture, and the room around what is drawn in it, px.
const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 240.0;
const LEFT: f64 = 46.0;
const RIGHT: f64 = 16.0;
const TOP: f64 = 22.0;
const BOTTOM: f64 = 36.0;
/// More names than that would cover each other.
const MOST_NAMES: usize = 14;
/// Longer names are cut.
const NAME_LENGTH: usize = 22;

/// Dots as a picture, the best as diamonds with their names; nothing where there are none.
pub(in crate::report) fn scatter(scatter: &Scatter) -> String {
    if scatter.dots.is_empty() {
        return String::new();
    }
    let best: Vec<&str> = scatter
        .dots
        .iter()
        .filter(|dot| dot.best)
        .map(|dot| dot.name.as_str())
        .collect();
    let title = format!("{} against {}", scatter.up, scatter.across);
    let says = format!(
        "{} tanks; the best: {}",
        scatter.dots.len(),
        best.join(", ")
    );
    let mut canvas = Canvas::new(WIDTH, HEIGHT, &title, &says);
    let [left, right] = widened(scatter.span(|dot| dot.across));
    let [low, high] = widened(scatter.span(|dot| dot.up));
    let x = |value: f64| LEFT + (value - left) / (right - left) * (WIDTH - LEFT - RIGHT);
    let foot = HEIGHT - BOTTOM;
    let y = |value: f64| foot - (value - low) / (high - low) * (foot - TOP);
    for value in ticks(low, high, 5) {
        canvas.line("grid", (LEFT, y(value)), (WIDTH - RIGHT, y(value)));
        canvas.text(
            "tick",
            (LEFT - 5.0, y(value) + 3.5),
            Anchor::End,
            &significant(value, 3),
        );
    }
    for value in ticks(left, right, 5) {
        canvas.line("axis", (x(value), foot), (x(value), foot + 4.0));
        canvas.text(
            "tick",
            (x(value), foot + 15.0),
            Anchor::Middle,
            &significant(value, 3),
        );
    }
    canvas.line("axis", (LEFT, foot), (WIDTH - RIGHT, foot));
    canvas.text(
        "quiet",
        (WIDTH - RIGHT, HEIGHT - 4.0),
        Anchor::End,
        &scatter.across,
    );
    canvas.text("quiet", (0.0, 11.0), Anchor::Start, &scatter.up);
    for dot in scatter.dots.iter().filter(|dot| !dot.best) {
        canvas.circle("dot", (x(dot.across), y(dot.up)), 3.5);
    }
    let mut named = 0;
    for dot in scatter.dots.iter().filter(|dot| dot.best) {
        let (x, y) = (x(dot.across), y(dot.up));
        canvas.polygon(
            "best",
            &[(x - 5.5, y), (x, y - 5.5), (x + 5.5, y), (x, y + 5.5)],
        );
        named += 1;
        if named <= MOST_NAMES {
            let name: String = dot.name.chars().take(NAME_LENGTH).collect();
            let (stands, anchor) = if x > WIDTH / 2.0 {
                (x - 8.0, Anchor::End)
            } else {
                (x + 8.0, Anchor::Start)
            };
            canvas.text("label", (stands, y - 4.0), anchor, &name);
        }
    }
    canvas.finish()
}

/// A span with a little room at both ends.
fn widened([least, greatest]: [f64; 2]) -> [f64; 2] {
    let room = (greatest - least) * 0.06;
    [least - room, greatest + room]
}
