//! A convex patch of the plan, bounded by straight lines and circular arcs.

use super::edge::Edge;
use super::plane::PlanPoint;
use super::plane::Plane;

/// Planes nearer to zero than this over a whole region do not divide it; a picometre.
const TOUCHING_M: f64 = 1e-12;
/// Patches smaller than this, in m2, are rounding left over by a cut.
const SLIVER_M2: f64 = 1e-18;

/// A convex patch, its edges in counterclockwise order (x to the right, y to the front).
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Region {
    edges: Vec<Edge>,
}

/// Smallest and largest coordinates of a region.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Extents {
    pub(super) left_m: f64,
    pub(super) right_m: f64,
    pub(super) back_m: f64,
    pub(super) front_m: f64,
}

impl Extents {
    pub(super) fn length_m(&self) -> f64 {
        self.right_m - self.left_m
    }

    pub(super) fn width_m(&self) -> f64 {
        self.front_m - self.back_m
    }

    pub(super) fn middle(&self) -> PlanPoint {
        PlanPoint::new(
            f64::midpoint(self.left_m, self.right_m),
            f64::midpoint(self.back_m, self.front_m),
        )
    }
}

/// Area and first moments about the axes.
#[derive(Debug, Clone, Copy, Default)]
struct Moments {
    area: f64,
    of_x: f64,
    of_y: f64,
}

impl Region {
    /// The patch inside the edges, gaps bridged by straight lines; none where nothing is left.
    pub(super) fn closed(edges: &[Edge]) -> Option<Self> {
        let mut ring: Vec<Edge> = Vec::with_capacity(edges.len() + 1);
        for (i, edge) in edges.iter().enumerate() {
            let next = edges[(i + 1) % edges.len()];
            ring.push(*edge);
            ring.push(Edge::straight(edge.to, next.from));
        }
        ring.retain(|edge| edge.from != edge.to);
        let region = Self { edges: ring };
        (region.area_m2() > SLIVER_M2).then_some(region)
    }

    /// The polygon through the given points.
    pub(super) fn polygon(points: &[PlanPoint]) -> Option<Self> {
        let next = points.iter().cycle().skip(1);
        let edges: Vec<Edge> = points
            .iter()
            .zip(next)
            .map(|(&from, &to)| Edge::straight(from, to))
            .collect();
        Self::closed(&edges)
    }

    /// The disc about a point.
    pub(super) fn disc(centre: PlanPoint, radius_m: f64) -> Option<Self> {
        let left = PlanPoint::new(centre.x_m - radius_m, centre.y_m);
        let right = PlanPoint::new(centre.x_m + radius_m, centre.y_m);
        let half_turn = std::f64::consts::PI;
        let mut edges = Edge::arc(right, left, half_turn);
        edges.extend(Edge::arc(left, right, half_turn));
        Self::closed(&edges)
    }

    pub(super) fn edges(&self) -> &[Edge] {
        &self.edges
    }

    /// Points around the patch, those on an arc close enough to draw it.
    pub(super) fn points(&self) -> Vec<PlanPoint> {
        self.edges.iter().flat_map(Edge::points).collect()
    }

    /// The corners at which the edge turns by more than an angle with this sine.
    pub(super) fn corners(&self, sine: f64) -> Vec<PlanPoint> {
        let last = self.edges.iter().cycle().skip(self.edges.len().max(1) - 1);
        last.zip(&self.edges)
            .filter(|(last, next)| last.turn_sine(next) > sine)
            .map(|(_, next)| next.from)
            .collect()
    }

    pub(super) fn area_m2(&self) -> f64 {
        self.moments().area
    }

    pub(super) fn perimeter_m(&self) -> f64 {
        self.edges.iter().map(Edge::length_m).sum()
    }

    /// Integral of a plane over the region: the volume under it where it is above zero.
    pub(super) fn integral_m3(&self, plane: Plane) -> f64 {
        let moments = self.moments();
        plane.origin_m * moments.area + plane.per_x * moments.of_x + plane.per_y * moments.of_y
    }

    /// Volume between the floor and a plane, counted only where the plane is above the floor.
    pub(super) fn volume_under_m3(&self, plane: Plane) -> f64 {
        self.split(plane)
            .0
            .map_or(0.0, |part| part.integral_m3(plane))
    }

    /// The part where the plane is not below zero.
    pub(super) fn clip(&self, plane: Plane) -> Option<Self> {
        self.split(plane).0
    }

    /// The part where the plane is not below zero, and the rest.
    pub(super) fn split(&self, plane: Plane) -> (Option<Self>, Option<Self>) {
        let (low, high) = self.range(plane);
        if low >= -TOUCHING_M {
            return (Some(self.clone()), None);
        }
        if high <= TOUCHING_M {
            return (None, Some(self.clone()));
        }
        let (above, below): (Vec<Edge>, Vec<Edge>) = self
            .edges
            .iter()
            .flat_map(|edge| edge.cut(plane))
            .partition(|part| plane.at(part.at(0.5)) >= 0.0);
        (Self::closed(&above), Self::closed(&below))
    }

    /// Points among which every plane with this one's slope finds its extremes.
    pub(super) fn extreme_points(&self, plane: Plane) -> impl Iterator<Item = PlanPoint> {
        self.edges.iter().flat_map(move |edge| {
            [Some(edge.from), edge.summit(plane), edge.summit(-plane)]
                .into_iter()
                .flatten()
        })
    }

    /// Smallest and largest value of a plane over the region.
    pub(super) fn range(&self, plane: Plane) -> (f64, f64) {
        self.extreme_points(plane)
            .map(|point| plane.at(point))
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                (low.min(value), high.max(value))
            })
    }

    pub(super) fn extents(&self) -> Extents {
        let (left_m, right_m) = self.range(Plane::X);
        let (back_m, front_m) = self.range(Plane::Y);
        Extents {
            left_m,
            right_m,
            back_m,
            front_m,
        }
    }

    /// By Green's theorem: the polygon of the chords, and a circular segment on each.
    ///
    /// # Source
    /// CRC Standard Mathematical Tables, mensuration (from memory).
    fn moments(&self) -> Moments {
        let mut sum = Moments::default();
        for edge in &self.edges {
            let (a, b) = (edge.from, edge.to);
            let cross = a.x_m * b.y_m - b.x_m * a.y_m;
            let segment = edge.segment();
            sum.area += cross / 2.0 + segment.area_m2;
            sum.of_x += cross * (a.x_m + b.x_m) / 6.0 + segment.area_m2 * segment.centroid.x_m;
            sum.of_y += cross * (a.y_m + b.y_m) / 6.0 + segment.area_m2 * segment.centroid.y_m;
        }
        sum
    }
}
