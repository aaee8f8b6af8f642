//! What is got ready before a tank is filled, the whole shopping list, animals in steps.

use crate::design::Design;
use crate::plan::{Plan, ShoppingItem, StockingStep};
use crate::report::document::{Block, Fact, Table, TableColumn};
use crate::units::show::{counted, fixed, significant};
use crate::units::{Length, Mass, UnitSystem, Volume};

/// Water and buckets, then what to buy beside soil, sand and plants.
pub(super) fn blocks(design: &Design, plan: &Plan) -> [Block; 3] {
    [
        Block::Heading("Before filling".to_owned()),
        Block::Facts(facts(design, plan)),
        Block::Table(shopping(design.draft().units, &plan.shopping)),
    ]
}

fn facts(design: &Design, plan: &Plan) -> Vec<Fact> {
    let units = design.draft().units;
    let ready = &plan.preparation;
    let litres = |value: f64| units.volume(Volume::from_litres(value));
    let fact = |label: &str, value: String, note: String| {
        Fact::new(label, value, note).by("plan.preparation")
    };
    let mut facts = vec![fact(
        "soil with reserve",
        litres(ready.soil_with_reserve_l),
        "with what sieving takes away".to_owned(),
    )];
    if ready.soak_l > 0.0 {
        facts.push(fact(
            "soaking",
            litres(ready.soak_l),
            format!(
                "{} a round, in {} of 10 L",
                litres(ready.soak_round_l),
                counted(ready.soak_buckets, "bucket")
            ),
        ));
    }
    facts.extend([
        fact(
            "rinsing the sand",
            litres(ready.rinse_l),
            "five times its own volume".to_owned(),
        ),
        fact("wetting the soil", litres(ready.wetting_l), String::new()),
        fact(
            "first fill to plant in",
            litres(ready.planting_fill_l),
            format!(
                "over a saucer, 1 to 2 L/min; from {} L/min sand moves",
                significant(ready.pour_most_l_min, 1)
            ),
        ),
        fact(
            "sand to keep",
            units.mass(Mass::from_kg(ready.sand_kept_kg)),
            "for a patch of 10 x 10 cm".to_owned(),
        ),
    ]);
    facts
}

/// A quantity of the list in the units shown.
fn quantity(units: UnitSystem, item: &ShoppingItem) -> String {
    let number = item.quantity;
    match item.unit.as_str() {
        "L" => units.volume(Volume::from_litres(number)),
        "L of tap water" => format!("{} of tap water", units.volume(Volume::from_litres(number))),
        "kg" => units.mass(Mass::from_kg(number)),
        "cm" => units.dimension(Length::from_cm(number)),
        unit => format!("{} {unit}", significant(number, 2)),
    }
}

fn shopping(units: UnitSystem, items: &[ShoppingItem]) -> Table {
    let rows = items
        .iter()
        .map(|item| vec![item.what.clone(), quantity(units, item), item.why.clone()]);
    Table {
        columns: vec![
            TableColumn::words("what"),
            TableColumn::words("how much"),
            TableColumn::words("what for"),
        ],
        rows: rows.collect(),
    }
}

/// The steps in which animals move in, and the habits of the weeks after.
pub(super) fn stocking(plan: &Plan) -> Vec<Block> {
    let mut blocks = vec![Block::Heading("Animals in steps".to_owned())];
    if plan.stocking.is_empty() {
        blocks.push(Block::Text("No animals are planned.".to_owned()));
    } else {
        blocks.push(Block::Table(steps(&plan.stocking)));
        blocks.push(Block::Text(
            "Each step after both tests are clean; one that is not puts off all later days by 7. Newcomers stay four weeks by themselves first.".to_owned(),
        ));
    }
    blocks.push(Block::Heading("Each week after that".to_owned()));
    blocks.push(Block::Items(plan.habits.clone()));
    blocks
}

fn steps(steps: &[StockingStep]) -> Table {
    let rows = steps.iter().map(|step| {
        let tests = step.tests.iter().map(|test| fixed(test.day, 0));
        let day = fixed(step.day, 0);
        let when = match &step.date {
            Some(date) => format!("{day} ({date})"),
            None => day,
        };
        vec![
            when,
            format!("{} {}", step.count, step.name.replace('_', " ")),
            tests.collect::<Vec<_>>().join(", "),
        ]
    });
    Table {
        columns: vec![
            TableColumn::words("day"),
            TableColumn::words("move in"),
            TableColumn::words("clean tests on days"),
        ],
        rows: rows.collect(),
    }
}
