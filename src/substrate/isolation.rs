//! A cap as a barrier: what crosses it, how soon, and how thick it must be.

use super::S_PER_DAY;
use crate::units::{Concentration, Density, Duration, Length, Share, Sorption};
use std::f64::consts::PI;

/// How far a cap poured by hand is out, cm: judgement, the low end of 0.5 to 1.
pub const PLACING_ERROR_CM: f64 = 0.5;

/// What crosses a cap by diffusion once nothing changes any more, mg/m2/d.
///
/// ```text
/// J = phi Ds (C0 - Cw) / L
/// ```
///
/// `phi Ds` is the effective diffusion coefficient, `C0` the concentration at
/// the cap's base, `Cw` that in the water.
///
/// # Limits
/// Diffusion alone. Burrows, roots, bubbles and replanting raise it.
///
/// # Source
/// Fick's first law.
///
/// # Example
/// ```
/// use lentic::substrate::isolation::steady_flux_mg_m2_d;
/// use lentic::units::{Concentration, Length};
/// // Ammonium at 25 C through sand with 40 % pores.
/// let flux = steady_flux_mg_m2_d(2.7994e-10, Concentration::from_mg_l(20.0), Length::from_cm(5.0));
/// assert!((flux - 9.675).abs() < 0.01);
/// ```
pub fn steady_flux_mg_m2_d(
    effective_m2_s: f64,
    difference: Concentration,
    thickness: Length,
) -> f64 {
    let g_m2_s = effective_m2_s * difference.mg_l() / thickness.m();
    g_m2_s * 1e3 * S_PER_DAY
}

/// The thickness of still cap that lets no more than the allowed flux through.
///
/// ```text
/// Ti = phi Ds C0 / J
/// ```
///
/// # Source
/// Fick's first law; the term of guidance for capping sediment in place
/// (`palermo_epa_1998`).
///
/// # Example
/// ```
/// use lentic::substrate::isolation::isolation_thickness;
/// use lentic::units::Concentration;
/// // 2.7994e-10 m2/s x 10 g/m3 x 86 400 s/d / 0.010 g/(m2 d)
/// let thickness = isolation_thickness(2.7994e-10, Concentration::from_mg_l(10.0), 10.0);
/// assert!((thickness.cm() - 2.419).abs() < 0.002);
/// ```
///
/// # Limits
/// As [`steady_flux_mg_m2_d`]: errs thin where anything stirs the cap.
pub fn isolation_thickness(
    effective_m2_s: f64,
    difference: Concentration,
    allowed_mg_m2_d: f64,
) -> Length {
    let allowed_g_m2_s = allowed_mg_m2_d * 1e-3 / S_PER_DAY;
    Length::from_m(effective_m2_s * difference.mg_l() / allowed_g_m2_s)
}

/// The parts of a cap's thickness in guidance for capping sediment in place.
///
/// Erosion is zero in a tank and consolidation zero in sand, so neither has a part.
///
/// # Source
/// Palermo et al. 1998 (`palermo_epa_1998`, `palermo_doer_1998`).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CapParts {
    /// To: what careless placing takes away.
    pub placing: Length,
    /// Tb: what burrowing animals mix.
    pub burrowing: Length,
    /// Ti: what is left to hold the flux back.
    pub isolation: Length,
}

impl CapParts {
    /// The thickness needed, the sum of the parts.
    pub fn needed(&self) -> Length {
        self.placing + self.burrowing + self.isolation
    }
}

/// How many times slower a sorbed solute moves than a free one.
///
/// ```text
/// R = 1 + rho_b Kd / phi
/// ```
///
/// # Source
/// Linear sorption in balance with the pore water; Boudreau 1997 (`boudreau_1997`).
///
/// # Example
/// ```
/// use lentic::substrate::isolation::retardation;
/// use lentic::units::{Density, Share, Sorption};
/// // 1 + 1.6 x 0.1 / 0.4
/// let sand = (Density::from_kg_m3(1600.0), Sorption::from_l_kg(0.1), Share::from_percent(40.0));
/// assert!((retardation(sand.0, sand.1, sand.2) - 1.4).abs() < 1e-12);
/// ```
///
/// # Limits
/// Sorption of lake mud is often not linear: at high concentrations it holds less.
pub fn retardation(dry_bulk: Density, sorption: Sorption, porosity: Share) -> f64 {
    1.0 + sorbed_store(dry_bulk, sorption) / porosity.fraction()
}

/// What a layer holds per unit of pore-water concentration, as a share of its volume.
///
/// ```text
/// phi + rho_b Kd
/// ```
///
/// # Source
/// As [`retardation`].
///
/// # Example
/// ```
/// use lentic::substrate::isolation::capacity;
/// use lentic::units::{Density, Share, Sorption};
/// // 0.4 + 1.6 x 0.1
/// let held = capacity(
///     Density::from_kg_m3(1600.0),
///     Sorption::from_l_kg(0.1),
///     Share::from_percent(40.0),
/// );
/// assert!((held - 0.56).abs() < 1e-12);
/// ```
///
/// # Limits
/// As [`retardation`].
pub fn capacity(dry_bulk: Density, sorption: Sorption, porosity: Share) -> f64 {
    porosity.fraction() + sorbed_store(dry_bulk, sorption)
}

/// What the grains hold, `rho_b Kd`.
fn sorbed_store(dry_bulk: Density, sorption: Sorption) -> f64 {
    dry_bulk.kg_l() * sorption.l_kg()
}

/// The time in which diffusion spreads across a layer.
///
/// ```text
/// t = R L^2 / (2 Ds)
/// ```
///
/// `Ds` is the coefficient in the pores, without the pore share.
///
/// # Source
/// Diffusion in a slab, Crank 1975 (`crank_1975`, from memory).
///
/// # Example
/// ```
/// use lentic::{substrate::isolation::spreading_time, units::Length};
/// // 0.03^2 / (2 x 6.999e-10) s
/// let time = spreading_time(Length::from_cm(3.0), 6.999e-10, 1.0);
/// assert!((time.days() - 7.44).abs() < 0.01);
/// ```
pub fn spreading_time(thickness: Length, pore_m2_s: f64, retardation: f64) -> Duration {
    seconds(retardation * thickness.m().powi(2) / (2.0 * pore_m2_s))
}

/// The delay of the amount that has crossed against the steady flux.
///
/// ```text
/// t = R L^2 / (6 Ds)
/// ```
///
/// # Source
/// Diffusion in a slab, Crank 1975 (`crank_1975`, from memory).
///
/// # Example
/// ```
/// use lentic::substrate::isolation::{spreading_time, time_lag};
/// use lentic::units::Length;
/// let (thickness, pore_m2_s) = (Length::from_cm(3.0), 6.999e-10);
/// let third = spreading_time(thickness, pore_m2_s, 1.0).days() / 3.0;
/// assert!((time_lag(thickness, pore_m2_s, 1.0).days() - third).abs() < 1e-12);
/// ```
pub fn time_lag(thickness: Length, pore_m2_s: f64, retardation: f64) -> Duration {
    spreading_time(thickness, pore_m2_s, retardation) / 3.0
}

/// The time in which the soil's store falls to 1/e through the cap.
///
/// ```text
/// tau = (phi + rho_b Kd)_soil H L / (phi Ds)_cap
/// ```
///
/// # Source
/// A store over a conductance, both as above.
///
/// # Example
/// ```
/// use lentic::{substrate::isolation::emptying_time, units::Length};
/// let deep = Length::from_cm(3.0);
/// // 0.8 x 0.03 x 0.03 / 2.7994e-10 s
/// let time = emptying_time(0.8, deep, deep, 2.7994e-10);
/// assert!((time.days() - 29.8).abs() < 0.1);
/// ```
///
/// # Limits
/// Nothing is set free meanwhile; a living soil refills its store and lasts longer.
pub fn emptying_time(
    soil_capacity: f64,
    soil: Length,
    cap: Length,
    cap_effective_m2_s: f64,
) -> Duration {
    seconds(soil_capacity * soil.m() * cap.m() / cap_effective_m2_s)
}

/// A duration from seconds.
fn seconds(value: f64) -> Duration {
    Duration::from_days(value / S_PER_DAY)
}

/// Below this scaled time the series in images converges faster.
const IMAGES_BELOW: f64 = 0.3;
/// Terms that leave an error under 1e-12 in either series.
const TERMS: i32 = 4;

/// Flux out of an empty cap over its steady flux, at the scaled time `Ds t / (R L^2)`.
///
/// A constant concentration stands below from time zero, none above.
///
/// ```text
/// J/Jss = 1 + 2 sum (-1)^n exp(-n^2 pi^2 T)
///       = 2/sqrt(pi T) sum exp(-(2n+1)^2 / 4T)      the same sum, for small T
/// ```
///
/// # Source
/// Crank, The Mathematics of Diffusion, plane sheet. Guidance for capping
/// sediment calls 5 % breakthrough and 95 % steady.
///
/// # Example
/// ```
/// use lentic::substrate::isolation::approach_to_steady;
/// // the guidance's scaled times of breakthrough and of the steady flux, 0.54 and 3.69 over pi^2
/// let pi2 = std::f64::consts::PI.powi(2);
/// assert!((approach_to_steady(0.54 / pi2) - 0.05).abs() < 0.001);
/// assert!((approach_to_steady(3.69 / pi2) - 0.95).abs() < 0.001);
/// ```
///
/// # Limits
/// Nothing is sorbed but what the scaled time holds, and the soil below never runs low: errs
/// high late in a start.
pub fn approach_to_steady(scaled_time: f64) -> f64 {
    if scaled_time <= 0.0 {
        return 0.0;
    }
    if scaled_time < IMAGES_BELOW {
        let images: f64 = (0..TERMS)
            .map(|n| (-f64::from(2 * n + 1).powi(2) / (4.0 * scaled_time)).exp())
            .sum();
        return 2.0 / (PI * scaled_time).sqrt() * images;
    }
    let modes: f64 = (1..=TERMS)
        .map(|n| {
            let sign = if n % 2 == 0 { 1.0 } else { -1.0 };
            sign * (-f64::from(n * n) * PI * PI * scaled_time).exp()
        })
        .sum();
    1.0 + 2.0 * modes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_two_series_meet() {
        let below = approach_to_steady(IMAGES_BELOW - 1e-12);
        let above = approach_to_steady(IMAGES_BELOW);
        assert!((below - above).abs() < 1e-10, "{below} against {above}");
    }

    #[test]
    fn flux_rises_from_nothing_to_steady() {
        assert!(approach_to_steady(0.0).abs() < 1e-15);
        let rising: Vec<f64> = (1..=40)
            .map(|n| approach_to_steady(f64::from(n) * 0.05))
            .collect();
        assert!(rising.windows(2).all(|pair| pair[0] < pair[1]));
        assert!((rising[39] - 1.0).abs() < 1e-7);
    }

    #[test]
    fn the_isolation_thickness_lets_exactly_the_allowed_flux_through() {
        let base = Concentration::from_mg_l(20.0);
        let thickness = isolation_thickness(2.8e-10, base, 10.0);
        assert!((steady_flux_mg_m2_d(2.8e-10, base, thickness) - 10.0).abs() < 1e-12);
    }
}
