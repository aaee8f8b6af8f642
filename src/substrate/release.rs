//! How solutes get from the soil up to the water: the one release function.
//!
//! A solute leaves the soil by diffusion, crosses the cap by diffusion and by slow
//! currents between its grains, and beside that by holes that roots, gas and burrows
//! leave. All amounts are per square metre of floor.

use super::diffusion::{effective_diffusion, slab_share};
use crate::units::{Length, Share};

/// Still water over the bed, m, under water that is stirred: judgement. Nobody measured it
/// over such a floor; at leaves in beds of plants, at 0.03 to 0.46 cm/s, it was estimated at
/// 9.1 to 2.3 mm (Losee and Wetzel 1993, `losee_wetzel_1993`). Cap and soil resist many
/// times as much.
pub const FILM_M: f64 = 0.001;

/// Time in which the holes through a bed open, d (judgement).
const HOLES_D: f64 = 2.0;
/// Shortest time over which the soil's resistance is looked at, d.
const SHORTEST_D: f64 = 1e-3;
const KG_PER_G: f64 = 1e-3;
/// Scaled time after which a slab lets half the steady flux through.
const HALF_RISE: f64 = 0.1388;
/// Divisor of Kozeny and Carman for grains of one size.
const KOZENY: f64 = 180.0;
/// Density of sand grains, kg/L.
const GRAIN_KG_L: f64 = 2.65;
/// Grain size up to which sorption on sand is given; beyond, it falls with the surface, mm.
const SORBING_GRAIN_MM: f64 = 0.5;

/// A flooded soil under its cap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CappedSoil {
    /// Depth of the soil, m.
    pub soil_depth_m: f64,
    /// Pore share of the soil.
    pub soil_porosity: f64,
    /// Dry bulk density of the soil, kg/m3.
    pub soil_dry_bulk_density_kg_m3: f64,
    /// Depth of the cap, m; none is 0.
    pub cap_depth_m: f64,
    /// Pore share of the cap.
    pub cap_porosity: f64,
    /// Size that 10 % of the cap's grains are finer than, mm.
    pub effective_grain_mm: f64,
    /// Exchange by currents through the pores over the cap's permeability, 1/d.
    pub pore_exchange_per_d: f64,
    /// How much roots, gas and burrows speed the transport up over diffusion.
    pub enhancement: f64,
}

/// A solute on its way up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Substance {
    /// Diffusion coefficient in free water, m2/d.
    pub diffusivity_m2_d: f64,
    /// Linear sorption on the soil, L/kg.
    pub soil_kd_l_kg: f64,
    /// Retardation in the cap.
    pub cap_retardation: f64,
}

/// Permeability of sand to water, m2.
///
/// ```text
/// k = phi^3/(1 - phi)^2 d10^2/180
/// ```
///
/// # Source
/// Kozeny and Carman (from memory), with the effective size for the grain.
///
/// # Example
/// ```
/// use lentic::substrate::release::permeability_m2;
/// use lentic::units::{Length, Share};
/// let sand = permeability_m2(Share::from_percent(40.0), Length::from_mm(0.5));
/// // 0.064 / 0.36 x 0.25e-6 / 180
/// assert!((sand - 2.469e-10).abs() < 1e-13);
/// ```
///
/// # Limits
/// Clean grains of nearly one size; silt between them lets less through.
pub fn permeability_m2(porosity: Share, effective_grain: Length) -> f64 {
    let phi = porosity.fraction();
    phi.powi(3) / (1.0 - phi).powi(2) * effective_grain.m().powi(2) / KOZENY
}

/// Retardation in a cap by linear sorption on its sand.
///
/// ```text
/// R = 1 + 2.65 (1 - phi)/phi Kd min(1, 0.5 mm/d10)
/// ```
///
/// # Source
/// Linear sorption on grains of 2.65 kg/L; the fall with the grains' surface is judgement.
///
/// # Example
/// ```
/// use lentic::substrate::release::sorbed_retardation;
/// // 1 + 2.65 x 1.5 x 5
/// assert!((sorbed_retardation(0.4, 5.0, 0.3) - 20.875).abs() < 1e-9);
/// assert!((sorbed_retardation(0.4, 5.0, 5.0) - 2.9875).abs() < 1e-9);
/// ```
///
/// # Limits
/// Sorption that lets go again; old sand holds less.
pub fn sorbed_retardation(porosity: f64, kd_l_kg: f64, effective_grain_mm: f64) -> f64 {
    let surface = (SORBING_GRAIN_MM / effective_grain_mm).min(1.0);
    1.0 + GRAIN_KG_L * (1.0 - porosity) / porosity * kd_l_kg * surface
}

/// What a bed's transport of one solute comes to: everything in the release that does not
/// change from hour to hour.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passage {
    /// Amount held per pore water concentration, m (g/m2 per mg/L).
    pub store_m: f64,
    /// Resistance of the soil once it empties through all its depth, d/m.
    pub soil_d_m: f64,
    /// Time by which it does, d.
    pub soil_settles_d: f64,
    /// Resistance of the cap between its grains, d/m.
    pub cap_d_m: f64,
    /// Resistance of the cap to diffusion alone, d/m.
    pub still_cap_d_m: f64,
    /// Resistance of the still film, d/m.
    pub film_d_m: f64,
    /// Extra passage by holes over that by diffusion.
    pub holes: f64,
    /// Time that a metre of clean cap would take to fill, d/m2.
    fill_d_m2: f64,
}

/// How a bed lets a solute through at one moment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Conductance {
    /// Between the grains, m/d.
    pub matrix_m_d: f64,
    /// By holes, past the grains, m/d.
    pub holes_m_d: f64,
}

impl Conductance {
    /// By both, m/d.
    pub fn both_m_d(&self) -> f64 {
        self.matrix_m_d + self.holes_m_d
    }
}

impl Passage {
    /// Resistances and stores of a bed.
    ///
    /// ```text
    /// store  = Ls (phi_s + rho_b Kd)            rho_b in kg/L
    /// soil   = Ls/(3 De_s)                      settles at Ls^2 kap/(9 pi De_s)
    /// cap    = Lc/(De_c + chi k)                still cap = Lc/De_c
    /// film   = 0.001 m / D
    /// De     = phi D / (1 - ln phi^2)
    /// ```
    ///
    /// `kap` is the store per depth, `chi` the exchange by currents through the pores,
    /// `k` the permeability.
    ///
    /// # Source
    /// Boudreau 1996 for `De`; the third of the depth is the late mean path out of a slab
    /// that empties through one face (Crank 1975, `crank_1975`, from memory); exchange by
    /// currents: judgement.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::release::{CappedSoil, Passage, Substance};
    /// let bed = CappedSoil {
    ///     soil_depth_m: 0.025, soil_porosity: 0.70, soil_dry_bulk_density_kg_m3: 700.0,
    ///     cap_depth_m: 0.025, cap_porosity: 0.40, effective_grain_mm: 0.5,
    ///     pore_exchange_per_d: 6e3, enhancement: 1.5,
    /// };
    /// let ammonium =
    ///     Substance { diffusivity_m2_d: 1.71e-4, soil_kd_l_kg: 2.0, cap_retardation: 1.2 };
    /// let passage = Passage::new(&bed, &ammonium);
    /// // 0.025 (0.7 + 0.7 x 2) m; 0.025/(3 x 6.986e-5); 0.025/(2.415e-5 + 6000 x 2.469e-10)
    /// assert!((passage.store_m - 0.0525).abs() < 1e-12);
    /// assert!((passage.soil_d_m - 119.3).abs() < 0.1 && (passage.cap_d_m - 975.4).abs() < 0.5);
    /// ```
    ///
    /// # Limits
    /// One soil, mixed through, over a floor that lets nothing by; the cap of one porosity.
    pub fn new(bed: &CappedSoil, substance: &Substance) -> Self {
        let free = substance.diffusivity_m2_d;
        let cap_porosity = Share::from_fraction(bed.cap_porosity);
        let in_soil = effective_diffusion(free, Share::from_fraction(bed.soil_porosity));
        let in_cap = effective_diffusion(free, cap_porosity);
        let currents = bed.pore_exchange_per_d
            * permeability_m2(cap_porosity, Length::from_mm(bed.effective_grain_mm));
        let sorbed = bed.soil_dry_bulk_density_kg_m3 * substance.soil_kd_l_kg * KG_PER_G;
        let held = bed.soil_porosity + sorbed;
        let soil_d_m = bed.soil_depth_m / (3.0 * in_soil);
        Self {
            store_m: held * bed.soil_depth_m,
            soil_d_m,
            soil_settles_d: soil_d_m * soil_d_m * in_soil * held / std::f64::consts::PI,
            cap_d_m: bed.cap_depth_m / (in_cap + currents),
            still_cap_d_m: bed.cap_depth_m / in_cap,
            film_d_m: FILM_M / free,
            holes: bed.enhancement - 1.0,
            fill_d_m2: bed.cap_porosity * substance.cap_retardation / (in_cap + currents),
        }
    }

    /// Resistance of the soil some days after flooding, d/m: at first only what lies next to
    /// the cap has to move.
    ///
    /// ```text
    /// r = r_inf (1 + (r_inf/r_e)^4)^(-1/4)       r_e = sqrt(pi t/(De kap))
    /// ```
    ///
    /// # Source
    /// Both ends: a half-infinite and a finite slab (Crank 1975, `crank_1975`, from memory);
    /// the bridge is judgement, within 15 % of a column of 200 cells in an independent program.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::release::{CappedSoil, Passage, Substance};
    /// let bed = CappedSoil {
    ///     soil_depth_m: 0.025, soil_porosity: 0.70, soil_dry_bulk_density_kg_m3: 700.0,
    ///     cap_depth_m: 0.0, cap_porosity: 0.40, effective_grain_mm: 0.5,
    ///     pore_exchange_per_d: 6e3, enhancement: 1.5,
    /// };
    /// let ammonium =
    ///     Substance { diffusivity_m2_d: 1.71e-4, soil_kd_l_kg: 2.0, cap_retardation: 1.2 };
    /// let passage = Passage::new(&bed, &ammonium);
    /// assert!(passage.soil_at_d_m(0.1) < 0.6 * passage.soil_d_m);
    /// assert!((passage.soil_at_d_m(1e4) / passage.soil_d_m - 1.0).abs() < 1e-6);
    /// ```
    pub fn soil_at_d_m(&self, days: f64) -> f64 {
        let early = self.soil_settles_d / days.max(SHORTEST_D);
        self.soil_d_m / (1.0 + early * early).sqrt().sqrt()
    }

    /// Share of the steady flux that a cap laid clean lets through between its grains after
    /// some days; 1 without a cap.
    pub fn rise(&self, clean_depth_m: f64, days: f64) -> f64 {
        let fill_d = self.fill_d(clean_depth_m);
        if fill_d > 0.0 {
            slab_share(days / fill_d)
        } else {
            1.0
        }
    }

    /// Time after which a clean depth lets half the steady flux through, d.
    pub fn half_rise_d(&self, clean_depth_m: f64) -> f64 {
        HALF_RISE * self.fill_d(clean_depth_m)
    }

    /// Conductance of an old bed.
    pub fn settled(&self) -> Conductance {
        self.conductance(f64::INFINITY, 1.0)
    }

    /// Time in which a clean depth fills, `phi R L^2/(De + chi k)`, d.
    fn fill_d(&self, clean_depth_m: f64) -> f64 {
        self.fill_d_m2 * clean_depth_m * clean_depth_m
    }

    /// Conductance some days after flooding, with the share that the cap lets through.
    ///
    /// ```text
    /// matrix = rise/(soil + cap)
    /// holes  = (enhancement - 1)/(soil + still cap) (1 - exp(-t/2 d))
    /// ```
    ///
    /// # Source
    /// Resistances in a row; holes: judgement, a lake model multiplies by five for burrows
    /// (`janse_2005`).
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::release::{CappedSoil, Passage, Substance};
    /// let bed = CappedSoil {
    ///     soil_depth_m: 0.025, soil_porosity: 0.70, soil_dry_bulk_density_kg_m3: 700.0,
    ///     cap_depth_m: 0.025, cap_porosity: 0.40, effective_grain_mm: 0.5,
    ///     pore_exchange_per_d: 6e3, enhancement: 1.5,
    /// };
    /// let ammonium =
    ///     Substance { diffusivity_m2_d: 1.71e-4, soil_kd_l_kg: 2.0, cap_retardation: 1.2 };
    /// let late = Passage::new(&bed, &ammonium).conductance(1e4, 1.0);
    /// // 1/(119.3 + 975.4) and 0.5/(119.3 + 1035.2)
    /// assert!((late.matrix_m_d - 9.135e-4).abs() < 1e-6);
    /// assert!((late.holes_m_d - 4.331e-4).abs() < 1e-6);
    /// ```
    ///
    /// # Limits
    /// With the pore model of other authors up to twice as much comes through sand.
    pub fn conductance(&self, days: f64, rise: f64) -> Conductance {
        if self.soil_d_m <= 0.0 {
            return Conductance {
                matrix_m_d: 0.0,
                holes_m_d: 0.0,
            };
        }
        let soil_d_m = self.soil_at_d_m(days);
        let open = 1.0 - (-(days / HOLES_D)).exp();
        Conductance {
            matrix_m_d: rise / (soil_d_m + self.cap_d_m),
            holes_m_d: self.holes * open / (soil_d_m + self.still_cap_d_m),
        }
    }
}
