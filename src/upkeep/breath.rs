//! Oxygen without power: water poured by hand, animals in a bucket.

use crate::units::{Concentration, Duration, Flow, Length, MassRate, Share, Temperature, Volume};

/// Oxygen of water just drawn over that in balance with air: judgement.
pub const FRESH: Share = Share::from_fraction(0.95);
/// Oxygen that animals in a bucket are not taken under, mg/L: common practice in fish
/// culture, no source.
pub const BUCKET_LEAST_MG_L: f64 = 4.0;
/// Oxygen use of animals that were caught over that at rest: judgement.
pub const HANDLED: f64 = 2.0;
/// Fall of water that is poured back: judgement, a hand's height over the surface.
pub const POURED_FROM: Length = Length::from_m(0.3);

/// Water of some pollution, and a sheet or stream that falls over an edge.
const QUALITY: f64 = 1.6;
const WEIR: f64 = 0.8;

/// Share of the lack of oxygen that water loses by falling once.
///
/// ```text
/// 1 - 1/r,   r = 1 + 0.38 a b h (1 - 0.11 h)(1 + 0.046 T)
/// ```
///
/// `h` fall, m; `T` in C; `a` 1.6 for slightly dirty water, `b` 0.8 for a round crest.
///
/// # Valid range
/// Falls of up to 4.5 m, where the bracket begins to turn back.
///
/// # Source
/// Butts and Evans 1983 (`butts_evans_1983`), from memory.
///
/// # Example
/// ```
/// use lentic::units::{Length, Temperature};
/// use lentic::upkeep::gained_by_falling;
/// // 30 cm at 24 C: r = 1.297, worked by hand
/// let gained = gained_by_falling(Length::from_cm(30.0), Temperature::from_celsius(24.0));
/// assert!((gained.percent() - 22.9).abs() < 0.1);
/// ```
///
/// # Limits
/// Made for weirs: from a jug within a factor of two.
pub fn gained_by_falling(fall: Length, temperature: Temperature) -> Share {
    let h = fall.m();
    let warm = 1.0 + 0.046 * temperature.celsius();
    let ratio = 1.0 + 0.38 * QUALITY * WEIR * h * (1.0 - 0.11 * h) * warm;
    Share::from_fraction(1.0 - 1.0 / ratio)
}

/// Water that has to be poured back to make up for the oxygen used.
///
/// ```text
/// Q = V (Cs - C)/t / ((1 - 1/r)(Cs - C)) = V / (t (1 - 1/r))
/// ```
///
/// `t` the time in which oxygen falls from saturation `Cs` to `C` in the water `V`.
///
/// # Source
/// Mass balance, with [`gained_by_falling`].
///
/// # Example
/// ```
/// use lentic::units::{Duration, Temperature, Volume};
/// use lentic::upkeep::pouring;
/// // 17.24 L that lose it in 4 h, worked by hand
/// let flow = pouring(
///     Volume::from_litres(17.24), Duration::from_hours(4.0), Temperature::from_celsius(24.0),
/// );
/// assert!((flow.l_min() * 60.0 - 18.8).abs() < 0.1);
/// ```
///
/// # Limits
/// Within a factor of two, as the gain by a fall.
pub fn pouring(water: Volume, lasts: Duration, temperature: Temperature) -> Flow {
    let gained = gained_by_falling(POURED_FROM, temperature).fraction();
    Flow::from_l_min(water.litres() / (lasts.hours() * gained) / 60.0)
}

/// How long oxygen in a bucket lasts for the animals in it.
///
/// ```text
/// t = V (C0 - C) / use
/// ```
///
/// # Source
/// Mass balance.
///
/// # Example
/// ```
/// use lentic::units::{Concentration, MassRate, Volume};
/// use lentic::upkeep::lasts_in_bucket;
/// // ten fish of 0.35 g at 24 C rest on 1.83 mg/h: 8 L from 8 to 4 mg/L, worked by hand
/// let fresh = Concentration::from_mg_l(8.0);
/// let hours = lasts_in_bucket(Volume::from_litres(8.0), fresh, MassRate::from_mg_h(1.83));
/// assert!(hours.is_some_and(|lasts| (lasts.hours() - 17.5).abs() < 0.05));
/// ```
///
/// # Limits
/// What the surface lets in is left out: errs short. None where nothing breathes.
pub fn lasts_in_bucket(water: Volume, fresh: Concentration, used: MassRate) -> Option<Duration> {
    let borne = (fresh.mg_l() - BUCKET_LEAST_MG_L).max(0.0) * water.litres();
    (used > MassRate::ZERO).then(|| Duration::from_hours(borne / used.mg_h()))
}
