//! Carbon dioxide that turns into bicarbonate within the film at the surface.

use super::carbon::Carbonate;
use crate::numerics::real::Real;
use crate::units::{Temperature, Velocity};
use crate::water::{Solute, diffusivity};

/// Gas constant, J/(mol K), and temperature of a rate, K, as in the reaction's fit.
const R_J_MOL_K: f64 = 8.314;
const REFERENCE_K: f64 = 298.15;
/// From here on a hyperbolic tangent is one, to all digits.
const DEEP: f64 = 20.0;

/// The reaction of carbon dioxide with water and with hydroxide, and its diffusion.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hydration {
    /// m2/s.
    diffusivity: f64,
    /// With water, 1/s.
    by_water: f64,
    /// With hydroxide, L/(mol s).
    by_hydroxide: f64,
}

impl Hydration {
    pub(super) fn at(temperature: Temperature) -> Self {
        let kelvin = temperature.kelvin();
        let warmth = 1.0 / REFERENCE_K - 1.0 / kelvin;
        Self {
            diffusivity: diffusivity(Solute::CarbonDioxide, temperature).m2_s(),
            by_water: (1246.98 - 61_900.0 / kelvin - 183.0 * kelvin.ln()).exp(),
            by_hydroxide: 8500.0 * (55_000.0 / R_J_MOL_K * warmth).exp(),
        }
    }

    /// Thickness of the film through which gas moves at a velocity, m.
    pub(super) fn film_m(&self, velocity: Velocity) -> f64 {
        self.diffusivity / velocity.m_s()
    }

    /// How much faster carbon dioxide is exchanged than by diffusion alone.
    ///
    /// ```text
    /// E   = t / ((t - 1) + tanh(Q d) / (Q d)),    t = 1 + H^2 / (K1 K2 + K1 H)
    /// Q^2 = (r1 + r2 Kw/H) t / D
    /// ```
    ///
    /// d the film, H the hydrogen ion, r1 and r2 the rates with water and hydroxide.
    ///
    /// # Source
    /// Hoover and Berkshire 1969 (`hoover_berkshire_1969`), as lake models carry it.
    pub(super) fn enhancement<R: Real>(&self, carbonate: &Carbonate<R>, h: R, film_m: R) -> R {
        let film = self.film(carbonate, h, film_m);
        (film.free + 1.0) / (film.free + film.curbed)
    }

    /// The same, and its slope with the logarithm of the hydrogen ion.
    pub(super) fn enhancement_slope<R: Real>(
        &self,
        carbonate: &Carbonate<R>,
        h: R,
        film_m: R,
    ) -> (R, R) {
        let Film {
            free,
            by_hydroxide,
            rate,
            depth,
            curbed,
        } = self.film(carbonate, h, film_m);
        let enhanced = (free + 1.0) / (free + curbed);
        let frees = free * carbonate.free_share_slope(h);
        let deepens = (frees / (free + 1.0) - by_hydroxide / rate) * 0.5;
        let tanh = curbed * depth;
        let curbs = ((tanh * tanh).complement() - curbed) * deepens;
        let slope = (frees - enhanced * (frees + curbs)) / (free + curbed);
        (enhanced, slope)
    }

    fn film<R: Real>(&self, carbonate: &Carbonate<R>, h: R, film_m: R) -> Film<R> {
        let free = carbonate.free_share(h);
        let by_hydroxide = carbonate.hydroxide(h) * self.by_hydroxide;
        let rate = by_hydroxide + self.by_water;
        let depth = (rate * (free + 1.0) * self.diffusivity.recip()).sqrt() * film_m;
        let deep = (depth.min(R::splat(DEEP)) * -2.0).exp();
        Film {
            free,
            by_hydroxide,
            rate,
            depth,
            curbed: deep.complement() / ((deep + 1.0) * depth),
        }
    }
}

/// What the film makes of the reaction.
struct Film<R> {
    /// Carbon dioxide over what of the carbon is charged.
    free: R,
    /// Reaction with hydroxide, 1/s.
    by_hydroxide: R,
    /// Reaction with both, 1/s.
    rate: R,
    /// Its depth over that in which the reaction takes place.
    depth: R,
    /// The hyperbolic tangent of this over it.
    curbed: R,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Alkalinity;

    fn water() -> (Carbonate<f64>, Hydration) {
        let temperature = Temperature::from_celsius(24.0);
        let alkalinity_mol_l = Alkalinity::from_dkh(4.0).meq_l() * 1e-3;
        let carbonate = Carbonate::new(alkalinity_mol_l, temperature);
        (carbonate, Hydration::at(temperature))
    }

    #[test]
    fn carbon_dioxide_reacts_as_fast_as_measured() {
        // 0.037 1/s and 8500 L/(mol s) at 25 C (from memory)
        let water = Hydration::at(Temperature::from_celsius(25.0));
        assert!((water.by_water - 0.037).abs() < 0.002, "{}", water.by_water);
        assert!((water.by_hydroxide - 8500.0).abs() < 1e-6);
    }

    #[test]
    fn exchange_is_faster_in_alkaline_water_and_under_a_thick_film() {
        let (carbonate, water) = water();
        let at = |ph: f64, film_m: f64| water.enhancement(&carbonate, 10_f64.powf(-ph), film_m);
        assert!((at(5.0, 5e-4) - 1.0).abs() < 0.05);
        assert!(at(9.0, 5e-4) > at(7.5, 5e-4) && at(7.5, 5e-4) > 1.0);
        assert!(at(8.0, 1e-3) > at(8.0, 2e-4));
        assert!((at(8.0, 1e-9) - 1.0).abs() < 1e-6);
    }

    #[test]
    fn the_slope_is_that_of_small_differences() {
        let (carbonate, water) = water();
        for (ph, film_m) in [(6.0, 5e-4), (7.5, 2e-4), (8.5, 1e-3), (9.5, 4e-3)] {
            let h = 10_f64.powf(-ph);
            let at = |h: f64| water.enhancement(&carbonate, h, film_m);
            let step = 1e-5_f64;
            let expected = (at(h * step.exp()) - at(h / step.exp())) / (2.0 * step);
            let (enhanced, slope) = water.enhancement_slope(&carbonate, h, film_m);
            assert!((enhanced - at(h)).abs() < 1e-12 * enhanced);
            assert!(
                (slope - expected).abs() < 1e-7 * enhanced,
                "{slope} {expected}"
            );
        }
    }
}
