//! Amounts that no tank holds, told from those that are only too many.

use super::planted::Areas;
use super::{Amount, Draft, EventKind, Planting, Stock, Violation};
use crate::catalogue::{Plant, PlantGroup};
use crate::geometry::Bed;
use crate::units::{Length, Mass, Volume};

/// Most fresh mass of animals in a litre, g: judgement, about what the densest fish farms
/// hold on pure oxygen (from memory), two hundred times what stocking practice gives a fish.
const MOST_ANIMALS_G_L: f64 = 100.0;
/// Most dry food in a litre a day, mg: judgement, 2 % of the most animals.
const MOST_FEED_MG_L: f64 = 2000.0;

/// A tank as far as it is measured.
pub(super) struct TankMeasures<'a> {
    pub(super) draft: &'a Draft,
    pub(super) bed: &'a Bed,
    pub(super) areas: Areas,
    /// Free water.
    pub(super) water: Volume,
    /// The least of it that is left.
    pub(super) least_water: Volume,
}

/// Every amount that cannot be.
pub(super) fn impossible(tank: &TankMeasures<'_>) -> Vec<Violation> {
    let mut violations = Vec::new();
    violations.extend(raised_bed(tank));
    violations.extend(floaters(tank, "plants", &tank.draft.plants));
    violations.extend(crowd(tank));
    violations.extend(feed(tank));
    for (index, event) in tank.draft.events.iter().enumerate() {
        match &event.kind {
            EventKind::PlantsAdded(plantings) => {
                let list = format!("events[{index}].plants_added");
                violations.extend(floaters(tank, &list, plantings));
            }
            EventKind::PlantsRemoved(plantings) => {
                let list = format!("events[{index}].plants_removed");
                violations.extend(removed(tank.draft, event.day, &list, plantings));
            }
            _ => {}
        }
    }
    violations
}

/// Sand that is added takes the room of water.
fn raised_bed(tank: &TankMeasures<'_>) -> Option<Violation> {
    let mut added = Length::ZERO;
    let mut events: Vec<_> = tank.draft.events.iter().enumerate().collect();
    events.sort_by(|(_, one), (_, other)| one.day.total_cmp(&other.day));
    for (index, event) in events {
        let EventKind::CapAdded(depth) = event.kind else {
            continue;
        };
        added = added + depth;
        let left = tank.water - tank.bed.area() * added;
        if left < tank.least_water {
            let units = tank.draft.units;
            return Some(Violation {
                key: format!("events[{index}].cap_added"),
                other: Some("cap.depth".to_owned()),
                found: format!(
                    "{} of sand added by day {} would fill the {} of water over the bed",
                    units.depth(added),
                    event.day,
                    units.volume(tank.water)
                ),
                rule: format!("at least {} is left", units.volume(tank.least_water)),
                help: "check the unit; sand is added by the millimetre or the quarter inch"
                    .to_owned(),
            });
        }
    }
    None
}

/// Floaters against the densest stand that they grow to.
fn floaters(tank: &TankMeasures<'_>, list: &str, plantings: &[Planting]) -> Option<Violation> {
    let mut stands = 0.0;
    let mut layers = 0.0;
    for (index, planting) in plantings.iter().enumerate() {
        let plant = planting.plant;
        let (PlantGroup::Floater, Some(biomass)) = (plant.group, planting.biomass(tank.areas))
        else {
            continue;
        };
        let share = |of_g_m2: f64| biomass.dry.g() / (of_g_m2 * tank.areas.surface.m2());
        stands += share(plant.max_g_dry_m2.high);
        layers += share(plant.full_cover_g_dry_m2.typical);
        if stands > 1.0 && !matches!(planting.amount, Amount::Cover(_)) {
            let amount = format!("{list}[{index}].amount");
            return Some(too_dense(amount, plant, layers, tank));
        }
    }
    None
}

fn too_dense(key: String, plant: &Plant, layers: f64, tank: &TankMeasures<'_>) -> Violation {
    let closed = super::closed(plant, tank.areas.surface) / plant.dry_per_fresh.typical;
    Violation {
        key,
        other: None,
        found: format!(
            "floaters lie {layers:.0} times over the surface ({:.0} %) with this one",
            layers * 100.0
        ),
        rule: "floaters lie no denser than the densest stand known of them".to_owned(),
        help: format!(
            "check the unit, or give a share: {} of {} cover all of it",
            tank.draft.units.mass(closed),
            plant.label
        ),
    }
}

/// Animals against the water that they share.
fn crowd(tank: &TankMeasures<'_>) -> Option<Violation> {
    let stock = &tank.draft.animals;
    let total: Mass = stock.iter().map(Stock::mass).sum();
    let g_l = total.g() / tank.water.litres();
    let largest = (0..stock.len()).max_by(|&one, &other| {
        let mass = |index: usize| stock.get(index).map_or(0.0, |stock| stock.mass().g());
        mass(one).total_cmp(&mass(other))
    })?;
    let most = stock.get(largest).map(|kind| {
        let others = total.g() - kind.mass().g();
        let room = MOST_ANIMALS_G_L * tank.water.litres() - others;
        (room / kind.animal.mass_g.typical).floor().max(0.0)
    })?;
    (g_l > MOST_ANIMALS_G_L).then(|| Violation {
        key: format!("animals[{largest}].count"),
        other: None,
        found: format!("{g_l:.0} g of animals in each litre of water"),
        rule: format!(
            "no water holds more than {MOST_ANIMALS_G_L} g of them in a litre (judgement)"
        ),
        help: format!(
            "at most {most:.0} could be in there, and far fewer live: lentic explain animals.load"
        ),
    })
}

/// Food against the water that it goes into.
fn feed(tank: &TankMeasures<'_>) -> Option<Violation> {
    let mg_l = tank.draft.feed.mass_per_day.mg() / tank.water.litres();
    (mg_l > MOST_FEED_MG_L).then(|| Violation {
        key: "feed.mass_per_day".to_owned(),
        other: None,
        found: format!("{mg_l:.0} mg of food a day in each litre of water"),
        rule: format!("no water takes more than {MOST_FEED_MG_L} mg of it in a litre (judgement)"),
        help: format!(
            "check the unit: dry food is counted in milligrams, here at most {:.0} g",
            MOST_FEED_MG_L * tank.water.litres() * 1e-3
        ),
    })
}

/// Plants can be taken out that were put in before, be it grown since.
fn removed(draft: &Draft, day: f64, list: &str, plantings: &[Planting]) -> Option<Violation> {
    let added = draft.events.iter().filter_map(|event| match &event.kind {
        EventKind::PlantsAdded(plantings) if event.day <= day => Some(plantings),
        _ => None,
    });
    let there: Vec<&Planting> = draft.plants.iter().chain(added.flatten()).collect();
    let is_there = |planting: &Planting| {
        there
            .iter()
            .any(|other| other.plant.name == planting.plant.name)
    };
    let (index, missing) = plantings
        .iter()
        .enumerate()
        .find(|(_, planting)| !is_there(planting))?;
    Some(Violation {
        key: format!("{list}[{index}].name"),
        other: None,
        found: format!("{} is not in the tank on day {day}", missing.plant.label),
        rule: "plants are taken out that were put in before".to_owned(),
        help: "add it under [[plants]] or plants_added, or check the name and the day".to_owned(),
    })
}
