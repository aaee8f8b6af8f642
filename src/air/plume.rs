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

/// Air per surface that ripples two thirds of it, L/(min m2) (judgement).
pub const RIPPLING_AIR_L_MIN_M2: Band = Band::new(2.0, 5.0, 10.0);

/// Seconds in a minute.
const SECONDS_PER_MINUTE: f64 = 60.0;

/// Area in which a plume comes up; its exchange is part of the bubbles' efficiency.
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
/// q the air per surface area, q0 as [`RIPPLING_AIR_L_MIN_M2`] (judgement).
pub fn rippled_share(air: Flow, surface: Area, rippling_air_l_min_m2: f64) -> Share {
    let air_l_min_m2 = air.l_min() / surface.m2();
    Share::from_fraction(-(-air_l_min_m2 / rippling_air_l_min_m2).exp_m1())
}
