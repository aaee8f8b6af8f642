//! Volumes, masses and purchases: the tank, soil and cap sections.

use super::purchase;
use super::section::{CapSection, SoilSection, TankSection};
use crate::design::Design;
use crate::geometry::Layer;
use crate::source::Band;
use crate::substrate::purchase::{LayerMass, soil_to_buy};
use crate::units::{Density, Share};
use crate::water;

/// The vessel and its water.
pub(super) fn tank(design: &Design) -> TankSection {
    let vessel = design.vessel();
    TankSection {
        shape: vessel.shape().word(),
        footprint_cm2: vessel.footprint().cm2(),
        surface_cm2: design.surface().cm2(),
        brimful_l: vessel.brimful().litres(),
        water_l: design.water().litres(),
        water_depth_cm: design.water_depth().cm(),
        hardscape_l: design.hardscape().litres(),
    }
}

/// Soil to buy and what it weighs.
pub(super) fn soil(design: &Design) -> SoilSection {
    let asked = &design.draft().soil;
    let layer = &design.bed().soil;
    let bulk = Density::from_kg_m3(asked.dry_bulk_kg_m3().typical);
    let mass = mass(design, layer, bulk, asked.porosity());
    let settled = asked.material.settled_share;
    let buy = |share: f64| soil_to_buy(layer.volume, Share::from_fraction(share));
    let loose = bulk * settled.typical;
    let bought = purchase::by_volume(buy(settled.typical), &asked.bags, loose);
    SoilSection {
        material: &asked.material.name,
        depth_cm: layer.mean.cm(),
        thinnest_cm: layer.thinnest.depth.cm(),
        deepest_cm: layer.deepest.depth.cm(),
        volume_l: layer.volume.litres(),
        buy_l: buy(settled.typical).litres(),
        buy_low_l: buy(settled.high).litres(),
        buy_high_l: buy(settled.low).litres(),
        dry_mass_kg: mass.dry.kg(),
        wet_mass_kg: mass.wet.kg(),
        bags_total_l: bought.as_ref().map(|bought| bought.total),
        surplus_l: bought.as_ref().map(|bought| bought.surplus),
        cost: bought.as_ref().and_then(|bought| bought.cost),
        dearer_at_most: bought.as_ref().and_then(|bought| bought.dearer_at_most),
        bags: bought.map(|bought| bought.bags).unwrap_or_default(),
    }
}

/// Cap to buy, what it weighs and its grain sizes; the verdict is filled in by the judge.
pub(super) fn cap(design: &Design) -> CapSection {
    let asked = &design.draft().cap;
    let layer = &design.bed().cap;
    let bulk = Density::from_kg_m3(asked.dry_bulk_kg_m3().typical);
    let mass = mass(design, layer, bulk, asked.porosity());
    let bought = purchase::by_mass(mass.dry, &asked.bags, bulk);
    CapSection {
        material: &asked.material.name,
        depth_cm: layer.mean.cm(),
        thinnest_cm: layer.thinnest.depth.cm(),
        deepest_cm: layer.deepest.depth.cm(),
        volume_l: layer.volume.litres(),
        buy_kg: mass.dry.kg(),
        dry_mass_kg: mass.dry.kg(),
        wet_mass_kg: mass.wet.kg(),
        bags_total_kg: bought.as_ref().map(|bought| bought.total),
        surplus_kg: bought.as_ref().map(|bought| bought.surplus),
        cost: bought.as_ref().and_then(|bought| bought.cost),
        dearer_at_most: bought.as_ref().and_then(|bought| bought.dearer_at_most),
        bags: bought.map(|bought| bought.bags).unwrap_or_default(),
        d10_mm: asked.d10_mm().typical,
        d15_mm: asked.d15_mm().typical,
        d50_mm: asked.d50_mm().typical,
        d85_mm: asked.d85_mm().typical,
        verdict: String::new(),
    }
}

fn mass(design: &Design, layer: &Layer, bulk: Density, porosity: Band) -> LayerMass {
    let water = water::density(design.draft().water.temperature);
    LayerMass::new(
        layer.volume,
        bulk,
        Share::from_fraction(porosity.typical),
        water,
    )
}
