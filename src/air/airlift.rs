//! Water lifted by air in a tube, as in a sponge filter.

use std::convert::Infallible;
use std::f64::consts::PI;

use crate::numerics::root::{doubled, root};
use crate::source::{Band, Validity};
use crate::units::constants::{GRAVITY_M_S2, L_PER_M3};
use crate::units::{Flow, Length, Temperature};
use crate::water::{density, surface_tension, viscosity};

/// Surface tension numbers at which the slug model was tested: bores of 6-19 mm.
pub const SURFACE_TENSION_VALIDITY: Validity =
    Validity::new("surface tension number of the riser", "", 0.02, 0.2);

/// Flow through a real sponge filter over the flow of the ideal tube, whose
/// entry, exit and foam cost nothing (judgement).
pub const SPONGE_FACTOR: Band = Band::new(0.3, 0.4, 0.5);

/// Weight of the mean velocity in the rise of a slug of air.
const PROFILE: f64 = 1.2;
/// How closely the velocity in the tube is sought, m/s.
const RESOLUTION_M_S: f64 = 1e-9;
/// Seconds in a minute.
const SECONDS_PER_MINUTE: f64 = 60.0;

/// A tube with air let in at its foot.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Airlift {
    /// Air.
    pub air: Flow,
    /// Inner diameter of the tube.
    pub bore: Length,
    /// From the water surface down to where the air enters.
    pub submerged: Length,
    /// From the water surface up to the outlet.
    pub lift: Length,
    /// Of the water.
    pub temperature: Temperature,
}

impl Airlift {
    /// Water lifted by an ideal tube: an upper bound, to be multiplied by
    /// [`SPONGE_FACTOR`]. Zero where the air is too little to lift any.
    ///
    /// ```text
    /// Hs / L = (1 - e) (1 + f V^2 / (2 g D)),    e = (Qg / A) / (1.2 V + vs)
    /// V = (Qg + Ql) / A,    f = 0.316 Re^-0.25
    /// vs = 0.352 (1 - 3.18 S - 14.77 S^2) sqrt(g D),    S = sigma / (rho g D^2)
    /// ```
    ///
    /// Hs the submerged length, L the whole. In a tube so narrow that vs would
    /// fall below zero, a slug stands still by itself and vs is zero.
    ///
    /// # Valid range
    /// [`SURFACE_TENSION_VALIDITY`] for [`surface_tension_number`](Self::surface_tension_number);
    /// Reynolds numbers over 500.
    ///
    /// # Source
    /// Nicklin 1963 (`nicklin_1963`); Reinemann, Parlange and Timmons 1990
    /// (`reinemann_1990`). Constants from memory.
    ///
    /// # Example
    /// ```
    /// use lentic::air::Airlift;
    /// use lentic::units::{Flow, Length, Temperature};
    /// let tube = Airlift {
    ///     air: Flow::from_l_min(1.0),
    ///     bore: Length::from_mm(16.0),
    ///     submerged: Length::from_cm(30.0),
    ///     lift: Length::from_cm(2.0),
    ///     temperature: Temperature::from_celsius(25.0),
    /// };
    /// assert!((tube.water_flow().l_min() - 6.42).abs() < 0.06);
    /// ```
    ///
    /// # Limits
    /// Entry, exit and foam are left out, so that it errs high: several times too high for
    /// wide tubes that hardly lift.
    pub fn water_flow(&self) -> Flow {
        let section_m2 = PI * self.bore.m() * self.bore.m() / 4.0;
        let air_m_s = self.air.l_min() / (L_PER_M3 * SECONDS_PER_MINUTE) / section_m2;
        let submergence = self.submerged / (self.submerged + self.lift);
        let surplus = |total_m_s: f64| self.weight_ratio(air_m_s, total_m_s) - submergence;
        if !(air_m_s > 0.0 && surplus(air_m_s) < 0.0) {
            return Flow::ZERO;
        }
        // Friction grows without bound, so doubling must pass the balance.
        let too_slow = |total_m_s| Ok::<_, Infallible>(surplus(total_m_s) < 0.0);
        let Ok(Some((_, most_m_s))) = doubled(2.0 * air_m_s, f64::INFINITY, too_slow) else {
            return Flow::ZERO;
        };
        let water_m_s = root(surplus, air_m_s, most_m_s, RESOLUTION_M_S)
            .map_or(0.0, |total_m_s| total_m_s - air_m_s);
        Flow::from_l_min(water_m_s * section_m2 * L_PER_M3 * SECONDS_PER_MINUTE)
    }

    /// Surface tension over weight at the scale of the bore: S of [`water_flow`](Self::water_flow),
    /// which says how a slug of air rises in a narrow tube.
    ///
    /// ```text
    /// S = sigma / (rho g D^2)
    /// ```
    ///
    /// # Source
    /// Reinemann, Parlange and Timmons 1990 (`reinemann_1990`).
    ///
    /// # Example
    /// ```
    /// use lentic::air::Airlift;
    /// use lentic::units::{Flow, Length, Temperature};
    /// let tube = Airlift {
    ///     air: Flow::from_l_min(1.0),
    ///     bore: Length::from_mm(16.0),
    ///     submerged: Length::from_cm(30.0),
    ///     lift: Length::from_cm(2.0),
    ///     temperature: Temperature::from_celsius(25.0),
    /// };
    /// // 0.07197 / (997.05 x 9.80665 x 0.016^2)
    /// assert!((tube.surface_tension_number() - 0.02875).abs() < 1e-4);
    /// ```
    pub fn surface_tension_number(&self) -> f64 {
        let weight_n_m =
            density(self.temperature).kg_m3() * GRAVITY_M_S2 * self.bore.m() * self.bore.m();
        surface_tension(self.temperature).n_m() / weight_n_m
    }

    /// Rise of a slug of air in standing water, m/s: vs of [`water_flow`](Self::water_flow).
    ///
    /// ```text
    /// vs = 0.352 (1 - 3.18 S - 14.77 S^2) sqrt(g D)
    /// ```
    ///
    /// # Source
    /// Reinemann, Parlange and Timmons 1990 (`reinemann_1990`), constants from memory.
    ///
    /// # Example
    /// ```
    /// use lentic::air::Airlift;
    /// use lentic::units::{Flow, Length, Temperature};
    /// let tube = Airlift {
    ///     air: Flow::from_l_min(1.0),
    ///     bore: Length::from_mm(16.0),
    ///     submerged: Length::from_cm(30.0),
    ///     lift: Length::from_cm(2.0),
    ///     temperature: Temperature::from_celsius(25.0),
    /// };
    /// // 0.352 (1 - 3.18 x 0.02875 - 14.77 x 0.02875^2) sqrt(9.80665 x 0.016)
    /// assert!((tube.slug_rise_m_s() - 0.1250).abs() < 1e-3);
    /// ```
    pub fn slug_rise_m_s(&self) -> f64 {
        let s = self.surface_tension_number();
        let slowed = (1.0 - 3.18 * s - 14.77 * s * s).max(0.0);
        0.352 * slowed * (GRAVITY_M_S2 * self.bore.m()).sqrt()
    }

    /// Weight and friction in the tube over the weight of water filling it.
    fn weight_ratio(&self, air_m_s: f64, total_m_s: f64) -> f64 {
        let bore_m = self.bore.m();
        let void = air_m_s / (PROFILE * total_m_s + self.slug_rise_m_s());
        let reynolds = density(self.temperature).kg_m3() * total_m_s * bore_m
            / viscosity(self.temperature).pa_s();
        let friction = 0.316 * reynolds.powf(-0.25);
        (1.0 - void) * (1.0 + friction * total_m_s * total_m_s / (2.0 * GRAVITY_M_S2 * bore_m))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tube(air_l_min: f64, lift_cm: f64) -> Airlift {
        Airlift {
            air: Flow::from_l_min(air_l_min),
            bore: Length::from_mm(16.0),
            submerged: Length::from_cm(30.0),
            lift: Length::from_cm(lift_cm),
            temperature: Temperature::from_celsius(25.0),
        }
    }

    #[test]
    fn a_tube_lifts_nothing_without_air_or_too_high() {
        assert_eq!(tube(0.0, 2.0).water_flow(), Flow::ZERO);
        assert_eq!(tube(0.05, 200.0).water_flow(), Flow::ZERO);
        assert!(tube(1.0, 2.0).water_flow() > tube(1.0, 10.0).water_flow());
    }
}
