//! Two layers on a plan with straight walls, divided where either is cut off.

use super::layer::{BedTop, Extreme, FloorPlace, Layer};
use super::plane::PlanPoint;
use super::plane::Plane;
use super::region::{Extents, Region};
use crate::units::{Length, Volume};

/// Depths closer than this are the same, m.
const SAME_M: f64 = 1e-9;

/// A bed as cells over which both layers change evenly.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Pile {
    cells: Vec<Cell>,
    /// Thickness asked for, before anything is cut off.
    asked: [Plane; 2],
    extents: Extents,
    area_m2: f64,
    rim_m: f64,
}

/// Part of the plan with the thickness of both layers over it.
#[derive(Debug, Clone, PartialEq)]
struct Cell {
    region: Region,
    soil: Plane,
    cap: Plane,
}

impl Cell {
    /// Height of the bed.
    fn top(&self) -> Plane {
        self.soil + self.cap
    }

    /// Divides the cell where a plane passes through zero; below zero, other layers lie.
    fn divided(self, plane: Plane, soil_below: Plane, cap_below: Plane) -> Vec<Self> {
        let (above, below) = self.region.split(plane);
        let above = above.map(|region| Self { region, ..self });
        let below = below.map(|region| Self {
            region,
            soil: soil_below,
            cap: cap_below,
        });
        above.into_iter().chain(below).collect()
    }
}

impl Pile {
    /// Lays two layers of the given thickness, cut off at the floor and at the rim.
    pub(super) fn new(plan: &Region, soil: Plane, cap: Plane, rim_m: f64) -> Self {
        let rim = Plane::level(rim_m);
        let whole = Cell {
            region: plan.clone(),
            soil,
            cap,
        };
        let cells = [whole]
            .into_iter()
            .flat_map(|cell| {
                let (soil, cap) = (cell.soil, cell.cap);
                cell.divided(soil, Plane::FLOOR, cap)
            })
            .flat_map(|cell| {
                let (soil, cap) = (cell.soil, cell.cap);
                cell.divided(cap, soil, Plane::FLOOR)
            })
            .flat_map(|cell| {
                let soil = cell.soil;
                cell.divided(rim - soil, rim, Plane::FLOOR)
            })
            .flat_map(|cell| {
                let (soil, top) = (cell.soil, cell.top());
                cell.divided(rim - top, soil, rim - soil)
            })
            .collect();
        Self {
            cells,
            asked: [soil, cap],
            extents: plan.extents(),
            area_m2: plan.area_m2(),
            rim_m,
        }
    }

    pub(super) const fn area_m2(&self) -> f64 {
        self.area_m2
    }

    pub(super) const fn rim_m(&self) -> f64 {
        self.rim_m
    }

    /// Height of the soil's surface and of the bed's at a point.
    pub(super) fn heights_m(&self, point: PlanPoint) -> [f64; 2] {
        let [soil_m, cap_m] = self.asked.map(|plane| plane.at(point).max(0.0));
        let soil_m = soil_m.min(self.rim_m);
        [soil_m, (soil_m + cap_m).min(self.rim_m)]
    }

    pub(super) fn soil(&self) -> Layer {
        self.layer(|cell| cell.soil, |cell| cell.soil)
    }

    pub(super) fn cap(&self) -> Layer {
        self.layer(|cell| cell.cap, Cell::top)
    }

    pub(super) fn top(&self) -> BedTop {
        let (lowest, highest) = self.extremes(Cell::top);
        BedTop {
            lowest,
            highest,
            mean: Length::from_m(
                self.sum(|cell| cell.region.integral_m3(cell.top())) / self.area_m2,
            ),
            slope_deg: self.slope_deg(Cell::top),
        }
    }

    pub(super) fn soil_below_m3(&self, level_m: f64) -> f64 {
        self.sum_below(level_m, |cell| cell.soil)
    }

    pub(super) fn below_m3(&self, level_m: f64) -> f64 {
        self.sum_below(level_m, Cell::top)
    }

    pub(super) fn water_m3(&self, level_m: f64) -> f64 {
        let level = Plane::level(level_m.min(self.rim_m));
        self.sum(|cell| cell.region.volume_under_m3(level - cell.top()))
    }

    pub(super) fn area_above_m2(&self, level_m: f64) -> f64 {
        let level = Plane::level(level_m);
        self.sum(|cell| {
            let (_, above) = cell.region.split(level - cell.top());
            above.map_or(0.0, |part| part.area_m2())
        })
    }

    pub(super) fn cap_short_of_m3(&self, depth_m: f64) -> f64 {
        let depth = Plane::level(depth_m);
        self.sum(|cell| cell.region.volume_under_m3(depth - cell.cap))
    }

    pub(super) fn cap_beyond_m3(&self, depth_m: f64) -> f64 {
        let depth = Plane::level(depth_m);
        self.sum(|cell| cell.region.volume_under_m3(cell.cap - depth))
    }

    fn sum(&self, of: impl Fn(&Cell) -> f64) -> f64 {
        self.cells.iter().map(of).sum()
    }

    /// Volume under a surface and below a level.
    fn sum_below(&self, level_m: f64, surface: impl Fn(&Cell) -> Plane) -> f64 {
        let level = Plane::level(level_m.max(0.0));
        self.sum(|cell| {
            let surface = surface(cell);
            cell.region.integral_m3(surface) - cell.region.volume_under_m3(surface - level)
        })
    }

    fn layer(&self, thickness: impl Fn(&Cell) -> Plane, surface: impl Fn(&Cell) -> Plane) -> Layer {
        let volume_m3 = self.sum(|cell| cell.region.integral_m3(thickness(cell)));
        let (thinnest, deepest) = self.extremes(&thickness);
        Layer {
            volume: Volume::from_m3(volume_m3),
            mean: Length::from_m(volume_m3 / self.area_m2),
            thinnest,
            deepest,
            slope_deg: self.slope_deg(surface),
            runs_out: thinnest.depth.m() < SAME_M && deepest.depth.m() > SAME_M,
        }
    }

    fn slope_deg(&self, surface: impl Fn(&Cell) -> Plane) -> f64 {
        let gradients = self.cells.iter().map(|cell| surface(cell).gradient());
        gradients.fold(0.0, f64::max).atan().to_degrees()
    }

    /// The least and the greatest value of a surface, with their places.
    fn extremes(&self, surface: impl Fn(&Cell) -> Plane) -> (Extreme, Extreme) {
        let values: Vec<(f64, PlanPoint)> = self
            .cells
            .iter()
            .flat_map(|cell| {
                let plane = surface(cell);
                let points = cell.region.extreme_points(plane);
                points.map(move |point| (plane.at(point), point))
            })
            .collect();
        let least = values.iter().map(|v| v.0).fold(f64::INFINITY, f64::min);
        let greatest = values.iter().map(|v| v.0).fold(f64::NEG_INFINITY, f64::max);
        let extreme = |depth_m: f64| {
            let there = values
                .iter()
                .filter(|(value, _)| (value - depth_m).abs() < SAME_M)
                .map(|(_, point)| *point);
            Extreme {
                depth: Length::from_m(depth_m.max(0.0)),
                place: place(&self.extents, there),
            }
        };
        (extreme(least), extreme(greatest))
    }
}

/// Words for where some points lie within a plan.
///
/// An axis is named when the middle of the points lies off the plan's middle by more
/// than a twentieth; points that span most of the plan both ways are everywhere.
fn place(extents: &Extents, points: impl Iterator<Item = PlanPoint>) -> FloorPlace {
    let (mut across, mut along) = (Span::NONE, Span::NONE);
    for point in points {
        across.add((point.x_m - extents.left_m) / extents.length_m());
        along.add((point.y_m - extents.back_m) / extents.width_m());
    }
    if across.width() > 0.9 && along.width() > 0.9 {
        return FloorPlace::Everywhere;
    }
    match (along.side(), across.side()) {
        (Side::Low, Side::Low) => FloorPlace::BackLeft,
        (Side::Low, Side::Mid) => FloorPlace::Back,
        (Side::Low, Side::High) => FloorPlace::BackRight,
        (Side::Mid, Side::Low) => FloorPlace::Left,
        (Side::Mid, Side::Mid) => FloorPlace::Middle,
        (Side::Mid, Side::High) => FloorPlace::Right,
        (Side::High, Side::Low) => FloorPlace::FrontLeft,
        (Side::High, Side::Mid) => FloorPlace::Front,
        (Side::High, Side::High) => FloorPlace::FrontRight,
    }
}

/// A part of an axis that runs from 0 to 1.
#[derive(Debug, Clone, Copy)]
struct Span {
    low: f64,
    high: f64,
}

#[derive(Debug, Clone, Copy)]
enum Side {
    Low,
    Mid,
    High,
}

impl Span {
    const NONE: Self = Self {
        low: f64::INFINITY,
        high: f64::NEG_INFINITY,
    };

    fn add(&mut self, at: f64) {
        self.low = self.low.min(at);
        self.high = self.high.max(at);
    }

    fn width(self) -> f64 {
        self.high - self.low
    }

    fn side(self) -> Side {
        let middle = f64::midpoint(self.low, self.high);
        if middle < 0.45 {
            Side::Low
        } else if middle > 0.55 {
            Side::High
        } else {
            Side::Mid
        }
    }
}
