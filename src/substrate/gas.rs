//! Gas made in the soil: whether it can leave dissolved, and how bubbles leave.
//!
//! No published grain size divides sands that let gas through from sands that
//! lift. These numbers tell how bubbles go, not whether gas stays.

use super::S_PER_DAY;
use super::throat::Throat;
use crate::units::constants::{GRAVITY_M_S2, molar_mass};
use crate::units::{Density, Length, Pressure, Share};

/// Mean pore throat of random packs as a share of the grain diameter: one
/// sixth, so that pores drain near 12 gamma/d (from memory; 10 to 14 in use).
const GRAINS_PER_THROAT_RADIUS: f64 = 6.0;
/// Methane solubility under one atmosphere of it at 25 C, mol/m3 (Sander's
/// compilation of Henry constants, from memory). Bubbles also hold nitrogen and
/// carbon dioxide, so 0.3 to 0.7 of it is enough to form them.
pub const METHANE_SOLUBILITY_MOL_M3: f64 = 1.4;
/// Methane in bubbles from peat, mg/m2/d, lowest and highest (Baird et al. 2004).
pub const PEAT_EBULLITION_MG_CH4_M2_D: (f64, f64) = (2.2, 83.0);
/// Mass of a mole of methane, g.
const METHANE_G_MOL: f64 = molar_mass::C + 4.0 * molar_mass::H;

/// The pressure at which gas enters the pores of a sand, typical and bounds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EntryPressure {
    /// Through the widest throats, those between four grains.
    pub low: Pressure,
    /// Through the throats of a random pack.
    pub typical: Pressure,
    /// Through the tightest throats, those between three grains.
    pub high: Pressure,
}

/// The pressure at which gas enters the pores between grains of one size.
///
/// ```text
/// Pe = 2 gamma / r      r = d/6 in random packs, so Pe = 12 gamma / d
/// ```
///
/// # Source
/// Young and Laplace; throat radii by plane geometry, see [`Throat`].
///
/// # Example
/// ```
/// use lentic::{substrate::gas::entry_pressure, units::Length};
/// // 12 x 0.07197 N/m / 0.5 mm
/// let pressure = entry_pressure(0.07197, Length::from_mm(0.5));
/// assert!((pressure.typical.pa() - 1727.0).abs() < 1.0);
/// ```
///
/// # Limits
/// One grain size and clean water; a mixed sand is entered through its widest pores first.
pub fn entry_pressure(surface_tension_n_m: f64, grain: Length) -> EntryPressure {
    let across = |radius: Length| Pressure::from_pa(2.0 * surface_tension_n_m / radius.m());
    EntryPressure {
        low: across(Throat::Four.radius(grain)),
        typical: across(grain / GRAINS_PER_THROAT_RADIUS),
        high: across(Throat::Three.radius(grain)),
    }
}

/// A cap as a weight on what lies below it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Overburden {
    /// Cap thickness.
    pub thickness: Length,
    /// Its pore share.
    pub porosity: Share,
    /// Density of its grains.
    pub grain_density: Density,
    /// Density of the water.
    pub water_density: Density,
}

impl Overburden {
    /// Effective stress at the cap's base; the depth of water cancels out.
    ///
    /// ```text
    /// sigma' = (1 - n)(rho_s - rho_w) g L
    /// ```
    ///
    /// # Source
    /// Terzaghi's effective stress, soil mechanics.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::gas::Overburden;
    /// use lentic::units::{Density, Length, Share};
    /// let cap = Overburden {
    ///     thickness: Length::from_cm(5.0),
    ///     porosity: Share::from_percent(40.0),
    ///     grain_density: Density::from_kg_m3(2650.0),
    ///     water_density: Density::from_kg_m3(997.05),
    /// };
    /// // 0.6 x 1652.95 kg/m3 x 9.80665 m/s2 x 0.05 m
    /// assert!((cap.effective_stress().pa() - 486.3).abs() < 0.1);
    /// ```
    ///
    /// # Limits
    /// Roots and friction at the panes hold the cap down besides: errs low.
    pub fn effective_stress(&self) -> Pressure {
        let solids = 1.0 - self.porosity.fraction();
        let buoyant_kg_m3 = (self.grain_density - self.water_density).kg_m3();
        Pressure::from_pa(solids * buoyant_kg_m3 * GRAVITY_M_S2 * self.thickness.m())
    }

    /// Entry pressure over effective stress: above 1 gas leaves by pushing grains aside, below 1
    /// through the pores.
    ///
    /// ```text
    /// M = Pe / sigma'
    /// ```
    ///
    /// # Source
    /// After Jain & Juanes 2009 (`jain_juanes_2009`): fine grains under low stress fracture,
    /// coarse ones under high stress are invaded.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::gas::Overburden;
    /// use lentic::units::{Density, Length, Share};
    /// let cap = Overburden {
    ///     thickness: Length::from_cm(5.0),
    ///     porosity: Share::from_percent(40.0),
    ///     grain_density: Density::from_kg_m3(2650.0),
    ///     water_density: Density::from_kg_m3(997.05),
    /// };
    /// // 1727 Pa over 486.3 Pa
    /// assert!((cap.entry_ratio(0.07197, Length::from_mm(0.5)) - 3.55).abs() < 0.01);
    /// ```
    ///
    /// # Limits
    /// Theory of layers a hundred times thicker: it tells the manner, not the moment.
    pub fn entry_ratio(&self, surface_tension_n_m: f64, grain: Length) -> f64 {
        entry_pressure(surface_tension_n_m, grain).typical / self.effective_stress()
    }
}

/// A layer that dissolved gas crosses.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GasLayer {
    /// How thick it is.
    pub thickness: Length,
    /// Effective diffusion coefficient of the gas in it, `phi Ds`, m2/s.
    pub effective_m2_s: f64,
}

/// The most methane per area that can leave dissolved, mg/m2/d.
///
/// ```text
/// J = H Csat / (H L/(phi Ds)_cap + H^2/(2 (phi Ds)_soil))
/// ```
///
/// Production is even over the soil's depth `H`, and the water holds none.
///
/// # Limits
/// Halve it for mixed gas; up to double it for other models of tortuosity.
///
/// # Source
/// Steady diffusion with an even source; the highest concentration, at the
/// soil's foot, set to solubility.
///
/// # Example
/// ```
/// use lentic::substrate::diffusion::effective_diffusion;
/// use lentic::substrate::gas::{
///     GasLayer, METHANE_SOLUBILITY_MOL_M3, dissolved_methane_ceiling_mg_m2_d,
/// };
/// use lentic::units::{Length, Share};
/// let layer = |pores_pct| GasLayer {
///     thickness: Length::from_cm(3.0),
///     effective_m2_s: effective_diffusion(1.851e-9, Share::from_percent(pores_pct)),
/// };
/// let most = dissolved_methane_ceiling_mg_m2_d(layer(80.0), layer(40.0), METHANE_SOLUBILITY_MOL_M3);
/// // 1.4 / (0.03 / 2.614e-10 + 0.03 / (2 x 1.024e-9)) mol/(m2 s) of 16.04 g/mol
/// assert!((most - 15.0).abs() < 0.05);
/// ```
pub fn dissolved_methane_ceiling_mg_m2_d(
    soil: GasLayer,
    cap: GasLayer,
    solubility_mol_m3: f64,
) -> f64 {
    let across_cap = cap.thickness.m() / cap.effective_m2_s;
    let within_soil = soil.thickness.m() / (2.0 * soil.effective_m2_s);
    let mol_m2_s = solubility_mol_m3 / (across_cap + within_soil);
    mol_m2_s * METHANE_G_MOL * 1e3 * S_PER_DAY
}
