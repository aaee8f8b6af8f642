//! A plan as a document.

use super::chart::followed;
use super::{budget, finding, night, preparation, reason, shopping, startup};
use crate::design::Design;
use crate::plan::{self, Plan, of_100, portions_in_words};
use crate::report::document::{Block, Document, Fact, Sheet};
use crate::units::{Length, Mass, Pressure, UnitSystem, Volume, show};

/// The sections of a plan: what each is called where it is asked for, and its heading.
pub const SECTIONS: [(&str, &str); 18] = [
    ("tank", "Tank"),
    ("buy", "Buy"),
    ("preparation", "Before filling"),
    ("planting", "Planting"),
    ("weeks", "First weeks"),
    ("nitrogen", budget::HEADING),
    ("night", "Night"),
    ("flow", "Flow, light, animals, heat"),
    ("light", "Flow, light, animals, heat"),
    ("animals", "Flow, light, animals, heat"),
    ("heat", "Flow, light, animals, heat"),
    ("weight", "Weight"),
    ("findings", "Findings"),
    ("calendar", "Calendar"),
    ("stocking", "Animals in steps"),
    ("habits", "Each week after that"),
    ("cautions", "Cautions"),
    ("assumed", "Assumed"),
];

/// The sections of a plan that are asked for by name, under its verdict.
pub fn plan_sections(design: &Design, found: &Plan, names: &[String]) -> Document {
    let asked = SECTIONS
        .iter()
        .filter(|(name, _)| names.iter().any(|one| one == name));
    let headings: Vec<&str> = asked.map(|(_, heading)| *heading).collect();
    plan(design, found).only(&headings)
}

/// A plan, verdict first.
pub fn plan(design: &Design, plan: &Plan) -> Document {
    let units = design.draft().units;
    let on_page = |block| Block::OnPage(Box::new(block));
    let mut blocks = vec![Block::Verdict(plan.status(), plan.verdict())];
    blocks.extend(finding::findings(&plan.findings, units));
    blocks.push(Block::Heading("Tank".to_owned()));
    blocks.extend(drawing(design));
    blocks.push(Block::Facts(tank(design, plan)));
    blocks.extend(shopping::list(design, plan));
    blocks.extend(startup::calendar(&plan.startup.calendar));
    blocks.extend(preparation::blocks(design, plan));
    blocks.extend(preparation::stocking(plan));
    blocks.extend(section("First weeks", startup::facts(&plan.startup)));
    blocks.extend(followed(design, &plan.courses()).into_iter().map(on_page));
    blocks.extend(startup::timeline(&plan.startup).map(on_page));
    blocks.extend(budget::blocks(&plan.budget));
    blocks.extend(section("Night", night::night_facts(units, &plan.night)));
    blocks.extend(night::charts(design, &plan.hours).map(on_page));
    blocks.extend(section("Planting", planting(units, plan)));
    blocks.extend(section("Weight", weight(design, plan)));
    blocks.extend(night::conditions(
        design,
        &plan.flow,
        &plan.light,
        &plan.animals,
        &plan.heat,
    ));
    blocks.extend(finding::cautions(&plan.cautions));
    blocks.extend(finding::assumed(&plan.assumed, design.draft().units));
    Document {
        title: plan.name.clone(),
        reasons: reason::of_plan(design, plan, &blocks),
        blocks,
    }
}

/// How the tank's drawing is read.
const DRAWING_KEY: &str = "To scale, by the bar in each view. The bed is cut at the near wall; dashed: its surface at the far one. Floaters lie on the share of the surface they cover; plants stand as densely as planted, each form in its own shape: whorls for stems that live under water, paired leaves for others, ribbons for rosettes with runners, blades for slow ones. Stones have their volume, animals their adult length.";

/// A tank to be drawn.
pub fn sheet(design: &Design) -> Sheet {
    Sheet {
        drawing: plan::drawing(design),
        units: design.draft().units,
        beside: Vec::new(),
    }
}

/// The tank to scale.
pub(super) fn drawing(design: &Design) -> [Block; 2] {
    [
        Block::Drawing(Box::new(sheet(design))),
        Block::OnPage(Box::new(Block::Text(DRAWING_KEY.to_owned()))),
    ]
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
        )
        .by("tank.volume"),
        Fact::new(
            "water",
            litres(plan.tank.water_l),
            format!(
                "{} deep over the bed",
                units.dimension(Length::from_cm(plan.tank.water_depth_cm))
            ),
        )
        .by("tank.volume"),
        Fact::new(
            "soil",
            units.depths(plan.soil.depths()),
            &design.draft().soil.material.label,
        )
        .by("soil.deep"),
        Fact::new(
            "cap",
            units.depths(plan.cap.depths()),
            &design.draft().cap.material.label,
        )
        .by("cap.thin"),
    ];
    if plan.tank.hardscape_l > 0.0 {
        facts.push(
            Fact::new("stones", litres(plan.tank.hardscape_l), "displaced").by("tank.volume"),
        );
    }
    facts
}

fn planting(units: UnitSystem, plan: &Plan) -> Vec<Fact> {
    let planting = &plan.planting;
    let grams = |value: f64| units.plant_mass(Mass::from_g(value));
    let mut facts = vec![
        Fact::new(
            "floaters",
            grams(planting.floating_g),
            format!("fresh, {:.0} % of the surface", planting.floating_cover_pct),
        )
        .by("plants.cover"),
        Fact::new("fast growers", grams(planting.fast_g), "fresh").by("plants.mass"),
        Fact::new("slow growers", grams(planting.slow_g), "fresh").by("plants.mass"),
        Fact::new(
            "index",
            show::significant(planting.index, 2),
            format!(
                "plants over flush in 21 days, 2 or more is enough; {:.0} of 100 starts hold as written",
                of_100(planting.probability_under_limits)
            ),
        )
        .by("plants.load"),
    ];
    if !planting.needed.portions.is_empty() {
        let cost = planting
            .needed
            .cost
            .map_or_else(String::new, |cost| format!(", for {cost:.2}"));
        facts.push(
            Fact::new(
                "add",
                portions_in_words(units, &planting.needed.portions),
                format!(
                    "brings the index to {}; {:.0} of 100 starts hold then{cost}",
                    show::significant(planting.needed.index, 2),
                    of_100(planting.needed.probability_under_limits)
                ),
            )
            .by("plants.load"),
        );
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
        Fact::new("total", mass(weight.total_kg), parts.join(", ")).by("weight.floor"),
        Fact::new(
            "footprint",
            units.floor_pressure(Pressure::from_kpa(weight.footprint_pressure_kpa)),
            "the total over the tank's underside",
        )
        .by("weight.floor"),
    ]
}
