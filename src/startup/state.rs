//! What changes in a tank, by name.

use super::flow::GroupStand;

/// Declares the state: its fields, and their order at the integrator's edge.
macro_rules! state {
    ($($(#[$about:meta])* $name:ident,)+) => {
        /// Nitrogen, phosphorus and living mass of a tank, or their rates of
        /// change per day. Amounts are per square metre of floor.
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct State {
            $($(#[$about])* pub $name: f64,)+
        }

        /// Places of the states in their order.
        #[allow(non_camel_case_types, dead_code, reason = "one for every field, named as it is")]
        #[derive(Debug, Clone, Copy, PartialEq, Eq)]
        pub(super) enum StateIndex {
            $($name,)+
        }

        /// Number of states.
        pub(super) const STATES: usize = [$(stringify!($name)),+].len();

        impl State {
            pub(super) fn from_array([$($name),+]: [f64; STATES]) -> Self {
                Self { $($name),+ }
            }

            /// The amounts, in the order of the fields.
            pub fn into_array(self) -> [f64; STATES] {
                [$(self.$name),+]
            }

            /// A state of which there is nothing.
            pub(super) const NOTHING: Self = Self { $($name: 0.0),+ };

            /// The sum of both, amount by amount.
            #[must_use]
            pub(super) fn plus(&self, other: &Self) -> Self {
                Self { $($name: self.$name + other.$name),+ }
            }

            /// The same state with every amount changed.
            pub(super) fn map(&self, mut change: impl FnMut(f64) -> f64) -> Self {
                State { $($name: change(self.$name)),+ }
            }
        }
    };
}

state! {
    /// Nitrogen of the soil that breaks down within weeks, g N/m2.
    fast_soil_n,
    /// Nitrogen of the soil that breaks down over months, g N/m2.
    slow_soil_n,
    /// Nitrogen of the soil that breaks down over decades, g N/m2.
    stable_soil_n,
    /// Phosphorus that flooding will still set free, g P/m2.
    reducible_p,
    /// Phosphorus of dead matter that stays in the bed, g P/m2.
    stable_p,
    /// Ammonium in the soil, dissolved and exchangeable, g N/m2.
    soil_n,
    /// Phosphate in the soil, dissolved and sorbed, g P/m2.
    soil_p,
    /// Ammonia in the water, mg N/L.
    ammonia,
    /// Nitrite in the water, mg N/L.
    nitrite,
    /// Nitrate in the water, mg N/L.
    nitrate,
    /// Phosphate in the water, mg P/L.
    phosphate,
    /// Ammonia oxidisers, g COD/m2.
    ammonia_oxidisers,
    /// Nitrite oxidisers, g COD/m2.
    nitrite_oxidisers,
    /// Floating plants, g dry/m2.
    floating,
    /// Nitrogen in floating plants, g N/m2.
    floating_n,
    /// Phosphorus in floating plants, g P/m2.
    floating_p,
    /// Fast submerged plants, g dry/m2.
    fast,
    /// Nitrogen in fast submerged plants, g N/m2.
    fast_n,
    /// Phosphorus in fast submerged plants, g P/m2.
    fast_p,
    /// Slow submerged plants, g dry/m2.
    slow,
    /// Algae, g dry/m2.
    algae,
    /// Nitrogen in dead matter that has not broken down, g N/m2.
    detritus_n,
    /// Nitrogen released by the bed since filling, g N/m2.
    released_n,
    /// Phosphorus released by the bed since filling, g P/m2.
    released_p,
    /// Nitrogen lost as gas since filling, g N/m2.
    denitrified_n,
    /// Nitrogen taken out with thinned floaters and trimmed stems since filling, g N/m2.
    harvested_n,
    /// Phosphorus taken out with them, g P/m2.
    harvested_p,
    /// Nitrogen brought in since filling by feed, water changes and planting,
    /// less what they took out, g N/m2.
    added_n,
    /// Phosphorus brought in alike, g P/m2.
    added_p,
    /// Alkalinity used up on balance and not yet renewed by water changes, meq/L;
    /// negative where more was made.
    alkalinity_used,
}

/// The last states are totals on which nothing depends.
pub(super) const COUPLED_STATES: usize = STATES - 8;

impl State {
    /// The floating plants.
    pub(super) fn floating_stand(&self) -> GroupStand<f64> {
        GroupStand {
            mass: self.floating,
            nitrogen: self.floating_n,
            phosphorus: self.floating_p,
        }
    }

    /// The fast submerged plants.
    pub(super) fn fast_stand(&self) -> GroupStand<f64> {
        GroupStand {
            mass: self.fast,
            nitrogen: self.fast_n,
            phosphorus: self.fast_p,
        }
    }

    /// The slow submerged plants, which keep no stores.
    pub(super) fn slow_stand(&self) -> GroupStand<f64> {
        GroupStand::of_mass(self.slow)
    }

    /// The algae alike.
    pub(super) fn algal_stand(&self) -> GroupStand<f64> {
        GroupStand::of_mass(self.algae)
    }

    /// The same with what is under nothing taken as nothing, the totals left as they are:
    /// what the rates see.
    pub(super) fn present(&self) -> Self {
        let mut amounts = self.into_array();
        for amount in amounts.iter_mut().take(COUPLED_STATES) {
            *amount = amount.max(0.0);
        }
        Self::from_array(amounts)
    }
}
