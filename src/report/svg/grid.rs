//! A result over two things that are varied: a field of tinted squares with their values.

use super::canvas::{Anchor, Canvas};
use crate::report::grid::{Grid, Square};
use crate::units::show::significant;

/// Size of a square, px.
const CELL: (f64, f64) = (58.0, 34.0);
/// Room on the left, above and below, px.
const LEFT: f64 = 70.0;
const TOP: f64 = 22.0;
const BOTTOM: f64 = 44.0;
/// Room for what is asked, px.
const ASKED: f64 = 18.0;
/// Steps of the tint.
const TINTS: f64 = 7.0;

/// A grid as a picture; nothing where it has no value.
pub(in crate::report) fn grid(grid: &Grid) -> String {
    let Some([least, greatest]) = grid.span() else {
        return String::new();
    };
    let (columns, rows) = (grid.across.1.len(), grid.up.1.len());
    let width = LEFT + CELL.0 * columns as f64 + 4.0;
    let foot = TOP + CELL.1 * rows as f64;
    let below = if grid.asked.is_empty() { 0.0 } else { ASKED };
    let mut canvas = Canvas::new(width, foot + BOTTOM + below, &grid.title, &described(grid));
    canvas.text("quiet", (0.0, 12.0), Anchor::Start, &grid.up.0);
    let at = |column: usize, row: usize| {
        (
            LEFT + CELL.0 * column as f64,
            foot - CELL.1 * (row + 1) as f64,
        )
    };
    for (row, (name, cells)) in grid.up.1.iter().zip(&grid.cells).enumerate() {
        let middle = at(0, row).1 + CELL.1 / 2.0 + 4.0;
        canvas.text("tick", (LEFT - 8.0, middle), Anchor::End, name);
        for (column, value) in cells.iter().enumerate() {
            let (x, y) = at(column, row);
            let Some(Square { value, is_met }) = value else {
                canvas.rectangle("missing", (x, y), CELL);
                continue;
            };
            let share = (value - least) / (greatest - least).max(f64::MIN_POSITIVE);
            let tint = (share * (TINTS - 1.0)).round();
            canvas.rectangle(&format!("tint tint-{tint}"), (x, y), CELL);
            let says = significant(*value, 3);
            let class = match (*is_met, grid.asked.is_empty()) {
                (false, _) => "label missed",
                (true, false) => "label met",
                (true, true) => "label",
            };
            canvas.text(class, (x + CELL.0 / 2.0, middle), Anchor::Middle, &says);
        }
    }
    edge(&mut canvas, grid, at);
    for (column, name) in grid.across.1.iter().enumerate() {
        let x = at(column, 0).0 + CELL.0 / 2.0;
        canvas.text("tick", (x, foot + 15.0), Anchor::Middle, name);
    }
    let end = LEFT + CELL.0 * columns as f64;
    canvas.text("quiet", (end, foot + 36.0), Anchor::End, &grid.across.0);
    if !grid.asked.is_empty() {
        canvas.text("quiet", (0.0, foot + 54.0), Anchor::Start, &said(grid));
    }
    canvas.finish()
}

/// The line between squares at which what is asked is met and those at which it is not.
fn edge(canvas: &mut Canvas, grid: &Grid, at: impl Fn(usize, usize) -> (f64, f64)) {
    let has = |column: usize, row: usize| {
        let cell = grid.cells.get(row).and_then(|cells| cells.get(column));
        cell.map(|cell| cell.is_some_and(|square| square.is_met))
    };
    for row in 0..grid.up.1.len() {
        for column in 0..grid.across.1.len() {
            let (x, y) = at(column, row);
            let here = has(column, row);
            if has(column + 1, row).is_some_and(|right| Some(right) != here) {
                canvas.line("brink", (x + CELL.0, y), (x + CELL.0, y + CELL.1));
            }
            if has(column, row + 1).is_some_and(|above| Some(above) != here) {
                canvas.line("brink", (x, y), (x + CELL.0, y));
            }
        }
    }
}

/// Which squares meet what is asked.
fn said(grid: &Grid) -> String {
    let cells = || grid.cells.iter().flatten().flatten();
    let asked = &grid.asked;
    if cells().all(|square| square.is_met) {
        format!("All meet {asked}.")
    } else if cells().any(|square| square.is_met) {
        format!("Bold within the line: {asked}.")
    } else {
        format!("None meets {asked}.")
    }
}

fn described(grid: &Grid) -> String {
    let span = grid.span().unwrap_or_default();
    let [least, greatest] = span.map(|value| significant(value, 3));
    let cells = || grid.cells.iter().flatten();
    let missing = cells().filter(|cell| cell.is_none()).count();
    let met = cells().flatten().filter(|square| square.is_met).count();
    let asked = if grid.asked.is_empty() {
        String::new()
    } else {
        format!("; {met} of {} squares meet {}", cells().count(), grid.asked)
    };
    format!(
        "{} to the right, {} upwards; from {least} to {greatest}; {missing} squares without a value{asked}.",
        grid.across.0, grid.up.0
    )
}
