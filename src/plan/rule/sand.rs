//! Sand to be added, as remedies word it.

use crate::design::Design;
use crate::finding::Remedy;
use crate::geometry::FloorPlace;
use crate::plan::purchase::{self, bags_in_words};
use crate::plan::words;
use crate::units::{Density, Length, Volume};

/// Sand that brings the cap to a depth, as depths are advised, wherever it is thinner.
pub(in crate::plan) fn more_sand(design: &Design, depth: Length) -> Remedy {
    let units = design.draft().units;
    let depth = units.up(depth);
    let thinnest = design.bed().cap.thinnest;
    let place = match thinnest.place {
        FloorPlace::Everywhere => "everywhere".to_owned(),
        place => format!("{}, less where it is deeper", words::place(place)),
    };
    let volume = design.bed().cap_short_of(depth);
    let place = format!("{place}, until the cap is {} deep", units.depth(depth));
    sand(design, &place, volume)
}

/// Sand spread evenly over the whole bed.
pub(in crate::plan) fn sand_over_all(design: &Design, depth: Length) -> Remedy {
    let units = design.draft().units;
    let depth = units.up(depth);
    let volume = design.bed().area() * depth;
    let place = format!("over the whole bed, {} deep", units.depth(depth));
    sand(design, &place, volume)
}

fn sand(design: &Design, place: &str, volume: Volume) -> Remedy {
    let draft = design.draft();
    let units = draft.units;
    let bulk = Density::from_kg_m3(draft.cap.dry_bulk_kg_m3().typical);
    let mass = bulk * volume;
    let bags = purchase::by_mass(mass, &draft.cap.bags, bulk)
        .map(|bought| format!(", {}", bags_in_words(&bought.bags)))
        .unwrap_or_default();
    Remedy {
        says: format!(
            "add {} {place}: {}, {}{bags}",
            draft.cap.material.label,
            units.bulk_volume(volume),
            units.mass(mass)
        ),
        quantity: Some(volume.litres()),
        unit: "L",
    }
}
