//! How water moves in the tank, and the film it leaves on leaves.

use std::f64::consts::PI;

use super::inputs::NightInputs;
use crate::air::circulation::{section_velocity, turnover_per_h};
use crate::air::{Airlift, airlift, plume};
use crate::design::Device;
use crate::numerics::root::first_crossing;
use crate::source::Band;
use crate::units::constants::SECONDS_PER_DAY;
use crate::units::{Area, Flow, Length, Temperature, Velocity};
use crate::water::{Solute, density, diffusivity, viscosity};

/// Bore of a pump's outlet, mm (judgement).
const OUTLET_MM: Band = Band::new(8.0, 12.0, 16.0);
/// Bore of a sponge filter's riser, and the height it lifts over the surface (judgement).
const RISER_BORE_MM: f64 = 16.0;
const RISER_LIFT_MM: f64 = 20.0;
/// Speed of water that nothing moves but warmth and animals, cm/s (judgement, the
/// lower half of what was found inside beds of plants).
const STILL_CM_S: Band = Band::new(0.02, 0.05, 0.1);
/// Length of a leaf along the flow (judgement).
const LEAF_MM: f64 = 30.0;
/// Both sides of the leaves of a gram of dry plant, m2 (judgement).
const LEAF_AREA_M2_G: f64 = 0.15;
/// Largest uptake of nitrogen by submerged plants, g/(g d), and the nitrogen at half of
/// it, mg/L: ranges of short experiments (judgement).
const UPTAKE_G_G_D: f64 = 0.015;
const HALF_MG_L: f64 = 0.20;
/// Seconds in a minute and litres in a cubic metre, together.
const L_MIN_PER_M3_S: f64 = 60_000.0;

/// Movement of the water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Movement {
    /// Water that the device moves, in water volumes an hour.
    pub turnover_per_h: Band,
    /// Mean speed through a cross-section of the tank, cm/s.
    pub section_cm_s: Band,
    /// Speed that plants feel, cm/s: that through the section, or of a pump the speed
    /// that its jet keeps up, with what moves by itself.
    pub velocity_cm_s: Band,
    /// Film of still water on a leaf, mm.
    pub film_mm: Band,
    /// Uptake of nitrogen through that film from water that holds little, over uptake
    /// without a film, %.
    pub uptake_pct: Band,
}

impl Movement {
    /// How the water of a tank moves while its device runs.
    pub fn of(inputs: &NightInputs) -> Self {
        let section = section(inputs);
        let moved = moved(inputs);
        let section_cm_s = each(moved, |l_min| {
            section_velocity(Flow::from_l_min(l_min), section).cm_s()
        });
        let driven_cm_s = match inputs.device {
            Device::Pump => jet_cm_s(inputs.flow, section),
            Device::None | Device::AirStone | Device::SpongeFilter => section_cm_s,
        };
        let velocity_cm_s = Band::new(
            driven_cm_s.low + STILL_CM_S.low,
            driven_cm_s.typical + STILL_CM_S.typical,
            driven_cm_s.high + STILL_CM_S.high,
        );
        let film = |cm_s: f64| film(Velocity::from_cm_s(cm_s), inputs.temperature);
        let film_mm = Band::new(
            film(velocity_cm_s.high).mm(),
            film(velocity_cm_s.typical).mm(),
            film(velocity_cm_s.low).mm(),
        );
        let uptake = |mm: f64| 100.0 * uptake_share(Length::from_mm(mm), inputs.temperature);
        Self {
            turnover_per_h: each(moved, |l_min| {
                turnover_per_h(Flow::from_l_min(l_min), inputs.water)
            }),
            section_cm_s,
            velocity_cm_s,
            film_mm,
            uptake_pct: Band::new(
                uptake(film_mm.high),
                uptake(film_mm.typical),
                uptake(film_mm.low),
            ),
        }
    }
}

/// Flows that are tried, L/min: from what a pump can be throttled to, to more than any for
/// tanks gives (judgement), and how closely one is sought.
const TRIED_L_MIN: (f64, f64) = (0.02, 25.0);
const CLOSE_L_MIN: f64 = 0.01;

/// The least air through a stone that moves the water at a speed; none where no flow tried
/// does.
pub fn air_for_speed(inputs: &NightInputs, speed: Velocity) -> Option<Flow> {
    let with = |l_min: f64| NightInputs {
        device: Device::AirStone,
        device_depth: inputs.air_depth(),
        flow: Flow::from_l_min(l_min),
        ..inputs.clone()
    };
    let enough = |l_min: f64| Movement::of(&with(l_min)).velocity_cm_s.typical >= speed.cm_s();
    let (least, most) = TRIED_L_MIN;
    let found = first_crossing(enough, least, most, CLOSE_L_MIN).ok()?;
    Some(Flow::from_l_min(found))
}

/// The largest flow of a tank's own device that moves the water no faster than a speed;
/// none where even the least is too much.
pub fn own_flow_for_speed(inputs: &NightInputs, speed: Velocity) -> Option<Flow> {
    let with = |share: f64| NightInputs {
        flow: inputs.flow * share,
        ..inputs.clone()
    };
    let slow = |cut: f64| Movement::of(&with(1.0 - cut)).velocity_cm_s.typical <= speed.cm_s();
    let cut = first_crossing(slow, 0.0, 1.0, CLOSE_L_MIN / inputs.flow.l_min().max(1.0)).ok()?;
    Some(inputs.flow * (1.0 - cut))
}

fn each(band: Band, of: impl Fn(f64) -> f64) -> Band {
    Band::new(of(band.low), of(band.typical), of(band.high))
}

/// Water that the device moves, L/min.
fn moved(inputs: &NightInputs) -> Band {
    match inputs.device {
        Device::None => Band::exact(0.0),
        Device::AirStone => {
            let ideal = plume::flow(inputs.flow, inputs.device_depth).l_min();
            plume::SLIP_FACTOR.scaled(ideal)
        }
        Device::SpongeFilter => {
            let riser = riser(inputs.flow, inputs.device_depth, inputs.temperature);
            airlift::SPONGE_FACTOR.scaled(riser.water_flow().l_min())
        }
        Device::Pump => Band::exact(inputs.flow.l_min()),
    }
}

/// The riser of a sponge filter.
pub(crate) fn riser(air: Flow, submerged: Length, temperature: Temperature) -> Airlift {
    Airlift {
        air,
        bore: Length::from_mm(RISER_BORE_MM),
        submerged,
        lift: Length::from_mm(RISER_LIFT_MM),
        temperature,
    }
}

/// An upright section of the water: its depth by the side of a square of the same surface.
fn section(inputs: &NightInputs) -> Area {
    let depth = inputs.water / inputs.surface;
    Area::from_m2(depth.m() * inputs.surface.m2().sqrt())
}

/// Speed at which the momentum of a pump's jet moves a whole section, cm/s (judgement:
/// an upper scale, as walls and plants brake).
///
/// ```text
/// U = sqrt(Q u / A),    u = Q / (pi d^2 / 4)
/// ```
fn jet_cm_s(flow: Flow, section: Area) -> Band {
    let m3_s = flow.l_min() / L_MIN_PER_M3_S;
    let speed = |bore_mm: f64| {
        let outlet_m_s = m3_s / (PI * (bore_mm * 1e-3).powi(2) / 4.0);
        100.0 * (m3_s * outlet_m_s / section.m2()).sqrt()
    };
    Band::new(
        speed(OUTLET_MM.high),
        speed(OUTLET_MM.typical),
        speed(OUTLET_MM.low),
    )
}

/// Film of still water on a leaf in a flow along it, for ammonium.
///
/// ```text
/// d = x / (0.664 Re^(1/2) Sc^(1/3)),    Re = U x / nu,    Sc = nu / D
/// ```
///
/// # Source
/// A laminar layer on a flat plate, from memory.
///
/// # Example
/// ```
/// use lentic::night::flow::film;
/// use lentic::units::{Temperature, Velocity};
/// let still = film(Velocity::from_cm_s(0.05), Temperature::from_celsius(25.0));
/// let stirred = film(Velocity::from_cm_s(5.0), Temperature::from_celsius(25.0));
/// assert!((still / stirred - 10.0).abs() < 1e-9);
/// ```
///
/// # Limits
/// One flat leaf in an even flow: behind other leaves the film is thicker.
pub fn film(velocity: Velocity, temperature: Temperature) -> Length {
    let leaf_m = LEAF_MM * 1e-3;
    let nu_m2_s = viscosity(temperature).pa_s() / density(temperature).kg_m3();
    let reynolds = velocity.m_s() * leaf_m / nu_m2_s;
    let schmidt = nu_m2_s / diffusivity(Solute::Ammonium, temperature).m2_s();
    Length::from_m(leaf_m / (0.664 * reynolds.sqrt() * schmidt.cbrt()))
}

/// Uptake of nitrogen through a film over uptake without, from water that allows half
/// of the largest.
///
/// ```text
/// k (C - s) = V s / (K + s),    k = D / d,    C = K
/// ```
///
/// V the largest uptake per leaf area, s the concentration at the leaf.
///
/// # Example
/// ```
/// use lentic::night::flow::uptake_share;
/// use lentic::units::{Length, Temperature};
/// let share = |mm| uptake_share(Length::from_mm(mm), Temperature::from_celsius(25.0));
/// assert!(share(0.001) > 0.99 && share(2.0) < share(0.5));
/// ```
///
/// # Source
/// Fick's law through the film and Monod's at the leaf, set equal; the uptake of the
/// start-up's fast plants.
///
/// # Limits
/// A bare leaf: algae and slime on it make the film thicker, so that it errs high.
pub fn uptake_share(film: Length, temperature: Temperature) -> f64 {
    let k_m_d = diffusivity(Solute::Ammonium, temperature).m2_s() * SECONDS_PER_DAY / film.m();
    let most_g_m2_d = UPTAKE_G_G_D / LEAF_AREA_M2_G;
    // with C = K the linear term of the square is V alone
    let constant = k_m_d * HALF_MG_L * HALF_MG_L;
    let at_leaf = 2.0 * constant
        / (most_g_m2_d + (most_g_m2_d * most_g_m2_d + 4.0 * k_m_d * constant).sqrt());
    2.0 * at_leaf / (HALF_MG_L + at_leaf)
}
