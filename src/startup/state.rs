//! What changes in a tank, by name.

/// Declares the state: its fields, and their order at the integrator's edge.
macro_rules! state {
    ($($(#[$about:meta])* $name:ident,)+) => {
        /// Nitrogen, phosphorus and living mass of a tank, or their rates of
        /// change per day. Amounts are per square metre of floor.
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct State {
            $($(#[$about])* pub $name: f64,)+
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

            /// The same state with every amount changed.
            pub(super) fn map(&self, mut change: impl FnMut(f64) -> f64) -> Self {
                State { $($name: change(self.$name)),+ }
            }
        }
    };
}

state! {
    /// Nitrogen in the fast pool of the soil, g N/m2.
    labile_n,
    /// Ammonium in the soil, dissolved and exchangeable, g N/m2.
    soil_n,
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
    /// Fast submerged plants, g dry/m2.
    fast,
    /// Nitrogen in fast submerged plants, g N/m2.
    fast_n,
    /// Slow submerged plants, g dry/m2.
    slow,
    /// Algae, g dry/m2.
    algae,
    /// Nitrogen released by the bed since filling, g N/m2.
    released_n,
    /// Nitrogen lost as gas since filling, g N/m2.
    denitrified_n,
    /// Nitrogen taken out with thinned floaters since filling, g N/m2.
    harvested_n,
    /// Nitrogen in dead matter that does not dissolve, since filling, g N/m2.
    detritus_n,
    /// Nitrogen brought in since filling by feed, water changes and planting,
    /// less what they took out, g N/m2.
    added_n,
    /// Alkalinity used up by nitrification and not yet renewed by water changes,
    /// meq/L.
    alkalinity_used,
}

/// The last states are totals on which nothing depends.
pub(super) const COUPLED_STATES: usize = STATES - 6;
