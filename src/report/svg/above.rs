//! A tank from above, to scale, with the places where its layers are thinnest and deepest.

use super::canvas::{Anchor, At, Canvas};
use super::dimension::{across, upright};
use super::scale::{Frame, Scale};
use crate::geometry::{Place, Spot};
use crate::plan::Drawing;
use crate::report::document::Sheet;

/// Room around the walls, px.
const LEFT: f64 = 28.0;
const RIGHT: f64 = 12.0;
const TOP: f64 = 18.0;
const BOTTOM: f64 = 40.0;
/// Lines of the list of places below, px.
const LINE: f64 = 15.0;
/// From one floater to the next, px.
const GRID: f64 = 9.0;
/// Narrower pictures would cut the list of places.
const LEAST_WIDTH: f64 = 210.0;

/// The letters of the thinnest and the deepest place of the cap, and of the soil.
pub(super) const CAP: [&str; 2] = ["a", "b"];
pub(super) const SOIL: [&str; 2] = ["c", "d"];
/// Steps along and across that fill a square evenly: 1/g and 1/g2, g3 = g + 1.
const EVEN: [f64; 2] = [0.754_877_666_2, 0.569_840_291_0];

/// A view with its labels.
pub(in crate::report) fn above(sheet: &Sheet, scale: Scale) -> String {
    let drawing = &sheet.drawing;
    let view = &drawing.above;
    let frame = Frame::of(&view.outer);
    let px = scale.px_per_m();
    let marks = marks(sheet);
    let width = (LEFT + frame.across_m() * px + RIGHT).max(LEAST_WIDTH);
    let height = TOP + frame.up_m() * px + BOTTOM + LINE * marks.len() as f64;
    let mut canvas = Canvas::new(
        width,
        height,
        "The tank from above, its front below",
        &described(drawing),
    );
    let at = |spot: &Spot| {
        (
            LEFT + (spot.across.m() - frame.left_m) * px,
            TOP + (frame.high_m - spot.up.m()) * px,
        )
    };
    let places = |outline: &[Spot]| outline.iter().map(at).collect::<Vec<At>>();
    canvas.polygon("glass", &places(&view.outer));
    canvas.polygon("air", &places(&view.inner));
    canvas.polygon("water", &places(&view.water));
    floaters(
        &mut canvas,
        &places(&view.water),
        drawing.floating.fraction(),
    );
    for outline in [&view.outer, &view.inner] {
        canvas.polygon("edge", &places(outline));
    }
    canvas.polygon("far", &places(&view.floor));
    let inside = places(&view.inner);
    let (low, high) = corners(&inside);
    canvas.text(
        "quiet",
        (f64::midpoint(low.0, high.0), 11.0),
        Anchor::Middle,
        "back",
    );
    let foot = TOP + frame.up_m() * px;
    across(
        &mut canvas,
        (low.0, foot + 8.0),
        high.0,
        &format!("front, {}", sheet.units.dimension(drawing.length)),
    );
    upright(
        &mut canvas,
        (16.0, high.1),
        low.1,
        &sheet.units.dimension(drawing.width),
    );
    let floor = places(&view.floor);
    for (i, mark) in marks.iter().enumerate() {
        let y = foot + BOTTOM + LINE * i as f64;
        badge(&mut canvas, support(&floor, mark.place, i), mark.letter);
        badge(&mut canvas, (LEFT + 6.0, y - 4.0), mark.letter);
        canvas.text("label", (LEFT + 18.0, y), Anchor::Start, &mark.says);
    }
    canvas.finish()
}

/// A place worth marking.
struct Mark {
    letter: &'static str,
    place: Place,
    says: String,
}

/// Where soil and cap are thinnest and deepest; nothing where both lie level.
fn marks(sheet: &Sheet) -> Vec<Mark> {
    let (drawing, units) = (&sheet.drawing, sheet.units);
    if !drawing.is_sloped() {
        return Vec::new();
    }
    let mark = |letter, name: &str, extreme: crate::geometry::Extreme| Mark {
        letter,
        place: extreme.place,
        says: format!("{name}: {}", units.depth(extreme.depth)),
    };
    let marks = [
        mark(CAP[0], "cap thinnest", drawing.cap.thinnest),
        mark(CAP[1], "cap deepest", drawing.cap.deepest),
        mark(SOIL[0], "soil thinnest", drawing.soil.thinnest),
        mark(SOIL[1], "soil deepest", drawing.soil.deepest),
    ];
    let somewhere = marks.into_iter();
    somewhere
        .filter(|mark| mark.place != Place::Everywhere)
        .collect()
}

fn badge(canvas: &mut Canvas, at: At, letter: &str) {
    canvas.circle("badge", at, 6.5);
    canvas.text("letter", (at.0, at.1 + 3.5), Anchor::Middle, letter);
}

/// The upper left and the lower right corner of the box around some places.
fn corners(places: &[At]) -> (At, At) {
    places.iter().fold(
        (
            (f64::INFINITY, f64::INFINITY),
            (f64::NEG_INFINITY, f64::NEG_INFINITY),
        ),
        |(low, high), at| {
            (
                (low.0.min(at.0), low.1.min(at.1)),
                (high.0.max(at.0), high.1.max(at.1)),
            )
        },
    )
}

/// Where a place on the floor is: the middle of what of the outline lies furthest that
/// way, a little inside, marks of the same place beside each other.
fn support(outline: &[At], place: Place, index: usize) -> At {
    let (dx, dy): (f64, f64) = match place {
        Place::Everywhere | Place::Middle => (0.0, 0.0),
        Place::Back => (0.0, -1.0),
        Place::Front => (0.0, 1.0),
        Place::Left => (-1.0, 0.0),
        Place::Right => (1.0, 0.0),
        Place::BackLeft => (-1.0, -1.0),
        Place::BackRight => (1.0, -1.0),
        Place::FrontLeft => (-1.0, 1.0),
        Place::FrontRight => (1.0, 1.0),
    };
    let reach = |at: &At| at.0 * dx + at.1 * dy;
    let most = outline.iter().map(reach).fold(f64::NEG_INFINITY, f64::max);
    let furthest: Vec<At> = outline
        .iter()
        .filter(|at| most - reach(at) < 1.0)
        .copied()
        .collect();
    let (low, high) = corners(&furthest);
    let beside = 14.0 * (index as f64 - 1.5);
    let inwards = 10.0;
    let (along_x, along_y) = if dx == 0.0 {
        (beside, 0.0)
    } else {
        (0.0, beside)
    };
    (
        f64::midpoint(low.0, high.0) - dx * inwards + along_x,
        f64::midpoint(low.1, high.1) - dy * inwards + along_y,
    )
}

/// Floaters over a share of the surface, spread evenly.
fn floaters(canvas: &mut Canvas, surface: &[At], cover: f64) {
    let (low, high) = corners(surface);
    let columns = ((high.0 - low.0) / GRID).floor().max(1.0);
    let rows = ((high.1 - low.1) / GRID).floor().max(1.0);
    let (across, down) = ((high.0 - low.0) / columns, (high.1 - low.1) / rows);
    let grid = (0..rows as usize)
        .flat_map(|row| (0..columns as usize).map(move |column| (row as f64, column as f64)));
    let mut wet: Vec<(f64, At)> = grid
        .map(|(row, column)| {
            let turn = (row * EVEN[0] + column * EVEN[1]).fract();
            let at = (low.0 + across * (column + 0.5), low.1 + down * (row + 0.5));
            (turn, at)
        })
        .filter(|(_, at)| is_inside(surface, *at))
        .collect();
    wet.sort_by(|a, b| a.0.total_cmp(&b.0));
    let count = (cover.min(1.0) * wet.len() as f64).round() as usize;
    for (_, at) in wet.into_iter().take(count) {
        canvas.circle("floater", at, 3.4);
    }
}

/// Whether a place lies inside an outline: a ray to the right crosses it an odd number of times.
fn is_inside(outline: &[At], (x, y): At) -> bool {
    let next = outline.iter().cycle().skip(1);
    let crossings = outline
        .iter()
        .zip(next)
        .filter(|(a, b)| (a.1 > y) != (b.1 > y) && x < a.0 + (y - a.1) / (b.1 - a.1) * (b.0 - a.0));
    crossings.count() % 2 == 1
}

fn described(drawing: &Drawing) -> String {
    format!(
        "The outline of the walls; floaters over {:.0} % of the surface.",
        drawing.floating.percent()
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_inside_or_not() {
        let square = [(0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0)];
        assert!(is_inside(&square, (5.0, 5.0)));
        assert!(!is_inside(&square, (15.0, 5.0)));
        assert!(!is_inside(&square, (5.0, -1.0)));
    }
}
