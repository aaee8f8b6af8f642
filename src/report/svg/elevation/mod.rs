//! A tank from the front or from the right, to scale, with its measures.

mod contents;

use super::above;
use super::canvas::{At, Canvas};
use super::dimension::{Beside, Measure, across, chain, upright};
use super::scale::{Frame, Scale};
use crate::geometry::{Elevation, Layer, Seen, Spot, edges_at};
use crate::plan::Drawing;
use crate::report::document::Sheet;
use crate::units::{Length, UnitSystem};

/// Room for the height on the left, with or without depths beside it, px.
const LEFT: [f64; 2] = [28.0, 106.0];
/// Room for depths on the right, px.
const RIGHT: f64 = 114.0;
/// Room above the rim and below the underside, px.
const TOP: f64 = 8.0;
const BOTTOM: f64 = 26.0;
/// From a wall to the measures beside it, px.
const GAP: f64 = 8.0;
/// Depths that differ by less are shown as one, m.
const ALIKE_M: f64 = 5e-4;

/// A view with its labels.
pub(in crate::report) fn elevation(sheet: &Sheet, seen: Seen, scale: Scale) -> String {
    let view = match seen {
        Seen::Front => &sheet.drawing.front,
        Seen::Right => &sheet.drawing.side,
    };
    let mut picture = Picture::new(sheet, view, scale);
    picture.vessel();
    picture.plants();
    picture.stones();
    picture.device();
    picture.floaters();
    picture.walls();
    picture.measures();
    picture.canvas.finish()
}

struct Picture<'a> {
    drawing: &'a Drawing,
    units: UnitSystem,
    view: &'a Elevation,
    frame: Frame,
    inside: Frame,
    scale: Scale,
    left: f64,
    canvas: Canvas,
}

impl<'a> Picture<'a> {
    fn new(sheet: &'a Sheet, view: &'a Elevation, scale: Scale) -> Self {
        let frame = Frame::of(&view.outer);
        let left = LEFT[usize::from(differs_across(view))];
        let px = scale.px_per_m();
        let title = match view.seen {
            Seen::Front => "The tank from the front",
            Seen::Right => "The tank from the right, its front on the left",
        };
        Self {
            drawing: &sheet.drawing,
            units: sheet.units,
            view,
            frame,
            inside: Frame::of(&view.inner),
            scale,
            left,
            canvas: Canvas::new(
                left + frame.across_m() * px + RIGHT,
                TOP + frame.up_m() * px + BOTTOM,
                title,
                &described(sheet),
            ),
        }
    }

    fn at(&self, across_m: f64, up_m: f64) -> At {
        let px = self.scale.px_per_m();
        (
            self.left + (across_m - self.frame.left_m) * px,
            TOP + (self.frame.high_m - up_m) * px,
        )
    }

    fn places(&self, outline: &[Spot]) -> Vec<At> {
        let spots = outline.iter();
        spots
            .map(|spot| self.at(spot.across.m(), spot.up.m()))
            .collect()
    }

    fn vessel(&mut self) {
        let view = self.view;
        let parts = [
            ("glass", &view.outer),
            ("air", &view.inner),
            ("water", &view.water),
            ("soil", &view.soil),
            ("cap", &view.cap),
        ];
        for (class, outline) in parts {
            let places = self.places(outline);
            self.canvas.polygon(class, &places);
        }
        let far = self.places(&view.far);
        self.canvas.polyline("far", &far);
    }

    /// Edges over what the tank holds, and the surface.
    fn walls(&mut self) {
        for corner in &self.view.corners {
            let [low, high] = [self.inside.low_m, self.inside.high_m];
            let (from, to) = (self.at(corner.m(), low), self.at(corner.m(), high));
            self.canvas.line("corner", from, to);
        }
        let outer = self.places(&self.view.outer);
        self.canvas.polygon("edge", &outer);
        let inner = self.places(&self.view.inner);
        self.canvas.polygon("edge", &inner);
        let [left, right] = self.surface_m();
        let level = self.drawing.water_level.m();
        let (from, to) = (self.at(left, level), self.at(right, level));
        self.canvas.line("level", from, to);
    }

    /// From where to where the water's surface reaches, m.
    fn surface_m(&self) -> [f64; 2] {
        let level = self.drawing.water_level.m();
        let at_level: Vec<Spot> = self
            .view
            .water
            .iter()
            .filter(|spot| (spot.up.m() - level).abs() < ALIKE_M)
            .copied()
            .collect();
        let frame = Frame::of(&at_level);
        if at_level.is_empty() {
            [self.inside.left_m, self.inside.right_m]
        } else {
            [frame.left_m, frame.right_m]
        }
    }

    /// Height of the bed's near surface, m.
    fn bed_m(&self, across_m: f64) -> f64 {
        let edges = edges_at(&self.view.cap, Length::from_m(across_m));
        edges.map_or(0.0, |[_, top]| top.m())
    }

    fn measures(&mut self) {
        let (units, drawing) = (self.units, self.drawing);
        let (left, low) = self.at(self.inside.left_m, self.inside.low_m);
        let (right, high) = self.at(self.inside.right_m, self.inside.high_m);
        let (outer_left, underside) = self.at(self.frame.left_m, self.frame.low_m);
        let (outer_right, _) = self.at(self.frame.right_m, self.frame.low_m);
        let length = match self.view.seen {
            Seen::Front => drawing.length,
            Seen::Right => drawing.width,
        };
        across(
            &mut self.canvas,
            (left, underside + 8.0),
            right,
            &units.dimension(length),
        );
        upright(
            &mut self.canvas,
            (16.0, low),
            high,
            &units.dimension(drawing.height),
        );
        let measures = self.depths_at(Side::Right);
        chain(
            &mut self.canvas,
            outer_right + GAP,
            Beside::Right,
            &measures,
        );
        if differs_across(self.view) {
            let measures = self.depths_at(Side::Left);
            chain(&mut self.canvas, outer_left - GAP, Beside::Left, &measures);
        }
    }

    /// Freeboard, water, cap and soil at one end, or the bed alone at the left one.
    fn depths_at(&self, side: Side) -> Vec<Measure> {
        let (units, drawing) = (self.units, self.drawing);
        let soil_m = end_m(&self.view.soil, side);
        let cap_m = end_m(&self.view.cap, side).max(soil_m);
        let y = |up_m: f64| self.at(0.0, up_m).1;
        let level_m = drawing.water_level.m().max(cap_m);
        let soil = extreme(units, &drawing.soil, above::SOIL, soil_m);
        let cap = extreme(units, &drawing.cap, above::CAP, cap_m - soil_m);
        let measure = |low_m: f64, high_m: f64, says: String| Measure {
            from: y(low_m),
            to: y(high_m),
            says,
        };
        let mut measures = vec![
            measure(0.0, soil_m, format!("soil {soil}")),
            measure(soil_m, cap_m, format!("cap {cap}")),
        ];
        if side == Side::Right {
            let water = units.dimension(drawing.water_depth);
            let mean = if drawing.is_sloped() { "mean " } else { "" };
            measures.push(measure(cap_m, level_m, format!("water {mean}{water}")));
            let freeboard = Length::from_m(drawing.height.m() - level_m);
            measures.push(measure(
                level_m,
                drawing.height.m(),
                format!("freeboard {}", units.dimension(freeboard)),
            ));
        }
        measures
    }
}

/// One end of a view.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Side {
    Left,
    Right,
}

/// "35 mm", or "35 mm (a)" where it is the least or the greatest, by the letters of the
/// view from above.
fn extreme(units: UnitSystem, layer: &Layer, letters: [&str; 2], depth_m: f64) -> String {
    let shown = units.depth(Length::from_m(depth_m));
    let alike = |other: Length| (other.m() - depth_m).abs() < ALIKE_M;
    let (thinnest, deepest) = (layer.thinnest.depth, layer.deepest.depth);
    if (deepest.m() - thinnest.m()).abs() < ALIKE_M {
        shown
    } else if alike(thinnest) {
        format!("{shown} ({})", letters[0])
    } else if alike(deepest) {
        format!("{shown} ({})", letters[1])
    } else {
        shown
    }
}

/// Whether the bed is deeper at one end of the view than at the other.
fn differs_across(view: &Elevation) -> bool {
    [&view.soil, &view.cap]
        .iter()
        .any(|layer| (end_m(layer, Side::Left) - end_m(layer, Side::Right)).abs() > ALIKE_M)
}

/// Height of an outline's upper edge at one end, m.
fn end_m(outline: &[Spot], side: Side) -> f64 {
    let top = Frame::of(outline).high_m;
    let frame = Frame::of(outline);
    let end = match side {
        Side::Left => frame.left_m,
        Side::Right => frame.right_m,
    };
    let there = outline
        .iter()
        .filter(|spot| (spot.across.m() - end).abs() < ALIKE_M)
        .map(|spot| spot.up.m());
    // A layer in a bowl is widest below or above its surface, which is level.
    let straight = there.clone().count() > 1;
    if straight {
        there.fold(0.0, f64::max)
    } else {
        top.max(0.0)
    }
}

fn described(sheet: &Sheet) -> String {
    let (drawing, units) = (&sheet.drawing, sheet.units);
    let depths = |layer: &Layer| units.depths([layer.thinnest.depth, layer.deepest.depth]);
    format!(
        "Inside {} long, {} wide and {} high. Water {} deep over the bed. Soil {} deep, cap {}. Floaters over {:.0} % of the surface.",
        units.dimension(drawing.length),
        units.dimension(drawing.width),
        units.dimension(drawing.height),
        units.dimension(drawing.water_depth),
        depths(&drawing.soil),
        depths(&drawing.cap),
        drawing.floating.percent(),
    )
}
