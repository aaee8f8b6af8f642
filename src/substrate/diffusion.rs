//! How pores slow diffusion down, and how long a layer takes to let it through.

use crate::units::Share;

/// Time scale of the rise over the slab's `R L^2/Ds`: its half-rise, 0.1386,
/// over ln 2.
const RISE_SHARE: f64 = 0.2;

/// Tortuosity squared: how much slower a solute diffuses in pores than in free water.
///
/// ```text
/// theta^2 = 1 - ln(phi^2)
/// ```
///
/// # Valid range
/// Pore shares above 0 to 1. Fitted to fine-grained muds; in sand, other models
/// let one to two times as much through.
///
/// # Source
/// Boudreau 1996, *Geochimica et Cosmochimica Acta* 60, 3139.
///
/// # Example
/// ```
/// use lentic::{substrate::diffusion::tortuosity_squared, units::Share};
/// // 1 - ln(0.4^2)
/// assert!((tortuosity_squared(Share::from_percent(40.0)) - 2.8326).abs() < 1e-4);
/// ```
///
/// # Limits
/// Errs low for sand: what it lets through may be twice as much.
pub fn tortuosity_squared(porosity: Share) -> f64 {
    1.0 - porosity.fraction().powi(2).ln()
}

/// Diffusion coefficient per area of bed, in the unit of that in free water: how much
/// crosses a bed.
///
/// ```text
/// De = phi Ds = phi D / theta^2
/// ```
///
/// # Source
/// As [`tortuosity_squared`].
///
/// # Example
/// ```
/// use lentic::{substrate::diffusion::effective_diffusion, units::Share};
/// // ammonium at 25 C
/// let de = effective_diffusion(1.9825e-9, Share::from_percent(40.0));
/// assert!((de - 0.4 * 1.9825e-9 / 2.8326).abs() < 1e-13);
/// ```
///
/// # Limits
/// As [`tortuosity_squared`].
pub fn effective_diffusion(free: f64, porosity: Share) -> f64 {
    porosity.fraction() * free / tortuosity_squared(porosity)
}

/// Time scale `tau` with which the flux through a layer rises towards its
/// steady value as `1 - exp(-t/tau)`, in days for a depth in metres and a
/// coefficient in m2/d.
///
/// ```text
/// tau = 0.2 R L^2 / Ds        Ds = De / phi
/// ```
///
/// The curve meets the exact one of a slab, with a fixed concentration below
/// and none above, at its half-rise `Ds t/(R L^2) = 0.139`; before it the exact
/// flux is smaller.
///
/// # Source
/// The slab: Crank 1975, *The Mathematics of Diffusion*, section 4.3 (`crank_1975`,
/// from memory); the single exponential is a judgement.
///
/// # Example
/// ```
/// use lentic::substrate::diffusion::rise_time_d;
/// // 0.2 x 1.2 x 0.025^2 / (2.415e-5 / 0.4)
/// let days = rise_time_d(0.025, 1.2, 2.415e-5, 0.40_f64);
/// assert!((days - 2.485).abs() < 0.002);
/// ```
///
/// # Limits
/// Gives more than the slab does in the first days and less in the last ones before it is steady.
pub fn rise_time_d(depth_m: f64, retardation: f64, effective_m2_d: f64, porosity: f64) -> f64 {
    retardation * porosity * depth_m * depth_m * RISE_SHARE / effective_m2_d
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Share of the steady flux out of a slab at `T = Ds t/(R L^2)`.
    fn slab_share(time: f64) -> f64 {
        let term = |n: i32| {
            let order = f64::from(n);
            let wave = (-order * order * std::f64::consts::PI.powi(2) * time).exp();
            if n % 2 == 0 { wave } else { -wave }
        };
        1.0 + 2.0 * (1..60).map(term).sum::<f64>()
    }

    #[test]
    fn the_rise_meets_the_slab_at_half_its_steady_flux() {
        let tau = rise_time_d(1.0, 1.0, 0.4, 0.4);
        let half_rise = tau * std::f64::consts::LN_2;
        assert!((half_rise - 0.139).abs() < 5e-4);
        assert!((slab_share(half_rise) - 0.5).abs() < 2e-3);
        assert!(slab_share(half_rise / 2.0) < 1.0 - (-half_rise / 2.0 / tau).exp());
    }

    #[test]
    fn free_water_is_not_slowed() {
        assert!((tortuosity_squared(Share::from_fraction(1.0)) - 1.0).abs() < 1e-15);
        let free = effective_diffusion(2e-9, Share::from_fraction(1.0));
        assert!((free - 2e-9).abs() < 1e-24);
    }
}
