//! The carbonate system with all inorganic carbon as the state: pH follows from its sum.

use std::f64::consts::LN_10;

use crate::numerics::real::Real;
use crate::units::Temperature;
use crate::units::constants::molar_mass;
use crate::water::carbonate::dissociation;

/// Carbon dioxide in a mole of it, mg.
const CO2_MG_MOL: f64 = 1000.0 * molar_mass::CO2;

/// A step of the search for the hydrogen ion after which another would change nothing:
/// each squares what is left.
const LAST_STEP: f64 = 1e-5;
/// Largest step at once, of the logarithm.
const MOST_STEP: f64 = 1.0;
/// Steps at most; two or three are enough in ordinary water.
const MOST_STEPS: u32 = 60;

/// Water of one temperature; ions without activities.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Carbonate<R> {
    alkalinity_mol_l: R,
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

/// How the kinds of inorganic carbon, and the logarithm of the hydrogen ion, move with a
/// mg/L more in all.
#[derive(Debug, Clone, Copy)]
pub(super) struct CarbonSlopes<R> {
    pub(super) dioxide: R,
    pub(super) bicarbonate: R,
    pub(super) ln_hydrogen: R,
}

/// Parts of the carbon over bicarbonate where hydrogen ion is so much.
struct Parts<R> {
    /// Carbon dioxide.
    singly: R,
    /// Carbonate.
    doubly: R,
    /// Charges.
    charged: R,
    /// Bicarbonate over all.
    share: R,
    /// Hydroxide, mol/L.
    hydroxide: R,
}

impl<R: Real> Parts<R> {
    /// By how much their charges fall with the logarithm of the hydrogen ion, mol/L.
    fn falls(&self, all: R) -> R {
        let apart = self.singly + self.doubly + self.singly * self.doubly * 4.0;
        all * self.share * self.share * apart + self.hydroxide
    }
}

impl<R: Real> Carbonate<R> {
    pub(super) fn new(alkalinity_mol_l: R, temperature: Temperature) -> Self {
        let constants = dissociation(temperature);
        let product = |pk: f64| 10_f64.powf(-pk);
        Self {
            alkalinity_mol_l,
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
    #[cfg(test)]
    pub(super) fn all_at(&self, ph: R) -> R {
        let h = (ph * -LN_10).exp();
        let parts = self.parts(h);
        let charged = h - parts.hydroxide + self.alkalinity_mol_l;
        charged / parts.charged / parts.share * CO2_MG_MOL
    }

    /// All inorganic carbon, mg CO2/L, where carbon dioxide is so much and carbonate is
    /// left out of the charges: a first guess.
    ///
    /// ```text
    /// H^2 + Alk H = K1 CO2 + Kw
    /// ```
    pub(super) fn all_about(&self, dioxide_mg_l: R) -> R {
        let acid = dioxide_mg_l * (self.k1 / CO2_MG_MOL) + self.kw;
        let alkalinity = self.alkalinity_mol_l;
        let h = acid * 2.0 / (alkalinity + (alkalinity * alkalinity + acid * 4.0).sqrt());
        let parts = self.parts(h);
        dioxide_mg_l / (parts.singly * parts.share)
    }

    /// What inorganic carbon is, of which there is so much in all, mg CO2/L.
    ///
    /// ```text
    /// HCO3 = C / (H/K1 + 1 + K2/H),    CO2 = H HCO3 / K1
    /// ```
    ///
    /// H where charges balance.
    pub(super) fn split(&self, all_mg_l: R) -> Carbon<R> {
        let all_mg_l = all_mg_l.positive_part();
        let hydrogen = self.balanced(all_mg_l * CO2_MG_MOL.recip());
        let parts = self.parts(hydrogen);
        let bicarbonate = all_mg_l * parts.share;
        Carbon {
            dioxide: parts.singly * bicarbonate,
            bicarbonate,
            hydrogen,
        }
    }

    /// How they move with all of it.
    pub(super) fn slopes(&self, all_mg_l: R, hydrogen: R) -> CarbonSlopes<R> {
        let all = all_mg_l.positive_part() * CO2_MG_MOL.recip();
        let parts = self.parts(hydrogen);
        let &Parts {
            singly,
            doubly,
            charged,
            share,
            ..
        } = &parts;
        let ln_hydrogen = charged * share / (parts.falls(all) + hydrogen);
        let moved = all * share * ln_hydrogen;
        CarbonSlopes {
            dioxide: singly * share * (moved * charged + 1.0),
            bicarbonate: share * (moved * (doubly - singly) + 1.0),
            ln_hydrogen: ln_hydrogen * CO2_MG_MOL.recip(),
        }
    }

    fn parts(&self, hydrogen: R) -> Parts<R> {
        let inverse = R::splat(1.0) / hydrogen;
        let (singly, doubly) = (hydrogen * self.k1.recip(), inverse * self.k2);
        Parts {
            singly,
            doubly,
            charged: doubly * 2.0 + 1.0,
            share: R::splat(1.0) / (singly + doubly + 1.0),
            hydroxide: inverse * self.kw,
        }
    }

    /// Hydrogen ion at which charges balance, mol/L, by Newton's method on logarithms,
    /// which nothing can leave: both sides are sums of what is positive.
    ///
    /// ```text
    /// HCO3 + 2 CO3 + OH = H + Alk
    /// ```
    fn balanced(&self, all: R) -> R {
        let most = R::splat(MOST_STEP);
        let mut h = self.without_water(all);
        for _ in 0..MOST_STEPS {
            let parts = self.parts(h);
            let negative = all * parts.share * parts.charged + parts.hydroxide;
            let positive = h + self.alkalinity_mol_l;
            // the logarithm of a ratio near one by a fraction, over its slope
            let apart = (negative - positive) * negative * positive * 2.0;
            let slope = parts.falls(all) * positive + h * negative;
            let step = apart / ((negative + positive) * slope);
            let step = step.min(most).max(-most);
            // e to a small power
            h = h * (((step * (1.0 / 3.0) + 1.0) * step * 0.5 + 1.0) * step + 1.0);
            if step.abs().largest() < LAST_STEP {
                break;
            }
        }
        h
    }

    /// The same where water itself gives no ions, kept to where they would bring it.
    fn without_water(&self, all: R) -> R {
        let alkalinity = self.alkalinity_mol_l;
        let half = (all - alkalinity) * self.k1;
        let product = (all * 2.0 - alkalinity) * alkalinity * (4.0 * self.k1 * self.k2);
        let root = (half + (half * half + product).positive_part().sqrt()) / (alkalinity * 2.0);
        let sourest = (all * self.k1 + self.kw).sqrt();
        let least = R::splat(self.kw) / (alkalinity + self.kw.sqrt());
        sourest.min(root).max(least)
    }

    /// Hydroxide where hydrogen ion is so much, mol/L.
    pub(super) fn hydroxide(&self, hydrogen: R) -> R {
        R::splat(self.kw) / hydrogen
    }

    /// Carbon dioxide over what of the carbon is charged.
    ///
    /// ```text
    /// H^2 / (K1 K2 + K1 H)
    /// ```
    pub(super) fn free_share(&self, hydrogen: R) -> R {
        hydrogen * hydrogen / ((hydrogen + self.k2) * self.k1)
    }

    /// The slope of its logarithm with that of the hydrogen ion.
    pub(super) fn free_share_slope(&self, hydrogen: R) -> R {
        (hydrogen + 2.0 * self.k2) / (hydrogen + self.k2)
    }
}

#[cfg(test)]
mod tests {
    use approx::assert_relative_eq;

    use super::*;
    use crate::numerics::lanes::Lanes;
    use crate::units::Alkalinity;
    use crate::water::carbonate::{Activity, carbon_dioxide};

    fn water<R: Real>(dkh: f64, celsius: f64) -> Carbonate<R> {
        let alkalinity_mol_l = Alkalinity::from_dkh(dkh).meq_l() * 1e-3;
        Carbonate::new(
            R::splat(alkalinity_mol_l),
            Temperature::from_celsius(celsius),
        )
    }

    #[test]
    fn carbon_dioxide_is_that_of_the_water_chemistry() {
        let (alkalinity, temperature) =
            (Alkalinity::from_dkh(4.0), Temperature::from_celsius(25.0));
        let water = water::<f64>(4.0, 25.0);
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
                let water = water::<f64>(dkh, celsius);
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
        let water = water::<f64>(2.8, 25.0);
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
        let all = Lanes(std::array::from_fn(|lane| 0.5 + 17.0 * lane as f64));
        let together = water::<Lanes>(3.0, 24.0).split(all).hydrogen;
        let alone = water::<f64>(3.0, 24.0);
        for (hydrogen, all) in together.0.into_iter().zip(all.0) {
            assert_relative_eq!(hydrogen, alone.split(all).hydrogen, max_relative = 1e-9);
        }
    }

    #[test]
    fn slopes_are_those_of_small_differences() {
        let (water, step) = (water::<f64>(3.0, 24.0), 1e-3);
        for all in [5.0, 40.0, 47.0, 60.0, 200.0] {
            let [below, above] = [all - step, all + step].map(|all| water.split(all));
            let slope = |of: fn(&Carbon<f64>) -> f64| (of(&above) - of(&below)) / (2.0 * step);
            let slopes = water.slopes(all, water.split(all).hydrogen);
            let near = |found: f64, expected: f64| {
                assert_relative_eq!(found, expected, max_relative = 1e-5, epsilon = 1e-9);
            };
            near(slopes.dioxide, slope(|carbon| carbon.dioxide));
            near(slopes.bicarbonate, slope(|carbon| carbon.bicarbonate));
            near(slopes.ln_hydrogen, slope(|carbon| carbon.hydrogen.ln()));
        }
    }
}
