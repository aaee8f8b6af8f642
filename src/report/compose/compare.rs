//! Several plans side by side.

use crate::design::Design;
use crate::finding::Status;
use crate::plan::Plan;
use crate::report::document::{Block, Column, Document, Table};
use crate::units::{Mass, Volume, show};

/// A row for each tank.
pub fn compare(tanks: &[(&Design, &Plan)]) -> Document {
    if tanks.is_empty() {
        return Document::default();
    }
    let columns = vec![
        Column::words("tank"),
        Column::words("stands"),
        Column::numbers("water"),
        Column::numbers("weight"),
        Column::numbers("soil"),
        Column::numbers("cap"),
        Column::numbers("index"),
        Column::numbers("cost"),
    ];
    let rows = tanks.iter().map(|(design, plan)| row(design, plan));
    let mut blocks = vec![Block::Table(Table {
        columns,
        rows: rows.collect(),
    })];
    let troubles: Vec<String> = tanks
        .iter()
        .filter_map(|(_, plan)| troubles(plan))
        .collect();
    if !troubles.is_empty() {
        blocks.push(Block::Heading("Not in order".to_owned()));
        blocks.push(Block::Items(troubles));
    }
    Document {
        title: String::new(),
        blocks,
    }
}

fn row(design: &Design, plan: &Plan) -> Vec<String> {
    let units = design.draft().units;
    let cost = plan
        .cost
        .as_ref()
        .map_or_else(|| "-".to_owned(), |cost| format!("{:.2}", cost.total));
    vec![
        shortened(&plan.name),
        plan.status().word().to_owned(),
        units.volume(Volume::from_litres(plan.tank.water_l)),
        units.mass(Mass::from_kg(plan.weight.total_kg)),
        units.bulk_volume(Volume::from_litres(plan.soil.buy_l)),
        units.mass(Mass::from_kg(plan.cap.buy_kg)),
        show::significant(plan.planting.index, 2),
        cost,
    ]
}

/// Names longer than this are cut in the table.
const NAME_LENGTH: usize = 20;

fn shortened(name: &str) -> String {
    if name.chars().count() <= NAME_LENGTH {
        return name.to_owned();
    }
    let cut: String = name.chars().take(NAME_LENGTH - 2).collect();
    format!("{}..", cut.trim_end())
}

/// "Pea gravel: act cap.coarse, watch plants.load".
fn troubles(plan: &Plan) -> Option<String> {
    let codes: Vec<String> = plan
        .findings
        .iter()
        .filter(|finding| finding.status >= Status::Watch)
        .map(|finding| format!("{} {}", finding.status.word(), finding.code.text()))
        .collect();
    (!codes.is_empty()).then(|| format!("{}: {}", plan.name, codes.join(", ")))
}
