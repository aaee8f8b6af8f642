//! What was measured: one number of one kind on one day.

use crate::design::Reading;
use crate::units::show::significant;
use crate::units::{Alkalinity, Analyte, Concentration, Conductivity, Hardness, Temperature};

/// What a measurement is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Measurand {
    /// Total ammonia, mg N/L.
    Ammonia,
    /// Nitrite, mg NO2/L.
    Nitrite,
    /// Nitrate, mg NO3/L.
    Nitrate,
    /// Phosphate, mg PO4/L.
    Phosphate,
    /// pH.
    Ph,
    /// Water temperature, C.
    Temperature,
    /// Dissolved oxygen, mg/L.
    Oxygen,
    /// Calcium and magnesium, dGH.
    Hardness,
    /// Alkalinity, dKH.
    Alkalinity,
    /// Conductivity, uS/cm.
    Conductivity,
    /// Potassium, mg/L.
    Potassium,
    /// Iron, mg/L.
    Iron,
}

impl Measurand {
    /// The nutrient, where it is one.
    pub const fn analyte(self) -> Option<Analyte> {
        match self {
            Self::Ammonia => Some(Analyte::Ammonia),
            Self::Nitrite => Some(Analyte::Nitrite),
            Self::Nitrate => Some(Analyte::Nitrate),
            Self::Phosphate => Some(Analyte::Phosphate),
            _ => None,
        }
    }

    /// The word for it, as keys and results spell it.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Ammonia => "ammonia",
            Self::Nitrite => "nitrite",
            Self::Nitrate => "nitrate",
            Self::Phosphate => "phosphate",
            Self::Ph => "ph",
            Self::Temperature => "temperature",
            Self::Oxygen => "oxygen",
            Self::Hardness => "hardness",
            Self::Alkalinity => "alkalinity",
            Self::Conductivity => "conductivity",
            Self::Potassium => "potassium",
            Self::Iron => "iron",
        }
    }
}

/// A number as it was reported, in the unit of its subject.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Reported {
    /// This much.
    Value(f64),
    /// Less than this.
    Below(f64),
    /// More than this.
    Above(f64),
    /// One of these two, or between them.
    Between(f64, f64),
}

impl Reported {
    /// The number itself, of two their middle.
    pub const fn number(self) -> f64 {
        match self {
            Self::Value(number) | Self::Below(number) | Self::Above(number) => number,
            Self::Between(low, high) => f64::midpoint(low, high),
        }
    }

    /// What there is at the least: nothing for less than a mark, the mark for more.
    pub const fn at_least(self) -> f64 {
        match self {
            Self::Below(_) => 0.0,
            Self::Value(number) | Self::Above(number) | Self::Between(number, _) => number,
        }
    }

    /// One number to go on with: nothing for less than a mark, of two their middle.
    const fn estimate(self) -> f64 {
        match self {
            Self::Below(_) => 0.0,
            _ => self.number(),
        }
    }
}

impl Reported {
    /// In words, to so many figures: "6.2", "over 6.2", "under 0.25".
    ///
    /// # Example
    /// ```
    /// use lentic::diagnosis::Reported;
    /// assert_eq!(Reported::Above(8.0).shown(2), "over 8");
    /// ```
    pub fn shown(self, figures: u8) -> String {
        let number = significant(self.number(), figures);
        match self {
            Self::Value(_) => number,
            Self::Below(_) => format!("under {number}"),
            Self::Above(_) => format!("over {number}"),
            Self::Between(low, high) => {
                format!(
                    "{} to {}",
                    significant(low, figures),
                    significant(high, figures)
                )
            }
        }
    }
}

/// One measurement.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measurement {
    /// Days since flooding.
    pub day: f64,
    /// Of what.
    pub of: Measurand,
    /// How much.
    pub value: Reported,
}

impl Measurement {
    /// Everything that a reading holds.
    pub fn all_of(reading: &Reading) -> Vec<Self> {
        let dissolved = |of, value: Option<Concentration>| (of, value.map(Concentration::mg_l));
        [
            dissolved(Measurand::Ammonia, reading.ammonia),
            dissolved(Measurand::Nitrite, reading.nitrite),
            dissolved(Measurand::Nitrate, reading.nitrate),
            dissolved(Measurand::Phosphate, reading.phosphate),
            dissolved(Measurand::Oxygen, reading.oxygen),
            (Measurand::Ph, reading.ph),
            (
                Measurand::Temperature,
                reading.temperature.map(Temperature::celsius),
            ),
            (Measurand::Hardness, reading.hardness.map(Hardness::dgh)),
            (
                Measurand::Alkalinity,
                reading.alkalinity.map(Alkalinity::dkh),
            ),
            (
                Measurand::Conductivity,
                reading.conductivity.map(Conductivity::us_cm),
            ),
            dissolved(Measurand::Potassium, reading.potassium),
            dissolved(Measurand::Iron, reading.iron),
        ]
        .into_iter()
        .filter_map(|(of, value)| {
            let between = reading.between.iter();
            let mut two = between
                .filter(|(analyte, ..)| Some(*analyte) == of.analyte())
                .map(|(_, low, high)| Reported::Between(low.mg_l(), high.mg_l()));
            Some(Self {
                day: reading.day,
                of,
                value: two.next_back().or(value.map(Reported::Value))?,
            })
        })
        .collect()
    }

    /// The amount as nitrogen or phosphorus, mg/L; as it is where it is no nutrient.
    pub fn element(&self) -> f64 {
        let number = self.value.estimate();
        self.of.analyte().map_or(number, |analyte| {
            analyte.element(Concentration::from_mg_l(number)).mg_l()
        })
    }
}

/// The last measurement of a subject.
pub fn latest(log: &[Measurement], of: Measurand) -> Option<Measurement> {
    log.iter()
        .filter(|measurement| measurement.of == of)
        .max_by(|a, b| a.day.total_cmp(&b.day))
        .copied()
}
