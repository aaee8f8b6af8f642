//! What stands, floats and hangs in a tank seen from a side.

use super::Picture;
use crate::design::Device;
use crate::geometry::Seen;
use crate::report::svg::scale::Frame;

/// Across from one floater to the next, and from one stem to the next, px.
const FLOATER_PX: f64 = 8.0;
const STEM_PX: f64 = 11.0;
/// How much of the depth of water plants are drawn in.
const FAST_HEIGHT: f64 = 0.72;
const SLOW_HEIGHT: f64 = 0.24;

impl Picture<'_> {
    pub(super) fn floaters(&mut self) {
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

    pub(super) fn plants(&mut self) {
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

    pub(super) fn stones(&mut self) {
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

    pub(super) fn device(&mut self) {
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
