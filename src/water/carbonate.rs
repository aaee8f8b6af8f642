//! The carbonate system: carbon dioxide from pH and alkalinity, and back.

use crate::source::Validity;
use crate::units::constants::molar_mass;
use crate::units::{Alkalinity, Concentration, Hardness, Temperature};

/// Where the dissociation constants hold.
pub const VALIDITY: Validity = Validity::new("water temperature", "C", 0.0, 90.0);

/// The constants of the carbonate system at one temperature, as negative
/// decimal logarithms.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Dissociation {
    /// Carbon dioxide to bicarbonate.
    pub pk1: f64,
    /// Bicarbonate to carbonate.
    pub pk2: f64,
    /// Water to its ions.
    pub pkw: f64,
    /// Henry's constant of carbon dioxide, mol/(kg atm).
    pub pkh: f64,
}

/// How the charges of the ions are taken into account.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Activity {
    /// Not at all, as in the tables common in the trade.
    Ideal,
    /// By the Davies equation, in a water of calcium bicarbonate: 3 % less
    /// carbon dioxide at 1 dKH, 8 % at 10 dKH.
    Davies,
}

/// Activity coefficients of ions with one and two charges.
#[derive(Debug, Clone, Copy)]
struct ActivityCoefficients {
    single: f64,
    double: f64,
}

/// The constants at a temperature.
///
/// ```text
/// log K = a + b T + c/T + d log T + e/T^2        T in K
/// ```
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Plummer and Busenberg 1982 (`plummer_busenberg_1982`) for carbon dioxide; the
/// ion product of water as in the PHREEQC database `phreeqc.dat`.
///
/// # Example
/// ```
/// use lentic::{units::Temperature, water::carbonate::dissociation};
/// // Plummer and Busenberg 1982 at 25 C, as phreeqc.dat carries them
/// let constants = dissociation(Temperature::from_celsius(25.0));
/// assert!((constants.pk1 - 6.352).abs() < 0.001);
/// assert!((constants.pk2 - 10.329).abs() < 0.001);
/// ```
///
/// # Limits
/// For infinite dilution; [`Activity`] takes the salts of a tank into account.
pub fn dissociation(temperature: Temperature) -> Dissociation {
    let t_k = temperature.kelvin();
    let log_t = t_k.log10();
    let minus_log =
        |[a, b, c, d, e]: [f64; 5]| -(a + b * t_k + c / t_k + d * log_t + e / (t_k * t_k));
    Dissociation {
        pk1: minus_log([-356.3094, -0.060_919_64, 21_834.37, 126.8339, -1_684_915.0]),
        pk2: minus_log([-107.8871, -0.032_528_49, 5151.79, 38.925_61, -563_713.9]),
        pkw: minus_log([293.292_27, 0.136_083_3, -10_576.913, -123.731_58, 0.0])
            + 6.996_455e-5 * t_k * t_k,
        pkh: minus_log([108.3865, 0.019_850_76, -6919.53, -40.451_54, 669_365.0]),
    }
}

/// Carbon dioxide that goes with a pH and an alkalinity.
///
/// ```text
/// HCO3 = (Alk - OH + H) / (1 + 2 K2 / H),    CO2 = H HCO3 / K1
/// ```
///
/// Nothing where the hydroxide of that pH alone exceeds the alkalinity: no
/// carbonate water has that pH.
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// As [`dissociation`]; activities after Davies 1962 (`davies_1962`).
///
/// # Limits
/// Alkalinity from humic matter or phosphate, common over soil, is taken for
/// bicarbonate: the result is then too high. An error of 0.1 in pH is 26 %.
///
/// # Example
/// ```
/// use lentic::units::{Alkalinity, Temperature};
/// use lentic::water::carbonate::{Activity, carbon_dioxide};
/// let temperature = Temperature::from_celsius(25.0);
/// let co2 = carbon_dioxide(6.8, Alkalinity::from_dkh(4.0), temperature, Activity::Ideal);
/// // without activities by the library PyCO2SYS 1.8.3.4, `opt_k_carbonic` 8
/// assert!((co2.unwrap().mg_l() - 22.34).abs() < 0.2);
/// ```
pub fn carbon_dioxide(
    ph: f64,
    alkalinity: Alkalinity,
    temperature: Temperature,
    activity: Activity,
) -> Option<Concentration> {
    let [k1, k2, kw] = products(temperature);
    let gamma = activity.coefficients(alkalinity, temperature);
    let h = 10_f64.powf(-ph);
    let carbonate_charge = alkalinity.meq_l() * 1e-3 + (h - kw / h) / gamma.single;
    if carbonate_charge < 0.0 {
        return None;
    }
    let carbonate_per_bicarbonate = k2 / h * gamma.single / gamma.double;
    let bicarbonate = carbonate_charge / (1.0 + 2.0 * carbonate_per_bicarbonate);
    let co2_mol_l = h * gamma.single * bicarbonate / k1;
    Some(Concentration::from_mg_l(
        co2_mol_l * molar_mass::CO2 * 1000.0,
    ))
}

/// pH that goes with carbon dioxide and an alkalinity: the inverse of
/// [`carbon_dioxide`].
///
/// The charge balance is a cubic in H with one positive root,
///
/// ```text
/// H^3 + Alk H^2 - (K1 CO2 + Kw) H - 2 K1 K2 CO2 = 0
/// ```
///
/// with activity coefficients where asked for. Neither input is below zero.
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// As [`carbon_dioxide`].
///
/// # Example
/// ```
/// use lentic::units::{Alkalinity, Concentration, Temperature};
/// use lentic::water::carbonate::{Activity, ph};
/// // the carbon dioxide of pH 6.8 by the library PyCO2SYS 1.8.3.4, as in `carbon_dioxide`
/// let ph = ph(
///     Concentration::from_mg_l(22.34),
///     Alkalinity::from_dkh(4.0),
///     Temperature::from_celsius(25.0),
///     Activity::Ideal,
/// );
/// assert!((ph - 6.8).abs() < 0.01);
/// ```
///
/// # Limits
/// Humic acids of a fresh soil are left out: the water is then more acid than this.
pub fn ph(
    carbon_dioxide: Concentration,
    alkalinity: Alkalinity,
    temperature: Temperature,
    activity: Activity,
) -> f64 {
    let [k1, k2, kw] = products(temperature);
    let gamma = activity.coefficients(alkalinity, temperature);
    let co2_mol_l = carbon_dioxide.mg_l() / (molar_mass::CO2 * 1000.0);
    let h = positive_root(
        gamma.single * alkalinity.meq_l() * 1e-3,
        k1 * co2_mol_l + kw,
        2.0 * k1 * k2 * co2_mol_l * gamma.single / gamma.double,
    );
    -h.log10()
}

/// How many times the calcite that it can keep dissolved a water holds.
///
/// ```text
/// ratio = [Ca] g K1 K2 CO2 / (H^2 Kc),
/// log Kc = -171.9065 - 0.077993 T + 2839.319/T + 71.595 log T        T in K
/// ```
///
/// `g` the activity of ions with two charges, by Davies. Nothing where no carbonate water
/// has that pH.
///
/// # Valid range
/// [`VALIDITY`].
///
/// # Source
/// Plummer and Busenberg 1982 (`plummer_busenberg_1982`), as in `phreeqc.dat`.
///
/// # Example
/// ```
/// use lentic::units::{Alkalinity, Hardness, Temperature};
/// use lentic::water::carbonate::calcite_saturation;
/// // limestone in balance with air: pH 8.3, 0.5 mmol/L of calcium (textbooks, from memory)
/// let ratio = calcite_saturation(
///     8.3,
///     Hardness::from_meq_l(1.0),
///     Alkalinity::from_meq_l(1.0),
///     Temperature::from_celsius(25.0),
/// );
/// assert!(ratio.is_some_and(|ratio| (ratio - 1.0).abs() < 0.25));
/// ```
///
/// # Limits
/// What organic matter, magnesium and phosphate hold back is left out: lime settles from
/// several times its saturation on.
pub fn calcite_saturation(
    ph: f64,
    calcium: Hardness,
    alkalinity: Alkalinity,
    temperature: Temperature,
) -> Option<f64> {
    let co2 = carbon_dioxide(ph, alkalinity, temperature, Activity::Davies)?;
    let [k1, k2, _] = products(temperature);
    let double = Activity::Davies
        .coefficients(alkalinity, temperature)
        .double;
    let t_k = temperature.kelvin();
    let log_kc = -171.9065 - 0.077_993 * t_k + 2839.319 / t_k + 71.595 * t_k.log10();
    let carbonate = k1 * k2 * co2.mg_l() / (molar_mass::CO2 * 1e3) / 10_f64.powf(-2.0 * ph);
    let calcium_mol_l = calcium.meq_l() * 0.5e-3;
    Some(calcium_mol_l * double * carbonate / 10_f64.powf(log_kc))
}

impl Activity {
    /// ```text
    /// log gamma = -A z^2 (sqrt(I) / (1 + sqrt(I)) - 0.3 I),    A = 1.82e6 (eps T)^-1.5
    /// ```
    /// With calcium as the only counter-ion the ionic strength is 1.5 times the alkalinity.
    fn coefficients(
        self,
        alkalinity: Alkalinity,
        temperature: Temperature,
    ) -> ActivityCoefficients {
        match self {
            Self::Ideal => ActivityCoefficients {
                single: 1.0,
                double: 1.0,
            },
            Self::Davies => {
                let strength = 1.5e-3 * alkalinity.meq_l();
                let root = strength.sqrt();
                let t_k = temperature.kelvin();
                let a = 1.82e6 * (dielectric_constant(temperature) * t_k).powf(-1.5);
                let log_single = -a * (root / (1.0 + root) - 0.3 * strength);
                ActivityCoefficients {
                    single: 10_f64.powf(log_single),
                    double: 10_f64.powf(4.0 * log_single),
                }
            }
        }
    }
}

/// Static dielectric constant of water at 0-100 C (`malmberg_maryott_1956`).
fn dielectric_constant(temperature: Temperature) -> f64 {
    let t = temperature.celsius();
    87.740 - 0.400_08 * t + 9.398e-4 * t * t - 1.410e-6 * t * t * t
}

/// K1, K2 and Kw.
fn products(temperature: Temperature) -> [f64; 3] {
    let constants = dissociation(temperature);
    [constants.pk1, constants.pk2, constants.pkw].map(|pk| 10_f64.powf(-pk))
}

/// The positive root of `h^3 + a h^2 - b h - c` for a, b, c not below zero.
///
/// Dropping the cube gives a value at or above the root, and so does dropping
/// the square; from there the function is convex, so Newton's steps come down
/// to the root without passing it.
fn positive_root(a: f64, b: f64, c: f64) -> f64 {
    let mut h = b.sqrt() + c.cbrt();
    if a > 0.0 {
        h = h.min((b + (b * b + 4.0 * a * c).sqrt()) / (2.0 * a));
    }
    for _ in 0..MOST_STEPS {
        let step = (((h + a) * h - b) * h - c) / ((3.0 * h + 2.0 * a) * h - b);
        h -= step;
        if step.abs() <= 1e-14 * h {
            break;
        }
    }
    h
}

/// Newton's steps at most; three to six are usual.
const MOST_STEPS: u32 = 60;

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;

    #[test]
    fn ph_and_carbon_dioxide_are_inverse() {
        let temperature = Temperature::from_celsius(24.0);
        for activity in [Activity::Ideal, Activity::Davies] {
            for dkh in [0.05, 1.0, 4.0, 20.0] {
                for mg_l in [0.01, 0.6, 15.0, 200.0] {
                    let alkalinity = Alkalinity::from_dkh(dkh);
                    let given = Concentration::from_mg_l(mg_l);
                    let ph = ph(given, alkalinity, temperature, activity);
                    let back = carbon_dioxide(ph, alkalinity, temperature, activity).unwrap();
                    assert_relative_eq!(back.mg_l(), mg_l, max_relative = 1e-9);
                }
            }
        }
    }

    #[test]
    fn water_without_alkalinity_or_carbon_dioxide_is_neutral() {
        let temperature = Temperature::from_celsius(25.0);
        let neutral = ph(
            Concentration::ZERO,
            Alkalinity::ZERO,
            temperature,
            Activity::Davies,
        );
        assert_relative_eq!(
            neutral,
            dissociation(temperature).pkw / 2.0,
            max_relative = 1e-9
        );
    }

    /// Values of textbooks for an ionic strength of 0.1 mol/L at 25 C (from memory).
    #[test]
    fn activity_coefficients_are_those_of_textbooks() {
        let alkalinity = Alkalinity::from_meq_l(0.1e3 / 1.5);
        let gamma = Activity::Davies.coefficients(alkalinity, Temperature::from_celsius(25.0));
        assert_relative_eq!(gamma.single, 0.78, epsilon = 0.005);
        assert_relative_eq!(gamma.double, 0.37, epsilon = 0.005);
    }

    #[test]
    fn a_ph_beyond_the_alkalinity_has_no_carbon_dioxide() {
        let soft = Alkalinity::from_meq_l(0.01);
        let temperature = Temperature::from_celsius(25.0);
        assert_eq!(
            carbon_dioxide(10.0, soft, temperature, Activity::Ideal),
            None
        );
    }
}
