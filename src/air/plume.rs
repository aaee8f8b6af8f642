//! The column of water that bubbles drag up, and the surface it stirs.

use std::f64::consts::PI;

use crate::source::Band;
use crate::units::constants::{GRAVITY_M_S2, L_PER_M3};
use crate::units::{Area, Flow, Length, Share};

/// Radius of a plume at the surface, per height above the stone: twice the width
/// at which a plume's speed has fallen to 1/e (`fischer_1979`, from memory).
const SPREAD: f64 = 0.2;

/// Water moved by a plume of bubbles over that of a plume of warm water with the
/// same buoyancy: bubbles slip through (judgement).
pub const SLIP_FACTOR: Band = Band::new(0.3, 0.5, 1.0);

/// Seconds in a minute.
const SECONDS_PER_MINUTE: f64 = 60.0;

/// Area in which a plume comes up; its exchange is part of the bubbles' efficiency.
///
/// ```text
/// A = pi (0.2 h)^2
/// ```
///
/// # Source
/// Fischer et al. 1979 (`fischer_1979`, from memory): twice the width at which the speed of
/// a round plume has fallen to 1/e.
///
/// # Example
/// ```
/// use lentic::{air::plume, units::Length};
/// let area = plume::area(Length::from_cm(50.0));
/// assert!((area.cm2() - 314.159).abs() < 0.001); // a circle of 10 cm
/// ```
///
/// # Limits
/// Walls and plants nearer than that are left out; a plume along a wall comes up narrower.
pub fn area(submergence: Length) -> Area {
    let radius_m = SPREAD * submergence.m();
    Area::from_m2(PI * radius_m * radius_m)
}

/// Water brought to the surface by a plume, without slip: an upper bound, to be
/// multiplied by [`SLIP_FACTOR`].
///
/// ```text
/// Q = 0.15 B^(1/3) h^(5/3),    B = g Q_air
/// ```
///
/// # Source
/// Fischer et al. 1979 (`fischer_1979`), round plume, from memory.
///
/// # Example
/// ```
/// use lentic::{air::plume, units::{Flow, Length}};
/// // 0.15 (9.80665 x 0.001/60)^(1/3) 0.3^(5/3) m3/s
/// let water = plume::flow(Flow::from_l_min(1.0), Length::from_cm(30.0));
/// assert!((water.l_min() - 66.2).abs() < 0.2);
/// ```
///
/// # Limits
/// Without slip and in open water: an upper bound.
pub fn flow(air: Flow, submergence: Length) -> Flow {
    let air_m3_s = air.l_min() / (L_PER_M3 * SECONDS_PER_MINUTE);
    let water_m3_s = 0.15 * (GRAVITY_M_S2 * air_m3_s).cbrt() * submergence.m().cbrt().powi(5);
    Flow::from_l_min(water_m3_s * L_PER_M3 * SECONDS_PER_MINUTE)
}

/// Share of a surface that bubbles ripple, growing smoothly with the air.
///
/// ```text
/// share = 1 - exp(-q / q0)
/// ```
///
/// q the air per surface area, q0 the air that ripples two thirds (judgement).
///
/// # Source
/// Judgement: no measurement of a small tank was found.
///
/// # Example
/// ```
/// use lentic::{air::plume, units::{Area, Flow}};
/// // 5 L/(min m2) against 5 L/(min m2): all but 1/e
/// let share = plume::rippled_share(Flow::from_l_min(0.5), Area::from_m2(0.1), 5.0);
/// assert!((share.fraction() - (1.0 - (-1.0_f64).exp())).abs() < 1e-12);
/// ```
///
/// # Limits
/// Bubbles in one corner ripple less of a long tank: errs high there.
pub fn rippled_share(air: Flow, surface: Area, rippling_air_l_min_m2: f64) -> Share {
    let air_l_min_m2 = air.l_min() / surface.m2();
    Share::from_fraction(-(-air_l_min_m2 / rippling_air_l_min_m2).exp_m1())
}
