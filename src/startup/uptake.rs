//! How plants and algae take nitrogen, and what their stores allow.

use crate::numerics::real::Scalar;

/// Share of the largest uptake below which there is nothing to share out: so little that the
/// inverse of a trace stays finite.
const NOTHING: f64 = 1e-100;
/// Mass below which a store is not looked at, g/m2.
const TRACE_G_M2: f64 = 1e-9;

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
/// assert!((saturation(2.0_f64, 2.0) - 0.5).abs() < 1e-12);
/// ```
pub fn saturation<S: Scalar>(concentration: S, half: f64) -> S {
    concentration / (concentration + half)
}

/// Nitrogen in the water as plants and algae meet it, mg N/L.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Offer<S = f64> {
    /// Ammonium over the least that is taken up.
    pub ammonia: S,
    /// Nitrite.
    pub nitrite: S,
    /// Nitrate.
    pub nitrate: S,
}

/// Rates of uptake from the water, each as a share of the largest uptake.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Uptake<S = f64> {
    /// Of ammonium.
    pub ammonia: S,
    /// Of nitrite.
    pub nitrite: S,
    /// Of nitrate.
    pub nitrate: S,
}

impl<S: Scalar> Uptake<S> {
    /// Ammonium first, nitrite and nitrate for the rest.
    ///
    /// ```text
    /// a = TU/(K + TU)                 TU = max(0, TAN - least)
    /// o = (1 - a) w OX/(K + OX)       OX = NO2 + NO3
    /// ```
    ///
    /// `K` nitrogen at half uptake, mg N/L; `w` weight of the oxidised forms,
    /// which go by their share of `OX`.
    ///
    /// # Source
    /// Preference and a least level: Jampeetong and Brix 2009 (`jampeetong_brix_2009`); root
    /// tips do so too, Fang et al. 2007 (`fang_2007`). Nitrite taken like nitrate: judgement.
    ///
    /// # Example
    /// ```
    /// use lentic::startup::uptake::{Offer, Uptake};
    /// let offer = Offer { ammonia: 0.1_f64, nitrite: 0.0, nitrate: 5.0 };
    /// // with the oxidised forms left alone, ammonium is all that is taken
    /// let taken = Uptake::of(&offer, 0.1, 0.0);
    /// assert!((taken.total() - 0.5).abs() < 1e-12 && taken.nitrate.abs() < 1e-12);
    /// ```
    pub fn of(water: &Offer<S>, half: f64, oxidised_preference: f64) -> Self {
        let ammonia = saturation(water.ammonia, half);
        let oxidised = water.nitrite + water.nitrate + half;
        let each = ammonia.complement() * oxidised_preference / oxidised;
        Self {
            ammonia,
            nitrite: each * water.nitrite,
            nitrate: each * water.nitrate,
        }
    }

    /// Of all nitrogen.
    pub fn total(&self) -> S {
        self.ammonia + self.nitrite + self.nitrate
    }

    /// The same in proportion, for a largest uptake.
    #[must_use]
    pub fn times(&self, largest: S) -> Self {
        Self {
            ammonia: self.ammonia * largest,
            nitrite: self.nitrite * largest,
            nitrate: self.nitrate * largest,
        }
    }

    /// Splits an amount among the three forms in this proportion.
    #[must_use]
    pub fn splitting(&self, amount: S) -> Self {
        let whole = self.total();
        let each = (whole - NOTHING).if_positive(amount / whole, S::splat(0.0));
        self.times(each)
    }
}

/// A store of nitrogen or phosphorus in plant tissue.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Store<S = f64> {
    /// Content now, g/g.
    pub content: S,
    /// Content at which growth stops, g/g.
    pub least: f64,
    /// Content of a full store, g/g.
    pub most: f64,
}

impl<S: Scalar> Store<S> {
    /// The store of a stand from what it holds and its mass; a stand of no mass
    /// counts as starved.
    pub fn of(held_g_m2: S, mass_g_m2: S, least: f64, most: f64) -> Self {
        Self {
            content: held_g_m2 / (mass_g_m2 + TRACE_G_M2),
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
    /// let half = Store { content: 0.03_f64, least: 0.01, most: 0.05 };
    /// assert!((half.room() - 0.5).abs() < 1e-12);
    /// ```
    pub fn room(&self) -> S {
        let empty = -self.content + self.most;
        (empty / (self.most - self.least)).positive_part()
    }

    /// Growth that the content allows, as a share of full growth.
    ///
    /// ```text
    /// (1 - Qmin/Q) / (1 - Qmin/Qmax)      between 0 and 1
    /// ```
    ///
    /// # Source
    /// Droop 1973 (`droop_1973`, from memory), scaled to 1 at the full store.
    ///
    /// # Example
    /// ```
    /// use lentic::startup::uptake::Store;
    /// let full = Store { content: 0.050_f64, least: 0.015, most: 0.050 };
    /// let starved = Store { content: 0.015, ..full };
    /// assert!((full.growth_share() - 1.0_f64).abs() < 1e-12);
    /// assert!(starved.growth_share().abs() < 1e-12);
    /// ```
    pub fn growth_share(&self) -> S {
        let bound = S::splat(self.least) / self.content;
        let share = bound.complement() / (1.0 - self.least / self.most);
        share.positive_part().min(S::splat(1.0))
    }

    /// What leaks out of a store over full, g/g/d: half of the excess a day (judgement).
    pub(super) fn leak_per_d(&self) -> S {
        (self.content - self.most).positive_part() * LEAK_PER_D
    }
}

/// Rate at which what is above a full store leaks out, 1/d (judgement).
const LEAK_PER_D: f64 = 0.5;

/// A share that one makes up of another, at most all of it; none of nothing.
pub(super) fn share_of<S: Scalar>(part: S, whole: S) -> S {
    (whole - NOTHING).if_positive((part / whole).min(S::splat(1.0)), S::splat(0.0))
}
