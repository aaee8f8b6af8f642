//! How water moves in the tank, and the film it leaves on leaves.

use std::f64::consts::PI;

use crate::air::circulation::{section_velocity, turnover_per_h};
use crate::air::{Airlift, airlift, plume};
use crate::design::{Design, FlowDevice};
use crate::numerics::root::first_crossing;
use crate::parameters::{Fast, Moving, Submerged};
use crate::source::Band;
use crate::units::constants::SECONDS_PER_DAY;
use crate::units::{Area, Flow, Length, Temperature, Velocity, Volume};
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
/// Seconds in a minute and litres in a cubic metre, together.
const L_MIN_PER_M3_S: f64 = 60_000.0;

/// What moves the water of a tank, and which water it is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stirred {
    /// What moves air or water.
    pub device: FlowDevice,
    /// Of air; of water for a pump.
    pub flow: Flow,
    /// How deep the device hangs.
    pub device_depth: Length,
    /// Water temperature.
    pub temperature: Temperature,
    /// The water surface.
    pub surface: Area,
    /// Free water.
    pub water: Volume,
}

impl Stirred {
    /// The water of a design while its device runs.
    pub fn of(design: &Design) -> Self {
        let draft = design.draft();
        Self {
            device: draft.air.device,
            flow: draft.air.flow,
            device_depth: draft.air.depth,
            temperature: draft.water.temperature,
            surface: design.surface(),
            water: design.water(),
        }
    }

    /// Water that goes through a sponge; none without one.
    pub fn through_sponge(&self) -> Flow {
        match self.device {
            FlowDevice::SpongeFilter => Flow::from_l_min(moved(self).typical),
            FlowDevice::None | FlowDevice::AirStone | FlowDevice::Pump => Flow::ZERO,
        }
    }
}

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
    pub fn of(stirred: &Stirred) -> Self {
        let section = section(stirred);
        let moved = moved(stirred);
        let section_cm_s = each(moved, |l_min| {
            section_velocity(Flow::from_l_min(l_min), section).cm_s()
        });
        let driven_cm_s = match stirred.device {
            FlowDevice::Pump => jet_cm_s(stirred.flow, section),
            FlowDevice::None | FlowDevice::AirStone | FlowDevice::SpongeFilter => section_cm_s,
        };
        let velocity_cm_s = Band::new(
            driven_cm_s.low + STILL_CM_S.low,
            driven_cm_s.typical + STILL_CM_S.typical,
            driven_cm_s.high + STILL_CM_S.high,
        );
        let film = |cm_s: f64| film(Velocity::from_cm_s(cm_s), stirred.temperature);
        let film_mm = Band::new(
            film(velocity_cm_s.high).mm(),
            film(velocity_cm_s.typical).mm(),
            film(velocity_cm_s.low).mm(),
        );
        let uptake = |mm: f64| 100.0 * uptake_share(Length::from_mm(mm), stirred.temperature);
        Self {
            turnover_per_h: each(moved, |l_min| {
                turnover_per_h(Flow::from_l_min(l_min), stirred.water)
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

/// The least air through a stone at a depth that moves the water at a speed; none where no flow tried
/// does.
pub fn air_for_speed(stirred: &Stirred, depth: Length, speed: Velocity) -> Option<Flow> {
    let with = |l_min: f64| Stirred {
        device: FlowDevice::AirStone,
        device_depth: depth,
        flow: Flow::from_l_min(l_min),
        ..*stirred
    };
    let enough = |l_min: f64| Movement::of(&with(l_min)).velocity_cm_s.typical >= speed.cm_s();
    let (least, most) = TRIED_L_MIN;
    let found = first_crossing(enough, least, most, CLOSE_L_MIN).ok()?;
    Some(Flow::from_l_min(found))
}

/// The largest flow of a tank's own device that moves the water no faster than a speed;
/// none where even the least is too much.
pub fn own_flow_for_speed(stirred: &Stirred, speed: Velocity) -> Option<Flow> {
    let with = |share: f64| Stirred {
        flow: stirred.flow * share,
        ..*stirred
    };
    let slow = |cut: f64| Movement::of(&with(1.0 - cut)).velocity_cm_s.typical <= speed.cm_s();
    let cut = first_crossing(slow, 0.0, 1.0, CLOSE_L_MIN / stirred.flow.l_min().max(1.0)).ok()?;
    Some(stirred.flow * (1.0 - cut))
}

fn each(band: Band, of: impl Fn(f64) -> f64) -> Band {
    Band::new(of(band.low), of(band.typical), of(band.high))
}

/// Water that the device moves, L/min.
fn moved(stirred: &Stirred) -> Band {
    match stirred.device {
        FlowDevice::None => Band::exact(0.0),
        FlowDevice::AirStone => {
            let ideal = plume::flow(stirred.flow, stirred.device_depth).l_min();
            plume::SLIP_FACTOR.scaled(ideal)
        }
        FlowDevice::SpongeFilter => {
            let riser = riser(stirred.flow, stirred.device_depth, stirred.temperature);
            airlift::SPONGE_FACTOR.scaled(riser.water_flow().l_min())
        }
        FlowDevice::Pump => Band::exact(stirred.flow.l_min()),
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
fn section(stirred: &Stirred) -> Area {
    let depth = stirred.water / stirred.surface;
    Area::from_m2(depth.m() * stirred.surface.m2().sqrt())
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
/// use lentic::state::movement::film;
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
/// use lentic::state::movement::uptake_share;
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
    let most_g_g_d = Fast::reference().uptake.typical;
    let half_mg_l = Submerged::reference().nitrogen_half.typical;
    let k_m_d = diffusivity(Solute::Ammonium, temperature).m2_s() * SECONDS_PER_DAY / film.m();
    let most_g_m2_d = most_g_g_d / Moving::reference().leaf_area.typical;
    // with C = K the linear term of the square is V alone
    let constant = k_m_d * half_mg_l * half_mg_l;
    let at_leaf = 2.0 * constant
        / (most_g_m2_d + (most_g_m2_d * most_g_m2_d + 4.0 * k_m_d * constant).sqrt());
    2.0 * at_leaf / (half_mg_l + at_leaf)
}

/// What a film on the leaves adds to the concentration of ammonium at half of the largest
/// uptake, mg/L.
///
/// ```text
/// V d / (2 a D)
/// ```
///
/// V the largest uptake per dry mass, a the leaf area of it, d the film.
///
/// # Source
/// Fick's law through the film at half of the largest uptake: `k (C - K) = V / (2 a)`.
///
/// # Example
/// ```
/// use lentic::state::movement::film_half_mg_l;
/// use lentic::units::{Length, Temperature};
/// // ammonium diffuses by 1.64e-4 m2 a day at 20 C: 0.01 x 0.001 / (2 x 0.1 x 1.5e-4)
/// let added = film_half_mg_l(Length::from_mm(1.0), Temperature::from_celsius(20.0), 0.01, 0.1);
/// assert!((added - 0.33).abs() < 0.05);
/// ```
///
/// # Limits
/// Exact at half of the largest uptake; from poorer water it lets up to twice as much
/// through, so that it errs high.
pub fn film_half_mg_l(
    film: Length,
    temperature: Temperature,
    most_g_g_d: f64,
    leaf_area_m2_g: f64,
) -> f64 {
    let d_m2_d = diffusivity(Solute::Ammonium, temperature).m2_s() * SECONDS_PER_DAY;
    most_g_g_d * film.m() / (2.0 * leaf_area_m2_g * d_m2_d)
}
