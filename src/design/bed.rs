//! Soil, cap, bags and stones as asked for.

use crate::catalogue;
use crate::geometry::LayerDepth;
use crate::source::Band;
use crate::substrate::grading::{Grading, GradingPoint};
use crate::units::{Content, Density, Length, Mass, Share, Sorption, Volume};

/// The nutrient layer.
#[derive(Debug, Clone, PartialEq)]
pub struct SoilLayer {
    /// Which soil.
    pub material: &'static catalogue::Soil,
    /// How deep, and where.
    pub depth: LayerDepth,
    /// Rounds of soaking and draining before use.
    pub soaked: u32,
    /// What it is sold in.
    pub bags: Vec<PricedBag>,
    /// The keeper's own figures, which replace the catalogue's.
    pub properties: SoilProperties,
}

/// A keeper's own figures for a soil.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct SoilProperties {
    /// Dry mass per volume in place.
    pub dry_bulk_density: Option<Density>,
    /// Pore share of the volume.
    pub porosity: Option<Share>,
    /// All nitrogen, in dry mass.
    pub total_nitrogen: Option<Content>,
    /// Ammonium and nitrate, in dry mass.
    pub mineral_nitrogen: Option<Content>,
    /// Organic matter, in dry mass.
    pub organic_matter: Option<Share>,
    /// Ammonium sorption.
    pub ammonium_kd: Option<Sorption>,
}

impl SoilLayer {
    /// Dry mass per volume in place, kg/m3.
    pub fn dry_bulk_kg_m3(&self) -> Band {
        own_or(
            self.properties.dry_bulk_density.map(Density::kg_m3),
            self.material.dry_bulk_kg_m3,
        )
    }

    /// Pore share of the volume.
    pub fn porosity(&self) -> Band {
        own_or(
            self.properties.porosity.map(Share::fraction),
            self.material.porosity,
        )
    }

    /// All nitrogen, g/kg of dry soil.
    pub fn total_n_g_kg(&self) -> Band {
        own_or(
            self.properties.total_nitrogen.map(Content::g_kg),
            self.material.total_n_g_kg,
        )
    }

    /// Ammonium and nitrate nitrogen before soaking, g/kg of dry soil.
    pub fn mineral_n_g_kg(&self) -> Band {
        own_or(
            self.properties.mineral_nitrogen.map(Content::g_kg),
            self.material.mineral_n_g_kg,
        )
    }

    /// Organic matter, % of dry soil.
    pub fn organic_matter_pct(&self) -> Band {
        own_or(
            self.properties.organic_matter.map(Share::percent),
            self.material.organic_matter_pct,
        )
    }

    /// Ammonium sorption Kd, L/kg.
    pub fn ammonium_kd_l_kg(&self) -> Band {
        own_or(
            self.properties.ammonium_kd.map(Sorption::l_kg),
            self.material.ammonium_kd_l_kg,
        )
    }
}

/// The layer that seals the soil.
#[derive(Debug, Clone, PartialEq)]
pub struct CapLayer {
    /// Which sand or grit.
    pub material: &'static catalogue::Cap,
    /// How deep, and where.
    pub depth: LayerDepth,
    /// What it is sold in.
    pub bags: Vec<PricedBag>,
    /// The keeper's own sieve sizes, which replace the catalogue's.
    pub grading: CapGrading,
    /// The keeper's own dry mass per volume.
    pub dry_bulk_density: Option<Density>,
    /// The keeper's own pore share.
    pub porosity: Option<Share>,
}

/// A keeper's own sieve sizes for a cap.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct CapGrading {
    /// 10 % by mass is finer.
    pub d10: Option<Length>,
    /// 15 % by mass is finer.
    pub d15: Option<Length>,
    /// 50 % by mass is finer.
    pub d50: Option<Length>,
    /// 85 % by mass is finer.
    pub d85: Option<Length>,
}

impl CapGrading {
    /// The size 15 % is finer than, on the line between d10 and d50.
    fn d15_between(&self) -> Option<Length> {
        let points = [(self.d10?, 10.0), (self.d50?, 50.0)]
            .map(|(size, finer_percent)| GradingPoint::new(size.mm(), finer_percent));
        let grading = Grading::new(points.to_vec())?;
        grading.size_at(Share::from_percent(15.0))
    }
}

impl CapLayer {
    /// Dry mass per volume in place, kg/m3.
    pub fn dry_bulk_kg_m3(&self) -> Band {
        own_or(
            self.dry_bulk_density.map(Density::kg_m3),
            self.material.dry_bulk_kg_m3,
        )
    }

    /// Pore share of the volume.
    pub fn porosity(&self) -> Band {
        own_or(self.porosity.map(Share::fraction), self.material.porosity)
    }

    /// The size 10 % is finer than, mm.
    pub fn d10_mm(&self) -> Band {
        own_or(self.grading.d10.map(Length::mm), self.material.d10_mm)
    }

    /// The size 15 % is finer than, mm: the keeper's own, or between the keeper's d10
    /// and d50, or the catalogue's.
    pub fn d15_mm(&self) -> Band {
        let own = self.grading.d15.or_else(|| self.grading.d15_between());
        own_or(own.map(Length::mm), self.material.d15_mm)
    }

    /// The size 50 % is finer than, mm.
    pub fn d50_mm(&self) -> Band {
        own_or(self.grading.d50.map(Length::mm), self.material.d50_mm)
    }

    /// The size 85 % is finer than, mm.
    pub fn d85_mm(&self) -> Band {
        own_or(self.grading.d85.map(Length::mm), self.material.d85_mm)
    }
}

/// The keeper's own figure as a band without width, or the catalogue's band.
fn own_or(own: Option<f64>, catalogue: Band) -> Band {
    own.map_or(catalogue, Band::exact)
}

/// One size a material is sold in.
#[derive(Debug, Clone, PartialEq)]
pub struct PricedBag {
    /// The size as the keeper writes it: "8 dry qt".
    pub label: String,
    /// What is in it.
    pub size: BagSize,
    /// What it costs, in the keeper's own currency.
    pub price: Option<f64>,
}

/// A bag's content, by volume or by mass.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum BagSize {
    /// Litres, dry quarts, cubic feet.
    Volume(Volume),
    /// Kilograms, pounds.
    Mass(Mass),
}

/// A stone or piece of wood.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedStone {
    /// Which rock.
    pub material: &'static catalogue::Stone,
    /// How much.
    pub mass: Mass,
}

impl PlacedStone {
    /// Of the rock.
    pub fn density(&self) -> Density {
        Density::from_kg_m3(self.material.density_kg_m3.typical)
    }
}
