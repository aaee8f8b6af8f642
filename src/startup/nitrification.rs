//! Bacteria that oxidise ammonia to nitrite and nitrite to nitrate.

use super::inputs::{Conditions, Inputs};
use super::uptake::saturation;
use crate::numerics::real::Scalar;
use crate::parameters::{Nitrifiers, Parameters};
use crate::units::Temperature;
use crate::units::constants::GAS_CONSTANT;

/// Activation energies, J/mol (`vannecke_volcke_2015`).
const AMMONIA_ACTIVATION_J_MOL: f64 = 68_000.0;
const NITRITE_ACTIVATION_J_MOL: f64 = 44_000.0;
/// Factor per degree on decay.
const DECAY_THETA: f64 = 1.05;
const REFERENCE_C: f64 = 20.0;
/// pH at which growth rates are given.
const NEUTRAL_PH: f64 = 7.2;
/// Nitrite oxidisers brought in on plants over ammonia oxidisers (judgement).
const NITRITE_SEED_SHARE: f64 = 0.4;

/// Growth factor of the ammonia oxidisers between 20 C and a temperature.
///
/// ```text
/// exp(Ea (T - T0) / (R T T0))      T in K, T0 = 293.15 K
/// ```
///
/// # Valid range
/// About 10 to 35 C; above, real bacteria fall off and the formula does not.
///
/// # Source
/// Vannecke and Volcke 2015 (`vannecke_volcke_2015`).
///
/// # Example
/// ```
/// use lentic::{startup::nitrification::ammonia_warmth, units::Temperature};
/// // exp(68 000 x 5 / (8.31446 x 298.15 x 293.15))
/// assert!((ammonia_warmth(Temperature::from_celsius(25.0)) - 1.5966).abs() < 1e-3);
/// ```
pub fn ammonia_warmth(temperature: Temperature) -> f64 {
    arrhenius(AMMONIA_ACTIVATION_J_MOL, temperature)
}

/// As [`ammonia_warmth`], for the nitrite oxidisers, which warmth helps less.
///
/// # Source
/// Vannecke and Volcke 2015 (`vannecke_volcke_2015`).
///
/// # Example
/// ```
/// use lentic::{startup::nitrification::nitrite_warmth, units::Temperature};
/// // exp(44 000 x 5 / (8.31446 x 298.15 x 293.15))
/// assert!((nitrite_warmth(Temperature::from_celsius(25.0)) - 1.3536).abs() < 1e-3);
/// ```
pub fn nitrite_warmth(temperature: Temperature) -> f64 {
    arrhenius(NITRITE_ACTIVATION_J_MOL, temperature)
}

/// Factor on decay between 20 C and a temperature.
///
/// ```text
/// 1.05^(T - 20)
/// ```
///
/// # Source
/// Judgement.
///
/// # Example
/// ```
/// use lentic::{startup::nitrification::decay_warmth, units::Temperature};
/// // 1.05^5
/// assert!((decay_warmth(Temperature::from_celsius(25.0)) - 1.2763).abs() < 1e-4);
/// ```
///
/// # Limits
/// Heat that kills outright is left out.
pub fn decay_warmth(temperature: Temperature) -> f64 {
    DECAY_THETA.powf(temperature.celsius() - REFERENCE_C)
}

fn arrhenius(activation_j_mol: f64, temperature: Temperature) -> f64 {
    let (warm, cool) = (
        temperature.kelvin(),
        Temperature::from_celsius(REFERENCE_C).kelvin(),
    );
    (activation_j_mol * (warm - cool) / (GAS_CONSTANT * warm * cool)).exp()
}

/// Growth factor of the ammonia oxidisers in acid water, 1 at pH 7.2.
///
/// ```text
/// min(1, (1 + 10^(h - 7.2)) / (1 + 10^(h - pH)))
/// ```
///
/// `h` pH at half speed.
///
/// # Valid range
/// About pH 5 to 8.
///
/// # Source
/// Judgement, so that aquarium filters still work at pH 6 (`bagchi_aquaria`). The nitrite
/// oxidisers are taken as indifferent.
///
/// # Example
/// ```
/// use lentic::startup::nitrification::acid_factor;
/// // 1.126 / 2 at the pH of half speed
/// assert!((acid_factor(6.3, 6.3) - 0.563).abs() < 1e-3);
/// assert!((acid_factor(8.0, 6.3) - 1.0).abs() < 1e-12);
/// ```
///
/// # Limits
/// A filter that has been acid for months works better than this.
pub fn acid_factor(ph: f64, half_ph: f64) -> f64 {
    let held = |ph: f64| 1.0 + 10.0_f64.powf(half_ph - ph);
    (held(NEUTRAL_PH) / held(ph)).min(1.0)
}

/// Ammonia and nitrite oxidisers on a dry mass of plants, g COD.
pub(super) fn seed_on_plants(numbers: &Nitrifiers<f64>, plants_g: f64) -> (f64, f64) {
    let of_ammonia = numbers.plant_seed * plants_g;
    (of_ammonia, NITRITE_SEED_SHARE * of_ammonia)
}

/// One kind of nitrifier under the conditions of a tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oxidiser {
    /// Growth rate on plenty, 1/d.
    pub growth_per_d: f64,
    /// Decay, 1/d.
    pub decay_per_d: f64,
    /// Substrate at half growth, mg N/L.
    pub substrate_half_mg_l: f64,
    /// Cells grown on the substrate, g COD/g N.
    pub cell_yield: f64,
    /// Cells that decay never falls below, g COD/m2: what comes in with water and plants.
    pub seed_g_m2: f64,
}

/// The ammonia and the nitrite oxidisers of a tank.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, nitrification::oxidisers};
/// let numbers = Parameters::<Band>::reference().central();
/// let (of_ammonia, of_nitrite) = oxidisers(&Inputs::reference(), &numbers);
/// // nitrite oxidisers live on less
/// assert!(of_nitrite.standstill_mg_l() < of_ammonia.standstill_mg_l());
/// ```
pub fn oxidisers(inputs: &Inputs, parameters: &Parameters<f64>) -> (Oxidiser, Oxidiser) {
    let conditions = Conditions::new(inputs);
    (
        Oxidiser::of_ammonia(&parameters.nitrifiers, &conditions),
        Oxidiser::of_nitrite(&parameters.nitrifiers, &conditions),
    )
}

/// What a kind of nitrifier does, per square metre and day.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Oxidation<S = f64> {
    /// Nitrogen oxidised, g N.
    pub nitrogen: S,
    /// Change of the cells, g COD.
    pub cells: S,
}

impl Oxidiser {
    /// The ammonia oxidisers of a tank.
    pub(super) fn of_ammonia(numbers: &Nitrifiers<f64>, conditions: &Conditions) -> Self {
        let warmth = ammonia_warmth(Temperature::from_celsius(conditions.temperature_c));
        let acid = acid_factor(conditions.ph, numbers.acid_ph);
        let (on_plants, _) = seed_on_plants(numbers, conditions.planted_g_m2);
        Self {
            growth_per_d: numbers.ammonia_growth * warmth * acid,
            substrate_half_mg_l: numbers.ammonia_half,
            cell_yield: numbers.ammonia_yield,
            decay_per_d: numbers.decay,
            seed_g_m2: numbers.ammonia_seed + on_plants,
        }
        .under(numbers.ammonia_oxygen_half, conditions)
    }

    /// The nitrite oxidisers of a tank.
    pub(super) fn of_nitrite(numbers: &Nitrifiers<f64>, conditions: &Conditions) -> Self {
        let warmth = nitrite_warmth(Temperature::from_celsius(conditions.temperature_c));
        let (_, on_plants) = seed_on_plants(numbers, conditions.planted_g_m2);
        Self {
            growth_per_d: numbers.nitrite_growth * warmth,
            substrate_half_mg_l: numbers.nitrite_half,
            cell_yield: numbers.nitrite_yield,
            decay_per_d: numbers.decay,
            seed_g_m2: numbers.nitrite_seed + on_plants,
        }
        .under(numbers.nitrite_oxygen_half, conditions)
    }

    fn under(self, oxygen_half: f64, conditions: &Conditions) -> Self {
        let oxygen = saturation(conditions.oxygen_mg_l, oxygen_half);
        let decay = decay_warmth(Temperature::from_celsius(conditions.temperature_c));
        Self {
            growth_per_d: self.growth_per_d * oxygen,
            decay_per_d: self.decay_per_d * decay,
            ..self
        }
    }

    /// Growth less decay on a substrate, 1/d.
    ///
    /// ```text
    /// mu f(T) f(pH) O2/(KO + O2) S/(K + S) - b 1.05^(T - 20)      f(pH) of ammonia oxidisers alone
    /// ```
    ///
    /// # Source
    /// Hiatt and Grady 2008, *Water Environment Research* 80:2145.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, nitrification::oxidisers};
    /// let numbers = Parameters::<Band>::reference().central();
    /// let (of_ammonia, _) = oxidisers(&Inputs::reference(), &numbers);
    /// // on nothing at all the cells only decay
    /// assert!((of_ammonia.net_growth_per_d(0.0) + of_ammonia.decay_per_d).abs() < 1e-12);
    /// ```
    ///
    /// # Limits
    /// Ammonia does not poison them here, and nothing else limits them: errs high in a dirty tank.
    pub fn net_growth_per_d(&self, substrate_mg_l: f64) -> f64 {
        self.gross_growth_per_d(substrate_mg_l) - self.decay_per_d
    }

    /// Substrate on which growth just meets decay, mg N/L: what an old tank without plants keeps.
    ///
    /// ```text
    /// S = K b / (mu - b)
    /// ```
    ///
    /// # Source
    /// Growth and decay as [`net_growth_per_d`](Self::net_growth_per_d), set equal.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, nitrification::oxidisers};
    /// let numbers = Parameters::<Band>::reference().central();
    /// let (of_ammonia, _) = oxidisers(&Inputs::reference(), &numbers);
    /// let still = of_ammonia.standstill_mg_l();
    /// assert!(of_ammonia.net_growth_per_d(still).abs() < 1e-12);
    /// ```
    pub fn standstill_mg_l(&self) -> f64 {
        self.substrate_half_mg_l * self.decay_per_d / (self.growth_per_d - self.decay_per_d)
    }

    /// Nitrogen oxidised and cells grown by a mass of cells, g COD/m2.
    ///
    /// ```text
    /// r = growth X / Y,   dX = growth X - decay (X - seed)
    /// ```
    ///
    /// The nitrogen in the cells themselves is left out, under 0.02 g/m2.
    ///
    /// # Source
    /// As [`net_growth_per_d`](Self::net_growth_per_d); that decay stops at the seed is
    /// judgement.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, nitrification::oxidisers};
    /// let numbers = Parameters::<Band>::reference().central();
    /// let (_, of_nitrite) = oxidisers(&Inputs::reference(), &numbers);
    /// let done = of_nitrite.oxidation(2.0_f64, 0.1);
    /// let kept = of_nitrite.decay_per_d * of_nitrite.seed_g_m2;
    /// assert!((done.cells - kept - 0.1 * of_nitrite.net_growth_per_d(2.0)).abs() < 1e-12);
    /// ```
    pub fn oxidation<S: Scalar>(&self, substrate_mg_l: S, cells: S) -> Oxidation<S> {
        self.working(self.gross_growth_per_d(substrate_mg_l), cells)
    }

    /// What cells do that grow at a rate.
    pub(super) fn working<S: Scalar>(&self, gross_growth_per_d: S, cells: S) -> Oxidation<S> {
        let growth = gross_growth_per_d * cells;
        Oxidation {
            nitrogen: growth / self.cell_yield,
            cells: growth - (cells - self.seed_g_m2) * self.decay_per_d,
        }
    }

    /// Growth on a substrate, before decay, 1/d.
    fn gross_growth_per_d<S: Scalar>(&self, substrate_mg_l: S) -> S {
        saturation(substrate_mg_l, self.substrate_half_mg_l) * self.growth_per_d
    }

    /// Largest oxidation by a mass of cells, g N/(m2 d).
    pub(super) fn capacity_g_m2_d<S: Scalar>(&self, cells: S) -> S {
        cells * (self.growth_per_d / self.cell_yield)
    }
}
