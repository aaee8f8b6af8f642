//! Un-ionised ammonia, and how much ammonia freshwater life is thought to bear.

use crate::source::Validity;
use crate::units::{Concentration, Share, Temperature};

/// Where the un-ionised fraction holds.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 50.0);

/// Whether salmon and trout of the genus Oncorhynchus live in the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Oncorhynchus {
    /// They do.
    Present,
    /// They do not, as in any small warm tank.
    Absent,
}

/// Share of total ammonia that is un-ionised, the poisonous form.
///
/// ```text
/// f = 1 / (1 + 10^(pKa - pH)),    pKa = 0.09018 + 2729.92 / T        T in K
/// ```
///
/// # Valid range
/// [`VALIDITY`]; no salt.
///
/// # Source
/// Emerson et al. 1975 (`emerson_1975`).
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::ammonia};
/// let share = ammonia::un_ionised_share(8.0, Temperature::from_celsius(24.0));
/// assert!((share.fraction() - 0.0502).abs() < 1e-4);
/// ```
///
/// # Limits
/// Salts are left out. They lower the share: it errs high.
pub fn un_ionised_share(ph: f64, temperature: Temperature) -> Share {
    let pka = 0.090_18 + 2729.92 / temperature.kelvin();
    Share::from_fraction(1.0 / (1.0 + 10_f64.powf(pka - ph)))
}

/// Total ammonia, as nitrogen, not to be exceeded in the mean of an hour.
///
/// ```text
/// S(pH) = 0.0114 / (1 + 10^(7.204 - pH)) + 1.6181 / (1 + 10^(pH - 7.204))
/// absent:  0.7249 S min(51.93, 23.12 10^(0.036 (20 - T)))
/// present: min(0.275 / (1 + 10^(7.204 - pH)) + 39.0 / (1 + 10^(pH - 7.204)),
///              0.7249 S 23.12 10^(0.036 (20 - T)))
/// ```
///
/// # Valid range
/// 0 to 30 C and pH 6.5 to 9; no design is judged by it.
///
/// # Source
/// US EPA 2013 (`epa_ammonia_2013`), criterion maximum concentration. Set to
/// protect mussels; fish alone bear more.
///
/// # Example
/// ```
/// use lentic::units::Temperature;
/// use lentic::water::ammonia::{Oncorhynchus, acute_criterion};
/// let warm = Temperature::from_celsius(20.0);
/// let limit = acute_criterion(7.0, warm, Oncorhynchus::Absent);
/// assert!((limit.mg_l() - 17.0).abs() < 0.5); // 17 as printed
/// ```
///
/// # Limits
/// Outside the two ranges the formula goes on without ground; nothing is clamped here.
pub fn acute_criterion(
    ph: f64,
    temperature: Temperature,
    oncorhynchus: Oncorhynchus,
) -> Concentration {
    let sensitivity = 0.7249 * ph_curve(ph, 7.204, 0.0114, 1.6181);
    let invertebrates = 23.12 * 10_f64.powf(0.036 * (20.0 - temperature.celsius()));
    Concentration::from_mg_l(match oncorhynchus {
        Oncorhynchus::Absent => sensitivity * invertebrates.min(51.93),
        Oncorhynchus::Present => ph_curve(ph, 7.204, 0.275, 39.0).min(sensitivity * invertebrates),
    })
}

/// Total ammonia, as nitrogen, not to be exceeded in the mean of 30 days.
///
/// ```text
/// 0.8876 (0.0278 / (1 + 10^(7.688 - pH)) + 1.1994 / (1 + 10^(pH - 7.688)))
///        2.126 10^(0.028 (20 - max(T, 7)))
/// ```
///
/// # Valid range
/// 0 to 30 C and pH 6.5 to 9; no design is judged by it.
///
/// # Source
/// US EPA 2013 (`epa_ammonia_2013`), criterion continuous concentration.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::ammonia::chronic_criterion};
/// let limit = chronic_criterion(7.0, Temperature::from_celsius(20.0));
/// assert!((limit.mg_l() - 1.9).abs() < 0.05); // 1.9 as printed
/// ```
///
/// # Limits
/// As [`acute_criterion`]. Set to protect mussels; fish alone bear more.
pub fn chronic_criterion(ph: f64, temperature: Temperature) -> Concentration {
    let sensitivity = 0.8876 * ph_curve(ph, 7.688, 0.0278, 1.1994);
    let warmth = 10_f64.powf(0.028 * (20.0 - temperature.celsius().max(7.0)));
    Concentration::from_mg_l(sensitivity * 2.126 * warmth)
}

/// Total ammonia, as nitrogen, not to be exceeded in the mean of 4 days: 2.5 times the
/// [`chronic_criterion`].
///
/// # Valid range
/// 0 to 30 C and pH 6.5 to 9; no design is judged by it.
///
/// # Source
/// US EPA 2013 (`epa_ammonia_2013`), criterion continuous concentration.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::ammonia::four_day_criterion};
/// let limit = four_day_criterion(7.0, Temperature::from_celsius(20.0));
/// assert!((limit.mg_l() - 2.5 * 1.9).abs() < 0.13); // 1.9 as printed
/// ```
pub fn four_day_criterion(ph: f64, temperature: Temperature) -> Concentration {
    chronic_criterion(ph, temperature) * 2.5
}

/// A curve that falls from `acid` to `alkaline` around a middle pH.
fn ph_curve(ph: f64, middle: f64, alkaline: f64, acid: f64) -> f64 {
    alkaline / (1.0 + 10_f64.powf(middle - ph)) + acid / (1.0 + 10_f64.powf(ph - middle))
}
