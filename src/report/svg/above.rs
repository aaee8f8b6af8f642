//! A tank from above, to scale, with the places where its layers are thinnest and deepest.

use super::bounds::Bounds;
use super::canvas::{Anchor, At, Canvas, tenth};
use super::dimension::{across, bar, upright};
use super::garden::{self, EVEN, is_inside};
use super::leaf;
use super::scale::Scale;
use super::stone::{Face, stone};
use crate::catalogue::GrowthForm;
use crate::geometry::{FloorPlace, Spot};
use crate::plan::Drawing;
use crate::report::document::Sheet;

/// Room around the walls, px.
const LEFT: f64 = 30.0;
const RIGHT: f64 = 12.0;
const TOP: f64 = 18.0;
const BOTTOM: f64 = 62.0;
/// Lines of the list of places below, px.
const LINE: f64 = 16.0;
/// From one floater to the next, px.
const GRID: [f64; 2] = [8.0, 15.0];
/// Pictures are no narrower, so that the list of places fits.
const LEAST_WIDTH: f64 = 270.0;

/// The letters of the thinnest and the deepest place of the cap, and of the soil.
pub(super) const CAP: [&str; 2] = ["a", "b"];
pub(super) const SOIL: [&str; 2] = ["c", "d"];

/// A view with its labels.
pub(in crate::report) fn above(sheet: &Sheet, scale: Scale) -> String {
    let drawing = &sheet.drawing;
    let view = &drawing.above;
    let frame = Bounds::of(&view.outer);
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
    let metres = |across_m: f64, up_m: f64| {
        (
            LEFT + (across_m - frame.left_m) * px,
            TOP + (frame.high_m - up_m) * px,
        )
    };
    let at = |spot: &Spot| metres(spot.across.m(), spot.up.m());
    let places = |outline: &[Spot]| outline.iter().map(at).collect::<Vec<At>>();
    canvas.polygon("glass", &places(&view.outer));
    canvas.polygon("air", &places(&view.inner));
    canvas.polygon("water", &places(&view.water));
    canvas.polygon("sand", &places(&drawing.bed));
    for (i, [right_m, back_m]) in garden::stones(drawing).into_iter().enumerate() {
        let radius = drawing
            .stones
            .get(i)
            .map_or(0.0, |ball| scale.px(*ball) / 2.0);
        stone(&mut canvas, Face::Above, metres(right_m, back_m), radius, i);
    }
    for plant in garden::plants(drawing) {
        let [right_m, back_m] = plant.place_m;
        let width = plant.width_m * px;
        leaf::crown(&mut canvas, plant.form, metres(right_m, back_m), width);
    }
    if drawing.device.is_some() {
        let [right_m, back_m] = garden::device(drawing);
        let (x, y) = metres(right_m, back_m);
        canvas.rectangle("device", (x - 4.0, y - 4.0), (8.0, 8.0));
    }
    floaters(&mut canvas, &places(&view.water), drawing);
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
        scale.line(),
    );
    bar(&mut canvas, (LEFT, foot + 30.0), scale, sheet.units);
    upright(
        &mut canvas,
        (18.0, high.1),
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
    place: FloorPlace,
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
        .filter(|mark| mark.place != FloorPlace::Everywhere)
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
fn support(outline: &[At], place: FloorPlace, index: usize) -> At {
    let (dx, dy): (f64, f64) = match place {
        FloorPlace::Everywhere | FloorPlace::Middle => (0.0, 0.0),
        FloorPlace::Back => (0.0, -1.0),
        FloorPlace::Front => (0.0, 1.0),
        FloorPlace::Left => (-1.0, 0.0),
        FloorPlace::Right => (1.0, 0.0),
        FloorPlace::BackLeft => (-1.0, -1.0),
        FloorPlace::BackRight => (1.0, -1.0),
        FloorPlace::FrontLeft => (-1.0, 1.0),
        FloorPlace::FrontRight => (1.0, 1.0),
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

/// Floaters over a share of the surface, spread evenly, what is below them shining through.
fn floaters(canvas: &mut Canvas, surface: &[At], drawing: &Drawing) {
    let grid_px = GRID[usize::from(drawing.has(GrowthForm::LargeFloating))];
    let (low, high) = corners(surface);
    let columns = ((high.0 - low.0) / grid_px).floor().max(1.0);
    let rows = ((high.1 - low.1) / grid_px).floor().max(1.0);
    let (across, down) = ((high.0 - low.0) / columns, (high.1 - low.1) / rows);
    let grid = (0..rows as usize)
        .flat_map(|row| (0..columns as usize).map(move |column| (row as f64, column as f64)));
    let mut wet: Vec<(f64, At)> = grid
        .map(|(row, column)| {
            let order = (row * EVEN[0] + column * EVEN[1]).fract();
            let at = (low.0 + across * (column + 0.5), low.1 + down * (row + 0.5));
            (order, at)
        })
        .filter(|(_, at)| is_inside(surface, *at))
        .collect();
    wet.sort_by(|a, b| a.0.total_cmp(&b.0));
    let cover = drawing.floating.fraction().min(1.0);
    let count = (cover * wet.len() as f64).round() as usize;
    let dots: Vec<String> = wet
        .into_iter()
        .take(count)
        .map(|(_, (x, y))| format!("M{} {}h0", tenth(x), tenth(y)))
        .collect();
    let dots = dots.concat();
    if !dots.is_empty() {
        canvas.stroke("raft", &dots, grid_px * 0.86, [0.0; 2]);
    }
}

fn described(drawing: &Drawing) -> String {
    format!(
        "The outline of the walls; floaters over {:.0} % of the surface.",
        drawing.floating.percent()
    )
}
