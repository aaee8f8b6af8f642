//! A tank from the front or from the right, to scale, with its measures.

use super::above;
use super::canvas::{At, Canvas};
use super::dimension::{Beside, Measure, across, chain, upright};
use super::scale::{Frame, Scale};
use crate::design::Device;
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
/// Across from one floater to the next, and from one stem to the next, px.
const FLOATER_PX: f64 = 8.0;
const STEM_PX: f64 = 11.0;
/// How much of the depth of water plants are drawn in.
const FAST_HEIGHT: f64 = 0.72;
const SLOW_HEIGHT: f64 = 0.24;
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

    fn floaters(&mut self) {
        let [left, right] = self.surface_m();
        let slots = ((right - left) * self.scale.px_per_m() / FLOATER_PX).floor();
        let cover = self.drawing.floating.fraction().min(1.0);
        let level = self.drawing.water_level.m();
        for slot in filled(slots as usize, cover) {
            let across_m = left + (right - left) * (slot as f64 + 0.5) / slots;
            let (x, y) = self.at(across_m, level);
            self.canvas.ellipse("floater", (x, y - 1.0), (3.4, 1.7));
            self.canvas.line("root", (x, y + 1.0), (x, y + 5.0));
        }
    }

    fn plants(&mut self) {
        let (fast, slow) = match self.view.seen {
            Seen::Front => ([0.04, 0.96], [0.07, 0.93]),
            // From the right the front is on the left: low plants stand there.
            Seen::Right => ([0.4, 0.97], [0.04, 0.5]),
        };
        for across_m in self.standing(self.drawing.fast.fraction(), fast) {
            self.stem(across_m);
        }
        for across_m in self.standing(self.drawing.slow.fraction(), slow) {
            self.tuft(across_m);
        }
    }

    /// Where the plants of a group stand: as many of the places within a part of the
    /// floor as the group fills, and at least one.
    fn standing(&self, density: f64, [from, to]: [f64; 2]) -> Vec<f64> {
        let Frame { left_m, .. } = self.inside;
        let length_m = self.inside.across_m();
        let room = (to - from) * length_m * self.scale.px_per_m();
        let places = (room / STEM_PX).floor().max(1.0);
        if density <= 0.0 {
            return Vec::new();
        }
        let count = (density.min(1.0) * places).round().max(1.0) as usize;
        (0..count)
            .map(|i| {
                let share = (i as f64 + 0.5) / count as f64;
                left_m + length_m * (from + (to - from) * share)
            })
            .filter(|across_m| self.bed_m(*across_m) > 0.0)
            .collect()
    }

    /// Water over the bed at a place, px.
    fn water_px(&self, across_m: f64) -> f64 {
        (self.drawing.water_level.m() - self.bed_m(across_m)).max(0.0) * self.scale.px_per_m()
    }

    fn stem(&mut self, across_m: f64) {
        let (x, foot) = self.at(across_m, self.bed_m(across_m));
        let height = self.water_px(across_m) * FAST_HEIGHT;
        self.canvas.line("stem", (x, foot), (x, foot - height));
        let pairs = (height / 9.0).floor() as usize;
        for pair in 1..=pairs {
            let y = foot - height * pair as f64 / pairs as f64;
            self.canvas
                .polyline("leaf", &[(x - 3.5, y - 2.5), (x, y), (x + 3.5, y - 2.5)]);
        }
    }

    fn tuft(&mut self, across_m: f64) {
        let (x, foot) = self.at(across_m, self.bed_m(across_m));
        let height = self.water_px(across_m) * SLOW_HEIGHT;
        for lean in [-5.0, -2.5, 0.0, 2.5, 5.0_f64] {
            let tip = (x + lean, foot - height * (1.0 - lean.abs() / 12.0));
            self.canvas.line("blade", (x, foot), tip);
        }
    }

    fn stones(&mut self) {
        let stones = &self.drawing.stones;
        let count = stones.len() as f64;
        for (i, diameter) in stones.iter().enumerate() {
            let share = 0.1 + 0.6 * (i as f64 + 0.5) / count;
            let across_m = self.inside.left_m + self.inside.across_m() * share;
            let radius = self.scale.px(*diameter) / 2.0;
            let (x, foot) = self.at(across_m, self.bed_m(across_m));
            self.canvas.circle("stone", (x, foot - radius), radius);
        }
    }

    fn device(&mut self) {
        let Some((device, depth)) = self.drawing.device else {
            return;
        };
        let across_m = self.inside.left_m + self.inside.across_m() * 0.9;
        let level_m = self.drawing.water_level.m();
        let hangs_m = (level_m - depth.m()).max(self.bed_m(across_m));
        let (x, y) = self.at(across_m, hangs_m);
        let (_, surface) = self.at(across_m, level_m);
        let (_, rim) = self.at(across_m, self.inside.high_m);
        match device {
            Device::None => {}
            Device::AirStone => {
                self.canvas.line("tube", (x, y), (x, rim));
                self.canvas
                    .rectangle("device", (x - 4.0, y - 5.0), (8.0, 5.0));
                self.bubbles(x - 7.0, y - 4.0, surface);
            }
            Device::SpongeFilter => {
                self.canvas.line("tube", (x, y), (x, rim));
                self.canvas
                    .rectangle("device", (x - 6.0, y - 14.0), (12.0, 14.0));
                self.bubbles(x - 8.0, y - 16.0, surface);
            }
            Device::Pump => {
                self.canvas
                    .rectangle("device", (x - 6.0, y - 10.0), (12.0, 10.0));
                let jet = [(x - 8.0, y - 5.0), (x - 22.0, y - 5.0)];
                self.canvas.line("jet", jet[0], jet[1]);
                let head = [
                    (x - 18.0, y - 8.0),
                    (x - 22.0, y - 5.0),
                    (x - 18.0, y - 2.0),
                ];
                self.canvas.polyline("jet", &head);
            }
        }
    }

    fn bubbles(&mut self, x: f64, from: f64, to: f64) {
        let count = ((from - to) / 9.0).floor().max(0.0) as usize;
        for i in 0..count {
            let sway = if i % 2 == 0 { -1.5 } else { 1.5 };
            self.canvas
                .circle("bubble", (x + sway, from - 9.0 * i as f64), 1.6);
        }
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

/// Of so many slots those that a share fills, spread evenly.
fn filled(slots: usize, share: f64) -> impl Iterator<Item = usize> {
    (0..slots).filter(move |slot| {
        let before = (*slot as f64 * share + 0.5).floor();
        ((*slot + 1) as f64 * share + 0.5).floor() > before
    })
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_fills_so_many_slots() {
        for (slots, share, count) in [(20, 0.35, 7), (10, 0.0, 0), (9, 1.0, 9), (30, 0.1, 3)] {
            assert_eq!(filled(slots, share).count(), count, "{share} of {slots}");
        }
    }
}
