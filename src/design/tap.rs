//! What comes from the tap, and what is made of it.

use crate::units::{Alkalinity, Concentration, Hardness, Share, Volume};

/// What a supplier keeps tap water clean with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Disinfectant {
    /// Nothing, as in a well.
    None,
    /// Free chlorine.
    Chlorine,
    /// Chlorine bound to ammonia.
    Chloramine,
}

/// Rain, distilled or reverse-osmosis water that tap water is mixed with; pure unless said.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Softened {
    /// Calcium and magnesium in it.
    pub hardness: Hardness,
    /// Its alkalinity.
    pub alkalinity: Alkalinity,
    /// Its nitrate, as NO3.
    pub nitrate: Concentration,
}

/// What water lost to the air is replaced with: the share of softened water in it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TopUp {
    /// None of it is tap water alone.
    pub softened: Share,
}

/// The water that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WaterGoal {
    /// Calcium and magnesium.
    pub hardness: Option<Hardness>,
    /// Alkalinity.
    pub alkalinity: Option<Alkalinity>,
}

/// What takes chlorine out of tap water.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Conditioner {
    /// As its label says.
    pub label: Option<LabelDose>,
}

/// A dose as a label has it: so much to so much water.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LabelDose {
    /// What is measured out.
    pub dose: Volume,
    /// The water it is for.
    pub per: Volume,
}

impl LabelDose {
    /// What is measured out for an amount of water.
    ///
    /// # Example
    /// ```
    /// use lentic::design::LabelDose;
    /// use lentic::units::Volume;
    /// let label = LabelDose { dose: Volume::from_ml(5.0), per: Volume::from_litres(40.0) };
    /// // a quarter of the water, a quarter of the dose
    /// assert!((label.of(Volume::from_litres(10.0)).ml() - 1.25).abs() < 1e-12);
    /// ```
    pub fn of(self, water: Volume) -> Volume {
        self.dose * (water / self.per)
    }
}
