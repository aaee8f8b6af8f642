//! Limits of what the water holds while a bed settles: the number, what it rests on and
//! its source beside each other.

use crate::source::{Basis, Source};

/// Where a rising number is watched and where it is acted on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// From here on it is watched.
    pub watch: f64,
    /// From here on it is acted on.
    pub act: f64,
    /// What the numbers rest on.
    pub basis: Basis,
    /// The work that they are set by.
    pub source: Source,
}

/// Ammonia, mg N/L: set after the criteria of EPA 2013, which holds other values.
pub const AMMONIA: Limit = Limit {
    watch: 0.5,
    act: 1.0,
    basis: Basis::Published,
    source: Source::EpaAmmonia2013,
};
/// Un-ionised ammonia, mg N/L.
pub const UN_IONISED: Limit = Limit {
    watch: 0.02,
    act: 0.05,
    basis: Basis::Published,
    source: Source::EpaAmmonia2013,
};
/// Nitrite, mg NO2/L.
pub const NITRITE: Limit = Limit {
    watch: 0.33,
    act: 1.0,
    basis: Basis::Published,
    source: Source::Kroupova2008,
};
/// Nitrate, mg NO3/L: practice, and twice the long-exposure figure of Camargo et al. 2005.
pub const NITRATE: Limit = Limit {
    watch: 40.0,
    act: 88.0,
    basis: Basis::Practice,
    source: Source::Camargo2005,
};
