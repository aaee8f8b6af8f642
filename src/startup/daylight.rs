//! Light under floaters and in the water, and what takes it up.

use super::inputs::daily_light_mol_m2;
use crate::numerics::real::Scalar;
use crate::plants::shade::mean_light;

/// The light of a day on a tank, and what it meets.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Daylight<S = f64> {
    /// At the water surface, while the lamp is on.
    pub(super) surface_umol_m2_s: f64,
    pub(super) hours: f64,
    /// Share that passes the floaters.
    pub(super) passed: S,
    /// Extinction over the depth by the water itself.
    pub(super) clear_extinction: f64,
    /// Extinction over the depth by what lives in it.
    pub(super) living_extinction: S,
}

impl<S: Scalar> Daylight<S> {
    /// Mean light in the water below the floaters, umol/(m2 s).
    ///
    /// ```text
    /// layers = (F + F_fixing) / F_full,   k z = kW z + kP (S + G) + kA A
    /// ```
    pub(super) fn mean_in_water_umol_m2_s(&self) -> S {
        mean_light(self.passed * self.surface_umol_m2_s, self.extinction())
    }

    /// Light that plants and algae take up in a day, mol/m2.
    ///
    /// ```text
    /// DLI (1 - passed + passed (1 - exp(-k z)) kL/k)      kL: plants' and algae's part of k
    /// ```
    ///
    /// # Source
    /// Law of Beer and Lambert; light is shared as extinction is.
    pub(super) fn absorbed_mol_m2_d(&self) -> S {
        let in_water = self.living_extinction * mean_light(S::splat(1.0), self.extinction());
        (self.passed.complement() + self.passed * in_water)
            * daily_light_mol_m2(self.surface_umol_m2_s, self.hours)
    }

    fn extinction(&self) -> S {
        self.living_extinction + self.clear_extinction
    }
}
