//! Days without a keeper.

use super::harvest::WEEK_D;
use crate::units::{Area, Duration, Length, Volume};

/// Hours of lamp while nobody thins: common practice, no source.
pub const LAMP_H: f64 = 6.0;
/// Days that grown fish are left without feed: common practice, no source.
pub const FISH_D: f64 = 14.0;
/// The same of animals that graze: common practice, no source.
pub const GRAZERS_D: f64 = 28.0;
/// Share of the water that may be missing before heater, filter and salts are looked after:
/// judgement.
pub const MISSING: f64 = 0.25;

/// What is missing after some days in which nobody tops up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shortfall {
    /// Water that has evaporated.
    pub water: Volume,
    /// How far the level has fallen.
    pub level: Length,
    /// Salts and hardness over those at the start.
    pub concentrated: f64,
}

/// What evaporates in some days, at most all of the water.
///
/// ```text
/// lost = E D / 7,   level = lost / A,   factor = V / (V - lost)
/// ```
///
/// # Source
/// Mass balance.
///
/// # Example
/// ```
/// use lentic::units::{Area, Duration, Volume};
/// use lentic::upkeep::shortfall;
/// // 1.96 L a week from 17.24 L under 841 cm2, two weeks, worked by hand
/// let gone = shortfall(
///     Volume::from_litres(1.96), Duration::from_days(14.0),
///     Volume::from_litres(17.24), Area::from_cm2(841.0),
/// );
/// assert!((gone.water.litres() - 3.92).abs() < 1e-9);
/// assert!((gone.level.cm() - 4.66).abs() < 0.01);
/// assert!((gone.concentrated - 1.294).abs() < 0.001);
/// ```
///
/// # Limits
/// Evaporation at the room's usual warmth and damp; it goes on from a lower level as from the
/// full one.
pub fn shortfall(per_week: Volume, away: Duration, water: Volume, surface: Area) -> Shortfall {
    let lost = (per_week * (away.days() / WEEK_D)).max(Volume::ZERO);
    let lost = lost.min(water * MOST_GONE);
    Shortfall {
        water: lost,
        level: lost / surface,
        concentrated: water / (water - lost),
    }
}

/// Share of the water beyond which nothing is told: the tank is dry.
const MOST_GONE: f64 = 0.99;
