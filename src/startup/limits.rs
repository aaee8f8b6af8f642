//! Limits of what the water holds while a bed settles: the number, what it rests on and
//! its source beside each other.

use crate::source::{Basis, Source};
use crate::units::constants::molar_mass;

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
    basis: Basis::Judgement,
    source: Source::EpaAmmonia2013,
};
/// Un-ionised ammonia of the Canadian guideline, mg NH3/L.
pub const GUIDELINE_UN_IONISED_MG_NH3_L: f64 = 0.019;
/// Un-ionised ammonia, mg N/L: above [`GUIDELINE_UN_IONISED_MG_NH3_L`], which is 0.016 mg N/L.
pub const UN_IONISED: Limit = Limit {
    watch: 0.02,
    act: 0.05,
    basis: Basis::Judgement,
    source: Source::CcmeAmmonia,
};
/// The least nitrite that Kroupova 2008 reports an effect of, mg NO2/L.
pub const NITRITE_LOWEST_EFFECT_MG_L: f64 = 0.2;
/// Nitrite without any effect there, mg NO2/L.
pub const NITRITE_NO_EFFECT_MG_L: f64 = 0.01;
/// Nitrite, mg NO2/L: above [`NITRITE_LOWEST_EFFECT_MG_L`].
pub const NITRITE: Limit = Limit {
    watch: 0.33,
    act: 1.0,
    basis: Basis::Judgement,
    source: Source::Kroupova2008,
};
/// Nitrate, mg NO3/L: practice, and twice the long-exposure figure of Camargo et al. 2005.
pub const NITRATE: Limit = Limit {
    watch: 40.0,
    act: 88.0,
    basis: Basis::Practice,
    source: Source::Camargo2005,
};
/// Ammonia under which animals may move in, mg N/L: judgement, half of what is watched.
pub const READY_AMMONIA_MG_N_L: f64 = 0.25;
/// Nitrite nitrogen under which animals may move in, mg N/L: the watch limit of
/// [`NITRITE`] as nitrogen.
pub const READY_NITRITE_MG_N_L: f64 = NITRITE.watch * molar_mass::N / molar_mass::NO2;
/// Ammonia under which snails may move in, mg N/L: judgement, the watch limit (from memory:
/// snails bear more than fish and shrimp).
pub const HARDY_AMMONIA_MG_N_L: f64 = AMMONIA.watch;
/// Nitrite nitrogen under which snails may move in, mg N/L: judgement, the act limit of
/// [`NITRITE`] as nitrogen (from memory, as above).
pub const HARDY_NITRITE_MG_N_L: f64 = NITRITE.act * molar_mass::N / molar_mass::NO2;
/// Ammonia from which nothing that raises pH goes in, mg N/L: judgement.
pub const NO_RISE_MG_N_L: f64 = 0.25;

#[cfg(test)]
mod tests {
    use super::{READY_AMMONIA_MG_N_L, READY_NITRITE_MG_N_L};

    #[test]
    fn ready_is_a_quarter_of_ammonia_nitrogen_and_a_third_of_nitrite() {
        // 0.33 mg NO2/L x 14.007 / 46.005
        assert!((READY_NITRITE_MG_N_L - 0.100_47).abs() < 1e-4);
        assert!((READY_AMMONIA_MG_N_L - 0.25).abs() < f64::EPSILON);
    }
}
