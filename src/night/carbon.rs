//! The carbonate system with all inorganic carbon as the state: pH follows from its sum.

use std::f64::consts::LN_10;

use crate::numerics::real::Real;
use crate::units::constants::molar_mass;
use crate::units::{Alkalinity, Temperature};
use crate::water::carbonate::dissociation;

/// Carbon dioxide in a mole of it, mg.
const CO2_MG_MOL: f64 = 1000.0 * molar_mass::CO2;

/// A step of the search for the hydrogen ion after which another would change nothing:
/// each squares what is left.
const LAST_STEP: f64 = 1e-8;
/// Largest step at once, of the logarithm.
const MOST_STEP: f64 = 1.0;
/// Steps at most; two or three are enough in ordinary water.
const MOST_STEPS: u32 = 60;

/// Water of one alkalinity and temperature; ions without activities.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Carbonate {
    alkalinity_mol_l: f64,
    k1: f64,
    k2: f64,
    kw: f64,
}

/// Inorganic carbon in what it is.
#[derive(Debug, Clone, Copy)]
pub(super) struct Carbon<R> {
    /// Carbon dioxide, mg/L.
    pub(super) dioxide: R,
    /// Bicarbonate, mg CO2/L.
    pub(super) bicarbonate: R,
    /// Hydrogen ion that goes with it, mol/L.
    pub(super) hydrogen: R,
}

impl<R: Real> Carbon<R> {
    pub(super) fn ph(&self) -> R {
        -self.hydrogen.ln() / LN_10
    }
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

    /// All inorganic carbon at a pH, mg CO2/L.
    ///
    /// ```text
    /// HCO3 = (Alk - Kw/H + H) / (1 + 2 K2/H)
    /// C    = HCO3 (H/K1 + 1 + K2/H)
    /// ```
    ///
    /// # Source
    /// Plummer and Busenberg 1982 (`plummer_busenberg_1982`), without activities.
    pub(super) fn all_at<R: Real>(&self, ph: R) -> R {
        let h = (ph * -LN_10).exp();
        let doubly = R::splat(self.k2) / h;
        let charged = h - self.hydroxide(h) + self.alkalinity_mol_l;
        let bicarbonate = charged / (doubly * 2.0 + 1.0);
        bicarbonate * (h / self.k1 + doubly + 1.0) * CO2_MG_MOL
    }

    /// What inorganic carbon is, of which there is so much in all, mg CO2/L.
    ///
    /// ```text
    /// HCO3 = C / (H/K1 + 1 + K2/H),    CO2 = H HCO3 / K1
    /// ```
    ///
    /// H where charges balance.
    pub(super) fn split<R: Real>(&self, all_mg_l: R) -> Carbon<R> {
        let all = all_mg_l.positive_part() / CO2_MG_MOL;
        let hydrogen = self.balanced(all);
        let singly = hydrogen / self.k1;
        let bicarbonate = all / (singly + R::splat(self.k2) / hydrogen + 1.0);
        Carbon {
            dioxide: singly * bicarbonate * CO2_MG_MOL,
            bicarbonate: bicarbonate * CO2_MG_MOL,
            hydrogen,
        }
    }

    /// Hydrogen ion at which charges balance, mol/L, by Newton's method on logarithms,
    /// which nothing can leave: both sides are sums of what is positive.
    ///
    /// ```text
    /// HCO3 + 2 CO3 + OH = H + Alk
    /// ```
    fn balanced<R: Real>(&self, all: R) -> R {
        let most = R::splat(MOST_STEP);
        let mut h = self.without_water(all);
        for _ in 0..MOST_STEPS {
            let (singly, doubly) = (h / self.k1, R::splat(self.k2) / h);
            let parts = singly + doubly + 1.0;
            let bicarbonate = all / parts;
            let hydroxide = self.hydroxide(h);
            let negative = bicarbonate * (doubly * 2.0 + 1.0) + hydroxide;
            let positive = h + self.alkalinity_mol_l;
            let falls = bicarbonate * (singly + doubly + singly * doubly * 4.0) / parts + hydroxide;
            let slope = falls / negative + h / positive;
            // logarithm of a ratio near one, then e to a small power, both by fractions
            let apart = (negative - positive) / (negative + positive) * 2.0;
            let step = (apart / slope).min(most).max(-most);
            h = h * (step + 2.0) / (-step + 2.0);
            if step.abs().largest() < LAST_STEP {
                break;
            }
        }
        h
    }

    /// The same where water itself gives no ions, kept to where they would bring it.
    fn without_water<R: Real>(&self, all: R) -> R {
        let alkalinity = self.alkalinity_mol_l;
        let half = (all - alkalinity) * self.k1;
        let product = (all * 2.0 - alkalinity) * (4.0 * alkalinity * self.k1 * self.k2);
        let root = (half + (half * half + product).positive_part().sqrt()) / (2.0 * alkalinity);
        let sourest = (all * self.k1 + self.kw).sqrt();
        let least = self.kw / (alkalinity + self.kw.sqrt());
        sourest.min(root).max(R::splat(least))
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
    use crate::numerics::lanes::Lanes;
    use crate::water::carbonate::{Activity, carbon_dioxide};

    fn water(dkh: f64, celsius: f64) -> Carbonate {
        Carbonate::new(
            Alkalinity::from_dkh(dkh),
            Temperature::from_celsius(celsius),
        )
    }

    #[test]
    fn carbon_dioxide_is_that_of_the_water_chemistry() {
        let (alkalinity, temperature) =
            (Alkalinity::from_dkh(4.0), Temperature::from_celsius(25.0));
        let water = Carbonate::new(alkalinity, temperature);
        let dioxide = |ph: f64| water.split(water.all_at(ph)).dioxide;
        for ph in [6.0, 7.0, 8.5, 10.0] {
            let expected = carbon_dioxide(ph, alkalinity, temperature, Activity::Ideal).unwrap();
            assert_relative_eq!(dioxide(ph), expected.mg_l(), max_relative = 1e-11);
        }
        // 22.34 mg/L at pH 6.8: the library PyCO2SYS 1.8.3.4 (opt_k_carbonic 8), without activities
        assert_relative_eq!(dioxide(6.8), 22.34, max_relative = 0.01);
    }

    #[test]
    fn ph_is_found_from_the_sum_in_any_water() {
        for dkh in [0.0, 1e-6, 0.1, 4.0, 30.0] {
            for celsius in [0.0, 25.0, 40.0] {
                let water = water(dkh, celsius);
                for tenths in 30..=115 {
                    let ph = f64::from(tenths) / 10.0;
                    let all = water.all_at(ph);
                    if all > 0.0 {
                        assert_relative_eq!(
                            water.all_at(water.split(all).ph()),
                            all,
                            max_relative = 1e-9,
                            epsilon = 1e-12
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn water_without_carbon_has_the_hydroxide_of_its_alkalinity() {
        let water = water(2.8, 25.0);
        for none in [0.0, -1e-9] {
            let carbon = water.split(none);
            assert_relative_eq!(
                water.hydroxide(carbon.hydrogen),
                0.998e-3,
                max_relative = 2e-3
            );
            assert!(carbon.dioxide == 0.0 && carbon.bicarbonate == 0.0);
        }
    }

    #[test]
    fn eight_waters_are_found_together_as_each_by_itself() {
        let water = water(3.0, 24.0);
        let all = Lanes(std::array::from_fn(|lane| 0.5 + 17.0 * lane as f64));
        let together = water.split(all).hydrogen;
        for (hydrogen, all) in together.0.into_iter().zip(all.0) {
            assert_relative_eq!(hydrogen, water.split(all).hydrogen, max_relative = 1e-13);
        }
    }
}
