//! A plan as a document.

use super::{finding, night, startup};
use crate::design::Design;
use crate::plan::{Plan, bags_in_words, portions_in_words};
use crate::report::document::{Block, Document, Fact};
use crate::units::{Length, Mass, Pressure, UnitSystem, Volume, show};

/// A plan, verdict first.
pub fn plan(design: &Design, plan: &Plan) -> Document {
    let mut blocks = vec![Block::Verdict(plan.status(), plan.verdict())];
    blocks.extend(section("Tank", tank(design, plan)));
    blocks.extend(section("Buy", buy(design, plan)));
    blocks.extend(section("Planting", planting(plan)));
    blocks.extend(section("First weeks", startup::facts(&plan.startup)));
    blocks.extend(section("Night", night::night_facts(&plan.night)));
    blocks.extend(night::conditions(
        design.draft().units,
        &plan.flow,
        &plan.light,
        &plan.animals,
        &plan.heat,
    ));
    blocks.extend(section("Weight", weight(design, plan)));
    blocks.extend(finding::findings(&plan.findings, design.draft().units));
    blocks.extend(startup::calendar(&plan.startup.calendar));
    blocks.extend(finding::cautions(&plan.cautions));
    blocks.extend(finding::assumed(&plan.assumed));
    Document {
        title: plan.name.clone(),
        blocks,
    }
}

fn section(title: &str, facts: Vec<Fact>) -> [Block; 2] {
    [Block::Heading(title.to_owned()), Block::Facts(facts)]
}

fn tank(design: &Design, plan: &Plan) -> Vec<Fact> {
    let units = design.draft().units;
    let vessel = design.vessel();
    let litres = |value| units.volume(Volume::from_litres(value));
    let mut facts = vec![
        Fact::new(
            "inside",
            litres(plan.tank.brimful_l),
            format!(
                "{}, {} x {} x {} to the rim",
                plan.tank.shape.replace('_', " "),
                units.dimension(vessel.length()),
                units.dimension(vessel.width()),
                units.dimension(vessel.height())
            ),
        ),
        Fact::new(
            "water",
            litres(plan.tank.water_l),
            format!(
                "{} deep over the bed",
                units.dimension(Length::from_cm(plan.tank.water_depth_cm))
            ),
        ),
        Fact::new(
            "soil",
            depths(units, &plan.soil.depths()),
            &design.draft().soil.material.label,
        ),
        Fact::new(
            "cap",
            depths(units, &plan.cap.depths()),
            &design.draft().cap.material.label,
        ),
    ];
    if plan.tank.hardscape_l > 0.0 {
        facts.push(Fact::new(
            "stones",
            litres(plan.tank.hardscape_l),
            "displaced",
        ));
    }
    facts
}

/// "40 mm", or "20-40 mm" for a slope.
fn depths(units: UnitSystem, [thinnest, deepest]: &[Length; 2]) -> String {
    let (low, high) = (units.depth(*thinnest), units.depth(*deepest));
    if low == high {
        low
    } else {
        format!("{low} to {high}")
    }
}

fn buy(design: &Design, plan: &Plan) -> Vec<Fact> {
    let units = design.draft().units;
    let (soil, cap) = (&plan.soil, &plan.cap);
    let range = |low: f64, high: f64| {
        format!(
            "{} to {} with settling",
            units.bulk_volume(Volume::from_litres(low)),
            units.bulk_volume(Volume::from_litres(high))
        )
    };
    let mut facts = vec![
        Fact::new(
            "soil",
            units.bulk_volume(Volume::from_litres(soil.buy_l)),
            range(soil.buy_low_l, soil.buy_high_l),
        ),
        bags(&bags_in_words(&soil.bags), soil.cost),
        Fact::new(
            "cap",
            units.mass(Mass::from_kg(cap.buy_kg)),
            format!(
                "dry, {}",
                units.bulk_volume(Volume::from_litres(cap.volume_l))
            ),
        ),
        bags(&bags_in_words(&cap.bags), cap.cost),
    ];
    facts.retain(|fact| !fact.value.is_empty());
    if let Some(cost) = &plan.cost {
        facts.push(Fact::new(
            "total",
            format!("{:.2}", cost.total),
            "of what has a price",
        ));
    }
    facts
}

/// The bags of the line above, empty where no size is given.
fn bags(words: &str, cost: Option<f64>) -> Fact {
    let price = cost.map_or_else(String::new, |cost| format!("{cost:.2}"));
    Fact::new("", words, price)
}

fn planting(plan: &Plan) -> Vec<Fact> {
    let planting = &plan.planting;
    let grams = |value: f64| format!("{} g", show::significant(value, 2));
    let mut facts = vec![
        Fact::new(
            "floaters",
            grams(planting.floating_g),
            format!("fresh, {:.0} % of the surface", planting.floating_cover_pct),
        ),
        Fact::new("fast growers", grams(planting.fast_g), "fresh"),
        Fact::new("slow growers", grams(planting.slow_g), "fresh"),
        Fact::new(
            "index",
            show::significant(planting.index, 2),
            format!(
                "plants over flush in 21 days, 2 or more is enough (1.5 from 20 % floaters); ammonia and nitrite stay under their limits in {:.0} % of the starts",
                planting.probability_under_limits * 100.0
            ),
        ),
    ];
    if !planting.needed.portions.is_empty() {
        let cost = planting
            .needed
            .cost
            .map_or_else(String::new, |cost| format!(", for {cost:.2}"));
        facts.push(Fact::new(
            "add",
            portions_in_words(&planting.needed.portions),
            format!(
                "brings the index to {}, under the limits in {:.0} % of the starts{cost}",
                show::significant(planting.needed.index, 2),
                planting.needed.probability_under_limits * 100.0
            ),
        ));
    }
    facts
}

fn weight(design: &Design, plan: &Plan) -> Vec<Fact> {
    let units = design.draft().units;
    let mass = |kg: f64| units.mass(Mass::from_kg(kg));
    let weight = &plan.weight;
    let parts: Vec<String> = [
        ("shell", weight.shell_kg),
        ("soil", weight.soil_kg),
        ("cap", weight.cap_kg),
        ("stones", weight.hardscape_kg),
        ("water", weight.water_kg),
        ("stand", weight.stand_kg),
    ]
    .into_iter()
    .filter(|(_, kg)| *kg > 0.0)
    .map(|(name, kg)| format!("{name} {}", mass(kg)))
    .collect();
    vec![
        Fact::new("total", mass(weight.total_kg), parts.join(", ")),
        Fact::new(
            "footprint",
            units.floor_pressure(Pressure::from_kpa(weight.footprint_pressure_kpa)),
            "the total over the tank's underside",
        ),
    ]
}
