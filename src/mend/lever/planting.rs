//! Floaters, fast growers, and where floaters are thinned.

use super::{Lever, Now, Rung, text};
use crate::catalogue::{Plant, PlantGroup};
use crate::design::{Amount, Design, Planting, closed};
use crate::plan::{MOST_COVER, MOST_STEMS_G_M2, is_added, smallest_portion, suggested};
use crate::spec::Edit;
use crate::units::Share;

/// Covers that are tried, as a share of the surface.
const COVERS: [f64; 6] = [0.1, 0.2, 0.3, 0.35, 0.4, MOST_COVER];
/// Dry masses of fast growers that are tried, as a share of the most.
const STEMS: [f64; 7] = [0.1, 0.2, 0.3, 0.45, 0.6, 0.8, 1.0];
/// Fresh stems that ask as much of a keeper as soaking twice more, g: some six of them, by
/// what they cost and by the evening that it takes to plant them (judgement).
const G_AN_EFFORT: f64 = 12.0;
/// Cover that counts as none.
const BARE: f64 = 0.005;

/// More floaters, or fewer.
pub(super) fn floaters(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let now = base.planted().cover.fraction();
    let covers = COVERS
        .into_iter()
        .filter(|cover| (cover - now).abs() > BARE);
    covers
        .filter_map(|cover| {
            let edits = if cover < now {
                scaled(base, PlantGroup::Floater, |_| true, cover / now)
            } else {
                more_floaters(base, cover - now)
            };
            let effort = 2.0 + 2.0 * (cover - now).abs();
            let rung = Rung::new(Lever::Floaters, effort, edits).less(cover < now);
            (!rung.edits.is_empty()).then_some(rung)
        })
        .collect()
}

/// More of the floaters that may be added, or some where none are.
fn more_floaters(base: &Design, cover: f64) -> Vec<Edit> {
    let own = own(base, PlantGroup::Floater);
    let own_cover: f64 = own.iter().map(|planting| cover_of(base, planting)).sum();
    if own_cover > BARE {
        let factor = 1.0 + cover / own_cover;
        return scaled(
            base,
            PlantGroup::Floater,
            |plant| is_added(plant, PlantGroup::Floater),
            factor,
        );
    }
    let amount = Amount::Cover(Share::from_fraction(cover));
    vec![added(suggested(PlantGroup::Floater), amount)]
}

fn cover_of(base: &Design, planting: &Planting) -> f64 {
    let dry = planting.biomass(base.areas());
    let surface = closed(planting.plant, base.surface());
    dry.map_or(0.0, |biomass| biomass.dry / surface)
}

/// More fast growers.
pub(super) fn stems(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let floor_m2 = base.areas().floor.m2();
    let now = base.planted().fast.dry.g() / floor_m2 / MOST_STEMS_G_M2;
    let shares = STEMS.into_iter().filter(|share| *share > now + BARE);
    shares
        .filter_map(|share| {
            let dry_g = (share - now) * MOST_STEMS_G_M2 * floor_m2;
            let fresh_g = dry_g / suggested(PlantGroup::Fast).dry_per_fresh.typical;
            let effort = 2.0 + fresh_g / G_AN_EFFORT;
            let edits = more_stems(base, dry_g)?;
            Some(Rung::new(Lever::Stems, effort, edits))
        })
        .collect()
}

fn more_stems(base: &Design, dry_g: f64) -> Option<Vec<Edit>> {
    let own = own(base, PlantGroup::Fast);
    let own_g: f64 = own
        .iter()
        .filter_map(|planting| planting.biomass(base.areas()))
        .map(|biomass| biomass.dry.g())
        .sum();
    if own_g > 0.0 {
        let factor = 1.0 + dry_g / own_g;
        return Some(scaled(
            base,
            PlantGroup::Fast,
            |plant| is_added(plant, PlantGroup::Fast),
            factor,
        ));
    }
    let plant = suggested(PlantGroup::Fast);
    let (portion, fresh_g) = smallest_portion(plant)?;
    let count = (dry_g / plant.dry_per_fresh.typical / fresh_g).ceil();
    Some(vec![added(
        plant,
        Amount::Portions(count.max(1.0), portion),
    )])
}

/// Floaters thinned to less cover.
pub(super) fn thinnings(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let now = base.draft().harvest.floaters_above.fraction();
    let less = COVERS.into_iter().rev().filter(|cover| *cover < now);
    less.map(|cover| {
        let effort = 2.0 + (now - cover);
        let to = format!("{:.0} %", cover * 100.0);
        Rung::new(
            Lever::Thinning,
            effort,
            [text("harvest.floaters_above", to)],
        )
    })
    .collect()
}

/// The plantings of a group of which more may be added.
fn own(base: &Design, group: PlantGroup) -> Vec<&Planting> {
    let plants = base.draft().plants.iter();
    plants.filter(|own| is_added(own.plant, group)).collect()
}

/// The amounts of some plants of a group, times a factor.
fn scaled(
    base: &Design,
    group: PlantGroup,
    which: impl Fn(&Plant) -> bool,
    factor: f64,
) -> Vec<Edit> {
    let plants = base.draft().plants.iter().enumerate();
    plants
        .filter(|(_, own)| own.plant.group == group && which(own.plant))
        .map(|(place, own)| {
            let amount = times(own.amount, factor);
            text(format!("plants[{place}].amount"), written(amount))
        })
        .collect()
}

fn times(amount: Amount, factor: f64) -> Amount {
    match amount {
        Amount::Cover(share) => Amount::Cover(share * factor),
        Amount::Fresh(mass) => Amount::Fresh(mass * factor),
        Amount::Portions(count, portion) => Amount::Portions(count * factor, portion),
    }
}

fn added(plant: &Plant, amount: Amount) -> Edit {
    Edit {
        key: "plants[]".to_owned(),
        value: Some(format!(
            "{{ name = \"{}\", amount = \"{}\" }}",
            plant.name,
            written(amount)
        )),
    }
}

/// An amount as a spec has it, in whole portions.
fn written(amount: Amount) -> String {
    match amount {
        Amount::Cover(share) => format!("{:.0} %", share.percent().clamp(1.0, 100.0)),
        Amount::Fresh(mass) => format!("{:.0} g", mass.g().max(1.0)),
        Amount::Portions(count, portion) => {
            let count = count.round().max(1.0);
            let word = if count > 1.0 {
                portion.plural()
            } else {
                portion.singular()
            };
            format!("{count:.0} {word}")
        }
    }
}
