//! What a tank with its bed looks like from the front, from the right and from above.
//!
//! Every view is a set of outlines on one sheet: across from left to right, up from the
//! inner floor; from above, up goes from the front to the back wall. Curves are given by
//! points on them, close enough that a chord strays from its arc by a thousandth of the radius.

use super::bed::{Bed, BedShape};
use super::pile::Pile;
use super::plane::PlanPoint;
use super::region::Region;
use super::spot::Spot;
use super::vessel::{Body, Vessel};
use super::zone::SphereZone;
use crate::units::Length;
use std::f64::consts::TAU;

/// Places at which a bed's surface is read along a wall.
const STATIONS: usize = 48;
/// Points on a full circle.
const CIRCLE_POINTS: usize = 96;
/// Points on each side of a bowl's wall.
const WALL_POINTS: usize = 24;
/// A point that lies this near to the line of its neighbours is left out, m.
const STRAIGHT_M: f64 = 1e-6;
/// Corners turn by more than this; joints of an arc do not.
const CORNER_SINE: f64 = 0.05;

/// From where a tank is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ViewSide {
    /// From the front: left is left.
    Front,
    /// From the right: the front is on the left.
    Right,
}

/// A tank seen level with it, its bed as it lies against the nearest wall.
#[derive(Debug, Clone, PartialEq)]
pub struct Elevation {
    /// From where.
    pub seen: ViewSide,
    /// Around the walls.
    pub outer: Vec<Spot>,
    /// Around the space inside.
    pub inner: Vec<Spot>,
    /// Around the soil.
    pub soil: Vec<Spot>,
    /// Around the cap.
    pub cap: Vec<Spot>,
    /// Around the water over the cap.
    pub water: Vec<Spot>,
    /// The surface of the bed at the far wall, left to right.
    pub far: Vec<Spot>,
    /// Where two flat walls meet on the near side.
    pub corners: Vec<Length>,
}

/// A tank seen from above.
#[derive(Debug, Clone, PartialEq)]
pub struct Above {
    /// Around the walls.
    pub outer: Vec<Spot>,
    /// Around the space inside at its widest.
    pub inner: Vec<Spot>,
    /// Around the water's surface.
    pub water: Vec<Spot>,
    /// Around the floor.
    pub floor: Vec<Spot>,
}

impl Bed {
    /// The tank with this bed seen from a side, the water standing at a level.
    ///
    /// # Example
    /// ```
    /// use lentic::geometry::{Bed, LayerDepth, Measured, ViewSide, Shape, Vessel, Wall};
    /// use lentic::units::{Length, size::Size};
    /// let cm = Length::from_cm;
    /// let shape = Shape::Box(Size::parse("60 x 30 x 36 cm")?);
    /// let wall = Wall { sides: cm(0.6), bottom: cm(0.6) };
    /// let vessel = Vessel::new(&shape, Measured::Inside, wall)?;
    /// let slope = LayerDepth::BackToFront { back: cm(8.0), front: cm(3.0) };
    /// let bed = Bed::new(&vessel, slope, LayerDepth::Uniform(cm(4.0)))?;
    /// let side = bed.elevation(&vessel, ViewSide::Right, cm(33.0));
    /// let ups: Vec<f64> = side.soil.iter().map(|spot| spot.up.cm().round()).collect();
    /// assert_eq!(ups, [0.0, 0.0, 8.0, 3.0]); // floor at front and back, then soil at back and front
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn elevation(&self, vessel: &Vessel, seen: ViewSide, level: Length) -> Elevation {
        match (vessel.inside(), vessel.outside(), &self.form) {
            (
                Body::Prism { plan, height_m },
                Body::Prism { plan: outer, .. },
                BedShape::Pile(pile),
            ) => {
                let walls = Walls {
                    plan: Silhouette::of(plan, seen),
                    outer: Silhouette::of(outer, seen),
                    height_m: *height_m,
                    bottom_m: vessel.wall().bottom.m(),
                };
                walls.elevation(pile, seen, level.m())
            }
            (Body::Zone(inner), Body::Zone(outer), BedShape::Bowl { soil_m, top_m, .. }) => {
                bowl(*inner, *outer, seen, [*soil_m, *top_m, level.m()])
            }
            // A bed lies in the vessel that it was laid in.
            _ => Elevation::blank(seen),
        }
    }
}

impl Vessel {
    /// The vessel seen from above, the water standing at a level.
    pub fn above(&self, level: Length) -> Above {
        match (self.inside(), self.outside()) {
            (Body::Zone(inner), Body::Zone(outer)) => {
                let middle_m = inner.widest_m() / 2.0;
                let ring = |radius_m| circle(middle_m, radius_m);
                Above {
                    outer: ring(outer.widest_m() / 2.0),
                    inner: ring(middle_m),
                    water: ring(inner.reach_m(self.inside().within(level))),
                    floor: ring(inner.reach_m(0.0)),
                }
            }
            (Body::Prism { plan, .. }, Body::Prism { plan: outer, .. }) => {
                let front_m = plan.extents().front_m;
                let left_m = plan.extents().left_m;
                let around = |region: &Region| {
                    let points = region.points().into_iter();
                    points
                        .map(|point| spot(point.x_m - left_m, front_m - point.y_m))
                        .collect::<Vec<_>>()
                };
                Above {
                    outer: around(outer),
                    inner: around(plan),
                    water: around(plan),
                    floor: around(plan),
                }
            }
            _ => Above {
                outer: Vec::new(),
                inner: Vec::new(),
                water: Vec::new(),
                floor: Vec::new(),
            },
        }
    }
}

impl Elevation {
    const fn blank(seen: ViewSide) -> Self {
        Self {
            seen,
            outer: Vec::new(),
            inner: Vec::new(),
            soil: Vec::new(),
            cap: Vec::new(),
            water: Vec::new(),
            far: Vec::new(),
            corners: Vec::new(),
        }
    }
}

const fn spot(across_m: f64, up_m: f64) -> Spot {
    Spot {
        across: Length::from_m(across_m),
        up: Length::from_m(up_m),
    }
}

/// A plan turned to a viewer, who sees what is nearest at each place across.
struct Silhouette {
    seen: ViewSide,
    /// The plan's points: across, and how near.
    around: Vec<(f64, f64)>,
    corners: Vec<(f64, f64)>,
}

impl Silhouette {
    fn of(plan: &Region, seen: ViewSide) -> Self {
        let turned = |point: PlanPoint| match seen {
            ViewSide::Front => (point.x_m, point.y_m),
            ViewSide::Right => (-point.y_m, point.x_m),
        };
        Self {
            seen,
            around: plan.points().into_iter().map(turned).collect(),
            corners: plan.corners(CORNER_SINE).into_iter().map(turned).collect(),
        }
    }

    fn span(&self) -> [f64; 2] {
        let across = self.around.iter().map(|place| place.0);
        [
            across.clone().fold(f64::INFINITY, f64::min),
            across.fold(f64::NEG_INFINITY, f64::max),
        ]
    }

    /// The far and the near wall at a place across.
    fn walls(&self, across: f64) -> [f64; 2] {
        let next = self.around.iter().cycle().skip(1);
        let mut walls = [f64::INFINITY, f64::NEG_INFINITY];
        for (&a, &b) in self.around.iter().zip(next) {
            let (low, high) = if a.0 <= b.0 { (a, b) } else { (b, a) };
            if across < low.0 || across > high.0 {
                continue;
            }
            let run = high.0 - low.0;
            let ends = if run > 0.0 {
                let near = low.1 + (high.1 - low.1) * (across - low.0) / run;
                [near, near]
            } else {
                [low.1, high.1]
            };
            for near in ends {
                walls = [walls[0].min(near), walls[1].max(near)];
            }
        }
        walls
    }

    /// Where on the plan a place on the sheet is.
    fn point(&self, across: f64, near: f64) -> PlanPoint {
        match self.seen {
            ViewSide::Front => PlanPoint::new(across, near),
            ViewSide::Right => PlanPoint::new(near, -across),
        }
    }

    /// Places across at which a surface may bend, and others between.
    fn stations(&self) -> Vec<f64> {
        let [left, right] = self.span();
        let even = (0..=STATIONS).map(|i| left + (right - left) * i as f64 / STATIONS as f64);
        let mut stations: Vec<f64> = even
            .chain(self.around.iter().map(|place| place.0))
            .collect();
        stations.sort_by(f64::total_cmp);
        stations.dedup_by(|a, b| (*a - *b).abs() < STRAIGHT_M);
        stations
    }
}

/// Straight walls seen from a side.
struct Walls {
    plan: Silhouette,
    outer: Silhouette,
    height_m: f64,
    bottom_m: f64,
}

/// Which wall a surface is read along.
#[derive(Clone, Copy)]
enum Along {
    Far = 0,
    Near = 1,
}

impl Walls {
    fn elevation(&self, pile: &Pile, seen: ViewSide, level_m: f64) -> Elevation {
        let [left, right] = self.plan.span();
        let [outer_left, outer_right] = self.outer.span().map(|across| across - left);
        let level_m = level_m.clamp(0.0, self.height_m);
        let soil = self.surface(Along::Near, |point| pile.heights_m(point)[0]);
        let top = self.surface(Along::Near, |point| pile.heights_m(point)[1]);
        let ends = [0.0, right - left];
        let floor = ends.map(|across| (across, 0.0));
        let water = ends.map(|across| (across, level_m));
        let under = |surface: &[(f64, f64)]| {
            let capped = surface
                .iter()
                .map(|&(across, up)| (across, up.min(level_m)));
            straightened(&capped.collect::<Vec<_>>())
        };
        Elevation {
            seen,
            outer: rectangle([outer_left, -self.bottom_m], [outer_right, self.height_m]),
            inner: rectangle([0.0, 0.0], [right - left, self.height_m]),
            soil: between(&floor, &straightened(&soil)),
            cap: between(&straightened(&soil), &straightened(&top)),
            water: between(&under(&top), &water),
            far: spots(&straightened(
                &self.surface(Along::Far, |point| pile.heights_m(point)[1]),
            )),
            corners: self.corners(left),
        }
    }

    /// Heights along a wall, from the left.
    fn surface(&self, along: Along, height_m: impl Fn(PlanPoint) -> f64) -> Vec<(f64, f64)> {
        let [left, _] = self.plan.span();
        let stations = self.plan.stations().into_iter();
        stations
            .map(|across| {
                let near = self.plan.walls(across)[along as usize];
                (across - left, height_m(self.plan.point(across, near)))
            })
            .collect()
    }

    fn corners(&self, left: f64) -> Vec<Length> {
        let [_, right] = self.plan.span();
        let mut corners: Vec<f64> = self
            .plan
            .corners
            .iter()
            .filter(|corner| {
                let inside = corner.0 > left + STRAIGHT_M && corner.0 < right - STRAIGHT_M;
                inside && (self.plan.walls(corner.0)[1] - corner.1).abs() < STRAIGHT_M
            })
            .map(|corner| corner.0 - left)
            .collect();
        corners.sort_by(f64::total_cmp);
        corners.into_iter().map(Length::from_m).collect()
    }
}

/// A bowl, which looks alike from all sides: its layers up to the soil's and the bed's
/// surface and the water's level.
fn bowl(inner: SphereZone, outer: SphereZone, seen: ViewSide, levels_m: [f64; 3]) -> Elevation {
    let middle_m = inner.widest_m() / 2.0;
    let height_m = inner.height_m();
    let [soil_m, top_m, level_m] = levels_m;
    let layer = |low_m: f64, high_m: f64| zone_outline(&inner, middle_m, 0.0, [low_m, high_m]);
    let drop_m = inner.floor_m - outer.floor_m;
    let top = [-1.0, 1.0].map(|side| (middle_m + side * inner.reach_m(top_m), top_m));
    Elevation {
        seen,
        outer: zone_outline(&outer, middle_m, drop_m, [0.0, outer.height_m()]),
        inner: layer(0.0, height_m),
        soil: layer(0.0, soil_m),
        cap: layer(soil_m, top_m),
        water: layer(top_m, level_m.clamp(top_m, height_m.max(top_m))),
        far: spots(&top),
        corners: Vec::new(),
    }
}

/// Around a slice of a sphere between two levels over its floor, up the left wall and
/// down the right.
fn zone_outline(zone: &SphereZone, middle_m: f64, drop_m: f64, [low, high]: [f64; 2]) -> Vec<Spot> {
    let level = |i: usize| low + (high - low) * i as f64 / WALL_POINTS as f64;
    let wall = |i: usize, side: f64| {
        let level_m = level(i);
        spot(middle_m + side * zone.reach_m(level_m), level_m - drop_m)
    };
    let left = (0..=WALL_POINTS).map(|i| wall(i, -1.0));
    let right = (0..=WALL_POINTS).rev().map(|i| wall(i, 1.0));
    left.chain(right).collect()
}

fn circle(middle_m: f64, radius_m: f64) -> Vec<Spot> {
    let points = 0..CIRCLE_POINTS;
    points
        .map(|i| {
            let (sin, cos) = (TAU * i as f64 / CIRCLE_POINTS as f64).sin_cos();
            spot(middle_m + radius_m * cos, middle_m + radius_m * sin)
        })
        .collect()
}

fn rectangle([left, low]: [f64; 2], [right, high]: [f64; 2]) -> Vec<Spot> {
    vec![
        spot(left, low),
        spot(right, low),
        spot(right, high),
        spot(left, high),
    ]
}

/// Around what lies between a lower and an upper surface, both from the left.
fn between(low: &[(f64, f64)], high: &[(f64, f64)]) -> Vec<Spot> {
    let ring: Vec<(f64, f64)> = low.iter().chain(high.iter().rev()).copied().collect();
    spots(&ring)
}

fn spots(places: &[(f64, f64)]) -> Vec<Spot> {
    places
        .iter()
        .map(|&(across, up)| spot(across, up))
        .collect()
}

/// A line without the points that lie on the line of their neighbours.
fn straightened(line: &[(f64, f64)]) -> Vec<(f64, f64)> {
    let mut kept: Vec<(f64, f64)> = Vec::new();
    for (i, &place) in line.iter().enumerate() {
        let on_line = kept
            .last()
            .zip(line.get(i + 1))
            .is_some_and(|(last, next)| {
                let share = (place.0 - last.0) / (next.0 - last.0);
                (last.1 + share * (next.1 - last.1) - place.1).abs() < STRAIGHT_M
            });
        if !on_line {
            kept.push(place);
        }
    }
    kept
}
