//! Gas exchange through the water surface.

use crate::units::constants::{HOURS_PER_DAY, L_PER_M3};
use crate::units::{Area, Flow, Share, Temperature, Velocity};
use crate::water::{Gas, schmidt_number};

/// Schmidt number at which transfer velocities are tabulated: carbon dioxide at 20 C.
const REFERENCE_SCHMIDT: f64 = 600.0;
/// Minutes in a day.
const MINUTES_PER_DAY: f64 = 60.0 * HOURS_PER_DAY;

/// What the water surface is like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Surface {
    /// Calm, the air free to move: evaporation cools the surface and stirs it.
    Open,
    /// Calm under a lid that all but stops evaporation.
    Lidded,
    /// Rippled by a pump, a filter or bubbles.
    Rippled,
}

impl Surface {
    /// Exponent of the Schmidt number: 2/3 for a smooth surface, 1/2 for a rippled one.
    const fn schmidt_exponent(self) -> f64 {
        match self {
            Self::Open | Self::Lidded => 2.0 / 3.0,
            Self::Rippled => 0.5,
        }
    }
}

/// Transfer velocity of a gas at a temperature.
///
/// ```text
/// k = k600 (Sc / 600)^-n,    n = 2/3 smooth, 1/2 rippled
/// ```
///
/// # Valid range
/// [`schmidt::VALIDITY`](crate::water::schmidt::VALIDITY).
///
/// # Source
/// Jaehne et al. 1987 (`jahne_1987_exchange`, from memory).
///
/// # Example
/// ```
/// use lentic::air::surface::{Surface, transfer_velocity};
/// use lentic::units::{Temperature, Velocity};
/// use lentic::water::Gas;
/// let k600 = Velocity::from_m_d(0.35);
/// let k = transfer_velocity(k600, Surface::Rippled, Gas::Oxygen, Temperature::from_celsius(20.0));
/// assert!((k.m_d() - 0.3795).abs() < 0.001);
/// ```
///
/// # Limits
/// The calm surface itself is the uncertain part: [`Aeration`](crate::parameters::Aeration).
pub fn transfer_velocity(
    k600: Velocity,
    surface: Surface,
    gas: Gas,
    temperature: Temperature,
) -> Velocity {
    let relative = schmidt_number(gas, temperature) / REFERENCE_SCHMIDT;
    k600 * relative.powf(-surface.schmidt_exponent())
}

/// Transfer velocity, averaged over a surface partly under floating plants.
///
/// ```text
/// k = k_open (1 - f + m f)
/// ```
///
/// f the cover, m the passage (judgement).
///
/// # Source
/// Judgement: no measurement under a mat was found.
///
/// # Example
/// ```
/// use lentic::air::surface::under_floaters;
/// use lentic::units::{Share, Velocity};
/// let half = Share::from_percent(50.0);
/// let mean = under_floaters(Velocity::from_m_d(0.35), half, Share::from_percent(30.0));
/// assert!((mean.m_d() - 0.35 * 0.65).abs() < 1e-12);
/// ```
///
/// # Limits
/// The passage is not known: [`Aeration`](crate::parameters::Aeration).
pub fn under_floaters(open: Velocity, cover: Share, passage: Share) -> Velocity {
    let closed = cover.fraction() * (1.0 - passage.fraction());
    open * (1.0 - closed)
}

/// Clearance of a surface: the flow of water that would carry as much gas if it left
/// saturated.
///
/// ```text
/// K = k A
/// ```
///
/// # Source
/// By definition of the transfer velocity.
///
/// # Example
/// ```
/// use lentic::air::surface::clearance;
/// use lentic::units::{Area, Velocity};
/// // 0.5 m/d over 0.216 m2: 108 L a day
/// let clearance = clearance(Velocity::from_m_d(0.5), Area::from_m2(0.216));
/// assert!((clearance.l_h() - 4.5).abs() < 1e-9);
/// ```
pub fn clearance(transfer: Velocity, area: Area) -> Flow {
    Flow::from_l_min(transfer.m_d() * area.m2() * L_PER_M3 / MINUTES_PER_DAY)
}
