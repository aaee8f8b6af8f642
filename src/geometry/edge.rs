//! One edge of a plan: a straight line or a circular arc bulging outwards.
//!
//! An arc is its chord and its curvature, so that a straight line is the arc
//! of curvature zero and a nearly flat bow loses no digits to a far-off centre.

use super::plane::{PlanPoint, Plane};
use std::f64::consts::FRAC_PI_2;

/// Pieces that an arc of up to a quarter turn is drawn in.
const ARC_PIECES: u32 = 24;

/// From one point to the next, counterclockwise about the region.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Edge {
    pub(super) from: PlanPoint,
    pub(super) to: PlanPoint,
    /// 1/radius, per m.
    curvature: f64,
}

/// What lies between an arc and its chord.
#[derive(Debug, Clone, Copy)]
pub(super) struct Segment {
    pub(super) area_m2: f64,
    pub(super) centroid: PlanPoint,
}

impl Edge {
    pub(super) const fn straight(from: PlanPoint, to: PlanPoint) -> Self {
        Self {
            from,
            to,
            curvature: 0.0,
        }
    }

    /// An arc of up to a full turn less a little, in pieces of a quarter turn or less.
    pub(super) fn arc(from: PlanPoint, to: PlanPoint, sweep: f64) -> Vec<Self> {
        let chord = Self::straight(from, to);
        if sweep <= FRAC_PI_2 * 1.001 {
            let curvature = 2.0 * (sweep / 2.0).sin() / chord.chord_m();
            return vec![Self { curvature, ..chord }];
        }
        let sagitta_m = chord.chord_m() / 2.0 * (sweep / 4.0).tan();
        let apex = chord.middle().shifted(chord.outward(), sagitta_m);
        let mut pieces = Self::arc(from, apex, sweep / 2.0);
        pieces.extend(Self::arc(apex, to, sweep / 2.0));
        pieces
    }

    pub(super) fn is_straight(&self) -> bool {
        self.curvature <= 0.0
    }

    pub(super) fn chord_m(&self) -> f64 {
        self.from.distance_m(self.to)
    }

    /// Angle between the tangents at the two ends.
    fn sweep(&self) -> f64 {
        2.0 * (self.curvature * self.chord_m() / 2.0).min(1.0).asin()
    }

    pub(super) fn length_m(&self) -> f64 {
        if self.is_straight() {
            self.chord_m()
        } else {
            self.sweep() / self.curvature
        }
    }

    /// Middle of the chord.
    fn middle(&self) -> PlanPoint {
        PlanPoint::new(
            f64::midpoint(self.from.x_m, self.to.x_m),
            f64::midpoint(self.from.y_m, self.to.y_m),
        )
    }

    /// Unit vector along the chord.
    fn along(&self) -> PlanPoint {
        let chord_m = self.chord_m();
        PlanPoint::new(
            (self.to.x_m - self.from.x_m) / chord_m,
            (self.to.y_m - self.from.y_m) / chord_m,
        )
    }

    /// Unit vector square to the chord, out of the region.
    fn outward(&self) -> PlanPoint {
        let along = self.along();
        PlanPoint::new(along.y_m, -along.x_m)
    }

    /// Where the tangents at the two ends meet.
    fn control(&self) -> PlanPoint {
        let height_m = self.chord_m() / 2.0 * (self.sweep() / 2.0).tan();
        self.middle().shifted(self.outward(), height_m)
    }

    /// The circular segment on the chord.
    ///
    /// ```text
    /// area     = c2 (t - sin t) / (8 sin2(t/2))
    /// centroid = 4 R sin3(t/2) / (3 (t - sin t))  from the centre
    /// ```
    ///
    /// `c` chord, `t` sweep, `R` radius.
    pub(super) fn segment(&self) -> Segment {
        let sweep = self.sweep();
        let half_chord_m = self.chord_m() / 2.0;
        if sweep < 1e-4 {
            // A parabola, to within the square of the sweep.
            let sagitta_m = half_chord_m * sweep / 4.0;
            return Segment {
                area_m2: sagitta_m * half_chord_m * 4.0 / 3.0,
                centroid: self.middle().shifted(self.outward(), 0.4 * sagitta_m),
            };
        }
        let (sin, cos) = (sweep / 2.0).sin_cos();
        let radius_m = half_chord_m / sin;
        let excess = sweep_less_sine(sweep);
        let offset_m = radius_m * (4.0 * sin.powi(3) / (3.0 * excess) - cos);
        Segment {
            area_m2: radius_m * radius_m * excess / 2.0,
            centroid: self.middle().shifted(self.outward(), offset_m),
        }
    }

    /// The point at a fraction of the way, by the rational quadratic form of an arc.
    ///
    /// ```text
    /// P(s) = ((1-s)2 P0 + 2 w s (1-s) P1 + s2 P2) / ((1-s)2 + 2 w s (1-s) + s2),  w = cos(t/2)
    /// ```
    ///
    /// `P0`, `P2` the ends, `P1` where their tangents meet, `t` the sweep.
    pub(super) fn at(&self, fraction: f64) -> PlanPoint {
        let (near, far) = (1.0 - fraction, fraction);
        let weight = (self.sweep() / 2.0).cos();
        let parts = [near * near, 2.0 * weight * near * far, far * far];
        let total: f64 = parts.iter().sum();
        let blend = |a: f64, b: f64, c: f64| (parts[0] * a + parts[1] * b + parts[2] * c) / total;
        let control = self.control();
        PlanPoint::new(
            blend(self.from.x_m, control.x_m, self.to.x_m),
            blend(self.from.y_m, control.y_m, self.to.y_m),
        )
    }

    /// The start, and on an arc further points up to the end.
    pub(super) fn points(&self) -> impl Iterator<Item = PlanPoint> {
        let pieces = if self.is_straight() { 1 } else { ARC_PIECES };
        (0..pieces).map(move |i| self.at(f64::from(i) / f64::from(pieces)))
    }

    /// Sine of the turn from this edge's end into the start of the next.
    pub(super) fn turn_sine(&self, next: &Self) -> f64 {
        let (end, start) = (self.tangent(1.0), next.tangent(-1.0));
        end.x_m * start.y_m - end.y_m * start.x_m
    }

    /// Unit vector along the edge at its end (1) or its start (-1).
    fn tangent(&self, end: f64) -> PlanPoint {
        let (sin, cos) = (end * self.sweep() / 2.0).sin_cos();
        let (along, outward) = (self.along(), self.outward());
        PlanPoint::new(
            along.x_m * cos - outward.x_m * sin,
            along.y_m * cos - outward.y_m * sin,
        )
    }

    /// The pieces between the places where a plane passes through zero.
    pub(super) fn cut(&self, plane: Plane) -> Vec<Self> {
        let mut stops = vec![self.from];
        stops.extend(self.crossings(plane).into_iter().map(|s| self.at(s)));
        stops.push(self.to);
        stops
            .windows(2)
            .map(|pair| Self {
                from: pair[0],
                to: pair[1],
                curvature: self.curvature,
            })
            .collect()
    }

    /// Fractions of the way, in order, at which a plane passes through zero.
    fn crossings(&self, plane: Plane) -> Vec<f64> {
        let (start, end) = (plane.at(self.from), plane.at(self.to));
        if self.is_straight() {
            return if start * end < 0.0 {
                vec![start / (start - end)]
            } else {
                Vec::new()
            };
        }
        // With u = s/(1-s) the plane along the arc is zero where end u2 + 2 b u + start = 0.
        let b = (self.sweep() / 2.0).cos() * plane.at(self.control());
        let discriminant = b * b - start * end;
        if discriminant <= 0.0 {
            return Vec::new();
        }
        let q = -(b + discriminant.sqrt().copysign(b));
        let mut ratios = vec![q / end, start / q];
        ratios.retain(|u| u.is_finite() && *u > 0.0);
        ratios.sort_by(f64::total_cmp);
        ratios.iter().map(|u| u / (1.0 + u)).collect()
    }

    /// Where, between its ends, the arc reaches furthest up a plane.
    pub(super) fn summit(&self, plane: Plane) -> Option<PlanPoint> {
        if self.is_straight() || plane.gradient() <= 0.0 {
            return None;
        }
        let (along, outward) = (self.along(), self.outward());
        let uphill =
            |direction: PlanPoint| plane.per_x * direction.x_m + plane.per_y * direction.y_m;
        let turn = uphill(along).atan2(uphill(outward));
        let half = self.sweep() / 2.0;
        if turn.abs() >= half {
            return None;
        }
        let radius_m = 1.0 / self.curvature;
        // R (cos turn - cos half), without loss of digits where R is large.
        let rise_m =
            2.0 * radius_m * f64::midpoint(half, turn).sin() * f64::midpoint(half, -turn).sin();
        Some(
            self.middle()
                .shifted(along, radius_m * turn.sin())
                .shifted(outward, rise_m),
        )
    }
}

/// `t - sin t` without loss of digits at small angles.
fn sweep_less_sine(sweep: f64) -> f64 {
    if sweep > 0.3 {
        return sweep - sweep.sin();
    }
    let square = sweep * sweep;
    let series = 1.0
        - square / 20.0 * (1.0 - square / 42.0 * (1.0 - square / 72.0 * (1.0 - square / 110.0)));
    sweep * square / 6.0 * series
}
