//! Tanks and beds of random shape.

use lentic::geometry::{Bed, LayerDepth, Measured, Shape, Vessel, Wall};
use lentic::units::{Length, Volume, size::Size};
use proptest::prelude::*;

/// Lengths in cm, before they make a shape.
#[derive(Debug, Clone, Copy)]
struct Draw {
    kind: u32,
    long: f64,
    deep: f64,
    high: f64,
    /// Shares from 0 to 1.
    shares: [f64; 2],
}

fn draws() -> impl Strategy<Value = Draw> {
    draws_of(0..9)
}

fn draws_of(kinds: std::ops::Range<u32>) -> impl Strategy<Value = Draw> {
    let length = || 10.0..200.0_f64;
    (
        kinds,
        length(),
        length(),
        length(),
        [0.01..0.99, 0.01..0.99],
    )
        .prop_map(|(kind, long, deep, high, shares)| Draw {
            kind,
            long,
            deep,
            high,
            shares,
        })
}

impl Draw {
    fn shape(&self, scale: f64) -> Shape {
        let cm = |value: f64| Length::from_cm(value * scale);
        let Self {
            long, deep, shares, ..
        } = *self;
        let height = cm(self.high);
        match self.kind {
            0 => Shape::Box(Size {
                length: cm(long),
                width: cm(deep),
                height,
            }),
            1 => Shape::Cylinder {
                diameter: cm(long),
                height,
            },
            2 => Shape::BowFront {
                length: cm(long),
                width_end: cm(deep),
                width_middle: cm(deep + shares[0] * 0.5 * long),
                height,
            },
            3 => Shape::RegularPolygon {
                sides: 3_u32.saturating_add((shares[0] * 9.0) as u32),
                side: cm(long),
                height,
            },
            4 => Shape::QuarterCylinder {
                radius: cm(long),
                height,
            },
            5 => Shape::HalfCylinder {
                diameter: cm(long),
                height,
            },
            6 => Shape::CutCorner {
                length: cm(long),
                width: cm(deep),
                cut_length: cm(shares[0] * long),
                cut_width: cm(shares[1] * deep),
                height,
            },
            7 => Shape::Trapezoid {
                front: cm(long),
                back: cm(shares[0] * 200.0 + 1.0),
                width: cm(deep),
                height,
            },
            _ => Shape::Bowl {
                diameter: cm(long),
                base: cm(shares[0] * 0.98 * long),
                mouth: cm(shares[1] * 0.98 * long),
            },
        }
    }

    fn vessel(&self, scale: f64) -> Vessel {
        Vessel::new(&self.shape(scale), Measured::Inside, wall(0.2 * scale)).unwrap()
    }

    fn is_bowl(&self) -> bool {
        matches!(self.shape(1.0), Shape::Bowl { .. })
    }

    /// A depth in shares of the height: middle, and rise to the front and to the right.
    fn depth(&self, [middle, rise, right]: [f64; 3], scale: f64) -> LayerDepth {
        let at = |share: f64| Length::from_cm(self.high * share * scale);
        if self.is_bowl() {
            return LayerDepth::Uniform(at(middle.abs()));
        }
        LayerDepth::AllWalls {
            back: at(middle - rise),
            front: at(middle + rise),
            left: at(middle - right),
            right: at(middle + right),
        }
    }
}

fn wall(thickness_cm: f64) -> Wall {
    Wall {
        sides: Length::from_cm(thickness_cm),
        bottom: Length::from_cm(thickness_cm),
    }
}

fn slopes() -> impl Strategy<Value = [f64; 3]> {
    [-0.2..0.8_f64, -0.6..0.6, -0.6..0.6]
}

/// Two volumes agree to a share of a third.
fn same(left: Volume, right: Volume, share: f64, of: Volume) -> Result<(), TestCaseError> {
    let difference = (left - right).litres().abs();
    prop_assert!(
        difference <= share * of.litres(),
        "{} L and {} L differ by {difference:e} L of {} L",
        left.litres(),
        right.litres(),
        of.litres()
    );
    Ok(())
}

proptest! {
    #[test]
    fn a_tank_of_twice_the_size_holds_eight_times_as_much(
        draw in draws(), soil in slopes(), cap in slopes(), level in 0.0..1.0_f64
    ) {
        let bed = |scale| {
            let vessel = draw.vessel(scale);
            let (soil, cap) = (draw.depth(soil, scale), draw.depth(cap, scale));
            (Bed::new(&vessel, soil, cap).unwrap(), vessel)
        };
        let ((small, small_tank), (large, large_tank)) = (bed(1.0), bed(2.0));
        let brimful = large_tank.brimful();
        let level = small_tank.height() * level;
        same(small_tank.brimful() * 8.0, brimful, 1e-9, brimful)?;
        same(small_tank.shell() * 8.0, large_tank.shell(), 1e-9, brimful)?;
        same(small.soil.volume * 8.0, large.soil.volume, 1e-9, brimful)?;
        same(small.cap.volume * 8.0, large.cap.volume, 1e-9, brimful)?;
        same(small.water_below(level) * 8.0, large.water_below(level * 2.0), 1e-9, brimful)?;
        prop_assert_eq!(small.cap.thinnest.place, large.cap.thinnest.place);
        prop_assert!((small.top.slope_deg - large.top.slope_deg).abs() < 1e-9);
    }

    #[test]
    fn layers_water_and_freeboard_fill_the_tank(
        draw in draws(), soil in slopes(), cap in slopes(), level in 0.0..1.0_f64
    ) {
        let vessel = draw.vessel(1.0);
        let bed = Bed::new(&vessel, draw.depth(soil, 1.0), draw.depth(cap, 1.0)).unwrap();
        let (level, rim) = (vessel.height() * level, vessel.height());
        let brimful = vessel.brimful();
        let below = bed.soil_below(level) + bed.cap_below(level) + bed.water_below(level);
        same(below, vessel.volume_below(level), 1e-9, brimful)?;
        same(bed.volume_below(rim), bed.volume(), 1e-9, brimful)?;
        same(bed.volume() + bed.water_below(rim), brimful, 1e-9, brimful)?;
        prop_assert!(bed.top.highest.depth.m() <= rim.m() * (1.0 + 1e-9));
        if !bed.rises_above(level) {
            same(bed.volume_below(level), bed.volume(), 1e-9, brimful)?;
            prop_assert!(bed.area_above(level).cm2() < 1e-6);
        }
    }

    #[test]
    fn a_bed_holds_what_thin_columns_of_it_hold(
        draw in draws_of(0..8), soil in slopes(), cap in slopes(), level in 0.0..1.0_f64
    ) {
        let vessel = draw.vessel(1.0);
        let bed = Bed::new(&vessel, draw.depth(soil, 1.0), draw.depth(cap, 1.0)).unwrap();
        let level = vessel.height() * level;
        let summed = Columns::new(&draw, &vessel).sum(soil, cap, level.cm());
        let brimful = vessel.brimful();
        same(Volume::from_cm3(summed.plan_cm2 * draw.high), brimful, 1e-3, brimful)?;
        same(Volume::from_cm3(summed.soil_cm3), bed.soil.volume, 1e-3, brimful)?;
        same(Volume::from_cm3(summed.cap_cm3), bed.cap.volume, 1e-3, brimful)?;
        same(Volume::from_cm3(summed.water_cm3), bed.water_below(level), 1e-3, brimful)?;
        let thinnest = bed.cap.thinnest.depth.cm();
        let deepest = bed.cap.deepest.depth.cm();
        prop_assert!(thinnest <= summed.thinnest_cm + 1e-9, "{thinnest} {}", summed.thinnest_cm);
        prop_assert!(deepest >= summed.deepest_cm - 1e-9, "{deepest} {}", summed.deepest_cm);
    }

    #[test]
    fn the_sand_that_is_short_brings_the_thinnest_place_up(
        draw in draws(), soil in slopes(), cap in slopes()
    ) {
        let vessel = draw.vessel(1.0);
        let bed = Bed::new(&vessel, draw.depth(soil, 1.0), draw.depth(cap, 1.0)).unwrap();
        let brimful = vessel.brimful();
        same(bed.cap_short_of(bed.cap.thinnest.depth), Volume::ZERO, 1e-9, brimful)?;
        same(bed.cap_beyond(bed.cap.deepest.depth), Volume::ZERO, 1e-9, brimful)?;
        same(bed.cap_beyond(Length::ZERO), bed.cap.volume, 1e-9, brimful)?;
        prop_assert!(bed.cap.mean.m() <= bed.cap.deepest.depth.m() + 1e-9);
        prop_assert!(bed.cap.mean.m() >= bed.cap.thinnest.depth.m() - 1e-9);
        if !draw.is_bowl() {
            // Bringing all of it to its deepest place makes it level there.
            let level = bed.area() * bed.cap.deepest.depth;
            let filled = bed.cap.volume + bed.cap_short_of(bed.cap.deepest.depth);
            same(filled, level, 1e-9, brimful)?;
        }
    }

    #[test]
    fn a_wall_takes_from_the_outside_what_it_adds_to_the_inside(
        draw in draws(), thickness in 0.2..2.0_f64
    ) {
        let shape = draw.shape(1.0);
        let from_inside = Vessel::new(&shape, Measured::Inside, wall(thickness));
        let Ok(vessel) = from_inside else { return Ok(()) };
        prop_assert!(vessel.shell() > Volume::ZERO);
        prop_assert!(vessel.footprint() > vessel.floor_area() || draw.is_bowl());
        if let Ok(smaller) = Vessel::new(&shape, Measured::Outside, wall(thickness)) {
            prop_assert!(smaller.brimful() < vessel.brimful());
            same(smaller.brimful() + smaller.shell(), vessel.brimful(), 1e-9, vessel.brimful())?;
        }
    }

    #[test]
    fn the_oddest_tanks_accepted_still_fill_up(
        kind in 0..9_u32,
        [long, deep, high] in [-1.0..4.0_f64, -1.0..4.0, -1.0..4.0],
        shares in [0.0..1.0_f64, 0.0..1.0],
        thickness in -1.0..2.0_f64,
        soil in slopes(), cap in slopes(), level in 0.0..1.0_f64,
    ) {
        let power = |exponent: f64| 10.0_f64.powf(exponent);
        let draw = Draw { kind, long: power(long), deep: power(deep), high: power(high), shares };
        for measured in [Measured::Inside, Measured::Outside] {
            let made = Vessel::new(&draw.shape(1.0), measured, wall(power(thickness)));
            let Ok(vessel) = made else { continue };
            let brimful = vessel.brimful();
            prop_assert!(brimful > Volume::ZERO && vessel.shell() > Volume::ZERO);
            let bed = Bed::new(&vessel, draw.depth(soil, 1.0), draw.depth(cap, 1.0));
            let Ok(bed) = bed else { continue };
            let level = vessel.height() * level;
            let below = bed.volume_below(level) + bed.water_below(level);
            same(below, vessel.volume_below(level), 1e-9, brimful)?;
            prop_assert!(bed.cap.mean.m().is_finite() && bed.soil.slope_deg.is_finite());
            for pane in vessel.panes() {
                prop_assert!(pane.length <= vessel.length() + vessel.width());
            }
        }
    }

    #[test]
    fn no_dimensions_at_all_break_anything(
        kind in 0..9_u32,
        [long, deep, high] in [any::<f64>(), any::<f64>(), any::<f64>()],
        [a, b] in [any::<f64>(), any::<f64>()],
        depth in [any::<f64>(), any::<f64>(), any::<f64>()],
    ) {
        let draw = Draw { kind, long, deep, high, shares: [a, b] };
        for measured in [Measured::Inside, Measured::Outside] {
            let _ = Vessel::new(&draw.shape(1.0), measured, wall(deep)).map_err(|e| e.to_string());
        }
        let sound = Draw { kind, long: 60.0, deep: 30.0, high: 36.0, shares: [0.5, 0.5] };
        let layer = |value: f64| LayerDepth::LeftToRight {
            left: Length::from_m(value),
            right: Length::from_m(depth[2]),
        };
        let vessel = sound.vessel(1.0);
        if let Ok(bed) = Bed::new(&vessel, layer(depth[0]), layer(depth[1])) {
            prop_assert!(bed.volume().litres().is_finite());
            prop_assert!(bed.water_below(Length::from_m(long)).litres().is_finite());
        }
    }
}

/// A plan cut into columns, by inequalities of the shape and nothing of the library's.
struct Columns<'a> {
    draw: &'a Draw,
    length_cm: f64,
    width_cm: f64,
}

#[derive(Default)]
struct Summed {
    plan_cm2: f64,
    soil_cm3: f64,
    cap_cm3: f64,
    water_cm3: f64,
    thinnest_cm: f64,
    deepest_cm: f64,
}

impl<'a> Columns<'a> {
    const ACROSS: u32 = 400;
    const ALONG: u32 = 200;

    fn new(draw: &'a Draw, vessel: &Vessel) -> Self {
        Self {
            draw,
            length_cm: vessel.length().cm(),
            width_cm: vessel.width().cm(),
        }
    }

    /// From the back wall to the front at some distance from the left end.
    fn range(&self, x: f64) -> (f64, f64) {
        let Draw {
            long, deep, shares, ..
        } = *self.draw;
        let half = long / 2.0;
        match self.draw.kind {
            0 => (0.0, deep),
            1 => {
                let y = (half * half - (x - half).powi(2)).sqrt();
                (half - y, half + y)
            }
            2 => {
                let bow = shares[0] * 0.5 * long;
                let radius = (half * half + bow * bow) / (2.0 * bow);
                (
                    0.0,
                    deep + bow - radius + (radius * radius - (x - half).powi(2)).sqrt(),
                )
            }
            3 => self.polygon(x),
            4 => (0.0, (long * long - x * x).sqrt()),
            5 => (0.0, (half * half - (x - half).powi(2)).sqrt()),
            6 => {
                let into_cut = x - (1.0 - shares[0]) * long;
                let slope = shares[1] * deep / (shares[0] * long);
                (0.0, deep - slope * into_cut.max(0.0))
            }
            _ => {
                let back = shares[0] * 200.0 + 1.0;
                let middle = long.max(back) / 2.0;
                // Where the slanted end is at this distance from the middle.
                let share = ((x - middle).abs() * 2.0 - back) / (long - back);
                if back < long {
                    (deep * share.clamp(0.0, 1.0), deep)
                } else {
                    (0.0, deep * share.clamp(0.0, 1.0))
                }
            }
        }
    }

    /// Between the sides of a regular polygon, each a half-plane.
    fn polygon(&self, x: f64) -> (f64, f64) {
        let sides = 3 + (self.draw.shares[0] * 9.0) as u32;
        let turn = std::f64::consts::TAU / f64::from(sides);
        let to_side = self.draw.long / (2.0 * (turn / 2.0).tan());
        let (mut back, mut front) = (f64::NEG_INFINITY, f64::INFINITY);
        for i in 0..sides {
            let (sin, cos) = (turn * f64::from(i)).sin_cos();
            // sin (x - xc) - cos (y - yc) <= to_side, the first facing back.
            let bound = (sin * (x - self.length_cm / 2.0) - to_side) / cos + to_side;
            if cos > 1e-9 {
                back = f64::max(back, bound);
            } else if cos < -1e-9 {
                front = f64::min(front, bound);
            }
        }
        (back, front)
    }

    fn sum(&self, soil: [f64; 3], cap: [f64; 3], level_cm: f64) -> Summed {
        let mut sum = Summed {
            thinnest_cm: f64::INFINITY,
            ..Summed::default()
        };
        let step_x = self.length_cm / f64::from(Self::ACROSS);
        for i in 0..Self::ACROSS {
            let x = (f64::from(i) + 0.5) * step_x;
            let (back, front) = self.range(x);
            let step_y = (front - back).max(0.0) / f64::from(Self::ALONG);
            let area = step_x * step_y;
            for j in 0..Self::ALONG {
                let y = back + (f64::from(j) + 0.5) * step_y;
                let rim = self.draw.high;
                let soil = self.depth(soil, x, y).clamp(0.0, rim);
                let cap = self.depth(cap, x, y).max(0.0).min(rim - soil);
                sum.plan_cm2 += area;
                sum.soil_cm3 += area * soil;
                sum.cap_cm3 += area * cap;
                sum.water_cm3 += area * (level_cm - soil - cap).max(0.0);
                sum.thinnest_cm = sum.thinnest_cm.min(cap);
                sum.deepest_cm = sum.deepest_cm.max(cap);
            }
        }
        sum
    }

    fn depth(&self, [middle, rise, right]: [f64; 3], x: f64, y: f64) -> f64 {
        let across = 2.0 * x / self.length_cm - 1.0;
        let along = 2.0 * y / self.width_cm - 1.0;
        self.draw.high * (middle + rise * along + right * across)
    }
}
