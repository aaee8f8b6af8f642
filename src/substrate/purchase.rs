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
pub fn soil_to_buy(settled: Volume, settled_share: Share) -> Volume {
    settled / settled_share.fraction()
}

/// Dry mass per volume of a layer from the density of its grains.
///
/// ```text
/// rho_dry = (1 - n) rho_s
/// ```
pub fn dry_bulk_density(grain_density: Density, porosity: Share) -> Density {
    grain_density * (1.0 - porosity.fraction())
}

/// Mass per volume of a layer with its pores full of water.
///
/// ```text
/// rho_sat = rho_dry + n rho_w
/// ```
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
    pub fn new(volume: Volume, dry_bulk: Density, porosity: Share, water: Density) -> Self {
        Self {
            dry: dry_bulk * volume,
            wet: saturated_density(dry_bulk, porosity, water) * volume,
        }
    }
}
