//! The planting index: what the plants can take up over the flush against what
//! the bed supplies.

/// Share of undisturbed growth that floaters reach while they crowd and settle
/// in (judgement).
const FLOATING_REALISED: f64 = 0.8;

/// Floaters at planting; masses are dry, per square metre of floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Floaters {
    /// Mass planted, g/m2.
    pub mass_g_m2: f64,
    /// Nitrogen content at planting, g N/g.
    pub start_nitrogen: f64,
    /// Nitrogen content of a full store, g N/g.
    pub most_nitrogen: f64,
    /// Net growth at the light given, well fed, 1/d.
    pub growth_per_d: f64,
}

/// Fast submerged plants at planting.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stems {
    /// Mass planted, g/m2.
    pub mass_g_m2: f64,
    /// Nitrogen content at planting, g N/g.
    pub start_nitrogen: f64,
    /// Nitrogen content of a full store, g N/g.
    pub most_nitrogen: f64,
    /// Net growth at the light given, well fed and settled, 1/d.
    pub growth_per_d: f64,
    /// Time in which growth starts after planting, d.
    pub lag_d: f64,
}

/// Nitrogen that floaters can take up over some days, g N/m2.
///
/// ```text
/// F0 ((Qmax - Q0) + 0.8 r T Qmax)
/// ```
///
/// `F0` mass planted, `Q0` and `Qmax` nitrogen content at planting and of a full
/// store, `r` net growth, `T` days. Harvest keeps the stand at its size, so
/// growth adds in a straight line.
///
/// # Source
/// Judgement: agrees with the start-up model over thirty plantings in that an
/// index of 2 keeps ammonia and nitrite under 0.11 mg N/L from day 3.
///
/// # Example
/// ```
/// use lentic::plants::index::{Floaters, floating_capacity_g_m2};
/// let floaters = Floaters {
///     mass_g_m2: 5.0, start_nitrogen: 0.030, most_nitrogen: 0.050, growth_per_d: 0.202,
/// };
/// // 5 (0.02 + 0.8 x 0.202 x 21 x 0.05)
/// assert!((floating_capacity_g_m2(&floaters, 21.0) - 0.948).abs() < 0.001);
/// ```
///
/// # Limits
/// Well fed plants: where phosphorus or potassium is short they take less.
pub fn floating_capacity_g_m2(floaters: &Floaters, days: f64) -> f64 {
    let filled = floaters.most_nitrogen - floaters.start_nitrogen;
    let grown = FLOATING_REALISED * floaters.growth_per_d * days * floaters.most_nitrogen;
    floaters.mass_g_m2 * (filled + grown)
}

/// Nitrogen that fast submerged plants can take up over some days, g N/m2.
///
/// ```text
/// S0 ((Qmax - Q0) + Qmax (exp(r te) - 1))        te = T - lag (1 - exp(-T/lag))
/// ```
///
/// `te` days of full growth that are left after the lag. Slow growers are left
/// out of the index: in the first weeks they hardly count.
///
/// # Source
/// As [`floating_capacity_g_m2`].
///
/// # Example
/// ```
/// use lentic::plants::index::{Stems, stem_capacity_g_m2};
/// let stems = Stems {
///     mass_g_m2: 25.0, start_nitrogen: 0.02, most_nitrogen: 0.04, growth_per_d: 0.05, lag_d: 7.0,
/// };
/// // te = 21 - 7 (1 - exp(-3)); 25 (0.02 + 0.04 (exp(0.05 te) - 1))
/// assert!((stem_capacity_g_m2(&stems, 21.0) - 1.549).abs() < 0.001);
/// ```
///
/// # Limits
/// Crowding and melting leaves are left out: errs high for a thick planting.
pub fn stem_capacity_g_m2(stems: &Stems, days: f64) -> f64 {
    let filled = stems.most_nitrogen - stems.start_nitrogen;
    let grown = (stems.growth_per_d * days_of_growth(stems.lag_d, days)).exp_m1();
    stems.mass_g_m2 * (filled + stems.most_nitrogen * grown)
}

fn days_of_growth(lag_d: f64, days: f64) -> f64 {
    if lag_d > 0.0 {
        days + lag_d * (-days / lag_d).exp_m1()
    } else {
        days
    }
}

/// Capacity of a planting over the supply of the bed in the same days: 2 and more is
/// planted heavily enough.
///
/// ```text
/// index = capacity / supply
/// ```
///
/// # Source
/// Judgement, as [`floating_capacity_g_m2`].
///
/// # Example
/// ```
/// use lentic::plants::index::{Floaters, floating_capacity_g_m2, planting_index};
/// // a fifth of the surface in floaters over a garden loam under 25 mm of sand
/// let floaters = Floaters {
///     mass_g_m2: 5.0, start_nitrogen: 0.030, most_nitrogen: 0.050, growth_per_d: 0.202,
/// };
/// let index = planting_index(floating_capacity_g_m2(&floaters, 21.0), 1.247 + 0.0525);
/// assert!((index - 0.73).abs() < 0.005);
/// ```
///
/// # Limits
/// Says nothing of when: the run of [`startup`](crate::startup) does.
pub fn planting_index(capacity_g_m2: f64, supply_g_m2: f64) -> f64 {
    capacity_g_m2 / supply_g_m2
}
