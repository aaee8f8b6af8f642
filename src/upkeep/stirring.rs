//! A bed stirred, dug or robbed of a big plant: ammonia, sessions, the cloud.

use crate::units::constants::GRAVITY_M_S2;
use crate::units::{Area, Concentration, Duration, Length, Mass, Share, Temperature, Volume};
use crate::water::viscosity;

/// The most of a bed that is worked on at once: common practice, no source.
pub const AT_ONCE: Share = Share::from_fraction(0.25);
/// The same where the bed is black or smells: judgement.
pub const AT_ONCE_BLACK: Share = Share::from_fraction(0.10);
/// From one session to the next, d: judgement.
pub const SESSION_EVERY_D: f64 = 7.0;
/// Water drawn off before a session, by which hands stay dry and the heater is seen: common
/// practice, no source.
pub const DRAWN_OFF: Share = Share::from_fraction(1.0 / 3.0);
/// The share of the limit that ammonia is to stay under: judgement.
pub(super) const OF_LIMIT: f64 = 0.5;

/// Ammonia that a stirred share of the bed brings into the water.
///
/// ```text
/// rise = x N A / V
/// ```
///
/// `x` the share, `N` the soil's ammonium, dissolved and exchangeable, over the floor `A`,
/// `V` the water.
///
/// # Source
/// Mass balance: all of it goes into the water.
///
/// # Example
/// ```
/// use lentic::units::{Share, Volume, Mass};
/// use lentic::upkeep::ammonia_rise;
/// // 30 % of 20 mg N in 17.24 L
/// let rise = ammonia_rise(Share::from_percent(30.0), Mass::from_mg(20.0), Volume::from_litres(17.24));
/// assert!((rise.mg_l() - 0.348).abs() < 0.001);
/// ```
///
/// # Limits
/// What stays on grains that settle again is counted as dissolved: errs high.
pub fn ammonia_rise(stirred: Share, soil_ammonium: Mass, water: Volume) -> Concentration {
    Concentration::from_mg_l(soil_ammonium.mg() * stirred.fraction() / water.litres())
}

/// Share of the bed that may be stirred before ammonia passes what is borne.
///
/// ```text
/// x = (borne - now) V / (N A),   at most a share
/// ```
///
/// # Source
/// As [`ammonia_rise`].
///
/// # Example
/// ```
/// use lentic::units::{Concentration, Mass, Volume};
/// use lentic::upkeep::{AT_ONCE, borne_share};
/// let (clean, water) = (Concentration::ZERO, Volume::from_litres(20.0));
/// let borne = Concentration::from_mg_l(0.25);
/// // 5 mg may come in, of 50 mg that are there
/// let share = borne_share(borne, clean, Mass::from_mg(50.0), water, AT_ONCE);
/// assert!((share.percent() - 10.0).abs() < 1e-9);
/// ```
pub fn borne_share(
    borne: Concentration,
    now: Concentration,
    soil_ammonium: Mass,
    water: Volume,
    most: Share,
) -> Share {
    let room = (borne - now).max(Concentration::ZERO).mg_l() * water.litres();
    let room = Mass::from_mg(room);
    if soil_ammonium <= Mass::ZERO {
        return if room > Mass::ZERO { most } else { Share::ZERO };
    }
    Share::from_fraction(room / soil_ammonium).min(most)
}

/// Share of the water whose change brings a concentration down to a goal, with the rest of
/// the tap's own.
///
/// ```text
/// s = (C - goal) / (C - tap),   0 where C is under it, 1 where the tap is over it
/// ```
///
/// # Source
/// Mass balance.
///
/// # Example
/// ```
/// use lentic::{units::Concentration, upkeep::change_to_reach};
/// let mg_l = Concentration::from_mg_l;
/// assert_eq!(change_to_reach(mg_l(1.0), mg_l(0.25), mg_l(0.0)).percent(), 75.0);
/// assert_eq!(change_to_reach(mg_l(0.2), mg_l(0.25), mg_l(0.0)).percent(), 0.0);
/// ```
pub fn change_to_reach(now: Concentration, goal: Concentration, tap: Concentration) -> Share {
    if now <= goal {
        return Share::ZERO;
    }
    let all = Share::from_fraction(1.0);
    if tap >= goal {
        return all;
    }
    Share::from_fraction((now - goal) / (now - tap)).min(all)
}

/// Clay that settles last: 2 um, judgement; what stays for longer is finer or alive.
const CLAY_UM: f64 = 2.0;
/// Clay over water, kg/m3 (minerals at 2650, from memory).
const CLAY_EXCESS_KG_M3: f64 = 1650.0;

/// How long clay takes to settle through a depth of still water.
///
/// ```text
/// t = 18 mu z / (excess g d^2)
/// ```
///
/// # Source
/// Stokes's law, from memory; the grain and its density are judgement.
///
/// # Example
/// ```
/// use lentic::units::{Length, Temperature};
/// use lentic::upkeep::clears_in;
/// // 18 x 0.000912 Pa s x 0.205 m over 1650 kg/m3 x 9.81 m/s2 x (2 um)^2, worked by hand
/// let cleared = clears_in(Length::from_cm(20.5), Temperature::from_celsius(24.0));
/// assert!((cleared.hours() - 14.4).abs() < 0.2);
/// ```
///
/// # Limits
/// Flow keeps grains up, clumping brings them down.
pub fn clears_in(depth: Length, temperature: Temperature) -> Duration {
    let viscosity_pa_s = viscosity(temperature).pa_s();
    let grain_m = CLAY_UM * 1e-6;
    let fall_m_s = CLAY_EXCESS_KG_M3 * GRAVITY_M_S2 * grain_m * grain_m / (18.0 * viscosity_pa_s);
    Duration::from_hours(depth.m() / fall_m_s / 3600.0)
}

/// The ammonium of a soil over a floor.
pub(super) fn soil_ammonium(soil_n_g_m2: f64, floor: Area) -> Mass {
    Mass::from_g(soil_n_g_m2 * floor.m2())
}
