//! What stands, floats and hangs in a tank seen from a side.

use super::{LAMP, Picture};
use crate::catalogue::GrowthForm;
use crate::design::FlowDevice;
use crate::geometry::ViewSide;
use crate::plan::Build;
use crate::report::svg::canvas::tenth;
use crate::report::svg::creature::creature;
use crate::report::svg::garden::{self, EVEN, Placed};
use crate::report::svg::leaf;
use crate::report::svg::stone::{Face, stone};

/// Across from one floater to the next, of small and of large ones, px.
const FLOATER_PX: [f64; 2] = [7.0, 14.0];
/// How tall neighbours are of the height of their form.
const UNEVEN: [f64; 5] = [1.0, 0.88, 0.95, 0.8, 0.92];
/// Animals of a kind that are drawn at most.
const MOST_OF_A_KIND: u32 = 14;

impl Picture<'_> {
    pub(super) fn floaters(&mut self) {
        let [left, right] = self.surface_m();
        let is_large = self.drawing.has(GrowthForm::LargeFloating);
        let apart = FLOATER_PX[usize::from(is_large)];
        let slots = ((right - left) * self.scale.px_per_m() / apart).floor();
        let cover = self.drawing.floating.fraction().min(1.0);
        let level = self.drawing.water_level.m();
        let (half, root) = (apart * 0.3, if is_large { 11.0 } else { 4.0 });
        let (mut leaves, mut roots) = (Vec::new(), Vec::new());
        for slot in filled(slots as usize, cover) {
            let across_m = left + (right - left) * (slot as f64 + 0.5) / slots;
            let (x, y) = self.at(across_m, level);
            let (from, to) = (tenth(x - half), tenth(half * 2.0));
            leaves.push(format!("M{from} {}h{to}", tenth(y - 1.0)));
            let (near, far) = (tenth(x - half * 0.4), tenth(x + half * 0.5));
            let below = tenth(y + 1.0);
            let short = tenth(root * 0.8);
            roots.push(format!("M{near} {below}v{root}M{far} {below}v{short}"));
        }
        if !leaves.is_empty() {
            self.canvas.path("root", &roots.concat());
            self.canvas
                .stroke("floater", &leaves.concat(), apart * 0.32, [0.0; 2]);
        }
    }

    /// Stones, and plants from the far wall to the near one.
    pub(super) fn planting(&mut self) {
        let plants = garden::plants(self.drawing);
        let away = |plant: &Placed| match self.view.seen {
            ViewSide::Front => plant.back,
            ViewSide::Right => 1.0 - plant.right,
        };
        let mut far_first = plants.clone();
        far_first.sort_by(|a, b| away(b).total_cmp(&away(a)));
        let halfway = far_first.partition_point(|plant| away(plant) > 0.5);
        for (i, plant) in far_first.iter().enumerate() {
            if i == halfway {
                self.stones();
            }
            self.plant(plant, away(plant), i);
        }
        if halfway == far_first.len() {
            self.stones();
        }
    }

    /// How far across a place is, m.
    fn across_m(&self, [right_m, back_m]: [f64; 2]) -> f64 {
        match self.view.seen {
            ViewSide::Front => right_m,
            ViewSide::Right => back_m,
        }
    }

    fn plant(&mut self, plant: &Placed, away: f64, variant: usize) {
        let across_m = self.across_m(plant.place_m);
        let bed_m = self.bed_m(across_m, away);
        let depth_m = (self.drawing.water_level.m() - bed_m).max(0.0);
        let (x, y) = self.at(across_m, bed_m);
        let px = self.scale.px_per_m();
        // roots hold it, so that none stands on the line of the bed
        let foot = (x, y + 2.0);
        let tall = plant.height_m(depth_m) * UNEVEN[variant % UNEVEN.len()];
        let size = (plant.width_m * px, tall * px + 2.0);
        leaf::plant(&mut self.canvas, plant.form, foot, size, variant);
    }

    fn stones(&mut self) {
        let face = match self.view.seen {
            ViewSide::Front => Face::Front,
            ViewSide::Right => Face::Side,
        };
        for (i, place) in garden::stones(self.drawing).into_iter().enumerate() {
            let Some(diameter) = self.drawing.stones.get(i) else {
                return;
            };
            let radius = self.scale.px(*diameter) / 2.0;
            let across_m = self.across_m(place);
            let (x, foot) = self.at(across_m, self.bed_m(across_m, 0.5));
            let middle = (x, foot - radius * face.axes().1 * 0.9);
            stone(&mut self.canvas, face, middle, radius, i);
        }
    }

    /// Fish in the open water, others on the bed.
    pub(super) fn animals(&mut self) {
        let level_m = self.drawing.water_level.m();
        let mut placed = 0;
        for herd in &self.drawing.animals {
            for _ in 0..herd.count.min(MOST_OF_A_KIND) {
                placed += 1;
                let [right, up] = EVEN.map(|step| (step * f64::from(placed) + 0.2).fract());
                let across_m = self.inside.left_m + self.inside.across_m() * (0.12 + 0.7 * right);
                let bed_m = self.bed_m(across_m, 0.0);
                let over_bed = match herd.build {
                    Build::Fish => (level_m - bed_m).max(0.0) * (0.3 + 0.5 * up),
                    Build::Shrimp | Build::Snail => 0.0,
                };
                let at = self.at(across_m, bed_m + over_bed);
                let length = self.scale.px(herd.length);
                creature(&mut self.canvas, herd.build, at, length, placed % 3 != 0);
            }
        }
    }

    /// The lamp in its height over the water; how wide it is, nothing tells.
    pub(super) fn lamp(&mut self) {
        let Some(lamp) = self.drawing.lamp else {
            return;
        };
        let up_m = self.drawing.water_level.m() + lamp.m();
        let middle_m = f64::midpoint(self.inside.left_m, self.inside.right_m);
        let half_m = self.inside.across_m() * 0.3;
        let (left, y) = self.at(middle_m - half_m, up_m);
        let (right, _) = self.at(middle_m + half_m, up_m);
        self.canvas
            .rectangle("device", (left, y - LAMP), (right - left, LAMP - 2.0));
        self.canvas
            .rectangle("lamp", (left, y - 2.0), (right - left, 2.0));
    }

    pub(super) fn device(&mut self) {
        let Some((device, depth)) = self.drawing.device else {
            return;
        };
        let across_m = self.across_m(garden::device(self.drawing));
        let level_m = self.drawing.water_level.m();
        let hangs_m = (level_m - depth.m()).max(self.bed_m(across_m, 0.5));
        let (x, y) = self.at(across_m, hangs_m);
        let (_, surface) = self.at(across_m, level_m);
        let (_, rim) = self.at(across_m, self.inside.high_m);
        match device {
            FlowDevice::None => {}
            FlowDevice::AirStone => {
                self.canvas.line("tube", (x, y), (x, rim));
                self.canvas
                    .rectangle("device", (x - 4.0, y - 5.0), (8.0, 5.0));
                self.bubbles(x - 7.0, y - 4.0, surface);
            }
            FlowDevice::SpongeFilter => {
                self.canvas.line("tube", (x, y), (x, rim));
                self.canvas
                    .rectangle("device", (x - 6.0, y - 14.0), (12.0, 14.0));
                self.bubbles(x - 8.0, y - 16.0, surface);
            }
            FlowDevice::Pump => {
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
        let bubble = |i: usize| {
            let sway = if i.is_multiple_of(2) { -1.5 } else { 1.5 };
            let (x, y) = (tenth(x + sway - 1.6), tenth(from - 9.0 * i as f64));
            format!("M{x} {y}a1.6 1.6 0 1 1 0 .1z")
        };
        let bubbles: String = (0..count).map(bubble).collect();
        if !bubbles.is_empty() {
            self.canvas.path("bubble", &bubbles);
        }
    }
}

/// Of so many slots those that a share fills, spread evenly.
fn filled(slots: usize, share: f64) -> impl Iterator<Item = usize> {
    (0..slots).filter(move |slot| {
        let before = (*slot as f64 * share + 0.5).floor();
        ((*slot + 1) as f64 * share + 0.5).floor() > before
    })
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
