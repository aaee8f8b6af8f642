//! A tank from the front or from the right, to scale, with its measures.

mod contents;

use super::above;
use super::bounds::Bounds;
use super::canvas::{At, Canvas};
use super::dimension::{Beside, DimensionSpan, across, bar, chain, upright};
use super::ends::{ALIKE_M, Side, differs_across, end_m};
use super::scale::{DrawingSize, Scale};
use crate::geometry::{Elevation, Layer, Spot, ViewSide, edges_at};
use crate::plan::Drawing;
use crate::report::document::Sheet;
use crate::units::{Length, UnitSystem};

/// Room around the walls, px: on the left for the height, with or without depths beside it,
/// on the right for depths, above the rim, and below the underside for length and scale.
struct Margins {
    left: [f64; 2],
    right: f64,
    top: f64,
    bottom: f64,
    /// From the height's line to the picture's edge.
    height: f64,
}

const fn room(size: DrawingSize) -> Margins {
    match size {
        DrawingSize::Large => Margins {
            left: [40.0, 160.0],
            right: 148.0,
            top: 10.0,
            bottom: 56.0,
            height: 26.0,
        },
        DrawingSize::Small => Margins {
            left: [30.0, 116.0],
            right: 114.0,
            top: 8.0,
            bottom: 42.0,
            height: 18.0,
        },
    }
}

/// From a wall to the measures beside it, px.
const GAP: f64 = 8.0;
/// Height of the lamp's housing, px.
const LAMP: f64 = 7.0;

/// A view with its labels.
pub(in crate::report) fn elevation(sheet: &Sheet, seen: ViewSide, scale: Scale) -> String {
    let view = match seen {
        ViewSide::Front => &sheet.drawing.front,
        ViewSide::Right => &sheet.drawing.side,
    };
    let mut picture = Picture::new(sheet, view, scale);
    picture.vessel();
    picture.far_bed();
    picture.planting();
    picture.bed();
    picture.device();
    picture.animals();
    picture.floaters();
    picture.lamp();
    picture.walls();
    picture.measures();
    picture.canvas.finish()
}

struct Picture<'a> {
    drawing: &'a Drawing,
    units: UnitSystem,
    view: &'a Elevation,
    frame: Bounds,
    inside: Bounds,
    scale: Scale,
    left: f64,
    top: f64,
    canvas: Canvas,
}

impl<'a> Picture<'a> {
    fn new(sheet: &'a Sheet, view: &'a Elevation, scale: Scale) -> Self {
        let frame = Bounds::of(&view.outer);
        let room = room(scale.size());
        let left = room.left[usize::from(differs_across(view))];
        let px = scale.px_per_m();
        let lamp_m = sheet.drawing.lamp.map_or(0.0, |lamp| {
            let over_rim = sheet.drawing.water_level + lamp - sheet.drawing.height;
            over_rim.m().max(0.0)
        });
        let top = room.top
            + if lamp_m > 0.0 {
                lamp_m * px + LAMP
            } else {
                0.0
            };
        let title = match view.seen {
            ViewSide::Front => "The tank from the front",
            ViewSide::Right => "The tank from the right, its front on the left",
        };
        Self {
            drawing: &sheet.drawing,
            units: sheet.units,
            view,
            frame,
            inside: Bounds::of(&view.inner),
            scale,
            left,
            top,
            canvas: Canvas::new(
                left + frame.across_m() * px + room.right,
                top + frame.up_m() * px + room.bottom,
                title,
                &described(sheet),
            ),
        }
    }

    fn at(&self, across_m: f64, up_m: f64) -> At {
        let px = self.scale.px_per_m();
        (
            self.left + (across_m - self.frame.left_m) * px,
            self.top + (self.frame.high_m - up_m) * px,
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
        ];
        for (class, outline) in parts {
            let places = self.places(outline);
            self.canvas.polygon(class, &places);
        }
    }

    /// The bed where it is seen behind that at the near wall.
    fn far_bed(&mut self) {
        let far = &self.view.far;
        let ends = [far.last(), far.first()].into_iter().flatten();
        let down = ends.map(|spot| Spot {
            across: spot.across,
            up: Length::ZERO,
        });
        let around: Vec<Spot> = far.iter().copied().chain(down).collect();
        if self.drawing.is_sloped() {
            let places = self.places(&around);
            self.canvas.polygon("slope", &places);
        }
    }

    /// The bed at the near wall, over the feet of what stands in it.
    fn bed(&mut self) {
        let view = self.view;
        for (class, outline) in [("soil", &view.soil), ("cap", &view.cap)] {
            let places = self.places(outline);
            self.canvas.polygon(class, &places);
        }
        if self.drawing.is_sloped() {
            let far = self.places(&view.far);
            self.canvas.polyline("far", &far);
        }
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
        let frame = Bounds::of(&at_level);
        if at_level.is_empty() {
            [self.inside.left_m, self.inside.right_m]
        } else {
            [frame.left_m, frame.right_m]
        }
    }

    /// Height of the bed's surface at a place across, from 0 at the near wall to 1 at the
    /// far one, m.
    fn bed_m(&self, across_m: f64, away: f64) -> f64 {
        let near = edges_at(&self.view.cap, Length::from_m(across_m));
        let near_m = near.map_or(0.0, |[_, top]| top.m());
        let pairs = self.view.far.windows(2);
        let mut cuts = pairs.filter_map(|pair| {
            let (from, to) = (pair[0].across.m(), pair[1].across.m());
            let share = (across_m - from) / (to - from);
            let up_m = pair[0].up.m() + (pair[1].up.m() - pair[0].up.m()) * share;
            (0.0..=1.0).contains(&share).then_some(up_m)
        });
        near_m + (cuts.next().unwrap_or(near_m) - near_m) * away
    }

    fn measures(&mut self) {
        let line = self.scale.line();
        let (units, drawing) = (self.units, self.drawing);
        let (left, low) = self.at(self.inside.left_m, self.inside.low_m);
        let (right, high) = self.at(self.inside.right_m, self.inside.high_m);
        let (outer_left, underside) = self.at(self.frame.left_m, self.frame.low_m);
        let (outer_right, _) = self.at(self.frame.right_m, self.frame.low_m);
        let length = match self.view.seen {
            ViewSide::Front => drawing.length,
            ViewSide::Right => drawing.width,
        };
        across(
            &mut self.canvas,
            (left, underside + 8.0),
            right,
            &units.dimension(length),
            line,
        );
        let bar_y = underside + 16.0 + line * 1.3;
        bar(&mut self.canvas, (left, bar_y), self.scale, units);
        upright(
            &mut self.canvas,
            (room(self.scale.size()).height, low),
            high,
            &units.dimension(drawing.height),
        );
        let measures = self.depths_at(Side::Right);
        chain(
            &mut self.canvas,
            outer_right + GAP,
            Beside::Right,
            &measures,
            line,
        );
        if differs_across(self.view) {
            let measures = self.depths_at(Side::Left);
            let x = outer_left - GAP;
            chain(&mut self.canvas, x, Beside::Left, &measures, line);
        }
    }

    /// Freeboard, water, cap and soil at one end, or the bed alone at the left one.
    fn depths_at(&self, side: Side) -> Vec<DimensionSpan> {
        let (units, drawing) = (self.units, self.drawing);
        let soil_m = end_m(&self.view.soil, side);
        let cap_m = end_m(&self.view.cap, side).max(soil_m);
        let y = |up_m: f64| self.at(0.0, up_m).1;
        let level_m = drawing.water_level.m().max(cap_m);
        let soil = extreme(units, &drawing.soil, above::SOIL, soil_m);
        let cap = extreme(units, &drawing.cap, above::CAP, cap_m - soil_m);
        let measure = |low_m: f64, high_m: f64, says: String| DimensionSpan {
            from: y(low_m),
            to: y(high_m),
            says,
        };
        if side == Side::Left {
            // named on the other side
            return vec![measure(0.0, soil_m, soil), measure(soil_m, cap_m, cap)];
        }
        let water = units.dimension(drawing.water_depth);
        let mean = if drawing.is_sloped() { "mean " } else { "" };
        let freeboard = Length::from_m(drawing.height.m() - level_m);
        vec![
            measure(0.0, soil_m, format!("soil {soil}")),
            measure(soil_m, cap_m, format!("cap {cap}")),
            measure(cap_m, level_m, format!("water {mean}{water}")),
            measure(
                level_m,
                drawing.height.m(),
                format!("freeboard {}", units.dimension(freeboard)),
            ),
        ]
    }
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
