//! What a drawing of a tank to scale shows: outlines, levels, and how full it is of what.

use std::f64::consts::PI;

use crate::catalogue::{GrowthForm, PlantGroup};
use crate::design::{Design, FlowDevice, LightLevel, Planting, Stock, closed};
use crate::geometry::{Above, Elevation, Layer, Spot, ViewSide};
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
    /// Around the bed's surface, from above.
    pub bed: Vec<Spot>,
    /// What stands in the bed or floats.
    pub stands: Vec<DrawnStand>,
    /// Animals, early or late.
    pub animals: Vec<Herd>,
    /// From the water's surface up to the lamp, where that is known.
    pub lamp: Option<Length>,
    /// What moves air or water, and how far below the surface it hangs.
    pub device: Option<(FlowDevice, Length)>,
}

/// Plants of one kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnStand {
    /// How they grow.
    pub form: GrowthForm,
    /// What they count as.
    pub group: PlantGroup,
    /// Of a floor planted densely on day one; of a surface closed by floaters.
    pub share: Share,
}

/// Animals of one kind.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Herd {
    /// How they are built.
    pub build: Build,
    /// How many.
    pub count: u32,
    /// From snout to tail, or across the shell.
    pub length: Length,
}

/// How an animal is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Build {
    /// A fish.
    Fish,
    /// A shrimp.
    Shrimp,
    /// A snail.
    Snail,
}

impl Build {
    /// By the last word of the animal's name.
    fn of(name: &str) -> Self {
        match name.rsplit('_').next() {
            Some("shrimp") => Self::Shrimp,
            Some("snail") => Self::Snail,
            _ => Self::Fish,
        }
    }

    /// Mass over the cube of its length, g/cm3: fish 0.012 by the usual condition factor,
    /// the others by their build (from memory).
    const fn condition(self) -> f64 {
        match self {
            Self::Fish => 0.012,
            Self::Shrimp => 0.008,
            Self::Snail => 0.3,
        }
    }
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

    /// Whether a plant of a form is among what is planted.
    pub fn has(&self, form: GrowthForm) -> bool {
        self.stands.iter().any(|stand| stand.form == form)
    }

    /// How much of a floor planted densely a group makes.
    pub fn density(&self, group: PlantGroup) -> Share {
        let stands = self.stands.iter().filter(|stand| stand.group == group);
        Share::from_fraction(stands.map(|stand| stand.share.fraction()).sum())
    }
}

/// What a drawing of a design shows.
pub fn drawing(design: &Design) -> Drawing {
    let (draft, vessel, bed) = (design.draft(), design.vessel(), design.bed());
    let level = design.water_level();
    Drawing {
        name: draft.name.clone(),
        front: bed.elevation(vessel, ViewSide::Front, level),
        side: bed.elevation(vessel, ViewSide::Right, level),
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
        bed: vessel.above(level - design.water_depth()).water,
        stands: draft
            .plants
            .iter()
            .filter_map(|one| stand(design, one))
            .collect(),
        animals: draft.animals.iter().map(herd).collect(),
        lamp: match draft.light.level {
            LightLevel::Lumens { height, .. } => Some(height),
            LightLevel::Par(_) | LightLevel::Class(_) => None,
        },
        device: (draft.air.device != FlowDevice::None)
            .then_some((draft.air.device, draft.air.depth)),
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

/// Dry mass over that of a floor planted densely on day one, or of a closed surface.
fn stand(design: &Design, planting: &Planting) -> Option<DrawnStand> {
    let areas = design.areas();
    let plant = planting.plant;
    let room = match plant.group {
        PlantGroup::Floater => areas.surface,
        PlantGroup::Fast | PlantGroup::Slow => areas.floor,
    };
    let biomass = planting.biomass(areas)?;
    Some(DrawnStand {
        form: plant.form,
        group: plant.group,
        share: Share::from_fraction(biomass.dry / closed(plant, room)),
    })
}

fn herd(stock: &Stock) -> Herd {
    let build = Build::of(&stock.animal.name);
    let length_cm = (stock.animal.mass_g.typical / build.condition()).cbrt();
    Herd {
        build,
        count: stock.count,
        length: Length::from_cm(length_cm),
    }
}
