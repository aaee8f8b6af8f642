//! What to buy, to be ticked off in the shop.

use crate::catalogue::PlantGroup;
use crate::design::{Amount, Design, Planting};
use crate::plan::{self, BagCount, Plan, bags_in_words, needed_in_words};
use crate::report::document::{Block, Checklist, Table, TableColumn};
use crate::units::show::significant;
use crate::units::{Mass, UnitSystem, Volume};

/// The shopping list with its heading.
pub(super) fn list(design: &Design, plan: &Plan) -> [Block; 2] {
    [
        Block::Heading("Buy".to_owned()),
        Block::Checklist(checklist(design, plan, "what")),
    ]
}

/// The shopping list under a head of its first column.
pub(super) fn checklist(design: &Design, plan: &Plan, what: &str) -> Checklist {
    let mut rows = vec![soil(design, plan), cap(design, plan)];
    let plants = design.draft().plants.iter();
    rows.extend(plants.map(|planting| plant(design, planting)));
    let needed = &plan.planting.needed;
    rows.extend(needed.portions.iter().map(|portion| {
        let (plant, count) = needed_in_words(design.draft().units, portion);
        row(plant, count, "to add".to_owned(), None)
    }));
    let columns = vec![
        TableColumn::words(what),
        TableColumn::words("how much"),
        TableColumn::words("sold as"),
        TableColumn::numbers("price"),
    ];
    let total = plan.cost.as_ref().map_or_else(Vec::new, |cost| {
        let total = format!("{:.2}", cost.total);
        vec![
            "total priced".to_owned(),
            String::new(),
            String::new(),
            total,
        ]
    });
    Checklist {
        table: Table { columns, rows },
        total,
    }
}

fn row(what: &str, how_much: String, sold_as: String, price: Option<f64>) -> Vec<String> {
    let price = price.map_or_else(String::new, |price| format!("{price:.2}"));
    vec![what.to_owned(), how_much, sold_as, price]
}

/// The bags, and how much dearer than the cheapest they may be where that is not searched.
fn sold_as(bags: &[BagCount], dearer_at_most: Option<f64>) -> String {
    let bags = bags_in_words(bags);
    match dearer_at_most {
        Some(dearer) => format!("{bags} (at most {dearer:.2} above the cheapest)"),
        None => bags,
    }
}

fn soil(design: &Design, plan: &Plan) -> Vec<String> {
    let units = design.draft().units;
    let litres = |value: f64| units.bulk_volume(Volume::from_litres(value));
    let soil = &plan.soil;
    let how_much = format!(
        "{} ({} to {})",
        litres(soil.buy_l),
        litres(soil.buy_low_l),
        litres(soil.buy_high_l)
    );
    let label = &design.draft().soil.material.label;
    row(
        label,
        how_much,
        sold_as(&soil.bags, soil.dearer_at_most),
        soil.cost,
    )
}

fn cap(design: &Design, plan: &Plan) -> Vec<String> {
    let units = design.draft().units;
    let cap = &plan.cap;
    let how_much = format!(
        "{} dry ({})",
        units.mass(Mass::from_kg(cap.buy_kg)),
        units.bulk_volume(Volume::from_litres(cap.volume_l))
    );
    let label = &design.draft().cap.material.label;
    row(
        label,
        how_much,
        sold_as(&cap.bags, cap.dearer_at_most),
        cap.cost,
    )
}

fn plant(design: &Design, planting: &Planting) -> Vec<String> {
    let units = design.draft().units;
    let fresh = planting
        .biomass(design.areas())
        .map_or_else(String::new, |biomass| units.plant_mass(biomass.fresh));
    let as_asked = asked(units, planting);
    let grams = match planting.amount {
        Amount::Fresh(_) => String::new(),
        Amount::Cover(_) | Amount::Portions(..) => format!("{fresh} fresh"),
    };
    row(
        &planting.plant.label,
        as_asked,
        grams,
        plan::price(planting),
    )
}

/// "35 % of the surface", "12 g fresh", "15 stems".
fn asked(units: UnitSystem, planting: &Planting) -> String {
    match planting.amount {
        Amount::Cover(share) => {
            let of = match planting.plant.group {
                PlantGroup::Floater => "surface",
                PlantGroup::Fast | PlantGroup::Slow => "floor",
            };
            format!("{} % of the {of}", significant(share.percent(), 3))
        }
        Amount::Fresh(mass) => format!("{} fresh", units.plant_mass(mass)),
        Amount::Portions(count, portion) => {
            let one = (count - 1.0).abs() < f64::EPSILON;
            let unit = if one {
                portion.singular()
            } else {
                portion.plural()
            };
            format!("{} {unit}", significant(count, 3))
        }
    }
}
