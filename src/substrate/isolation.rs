//! A cap as a barrier: what crosses it, how soon, and how thick it must be.

use super::S_PER_DAY;
use crate::units::{Concentration, Length};

/// How far a cap poured by hand is out, cm: judgement, the low end of 0.5 to 1.
pub const PLACING_ERROR_CM: f64 = 0.5;

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
/// Errs thin where anything stirs the cap.
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
