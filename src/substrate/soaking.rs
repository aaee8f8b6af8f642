//! What soaking a soil before use takes out of it.

/// Water poured on a litre of soil in one round, L.
pub const WATER_PER_SOIL: f64 = 2.0;

/// Share of the ammonium or phosphate left after some rounds of soaking and draining.
///
/// ```text
/// left = (s / (s + 2))^rounds,   s = phi + rho_b Kd
/// ```
///
/// `s` litres of water that would hold what a litre of soil holds, `phi` its pore
/// share, `rho_b` its dry bulk density (kg/L), `Kd` its sorption of the one or the other (L/kg).
/// Each round brings two litres of clean water into balance with a litre of soil
/// and drains them.
///
/// # Source
/// Linear sorption, batch balance; computed, no measurement on potting soil was found.
///
/// # Example
/// ```
/// use lentic::substrate::soaking::left_after_soaking;
/// let dissolved_alone = left_after_soaking(0.8, 150.0, 0.0, 1);
/// assert!((dissolved_alone - 0.8 / 2.8).abs() < 1e-12);
/// ```
///
/// # Limits
/// What is sorbed lets go slowly: a short soak leaves more than this.
pub fn left_after_soaking(porosity: f64, dry_bulk_kg_m3: f64, kd_l_kg: f64, rounds: u32) -> f64 {
    let held = porosity + dry_bulk_kg_m3 / 1000.0 * kd_l_kg;
    (held / (held + WATER_PER_SOIL)).powf(f64::from(rounds))
}
