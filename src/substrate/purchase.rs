//! What to buy for a layer, and what it weighs.

use crate::units::{Density, Mass, Share, Volume};

/// Labelled volume of soil to buy for a layer of this settled volume.
///
/// ```text
/// bought = settled volume / settled share
/// ```
///
/// The settled share is the litres of wet settled soil that a labelled litre
/// gives. Potting soil is labelled by EN 12580 (`en_12580`); pots hold it at 105 to 155 % of
/// that density, so that 100 L fill 95 to 65 L (Verhagen 2017). Shrinkage of
/// flooded mixes under sand was not found.
///
/// # Example
/// ```
/// use lentic::substrate::purchase::soil_to_buy;
/// use lentic::units::{Share, Volume};
/// let bought = soil_to_buy(Volume::from_litres(8.0), Share::from_percent(80.0));
/// assert!((bought.litres() - 10.0).abs() < 1e-12);
/// ```
///
/// # Source
/// EN 12580 (`en_12580`) and Verhagen 2017 (`verhagen_2017`) for what a labelled litre gives.
///
/// # Limits
/// A mix that floats or is pressed by hand settles otherwise: 0.65 to 0.95 by judgement.
pub fn soil_to_buy(settled: Volume, settled_share: Share) -> Volume {
    settled / settled_share.fraction()
}

/// Mass per volume of a layer with its pores full of water.
///
/// ```text
/// rho_sat = rho_dry + n rho_w
/// ```
///
/// # Source
/// By definition.
///
/// # Example
/// ```
/// use lentic::substrate::purchase::saturated_density;
/// use lentic::units::{Density, Share};
/// let water = Density::from_kg_m3(997.0);
/// let quartz = saturated_density(Density::from_kg_m3(1590.0), Share::from_percent(40.0), water);
/// assert!((quartz.kg_m3() - (1590.0 + 0.4 * 997.0)).abs() < 1e-9);
/// ```
///
/// # Limits
/// Gas in the pores is left out: errs heavy.
pub fn saturated_density(dry_bulk: Density, porosity: Share, water: Density) -> Density {
    dry_bulk + water * porosity.fraction()
}

/// What a layer weighs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LayerMass {
    /// As bought, without water: for sand the mass to buy.
    pub dry: Mass,
    /// In the tank, with its pores full.
    pub wet: Mass,
}

impl LayerMass {
    /// The masses of a layer of this volume.
    ///
    /// # Example
    /// ```
    /// use lentic::substrate::purchase::LayerMass;
    /// use lentic::units::{Density, Share, Volume};
    /// let sand = LayerMass::new(
    ///     Volume::from_litres(7.2),
    ///     Density::from_kg_m3(1590.0),
    ///     Share::from_percent(40.0),
    ///     Density::from_kg_m3(997.0),
    /// );
    /// assert!((sand.dry.kg() - 7.2 * 1.590).abs() < 1e-9);
    /// assert!((sand.wet.kg() - 7.2 * (1.590 + 0.4 * 0.997)).abs() < 1e-9);
    /// ```
    pub fn new(volume: Volume, dry_bulk: Density, porosity: Share, water: Density) -> Self {
        Self {
            dry: dry_bulk * volume,
            wet: saturated_density(dry_bulk, porosity, water) * volume,
        }
    }
}
