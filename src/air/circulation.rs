//! How often the water is turned over, how fast it moves, and what plants make of it.

use crate::source::Band;
use crate::units::constants::L_PER_M3;
use crate::units::{Area, Flow, Velocity, Volume};

/// Speeds to aim at in open water, cm/s (judgement).
pub const OPEN_WATER_CM_S: Band = Band::new(0.2, 1.0, 5.0);

/// Speed that leaves of submerged plants should not see, cm/s (judgement:
/// photosynthesis fell and respiration rose from 1 to 8.6 cm/s in
/// `madsen_1993`, from memory).
pub const MOST_AT_PLANTS_CM_S: f64 = 10.0;

/// Speed at which Lemna grew best, cm/s; a third and twice the flow were worse
/// (`coughlan_2022`).
pub const FLOATER_BEST_CM_S: f64 = 0.12;

/// Speed that floating plants should not see, cm/s (common practice, no source).
pub const MOST_AT_FLOATERS_CM_S: f64 = 1.0;

/// Seconds in a minute.
const SECONDS_PER_MINUTE: f64 = 60.0;

/// How many times an hour a flow moves the whole water: the trade's figure for a filter.
///
/// ```text
/// turnover = flow / volume
/// ```
///
/// # Source
/// Arithmetic.
///
/// # Example
/// ```
/// use lentic::air::circulation::turnover_per_h;
/// use lentic::units::{Flow, Volume};
/// let turnover = turnover_per_h(Flow::from_l_min(5.0), Volume::from_litres(100.0));
/// assert!((turnover - 3.0).abs() < 1e-12);
/// ```
///
/// # Limits
/// Says nothing of how evenly: corners stand still while the middle turns over often.
pub fn turnover_per_h(flow: Flow, water: Volume) -> f64 {
    flow.l_h() / water.litres()
}

/// Mean speed of a flow through a cross-section of the tank: a scale for what plants feel.
///
/// ```text
/// v = flow / section
/// ```
///
/// # Source
/// Continuity.
///
/// # Example
/// ```
/// use lentic::air::circulation::section_velocity;
/// use lentic::units::{Area, Flow};
/// // 6.42 L/min through 25 cm by 30 cm: 107 cm3/s over 750 cm2
/// let speed = section_velocity(Flow::from_l_min(6.42), Area::from_cm2(750.0));
/// assert!((speed.cm_s() - 107.0 / 750.0).abs() < 1e-9);
/// ```
///
/// # Limits
/// A mean: exceeded near an outlet and not reached behind leaves.
pub fn section_velocity(flow: Flow, section: Area) -> Velocity {
    let flow_m3_s = flow.l_min() / (L_PER_M3 * SECONDS_PER_MINUTE);
    Velocity::from_m_s(flow_m3_s / section.m2())
}
