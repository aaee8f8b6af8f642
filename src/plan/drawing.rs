//! What a drawing of a tank to scale shows: outlines, levels, and how full it is of what.

use std::f64::consts::PI;

use crate::catalogue::Group;
use crate::design::{Design, Device, closed};
use crate::geometry::{Above, Elevation, Layer, Seen};
use crate::units::{Length, Share};

/// A tank to be drawn; every length is that of the tank.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    /// What the keeper calls it.
    pub name: String,
    /// From the front.
    pub front: Elevation,
    /// From the right.
    pub side: Elevation,
    /// From above.
    pub above: Above,
    /// Inside, left to right at the widest place.
    pub length: Length,
    /// Inside, back to front at the widest place.
    pub width: Length,
    /// From the inner floor to the rim.
    pub height: Length,
    /// From the inner floor to the water's surface.
    pub water_level: Length,
    /// From the water's surface down to the mean top of the bed.
    pub water_depth: Length,
    /// The soil as it lies.
    pub soil: Layer,
    /// The cap as it lies.
    pub cap: Layer,
    /// For each stone the diameter of a ball of its volume.
    pub stones: Vec<Length>,
    /// How much of the surface the floaters cover.
    pub floating: Share,
    /// How much of a floor planted densely the fast growers make.
    pub fast: Share,
    /// The same of the slow growers.
    pub slow: Share,
    /// What moves air or water, and how far below the surface it hangs.
    pub device: Option<(Device, Length)>,
}

/// Depths that differ by less are drawn as one, mm.
const ALIKE_MM: f64 = 0.5;

impl Drawing {
    /// Whether soil or cap is deeper in one place than in another.
    pub fn is_sloped(&self) -> bool {
        let layers = [self.soil, self.cap];
        let spreads = layers.map(|layer| (layer.deepest.depth - layer.thinnest.depth).mm());
        spreads.into_iter().any(|spread| spread > ALIKE_MM)
    }
}

/// What a drawing of a design shows.
pub fn drawing(design: &Design) -> Drawing {
    let (draft, vessel, bed) = (design.draft(), design.vessel(), design.bed());
    let level = design.water_level();
    Drawing {
        name: draft.name.clone(),
        front: bed.elevation(vessel, Seen::Front, level),
        side: bed.elevation(vessel, Seen::Right, level),
        above: vessel.above(level),
        length: vessel.length(),
        width: vessel.width(),
        height: vessel.height(),
        water_level: level,
        water_depth: design.water_depth(),
        soil: bed.soil,
        cap: bed.cap,
        stones: stones(design),
        floating: design.planted().cover,
        fast: density(design, Group::Fast),
        slow: density(design, Group::Slow),
        device: (draft.air.device != Device::None).then_some((draft.air.device, draft.air.depth)),
    }
}

fn stones(design: &Design) -> Vec<Length> {
    let stones = design.draft().hardscape.iter();
    stones
        .map(|stone| {
            let volume_m3 = (stone.mass / stone.density()).m3();
            Length::from_m((6.0 * volume_m3 / PI).cbrt())
        })
        .collect()
}

/// Dry mass of a group over that of a floor planted densely on day one.
fn density(design: &Design, group: Group) -> Share {
    let areas = design.areas();
    let plantings = design.draft().plants.iter();
    let shares = plantings
        .filter(|planting| planting.plant.group == group)
        .filter_map(|planting| {
            let biomass = planting.biomass(areas)?;
            Some(biomass.dry / closed(planting.plant, areas.floor))
        });
    Share::from_fraction(shares.sum())
}
