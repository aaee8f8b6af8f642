//! How pores slow diffusion down, and when a layer lets it through.

use crate::units::Share;

/// Scaled time before which nothing has come through a slab, and up to which the series
/// for short times is taken.
const NOTHING_YET: f64 = 1e-4;
const SHORT: f64 = 0.2;
/// Scaled time from which the whole flux comes through, to the last digit.
const SETTLED: f64 = 4.0;

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

/// Share of the steady flux that comes out of a slab filled from one side after a scaled
/// time `T = Ds t/(R L^2)`.
///
/// ```text
/// T < 0.2:  2/sqrt(pi T) (exp(-1/(4 T)) + exp(-9/(4 T)))
/// T < 4:    1 - 2 exp(-pi^2 T) + 2 exp(-4 pi^2 T)
/// else:     1
/// ```
///
/// # Valid range
/// All times; the first two lines meet within 1e-5.
///
/// # Source
/// A slab with a fixed concentration below and none above: Crank 1975, *The Mathematics of
/// Diffusion*, section 4.3 (`crank_1975`, from memory).
///
/// # Example
/// ```
/// use lentic::substrate::diffusion::slab_share;
/// // half the steady flux at T = 0.1388
/// assert!((slab_share(0.138_8) - 0.5).abs() < 1e-3);
/// ```
///
/// # Limits
/// The concentration below is taken as steady, where a fresh soil's moves.
pub fn slab_share(time: f64) -> f64 {
    let square = std::f64::consts::PI.powi(2);
    if time < NOTHING_YET {
        0.0
    } else if time < SHORT {
        let front = (-0.25 / time).exp() + (-2.25 / time).exp();
        2.0 / (std::f64::consts::PI * time).sqrt() * front
    } else if time < SETTLED {
        1.0 - 2.0 * (-square * time).exp() + 2.0 * (-4.0 * square * time).exp()
    } else {
        1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The same share by the series for long times, with many terms.
    fn long_series(time: f64) -> f64 {
        let term = |n: i32| {
            let order = f64::from(n);
            let wave = (-order * order * std::f64::consts::PI.powi(2) * time).exp();
            if n % 2 == 0 { wave } else { -wave }
        };
        1.0 + 2.0 * (1..200).map(term).sum::<f64>()
    }

    #[test]
    fn both_series_give_the_slab() {
        for time in [0.003, 0.02, 0.08, 0.199_999, 0.2, 0.35, 1.0, 5.0] {
            let off = slab_share(time) - long_series(time);
            assert!(off.abs() < 2e-5, "{off:e} at {time}");
        }
        assert!(slab_share(0.0).abs() < 1e-12);
        assert!((slab_share(4.0_f64.next_down()) - slab_share(4.0)).abs() < 1e-16);
    }

    #[test]
    fn free_water_is_not_slowed() {
        assert!((tortuosity_squared(Share::from_fraction(1.0)) - 1.0).abs() < 1e-15);
        let free = effective_diffusion(2e-9, Share::from_fraction(1.0));
        assert!((free - 2e-9).abs() < 1e-24);
    }
}
