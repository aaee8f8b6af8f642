//! The checked and measured tank.

use super::Draft;
use super::planted::{Areas, Planted};
use crate::geometry::{Bed, Vessel};
use crate::units::{Area, Length, Mass, Volume};

/// A tank that can exist, with its measures.
///
/// # Example
/// ```
/// let text = r#"
/// [tank]
/// shape = "box"
/// size = "40 x 25 x 25 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "25 mm"
/// [cap]
/// material = "filter_sand"
/// depth = "40 mm"
/// "#;
/// let design = lentic::spec::parse(text)?;
/// assert!((design.vessel().brimful().litres() - 25.0).abs() < 1e-9);
/// assert!((design.water().litres() - 16.0).abs() < 1e-9);
/// # Ok::<(), lentic::spec::Faults>(())
/// ```
#[derive(Debug, Clone)]
pub struct Design {
    draft: Draft,
    vessel: Vessel,
    bed: Bed,
    planted: Planted,
}

impl Design {
    /// Called by the checks alone, once nothing is wrong.
    pub(super) fn new(draft: Draft, vessel: Vessel, bed: Bed, planted: Planted) -> Self {
        Self {
            draft,
            vessel,
            bed,
            planted,
        }
    }

    /// What was asked for.
    pub const fn draft(&self) -> &Draft {
        &self.draft
    }

    /// What was asked for, to be changed and checked again.
    pub fn into_draft(self) -> Draft {
        self.draft
    }

    /// The empty tank.
    pub const fn vessel(&self) -> &Vessel {
        &self.vessel
    }

    /// Soil and cap as they lie.
    pub const fn bed(&self) -> &Bed {
        &self.bed
    }

    /// The planting of day one by group.
    pub const fn planted(&self) -> &Planted {
        &self.planted
    }

    /// From the inner floor to the water surface.
    pub fn water_level(&self) -> Length {
        water_level(&self.draft, &self.vessel)
    }

    /// Free water: above the bed, between the stones. What of the bed stands above the
    /// water takes no room from it: water, stones, the bed below the level and the tank
    /// above it add up to the brimful.
    pub fn water(&self) -> Volume {
        self.bed.water_below(self.water_level()) - self.hardscape()
    }

    /// From the water surface down to the mean top of the bed; where the bed rises out of
    /// the water, the mean over the part that lies under it.
    pub fn water_depth(&self) -> Length {
        let level = self.water_level();
        if self.bed.rises_above(level) {
            self.bed.water_below(level) / self.surface()
        } else {
            level - self.bed.top.mean
        }
    }

    /// The water surface, without what of the bed stands above it.
    pub fn surface(&self) -> Area {
        surface(&self.draft, &self.vessel, &self.bed)
    }

    /// The areas that shares of cover are shares of.
    pub fn areas(&self) -> Areas {
        Areas {
            surface: self.surface(),
            floor: self.bed.area(),
        }
    }

    /// What stones displace.
    pub fn hardscape(&self) -> Volume {
        hardscape(&self.draft)
    }

    /// What stones weigh.
    pub fn hardscape_mass(&self) -> Mass {
        self.draft.hardscape.iter().map(|stone| stone.mass).sum()
    }
}

/// From the inner floor to the water surface; below zero where the freeboard is too large.
pub(super) fn water_level(draft: &Draft, vessel: &Vessel) -> Length {
    vessel.height() - draft.tank.freeboard
}

/// The water surface, without what of the bed stands above it.
pub(super) fn surface(draft: &Draft, vessel: &Vessel, bed: &Bed) -> Area {
    let level = water_level(draft, vessel);
    vessel.surface(level) - bed.area_above(level)
}

/// What stones displace, all of them under water.
pub(super) fn hardscape(draft: &Draft) -> Volume {
    draft
        .hardscape
        .iter()
        .map(|stone| stone.mass / stone.density())
        .sum()
}
