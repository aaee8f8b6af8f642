//! Nitrogen and phosphorus as test kits and laboratories report them.

use super::Concentration;
use super::constants::molar_mass;
use super::error::{QuantityError, QuantityProblem};
use super::{parse, pattern};

/// A dissolved nutrient whose readings come on several scales.
///
/// Readings without a scale are taken on the analyte's own: ammonia as
/// nitrogen (mg N/L), nitrite, nitrate and phosphate as the ion.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Analyte {
    /// Total ammonia, NH3 and NH4+ together, as nitrogen.
    Ammonia,
    /// Nitrite, as NO2.
    Nitrite,
    /// Nitrate, as NO3.
    Nitrate,
    /// Phosphate, as PO4.
    Phosphate,
}

/// Spellings of a scale and what one unit of it is on the analyte's own scale.
type Scale = (&'static [&'static str], f64);

const AMMONIA_SCALES: &[Scale] = &[
    (&["n", "nh3-n", "nh4-n", "tan"], 1.0),
    (&["nh4", "nh4+"], molar_mass::N / molar_mass::NH4),
    (&["nh3"], molar_mass::N / molar_mass::NH3),
];
const NITRITE_SCALES: &[Scale] = &[
    (&["no2", "no2-"], 1.0),
    (&["n", "no2-n"], molar_mass::NO2 / molar_mass::N),
];
const NITRATE_SCALES: &[Scale] = &[
    (&["no3", "no3-"], 1.0),
    (&["n", "no3-n"], molar_mass::NO3 / molar_mass::N),
];
const PHOSPHATE_SCALES: &[Scale] = &[
    (&["po4"], 1.0),
    (&["p", "po4-p"], molar_mass::PO4 / molar_mass::P),
];
const AMMONIA_CHOICES: &[&str] = &["mg/L", "mg/L N", "mg/L NH4", "mg/L NH3"];
const NITRITE_CHOICES: &[&str] = &["mg/L", "mg/L NO2", "mg/L NO2-N"];
const NITRATE_CHOICES: &[&str] = &["mg/L", "mg/L NO3", "mg/L NO3-N"];
const PHOSPHATE_CHOICES: &[&str] = &["mg/L", "mg/L PO4", "mg/L PO4-P"];

impl Analyte {
    /// Reads a concentration, with or without a scale, onto the analyte's own scale.
    ///
    /// # Errors
    /// As [`Quantity::parse`](super::Quantity::parse), and for an unknown scale.
    ///
    /// # Example
    /// ```
    /// use lentic::units::Analyte;
    /// let reading = Analyte::Nitrate.parse("20 mg/L NO3-N")?;
    /// assert!((reading.mg_l() - 88.5).abs() < 0.1);
    /// # Ok::<(), lentic::units::QuantityError>(())
    /// ```
    pub fn parse(self, text: &str) -> Result<Concentration, QuantityError> {
        let fail = |problem| QuantityError {
            quantity: self.phrase(),
            example: self.example(),
            problem,
        };
        let (number, unit) = parse::split_number(text).map_err(fail)?;
        if unit.is_empty() {
            return Err(fail(QuantityProblem::NoUnit {
                text: text.trim().to_owned(),
            }));
        }
        let normal = parse::normalised(unit);
        let Some(factor) = self.factor(&normal) else {
            return Err(fail(QuantityProblem::UnknownUnit {
                unit: unit.to_owned(),
                choices: self.choices().to_vec(),
            }));
        };
        let value = number * factor;
        parse::check_value(text, value, false).map_err(fail)?;
        Ok(Concentration::from_mg_l(value))
    }

    /// The pattern of a concentration, with or without a scale, as [`pattern::quantity`].
    pub fn pattern(self) -> String {
        let spelled = |spelling: &&str| [spelling.to_uppercase(), (*spelling).to_owned()];
        let scales: Vec<String> = self
            .scales()
            .iter()
            .flat_map(|(spellings, _)| spellings.iter().flat_map(spelled))
            .map(|spelling| spelling.replace('+', r"\+"))
            .collect();
        let scale = format!("(?:{})", scales.join("|"));
        pattern::with_unit(&format!(
            "(?:mg/[Ll]|[uµ]g/[Ll]|ppm|ppb)(?:\\s*(?:as )?{scale})?|mg {scale}/[Ll]"
        ))
    }

    /// Own-scale mg/L in one of the written unit.
    fn factor(self, unit: &str) -> Option<f64> {
        let (size, scale) = [
            ("mg/l", 1.0),
            ("ppm", 1.0),
            ("mg ", 1.0),
            ("ug/l", 1e-3),
            ("ppb", 1e-3),
        ]
        .into_iter()
        .find_map(|(prefix, size)| Some((size, unit.strip_prefix(prefix)?)))?;
        let scale = scale
            .trim()
            .trim_end_matches("/l")
            .trim_start_matches("as ");
        if scale.is_empty() {
            return Some(size);
        }
        let spelled = scale.replace(' ', "-");
        self.scales()
            .iter()
            .find(|(spellings, _)| spellings.contains(&spelled.as_str()))
            .map(|(_, ratio)| size * ratio)
    }

    /// Nitrogen (or phosphorus) in a concentration on the analyte's own scale.
    ///
    /// # Example
    /// ```
    /// use lentic::units::{Analyte, Concentration};
    /// // 14.007 of 62.004 g/mol
    /// let nitrogen = Analyte::Nitrate.element(Concentration::from_mg_l(62.004));
    /// assert!((nitrogen.mg_l() - 14.007).abs() < 1e-9);
    /// ```
    pub fn element(self, own_scale: Concentration) -> Concentration {
        own_scale / self.per_element()
    }

    /// Own-scale concentration that holds the given nitrogen (or phosphorus).
    ///
    /// # Example
    /// ```
    /// use lentic::units::{Analyte, Concentration};
    /// // 46.005 of 14.007 g/mol
    /// let nitrite = Analyte::Nitrite.from_element(Concentration::from_mg_l(14.007));
    /// assert!((nitrite.mg_l() - 46.005).abs() < 1e-9);
    /// ```
    pub fn from_element(self, element: Concentration) -> Concentration {
        element * self.per_element()
    }

    /// Own-scale mass per mass of nitrogen (or phosphorus).
    ///
    /// # Example
    /// ```
    /// use lentic::units::Analyte;
    /// // 62.004 over 14.007
    /// assert!((Analyte::Nitrate.per_element() - 4.4267).abs() < 1e-4);
    /// ```
    pub fn per_element(self) -> f64 {
        match self {
            Self::Ammonia => 1.0,
            Self::Nitrite => molar_mass::NO2 / molar_mass::N,
            Self::Nitrate => molar_mass::NO3 / molar_mass::N,
            Self::Phosphate => molar_mass::PO4 / molar_mass::P,
        }
    }

    const fn scales(self) -> &'static [Scale] {
        match self {
            Self::Ammonia => AMMONIA_SCALES,
            Self::Nitrite => NITRITE_SCALES,
            Self::Nitrate => NITRATE_SCALES,
            Self::Phosphate => PHOSPHATE_SCALES,
        }
    }

    const fn choices(self) -> &'static [&'static str] {
        match self {
            Self::Ammonia => AMMONIA_CHOICES,
            Self::Nitrite => NITRITE_CHOICES,
            Self::Nitrate => NITRATE_CHOICES,
            Self::Phosphate => PHOSPHATE_CHOICES,
        }
    }

    /// What it is called, with its article.
    pub const fn phrase(self) -> &'static str {
        match self {
            Self::Ammonia => "an ammonia concentration",
            Self::Nitrite => "a nitrite concentration",
            Self::Nitrate => "a nitrate concentration",
            Self::Phosphate => "a phosphate concentration",
        }
    }

    const fn example(self) -> &'static str {
        match self {
            Self::Ammonia => "0.5 mg/L NH4",
            Self::Nitrite => "0.25 mg/L",
            Self::Nitrate => "20 mg/L",
            Self::Phosphate => "0.5 mg/L",
        }
    }
}
