//! How plants and algae take nitrogen, and what their stores allow.

use super::state::State;

/// Mass below which a store is not looked at, g/m2.
const TRACE_G_M2: f64 = 1e-9;
/// Kept off zero where shares are divided.
const TRACE_SHARE: f64 = 1e-12;

/// Saturating response of a rate to a concentration.
///
/// ```text
/// C / (K + C)
/// ```
///
/// # Source
/// Monod 1949 (`monod_1949`, from memory).
///
/// # Example
/// ```
/// use lentic::startup::uptake::saturation;
/// assert!((saturation(2.0, 2.0) - 0.5_f64).abs() < 1e-12);
/// ```
pub fn saturation(concentration: f64, half: f64) -> f64 {
    concentration / (half + concentration)
}

/// Rates of uptake from the water, each as a share of the largest uptake.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uptake {
    /// Of ammonium.
    pub ammonia: f64,
    /// Of nitrite.
    pub nitrite: f64,
    /// Of nitrate.
    pub nitrate: f64,
}

impl Uptake {
    /// Ammonium first, nitrite and nitrate for the rest.
    ///
    /// ```text
    /// a = TAN/(K + TAN)
    /// o = (1 - a) w OX/(K + OX)       OX = NO2 + NO3
    /// ```
    ///
    /// `K` nitrogen at half uptake, mg N/L; `w` weight of the oxidised forms,
    /// which go by their share of `OX`.
    ///
    /// # Source
    /// Preference: Jampeetong and Brix 2009 (`jampeetong_brix_2009`); root tips do so
    /// too, Fang et al. 2007 (`fang_2007`). Nitrite taken like nitrate: judgement.
    ///
    /// # Example
    /// ```
    /// use lentic::source::Band;
    /// use lentic::startup::{Inputs, Parameters, run, uptake::Uptake};
    /// let trajectory = run(&Inputs::reference(), &Parameters::<Band>::reference().central(), 1)?;
    /// // with the oxidised forms left alone, ammonium is all that is taken
    /// let taken = Uptake::of(&trajectory.samples[0].state, 0.1, 0.0);
    /// assert!((taken.total() - taken.ammonia).abs() < 1e-12);
    /// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
    /// ```
    pub fn of(water: &State, half: f64, oxidised_preference: f64) -> Self {
        let ammonia = saturation(water.ammonia, half);
        let oxidised = half + water.nitrite + water.nitrate;
        let each = (1.0 - ammonia) * oxidised_preference / oxidised;
        Self {
            ammonia,
            nitrite: each * water.nitrite,
            nitrate: each * water.nitrate,
        }
    }

    /// Of all nitrogen.
    pub fn total(&self) -> f64 {
        self.ammonia + self.nitrite + self.nitrate
    }

    /// The same in proportion, for a largest uptake.
    #[must_use]
    pub fn times(&self, largest: f64) -> Self {
        Self {
            ammonia: self.ammonia * largest,
            nitrite: self.nitrite * largest,
            nitrate: self.nitrate * largest,
        }
    }

    /// Splits an amount among the three forms in this proportion.
    #[must_use]
    pub fn splitting(&self, amount: f64) -> Self {
        let oxidised = self.nitrite + self.nitrate;
        let whole = self.ammonia + oxidised + TRACE_SHARE;
        // the trace goes to ammonium, so that the parts add up to the amount
        Self {
            ammonia: amount * (self.ammonia + TRACE_SHARE) / whole,
            nitrite: amount * self.nitrite / whole,
            nitrate: amount * self.nitrate / whole,
        }
    }
}

/// A store of nitrogen in plant tissue.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Store {
    /// Content now, g N/g.
    pub content: f64,
    /// Content at which growth stops, g N/g.
    pub least: f64,
    /// Content of a full store, g N/g.
    pub most: f64,
}

impl Store {
    /// The store of a stand from its nitrogen and its mass; a stand of no mass
    /// counts as starved.
    pub fn of(nitrogen_g_m2: f64, mass_g_m2: f64, least: f64, most: f64) -> Self {
        Self {
            content: (nitrogen_g_m2 + least * TRACE_G_M2) / (mass_g_m2 + TRACE_G_M2),
            least,
            most,
        }
    }

    /// Room in the store: 1 when empty, 0 when full and over.
    ///
    /// ```text
    /// (Qmax - Q) / (Qmax - Qmin)
    /// ```
    ///
    /// # Source
    /// The share of the store that is empty, by definition.
    ///
    /// # Example
    /// ```
    /// use lentic::startup::uptake::Store;
    /// let half = Store { content: 0.03, least: 0.01, most: 0.05_f64 };
    /// assert!((half.room() - 0.5).abs() < 1e-12);
    /// ```
    pub fn room(&self) -> f64 {
        ((self.most - self.content) / (self.most - self.least)).max(0.0)
    }

    /// Growth that the content allows, as a share of full growth.
    ///
    /// ```text
    /// (1 - Qmin/Q) / (1 - Qmin/Qmax)
    /// ```
    ///
    /// # Source
    /// Droop 1973 (`droop_1973`, from memory), scaled to 1 at the full store.
    ///
    /// # Example
    /// ```
    /// use lentic::startup::uptake::Store;
    /// let full = Store { content: 0.050, least: 0.015, most: 0.050 };
    /// let starved = Store { content: 0.015, ..full };
    /// assert!((full.growth_share() - 1.0_f64).abs() < 1e-12);
    /// assert!(starved.growth_share().abs() < 1e-12);
    /// ```
    pub fn growth_share(&self) -> f64 {
        (1.0 - self.least / self.content) / (1.0 - self.least / self.most)
    }

    /// Nitrogen above the full store, g N/g.
    pub fn excess(&self) -> f64 {
        (self.content - self.most).max(0.0)
    }
}

/// Rate at which nitrogen above a full store leaks out, 1/d (judgement).
pub(super) const LEAK_PER_D: f64 = 0.5;

/// A share that two shares make up, without a quotient of zeros.
pub(super) fn share_of(part: f64, whole: f64) -> f64 {
    part / (whole + TRACE_SHARE)
}
