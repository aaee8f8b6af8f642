//! What the bed gives off to the water: the one release function.
//!
//! Ammonium is set free in the soil, part of it in the pore water and part on
//! the soil's exchanger; it diffuses through half the soil, the cap and a film
//! of still water. All amounts are per square metre of floor, all nitrogen as N.

use super::diffusion::{effective_diffusion, rise_time_d};
use crate::units::Share;

/// Still water over the bed, m, under water that is stirred: judgement. Nobody measured it
/// over such a floor; at leaves in beds of plants, at 0.03 to 0.46 cm/s, it was estimated at
/// 9.1 to 2.3 mm (Losee and Wetzel 1993, `losee_wetzel_1993`). Cap and soil resist many
/// times as much.
pub const FILM_M: f64 = 0.001;

/// Factor per 10 C on mineralisation, here about 25 C.
const MINERALISATION_Q10: f64 = 2.0;
const REFERENCE_C: f64 = 25.0;
const KG_PER_G: f64 = 1e-3;
/// Kept off zero, so that a bed without a cap has a rise time.
const SHORTEST_RISE_D: f64 = 1e-9;

/// A flooded soil under its cap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bed {
    /// Depth of the soil, m.
    pub soil_depth_m: f64,
    /// Pore share of the soil.
    pub soil_porosity: f64,
    /// Dry bulk density of the soil, kg/m3.
    pub soil_dry_bulk_density_kg_m3: f64,
    /// Linear sorption coefficient of ammonium on the soil, L/kg.
    pub ammonium_kd_l_kg: f64,
    /// Depth of the cap, m; none is 0.
    pub cap_depth_m: f64,
    /// Pore share of the cap.
    pub cap_porosity: f64,
    /// Retardation of ammonium in the cap.
    pub cap_retardation: f64,
    /// Diffusion coefficient of ammonium in free water, m2/d.
    pub ammonium_diffusivity_m2_d: f64,
    /// How much roots, gas and burrows speed the transport up over diffusion.
    pub enhancement: f64,
    /// Rate constant of the fast pool at 25 C, 1/d.
    pub mineralisation_25_c_per_d: f64,
    /// Temperature of the bed, C.
    pub temperature_c: f64,
}

impl Bed {
    /// Time scale in which a depth of clean cap, in metres, fills and lets
    /// through, in days.
    pub fn rise_d(&self, clean_depth_m: f64) -> f64 {
        let in_cap = effective_diffusion(
            self.ammonium_diffusivity_m2_d,
            Share::from_fraction(self.cap_porosity),
        );
        let rise_d = rise_time_d(
            clean_depth_m,
            self.cap_retardation,
            in_cap,
            self.cap_porosity,
        );
        rise_d + SHORTEST_RISE_D
    }
}

/// Nitrogen in the soil, g N/m2.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pools {
    /// In organic matter that breaks down within weeks of flooding.
    pub labile_g_m2: f64,
    /// Ammonium, dissolved and exchangeable.
    pub mineral_g_m2: f64,
}

impl Pools {
    /// The pools of a fresh soil, from contents in g N/kg of dry soil.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::release::{Bed, Pools};
    /// let bed = Bed {
    ///     soil_depth_m: 0.025, soil_porosity: 0.70, soil_dry_bulk_density_kg_m3: 700.0,
    ///     ammonium_kd_l_kg: 2.0, cap_depth_m: 0.025, cap_porosity: 0.40, cap_retardation: 1.2,
    ///     ammonium_diffusivity_m2_d: 1.71e-4, enhancement: 1.5,
    ///     mineralisation_25_c_per_d: 0.048, temperature_c: 25.0,
    /// };
    /// // 17.5 kg of dry soil on a square metre, with 5 g N/kg, 5.2 % of it quick
    /// assert!((Pools::fresh(&bed, 5.0, 0.052, 0.10).labile_g_m2 - 17.5 * 0.26_f64).abs() < 1e-9);
    /// ```
    pub fn fresh(
        bed: &Bed,
        total_nitrogen_g_kg: f64,
        labile_share: f64,
        mineral_nitrogen_g_kg: f64,
    ) -> Self {
        let soil_kg_m2 = bed.soil_dry_bulk_density_kg_m3 * bed.soil_depth_m;
        Self {
            labile_g_m2: soil_kg_m2 * total_nitrogen_g_kg * labile_share,
            mineral_g_m2: soil_kg_m2 * mineral_nitrogen_g_kg,
        }
    }
}

/// What a bed's transport comes to: everything in the release that does not
/// change from hour to hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passage {
    /// Rate constant of the fast pool at the bed's temperature, 1/d.
    pub mineralisation_per_d: f64,
    /// Mineral nitrogen held per pore water concentration, m (g/m2 per mg/L).
    pub store_m: f64,
    /// Resistance of the soil, d/m.
    pub soil_d_m: f64,
    /// Resistance of the cap, d/m.
    pub cap_d_m: f64,
    /// Resistance of the still film, d/m.
    pub film_d_m: f64,
    /// Conductance of the three in a row with the enhancement, m/d.
    pub conductance_m_d: f64,
    /// Time scale in which the cap fills and lets through, d.
    pub rise_d: f64,
}

impl Passage {
    /// Resistances and stores of a bed.
    ///
    /// ```text
    /// k      = k25 2^((T - 25)/10)
    /// store  = Ls (phi_s + rho_b Kd)            rho_b in kg/L
    /// soil   = (Ls/2) / De_s     cap = Lc / De_c     film = 0.001 m / D
    /// g      = enhancement / (soil + cap + film)
    /// tau    = 0.2 R Lc^2 / (De_c/phi_c)
    /// De     = phi D / (1 - ln phi^2)
    /// ```
    ///
    /// # Source
    /// Boudreau 1996 for `De`; series of resistances: two-film form, the soil
    /// taken as emptying from its middle (judgement, as the film is). Fast anaerobic pool and
    /// its constant: Zou et al. 2018, *Open Journal of Soil Science* 8:75, with
    /// a Q10 of 2.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::release::{Bed, Passage};
    /// let bed = Bed {
    ///     soil_depth_m: 0.025, soil_porosity: 0.70, soil_dry_bulk_density_kg_m3: 700.0,
    ///     ammonium_kd_l_kg: 2.0, cap_depth_m: 0.025, cap_porosity: 0.40, cap_retardation: 1.2,
    ///     ammonium_diffusivity_m2_d: 1.71e-4, enhancement: 1.5,
    ///     mineralisation_25_c_per_d: 0.048, temperature_c: 25.0,
    /// };
    /// // 1.5 / (0.0125 / 6.986e-5 + 0.025 / 2.415e-5 + 0.001 / 1.71e-4)
    /// assert!((Passage::new(&bed).conductance_m_d - 1.2294e-3_f64).abs() < 1e-6);
    /// ```
    ///
    /// # Limits
    /// One soil, mixed through, over a floor that lets nothing by; the cap of one porosity.
    pub fn new(bed: &Bed) -> Self {
        let free = bed.ammonium_diffusivity_m2_d;
        let in_soil = effective_diffusion(free, Share::from_fraction(bed.soil_porosity));
        let in_cap = effective_diffusion(free, Share::from_fraction(bed.cap_porosity));
        let soil_d_m = bed.soil_depth_m / 2.0 / in_soil;
        let cap_d_m = bed.cap_depth_m / in_cap;
        let film_d_m = FILM_M / free;
        let warmth = MINERALISATION_Q10.powf((bed.temperature_c - REFERENCE_C) / 10.0);
        let sorbed = bed.soil_dry_bulk_density_kg_m3 * bed.ammonium_kd_l_kg * KG_PER_G;
        Self {
            mineralisation_per_d: bed.mineralisation_25_c_per_d * warmth,
            store_m: (bed.soil_porosity + sorbed) * bed.soil_depth_m,
            soil_d_m,
            cap_d_m,
            film_d_m,
            conductance_m_d: bed.enhancement / (soil_d_m + cap_d_m + film_d_m),
            rise_d: bed.rise_d(bed.cap_depth_m),
        }
    }

    /// Share of the steady flux that comes through after some days,
    /// `1 - exp(-t/tau)`.
    pub fn rise(&self, days: f64) -> f64 {
        1.0 - (-(days / self.rise_d)).exp()
    }
}

/// What the bed does at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Release {
    /// Ammonium set free in the soil, g N/(m2 d).
    pub mineralisation_g_m2_d: f64,
    /// Ammonium in the pore water, mg N/L.
    pub pore_water_mg_l: f64,
    /// Ammonium given off to the water, g N/(m2 d); negative when the water
    /// holds more than the pores.
    pub flux_g_m2_d: f64,
}

/// Mineralisation, pore water and flux to the water of a bed.
///
/// ```text
/// m  = k Nlab
/// Cs = Nmin / store
/// j  = g (Cs - Cw) rise
/// ```
///
/// # Limits
/// The cap holds no nitrifiers here: a real one oxidises part of the ammonium on
/// its way. With the pore model of other authors up to twice as much comes
/// through sand.
///
/// # Example
/// ```
/// use lentic::substrate::release::{Bed, Passage, Pools, release};
/// let bed = Bed {
///     soil_depth_m: 0.025, soil_porosity: 0.70, soil_dry_bulk_density_kg_m3: 700.0,
///     ammonium_kd_l_kg: 2.0, cap_depth_m: 0.025, cap_porosity: 0.40, cap_retardation: 1.2,
///     ammonium_diffusivity_m2_d: 1.71e-4, enhancement: 1.5,
///     mineralisation_25_c_per_d: 0.048, temperature_c: 25.0,
/// };
/// let passage = Passage::new(&bed);
/// let pools = Pools::fresh(&bed, 5.0, 0.052, 0.10);
/// let now = release(&passage, &pools, 0.0, passage.rise(7.0));
/// assert!(now.flux_g_m2_d > 0.03 && now.flux_g_m2_d < 0.05);
/// ```
///
/// # Source
/// As [`Passage::new`].
pub fn release(passage: &Passage, pools: &Pools, water_mg_l: f64, rise: f64) -> Release {
    let pore_water_mg_l = pools.mineral_g_m2 / passage.store_m;
    Release {
        mineralisation_g_m2_d: passage.mineralisation_per_d * pools.labile_g_m2,
        pore_water_mg_l,
        flux_g_m2_d: passage.conductance_m_d * (pore_water_mg_l - water_mg_l) * rise,
    }
}
