//! What tap water holds where nobody has measured it: a range, never nothing.

use crate::source::Band;
use crate::units::constants::molar_mass;
use crate::units::{Alkalinity, Concentration, Conductivity, Hardness};

/// Potassium of common tap water, mg/L (from memory: drinking water mostly under 10).
const POTASSIUM_MG_L: Band = Band::new(0.5, 2.0, 8.0);
/// Share of the hardness that is magnesium, by equivalents (from memory: a tenth in chalk,
/// four tenths in dolomite).
const MAGNESIUM_SHARE: Band = Band::new(0.1, 0.22, 0.4);
/// All chlorine of disinfected tap water, mg/L as Cl2 (judgement, below a common ceiling
/// of 4).
const CHLORINE_MG_L: Band = Band::new(0.1, 1.0, 4.0);
/// Conductivity of a degree of hardness with its alkalinity, uS/cm (judgement about 34, by
/// the ions' conductivities less what they lose in company).
const US_CM_PER_DEGREE: Band = Band::new(30.0, 34.0, 45.0);

/// The number as measured, or the range that stands for it, mg/L.
fn known_or(known: Option<Concentration>, usual: Band) -> Band {
    known.map_or(usual, |known| Band::exact(known.mg_l()))
}

/// Potassium of tap water, mg/L: as measured, or what is common.
///
/// # Source
/// From memory.
///
/// # Example
/// ```
/// use lentic::units::Concentration;
/// use lentic::water::tap;
/// assert_eq!(tap::potassium(Some(Concentration::from_mg_l(3.0))).low, 3.0);
/// assert!(tap::potassium(None).low > 0.0);
/// ```
pub fn potassium(known: Option<Concentration>) -> Band {
    known_or(known, POTASSIUM_MG_L)
}

/// All chlorine of tap water that is disinfected, mg/L as Cl2: as measured, or what is
/// common.
///
/// # Source
/// Judgement, below the ceiling of 4 mg/L in the United States.
///
/// # Example
/// ```
/// use lentic::water::tap;
/// assert_eq!(tap::chlorine(None).high, 4.0);
/// ```
pub fn chlorine(known: Option<Concentration>) -> Band {
    known_or(known, CHLORINE_MG_L)
}

/// Magnesium of water, mg/L: as measured, or a common share of its hardness.
///
/// ```text
/// Mg = s H M(Mg) / 2        H in meq/L
/// ```
///
/// # Source
/// Molar mass; the share s, 0.1 to 0.4 of the equivalents, from memory.
///
/// # Example
/// ```
/// use lentic::units::Hardness;
/// use lentic::water::tap;
/// // 0.22 of 2 meq/L at 12.15 mg/meq
/// assert!((tap::magnesium(None, Hardness::from_meq_l(2.0)).typical - 5.35).abs() < 0.01);
/// ```
pub fn magnesium(known: Option<Concentration>, hardness: Hardness) -> Band {
    let mg_per_meq = molar_mass::MG / 2.0;
    known_or(known, MAGNESIUM_SHARE.scaled(hardness.meq_l() * mg_per_meq))
}

/// Conductivity of water, uS/cm: as measured, or by its hardness and alkalinity.
///
/// ```text
/// K = k D        D the greater of dGH and dKH
/// ```
///
/// # Source
/// Judgement: k of 34 (30 to 45) uS/cm a degree; calcium bicarbonate at infinite dilution
/// has 0.3567 meq/L times 104 S cm2/eq, or 37.
///
/// # Example
/// ```
/// use lentic::units::{Alkalinity, Hardness};
/// use lentic::water::tap;
/// let (hardness, alkalinity) = (Hardness::from_dgh(10.0), Alkalinity::from_dkh(7.0));
/// assert!((tap::conductivity(None, hardness, alkalinity).typical - 340.0).abs() < 1e-9);
/// ```
///
/// # Limits
/// Too little for water softened by salt, whose sodium it does not know.
pub fn conductivity(
    known: Option<Conductivity>,
    hardness: Hardness,
    alkalinity: Alkalinity,
) -> Band {
    let degrees = hardness.dgh().max(alkalinity.dkh());
    known.map_or(US_CM_PER_DEGREE.scaled(degrees), |known| {
        Band::exact(known.us_cm())
    })
}
