//! The soil under a cap as the filter rules read it.

use crate::catalogue::SoilKind;
use crate::design::Design;
use crate::substrate::filter::{BaseSoil, FilterSoil};
use crate::units::{Length, Share};

/// The filter rule's reading of the design's soil.
pub(in crate::plan) fn filter_soil(design: &Design) -> FilterSoil {
    let soil = design.draft().soil.material;
    match (soil.kind, soil.fines_pct, soil.d15_mm, soil.d85_mm) {
        (SoilKind::Mineral, Some(fines), Some(d15), Some(d85)) => FilterSoil::Mineral(BaseSoil {
            fines: Share::from_percent(fines.typical),
            d85: Length::from_mm(d85.typical),
            d15: Length::from_mm(d15.typical),
        }),
        _ => FilterSoil::Organic,
    }
}
