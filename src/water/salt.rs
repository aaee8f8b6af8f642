//! Salts that water is hardened and plants are fed with, by what they are made of.

use crate::units::constants::{CACO3_MG_L_PER_DEGREE, CACO3_MG_PER_MEQ, molar_mass};

/// An element of a salt.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Element {
    /// Hydrogen.
    H,
    /// Carbon.
    C,
    /// Nitrogen.
    N,
    /// Oxygen.
    O,
    /// Sodium.
    Na,
    /// Magnesium.
    Mg,
    /// Phosphorus.
    P,
    /// Sulfur.
    S,
    /// Potassium.
    K,
    /// Calcium.
    Ca,
}

impl Element {
    /// Its molar mass, g/mol.
    const fn molar_mass(self) -> f64 {
        match self {
            Self::H => molar_mass::H,
            Self::C => molar_mass::C,
            Self::N => molar_mass::N,
            Self::O => molar_mass::O,
            Self::Na => molar_mass::NA,
            Self::Mg => molar_mass::MG,
            Self::P => molar_mass::P,
            Self::S => molar_mass::S,
            Self::K => molar_mass::K,
            Self::Ca => molar_mass::CA,
        }
    }
}

/// A pure salt with its crystal water.
#[derive(Debug, PartialEq)]
pub struct Salt {
    /// What shops call it.
    pub name: &'static str,
    /// Atoms of each element in its formula.
    atoms: &'static [(Element, f64)],
    /// Equivalents of hardness, or of alkalinity, that a mole of it brings.
    equivalents: f64,
}

/// `NaHCO3`: alkalinity.
pub const BAKING_SODA: Salt = Salt {
    name: "baking soda",
    atoms: &[
        (Element::Na, 1.0),
        (Element::H, 1.0),
        (Element::C, 1.0),
        (Element::O, 3.0),
    ],
    equivalents: 1.0,
};
/// `CaSO4` with two of water: hardness.
pub const GYPSUM: Salt = Salt {
    name: "gypsum",
    atoms: &[
        (Element::Ca, 1.0),
        (Element::S, 1.0),
        (Element::O, 6.0),
        (Element::H, 4.0),
    ],
    equivalents: 2.0,
};
/// `MgSO4` with seven of water: hardness, and magnesium for plants.
pub const EPSOM_SALT: Salt = Salt {
    name: "Epsom salt",
    atoms: &[
        (Element::Mg, 1.0),
        (Element::S, 1.0),
        (Element::O, 11.0),
        (Element::H, 14.0),
    ],
    equivalents: 2.0,
};
/// `KNO3`: nitrogen and potassium for plants.
pub const POTASSIUM_NITRATE: Salt = Salt {
    name: "potassium nitrate",
    atoms: &[(Element::K, 1.0), (Element::N, 1.0), (Element::O, 3.0)],
    equivalents: 0.0,
};
/// `K2SO4`: potassium for plants.
pub const POTASSIUM_SULFATE: Salt = Salt {
    name: "potassium sulfate",
    atoms: &[(Element::K, 2.0), (Element::S, 1.0), (Element::O, 4.0)],
    equivalents: 0.0,
};
/// `KH2PO4`: phosphorus and potassium for plants.
pub const POTASSIUM_PHOSPHATE: Salt = Salt {
    name: "monopotassium phosphate",
    atoms: &[
        (Element::K, 1.0),
        (Element::H, 2.0),
        (Element::P, 1.0),
        (Element::O, 4.0),
    ],
    equivalents: 0.0,
};

/// Every salt, by the names that specs have for them.
pub const SALTS: [(&str, &Salt); 6] = [
    ("potassium_nitrate", &POTASSIUM_NITRATE),
    ("potassium_sulfate", &POTASSIUM_SULFATE),
    ("monopotassium_phosphate", &POTASSIUM_PHOSPHATE),
    ("epsom_salt", &EPSOM_SALT),
    ("gypsum", &GYPSUM),
    ("baking_soda", &BAKING_SODA),
];

/// Salt in a gram of what is sold: practice.
pub const PURITY: f64 = 0.98;

impl Salt {
    /// Its molar mass, g/mol.
    pub fn molar_mass(&self) -> f64 {
        let masses = self.atoms.iter().map(|(of, count)| of.molar_mass() * count);
        masses.sum()
    }

    /// Mass of an element in a gram of the salt.
    ///
    /// ```text
    /// w = n M(element) / M(salt)
    /// ```
    ///
    /// # Source
    /// Molar masses.
    ///
    /// # Example
    /// ```
    /// use lentic::water::salt::{Element, POTASSIUM_NITRATE};
    /// // 39.098 of 101.10 g/mol
    /// assert!((POTASSIUM_NITRATE.share(Element::K) - 0.3867).abs() < 1e-4);
    /// ```
    pub fn share(&self, element: Element) -> f64 {
        let counts = self.atoms.iter().filter(|(of, _)| *of == element);
        let moles: f64 = counts.map(|(_, count)| count).sum();
        moles * element.molar_mass() / self.molar_mass()
    }

    /// Mass that brings a litre one degree of hardness, or of alkalinity, mg.
    ///
    /// ```text
    /// m = 0.3566 meq M / z
    /// ```
    ///
    /// with z the equivalents of a mole.
    ///
    /// # Source
    /// Molar masses; a degree is 10 mg/L of calcium oxide.
    ///
    /// # Example
    /// ```
    /// use lentic::water::salt::EPSOM_SALT;
    /// // 0.17833 mmol of 246.47 mg
    /// assert!((EPSOM_SALT.mg_per_degree_l() - 43.95).abs() < 0.02);
    /// ```
    pub fn mg_per_degree_l(&self) -> f64 {
        let meq = CACO3_MG_L_PER_DEGREE / CACO3_MG_PER_MEQ;
        meq * self.molar_mass() / self.equivalents
    }
}
