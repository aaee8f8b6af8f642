//! What a group of plants or the algae exchange with water and soil.

use std::ops::Add;

use super::uptake::Uptake;
use crate::numerics::real::Scalar;

/// Declares the exchange of a group, and what is done with every part of it alike.
macro_rules! flow {
    ($($(#[$about:meta])* $name:ident,)+) => {
        /// Exchange of one group, per square metre of floor and day.
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub(super) struct Flow<S = f64> {
            /// Nitrogen taken from the water.
            pub(super) taken: Uptake<S>,
            $($(#[$about])* pub(super) $name: S,)+
        }

        impl<S: Scalar> Flow<S> {
            /// No exchange.
            pub(super) fn none() -> Self {
                let nothing = S::splat(0.0);
                Self {
                    taken: Uptake { ammonia: nothing, nitrite: nothing, nitrate: nothing },
                    $($name: nothing,)+
                }
            }

            /// The same of something else.
            pub(super) fn map<T>(&self, each: impl Fn(S) -> T) -> Flow<T> {
                Flow {
                    taken: Uptake {
                        ammonia: each(self.taken.ammonia),
                        nitrite: each(self.taken.nitrite),
                        nitrate: each(self.taken.nitrate),
                    },
                    $($name: each(self.$name),)+
                }
            }
        }

        impl<S: Scalar> Add for Flow<S> {
            type Output = Self;

            fn add(self, other: Self) -> Self {
                Self {
                    taken: Uptake {
                        ammonia: self.taken.ammonia + other.taken.ammonia,
                        nitrite: self.taken.nitrite + other.taken.nitrite,
                        nitrate: self.taken.nitrate + other.taken.nitrate,
                    },
                    $($name: self.$name + other.$name,)+
                }
            }
        }
    };
}

flow! {
    /// Dry tissue made, before any is lost.
    grown,
    /// Nitrogen taken from the soil.
    rooted_n,
    /// Nitrogen given back as ammonium by living tissue.
    returned_n,
    /// Nitrogen in tissue that died.
    dead_n,
    /// Nitrogen in plants taken out.
    harvested_n,
    /// Phosphorus taken from the water.
    taken_p,
    /// Phosphorus taken from the soil.
    rooted_p,
    /// Phosphorus given back to the water by living tissue.
    returned_p,
    /// Phosphorus in tissue that died.
    dead_p,
    /// Phosphorus in plants taken out.
    harvested_p,
}

impl<S: Scalar> Flow<S> {
    /// Nitrogen that a stand with a store of it gains on balance.
    fn stored_n(&self) -> S {
        self.taken.total() + self.rooted_n - self.returned_n - self.dead_n - self.harvested_n
    }

    /// The same of phosphorus.
    fn stored_p(&self) -> S {
        self.taken_p + self.rooted_p - self.returned_p - self.dead_p - self.harvested_p
    }
}

/// A group's mass and what its stores hold, per square metre of floor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct GroupStand<S> {
    /// g dry.
    pub(super) mass: S,
    /// g N.
    pub(super) nitrogen: S,
    /// g P.
    pub(super) phosphorus: S,
}

impl<S: Copy> GroupStand<S> {
    /// The same of something else.
    pub(super) fn map<T>(&self, each: impl Fn(S) -> T) -> GroupStand<T> {
        GroupStand {
            mass: each(self.mass),
            nitrogen: each(self.nitrogen),
            phosphorus: each(self.phosphorus),
        }
    }
}

impl GroupStand<f64> {
    /// One without stores.
    pub(super) const fn of_mass(mass: f64) -> Self {
        Self {
            mass,
            nitrogen: 0.0,
            phosphorus: 0.0,
        }
    }
}

/// Exchange and change of one group.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct GroupChange<S = f64> {
    pub(super) flow: Flow<S>,
    /// Of its mass, g dry/(m2 d).
    pub(super) mass: S,
}

impl<S: Scalar> GroupChange<S> {
    /// That of a group that is not there.
    pub(super) fn none() -> Self {
        Self {
            flow: Flow::none(),
            mass: S::splat(0.0),
        }
    }

    /// What the group gains, with its stores.
    pub(super) fn gain(&self) -> GroupStand<S> {
        GroupStand {
            mass: self.mass,
            nitrogen: self.flow.stored_n(),
            phosphorus: self.flow.stored_p(),
        }
    }
}

/// Exchange and change of every group.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Changes<S = f64> {
    pub(super) floating: GroupChange<S>,
    pub(super) fast: GroupChange<S>,
    pub(super) slow: GroupChange<S>,
    pub(super) algae: GroupChange<S>,
}

impl<S: Scalar> Changes<S> {
    /// The exchange of all of them.
    pub(super) fn flow(&self) -> Flow<S> {
        self.floating.flow + self.fast.flow + self.slow.flow + self.algae.flow
    }

    /// What each gains.
    pub(super) fn gains(&self) -> Gains<S> {
        let (floating, fast) = (&self.floating, &self.fast);
        Gains {
            floating: floating.gain(),
            fast: fast.gain(),
            slow: self.slow.mass,
            algae: self.algae.mass,
        }
    }
}

/// What every group gains on balance.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Gains<S = f64> {
    pub(super) floating: GroupStand<S>,
    pub(super) fast: GroupStand<S>,
    pub(super) slow: S,
    pub(super) algae: S,
}

impl<S: Copy> Gains<S> {
    /// The same of something else.
    pub(super) fn map<T>(&self, each: impl Fn(S) -> T) -> Gains<T> {
        Gains {
            floating: self.floating.map(&each),
            fast: self.fast.map(&each),
            slow: each(self.slow),
            algae: each(self.algae),
        }
    }
}

impl Gains {
    /// None.
    pub(super) const NOTHING: Self = Self {
        floating: GroupStand::of_mass(0.0),
        fast: GroupStand::of_mass(0.0),
        slow: 0.0,
        algae: 0.0,
    };
}
