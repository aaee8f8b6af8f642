//! The outline of each shape on the plan, at its dimensions or a wall further out or in.

use super::edge::Edge;
use super::plane::PlanPoint;
use super::plane::Plane;
use super::region::Region;
use super::shape::Shape;
use std::f64::consts::PI;

impl Shape {
    /// The outline moved outwards by a distance (inwards where that is below zero), the
    /// corners kept sharp; none where nothing is left. A bowl has none.
    pub(super) fn outline(&self, growth_m: f64) -> Option<Region> {
        match *self {
            Self::Box(size) => moved_polygon(&rectangle(size.length.m(), size.width.m()), growth_m),
            Self::Cylinder { diameter, .. } => {
                let radius_m = diameter.m() / 2.0;
                disc(PlanPoint::new(radius_m, radius_m), radius_m + growth_m)
            }
            Self::BowFront {
                length,
                width_end,
                width_middle,
                ..
            } => bow_front(length.m(), width_end.m(), width_middle.m(), growth_m),
            Self::RegularPolygon { sides, side, .. } => {
                moved_polygon(&regular_polygon(sides, side.m()), growth_m)
            }
            Self::QuarterCylinder { radius, .. } => {
                disc(PlanPoint::new(0.0, 0.0), radius.m() + growth_m)?
                    .clip(Plane::X + Plane::level(growth_m))?
                    .clip(Plane::Y + Plane::level(growth_m))
            }
            Self::HalfCylinder { diameter, .. } => {
                let radius_m = diameter.m() / 2.0;
                disc(PlanPoint::new(radius_m, 0.0), radius_m + growth_m)?
                    .clip(Plane::Y + Plane::level(growth_m))
            }
            Self::CutCorner {
                length,
                width,
                cut_length,
                cut_width,
                ..
            } => {
                let [back_left, back_right, _, front_left] = rectangle(length.m(), width.m());
                let corners = [
                    back_left,
                    back_right,
                    PlanPoint::new(length.m(), (width - cut_width).m()),
                    PlanPoint::new((length - cut_length).m(), width.m()),
                    front_left,
                ];
                moved_polygon(&corners, growth_m)
            }
            Self::Trapezoid {
                front, back, width, ..
            } => {
                let middle_m = front.max(back).m() / 2.0;
                let (front_m, back_m) = (front.m() / 2.0, back.m() / 2.0);
                let corners = [
                    PlanPoint::new(middle_m - back_m, 0.0),
                    PlanPoint::new(middle_m + back_m, 0.0),
                    PlanPoint::new(middle_m + front_m, width.m()),
                    PlanPoint::new(middle_m - front_m, width.m()),
                ];
                moved_polygon(&corners, growth_m)
            }
            Self::Bowl { .. } => None,
        }
    }
}

fn disc(centre: PlanPoint, radius_m: f64) -> Option<Region> {
    (radius_m > 0.0).then(|| Region::disc(centre, radius_m))?
}

/// Back left, back right, front right, front left.
fn rectangle(length_m: f64, width_m: f64) -> [PlanPoint; 4] {
    [
        PlanPoint::new(0.0, 0.0),
        PlanPoint::new(length_m, 0.0),
        PlanPoint::new(length_m, width_m),
        PlanPoint::new(0.0, width_m),
    ]
}

/// Corners of a regular polygon, the first two at the ends of its back wall.
fn regular_polygon(sides: u32, side_m: f64) -> Vec<PlanPoint> {
    let half_step = PI / f64::from(sides);
    let corner_radius_m = side_m / (2.0 * half_step.sin());
    let centre_to_side_m = side_m / (2.0 * half_step.tan());
    let corner = |i: u32| {
        let turn = half_step * f64::from(2 * i);
        let (sin, cos) = (turn - half_step).sin_cos();
        PlanPoint::new(
            corner_radius_m * sin,
            centre_to_side_m - corner_radius_m * cos,
        )
    };
    let corners: Vec<PlanPoint> = (0..sides).map(corner).collect();
    let left_m = corners.iter().map(|p| p.x_m).fold(0.0, f64::min);
    corners
        .iter()
        .map(|p| PlanPoint::new(p.x_m - left_m, p.y_m))
        .collect()
}

/// A convex polygon with every side moved outwards by the same distance.
///
/// Outwards a corner moves along its bisector; inwards a short side may vanish, so
/// the sides are cut off one by one.
fn moved_polygon(corners: &[PlanPoint], growth_m: f64) -> Option<Region> {
    let region = Region::polygon(corners)?;
    if growth_m < 0.0 {
        return region
            .edges()
            .iter()
            .try_fold(region.clone(), |left, side| {
                left.clip(Plane::left_of(side.from, side.to) + Plane::level(growth_m))
            });
    }
    let sides = region.edges();
    let moved: Vec<PlanPoint> = sides
        .iter()
        .zip(sides.iter().cycle().skip(sides.len() - 1))
        .map(|(next, last)| mitre(last, next, growth_m))
        .collect();
    Region::polygon(&moved)
}

/// The corner between two sides after both have moved outwards.
fn mitre(last: &Edge, next: &Edge, growth_m: f64) -> PlanPoint {
    let a = Plane::left_of(last.from, last.to);
    let b = Plane::left_of(next.from, next.to);
    let scale = growth_m / (1.0 + a.per_x * b.per_x + a.per_y * b.per_y);
    PlanPoint::new(
        next.from.x_m - scale * (a.per_x + b.per_x),
        next.from.y_m - scale * (a.per_y + b.per_y),
    )
}

/// A bow front, its back and ends moved outwards and its arc given a larger radius.
///
/// ```text
/// R = (c2/4 + s2) / (2 s)             radius of the bow, c its chord, s how far it stands out
/// s' = h2 / (r + sqrt((r-h)(r+h)))    after moving: r = R + g, h = c/2 + g
/// sweep = 4 atan(s'/h)
/// ```
///
/// # Source
/// CRC Standard Mathematical Tables, circular segment (from memory).
fn bow_front(length_m: f64, end_m: f64, middle_m: f64, growth_m: f64) -> Option<Region> {
    let (half_m, bow_m) = (length_m / 2.0, middle_m - end_m);
    // Infinite for a straight front, which the formulas below carry through.
    let radius_m = (half_m * half_m + bow_m * bow_m) / (2.0 * bow_m) + growth_m;
    let spare_m = (half_m - bow_m) * (half_m - bow_m) / (2.0 * bow_m);
    let moved_half_m = half_m + growth_m;
    let moved_bow_m =
        moved_half_m * moved_half_m / (radius_m + (spare_m * (radius_m + moved_half_m)).sqrt());
    let moved_end_m = middle_m + growth_m - moved_bow_m;
    if moved_half_m <= 0.0 || moved_end_m <= -growth_m {
        return None;
    }
    let (left_m, right_m) = (-growth_m, length_m + growth_m);
    let back_left = PlanPoint::new(left_m, -growth_m);
    let back_right = PlanPoint::new(right_m, -growth_m);
    let front_right = PlanPoint::new(right_m, moved_end_m);
    let front_left = PlanPoint::new(left_m, moved_end_m);
    let mut edges = vec![
        Edge::straight(back_left, back_right),
        Edge::straight(back_right, front_right),
    ];
    edges.extend(Edge::arc(
        front_right,
        front_left,
        4.0 * (moved_bow_m / moved_half_m).atan(),
    ));
    Region::closed(&edges)
}
