//! The carbonate system with pH as the state: all the rest follows without a search.

use std::f64::consts::LN_10;

use crate::numerics::real::Real;
use crate::units::constants::molar_mass;
use crate::units::{Alkalinity, Temperature};
use crate::water::carbonate::dissociation;

/// Carbon dioxide in a mole of it, mg.
const CO2_MG_MOL: f64 = 1000.0 * molar_mass::CO2;

/// Water of one alkalinity and temperature; ions without activities.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Carbonate {
    alkalinity_mol_l: f64,
    k1: f64,
    k2: f64,
    kw: f64,
}

/// Inorganic carbon at a pH, all as carbon dioxide.
#[derive(Debug, Clone, Copy)]
pub(super) struct Carbon<R> {
    /// Carbon dioxide, mg/L.
    pub(super) dioxide: R,
    /// Bicarbonate, mg CO2/L.
    pub(super) bicarbonate: R,
    /// All of it, mg CO2/L.
    pub(super) all: R,
    /// Change of all of it per unit of pH, mg CO2/L.
    pub(super) slope: R,
}

impl Carbonate {
    pub(super) fn new(alkalinity: Alkalinity, temperature: Temperature) -> Self {
        let constants = dissociation(temperature);
        let product = |pk: f64| 10_f64.powf(-pk);
        Self {
            alkalinity_mol_l: alkalinity.meq_l() * 1e-3,
            k1: product(constants.pk1),
            k2: product(constants.pk2),
            kw: product(constants.pkw),
        }
    }

    /// Inorganic carbon at a pH.
    ///
    /// ```text
    /// HCO3 = (Alk - Kw/H + H) / (1 + 2 K2/H),    CO2 = H HCO3 / K1
    /// C    = HCO3 (H/K1 + 1 + K2/H)
    /// ```
    ///
    /// # Source
    /// Plummer and Busenberg 1982 (`plummer_busenberg_1982`), without activities.
    pub(super) fn at<R: Real>(&self, ph: R) -> Carbon<R> {
        let h = Self::hydrogen(ph);
        let hydroxide = self.hydroxide(h);
        let doubly = R::splat(self.k2) / h;
        let singly = h / self.k1;
        let charges = doubly * 2.0 + 1.0;
        let bicarbonate = (h - hydroxide + self.alkalinity_mol_l) / charges;
        let per_bicarbonate = singly + doubly + 1.0;
        let by_h = (h + hydroxide) * per_bicarbonate / charges
            + bicarbonate * (singly - doubly)
            + bicarbonate * per_bicarbonate * doubly * 2.0 / charges;
        Carbon {
            dioxide: singly * bicarbonate * CO2_MG_MOL,
            bicarbonate: bicarbonate * CO2_MG_MOL,
            all: bicarbonate * per_bicarbonate * CO2_MG_MOL,
            slope: by_h * (-LN_10 * CO2_MG_MOL),
        }
    }
}

impl Carbonate {
    /// Hydrogen ion, mol/L.
    pub(super) fn hydrogen<R: Real>(ph: R) -> R {
        (ph * -LN_10).exp()
    }

    /// Hydroxide where hydrogen ion is so much, mol/L.
    pub(super) fn hydroxide<R: Real>(&self, hydrogen: R) -> R {
        R::splat(self.kw) / hydrogen
    }

    /// All inorganic carbon over what of it is charged.
    ///
    /// ```text
    /// 1 + H^2 / (K1 K2 + K1 H)
    /// ```
    pub(super) fn free_share<R: Real>(&self, hydrogen: R) -> R {
        hydrogen * hydrogen / ((hydrogen + self.k2) * self.k1) + 1.0
    }
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;
    use crate::water::carbonate::{Activity, carbon_dioxide};

    #[test]
    fn carbon_dioxide_is_that_of_the_water_chemistry() {
        let (alkalinity, temperature) =
            (Alkalinity::from_dkh(4.0), Temperature::from_celsius(25.0));
        let water = Carbonate::new(alkalinity, temperature);
        for ph in [6.0, 7.0, 8.5, 10.0] {
            let expected = carbon_dioxide(ph, alkalinity, temperature, Activity::Ideal).unwrap();
            assert_relative_eq!(water.at(ph).dioxide, expected.mg_l(), max_relative = 1e-12);
        }
        // 22.34 mg/L at pH 6.8: the library PyCO2SYS 1.8.3.4 (opt_k_carbonic 8), without activities
        assert_relative_eq!(water.at(6.8).dioxide, 22.34, max_relative = 0.01);
    }

    #[test]
    fn the_slope_is_that_of_the_sum() {
        for dkh in [0.0, 1.0, 8.0] {
            let water = Carbonate::new(Alkalinity::from_dkh(dkh), Temperature::from_celsius(20.0));
            for ph in [5.0, 6.5] {
                let all = |ph: f64| {
                    let carbon = water.at(ph);
                    let carbonate = carbon.bicarbonate * water.k2 * 10_f64.powf(ph);
                    let sum = carbon.dioxide + carbon.bicarbonate + carbonate;
                    assert_relative_eq!(carbon.all, sum, max_relative = 1e-12);
                    sum
                };
                let slope = (all(ph + 1e-5) - all(ph - 1e-5)) / 2e-5;
                assert_relative_eq!(water.at(ph).slope, slope, max_relative = 1e-6);
            }
        }
    }
}
