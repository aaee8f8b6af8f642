//! The catalogue's tables as documents.

use super::dictionary::{self, ResultCommand, ResultRow};
use super::document::{Align, Block, Document, Fact, Table, TableColumn};
use crate::catalogue::{self, CatalogueRow, Plant, Portion};
use crate::explanation;
use crate::source::{self, Band, Work};
use crate::units::{UnitSystem, show};

/// The soils.
pub fn soils() -> Document {
    let rows = catalogue::soils().iter().map(|soil| {
        let mut row = named(soil);
        row.extend([
            band(soil.dry_bulk_kg_m3),
            band(soil.total_n_g_kg),
            band(soil.mineral_n_g_kg),
        ]);
        row
    });
    let heads = ["dry kg/m3", "total N g/kg", "mineral N g/kg"];
    document::<catalogue::Soil>("Soils", &heads, rows.collect())
}

/// The caps.
pub fn caps() -> Document {
    let rows = catalogue::caps().iter().map(|cap| {
        let mut row = named(cap);
        row.extend([
            typical(cap.d10_mm),
            typical(cap.d15_mm),
            typical(cap.d50_mm),
            typical(cap.d85_mm),
            typical(cap.dry_bulk_kg_m3),
        ]);
        row
    });
    let heads = ["d10 mm", "d15 mm", "d50 mm", "d85 mm", "dry kg/m3"];
    document::<catalogue::Cap>("Caps", &heads, rows.collect())
}

/// The stones.
pub fn stones() -> Document {
    let rows = catalogue::stones().iter().map(|stone| {
        let mut row = named(stone);
        row.extend([band(stone.density_kg_m3), yes(stone.raises_hardness)]);
        row
    });
    document::<catalogue::Stone>("Stones", &["kg/m3", "raises hardness"], rows.collect())
}

/// The plants.
pub fn plants() -> Document {
    let rows = catalogue::plants().iter().map(|plant| {
        let mut row = named(plant);
        row.extend([
            plant.group.word().to_owned(),
            plant.label.clone(),
            portions(plant),
            yes(!plant.listed.is_empty()),
        ]);
        row
    });
    let heads = ["group", "trade name", "portions, fresh g", "listed"];
    let mut listed = document::<Plant>("Plants", &heads, rows.collect());
    listed.blocks.push(Block::Text(format!(
        "Listed: on a list of restricted plants as of {}; countries and states add their own. Never release a plant. Compared: {}.",
        catalogue::LISTS_AS_OF,
        compared().join("; ")
    )));
    listed
}

/// The lists of restricted plants, with what of each was read.
fn compared() -> Vec<String> {
    let lists = catalogue::restricted_lists().iter();
    lists
        .map(|list| {
            let how = match &list.read {
                Some(read) => format!("as far as read: {read}"),
                None if list.is_whole() => "whole".to_owned(),
                None => "whole, what it takes over as far as read".to_owned(),
            };
            format!("{} ({}), {how}", list.label, list.dated)
        })
        .collect()
}

/// The animals.
pub fn animals() -> Document {
    let rows = catalogue::animals().iter().map(|animal| {
        let mut row = named(animal);
        row.extend([
            typical(animal.mass_g),
            typical(animal.digs_mm),
            animal.first_day.to_string(),
        ]);
        row
    });
    let heads = ["g each", "digs mm", "first day"];
    document::<catalogue::Animal>("Animals", &heads, rows.collect())
}

/// The devices.
pub fn devices() -> Document {
    let rows = catalogue::devices().iter().map(|device| {
        let mut row = named(device);
        row.push(device.note.clone());
        row
    });
    document::<catalogue::Device>("Devices", &["what it does"], rows.collect())
}

/// The nominal tank sizes with what they hold inside.
pub fn sizes() -> Document {
    let rows = catalogue::sizes().iter().map(|size| {
        let mut row = named(size);
        let inside = size.inside_volume();
        row.extend([
            size.outside.text.clone(),
            size.wall.text.clone(),
            UnitSystem::Metric.volume(inside),
            UnitSystem::Us.volume(inside),
        ]);
        row
    });
    let heads = ["over the walls", "wall", "holds", ""];
    let mut sizes = document::<catalogue::TankSize>("Tank sizes", &heads, rows.collect());
    sizes.blocks.push(Block::Text(
        "To the rim, inside, before bed and stones. Makers differ: measure the inside.".to_owned(),
    ));
    sizes
}

/// The signs.
pub fn signs() -> Document {
    let rows = catalogue::signs()
        .iter()
        .map(|sign| vec![sign.name.clone(), sign.note.clone()]);
    document::<catalogue::Sign>("Signs", &["what is seen"], rows.collect())
}

/// The sources.
pub fn sources() -> Document {
    let items = source::works().iter().map(work_line);
    Document {
        title: "Sources".to_owned(),
        blocks: vec![Block::Items(items.collect())],
        ..Document::default()
    }
}

/// `shah_2014: Shah (2014). Title. Journal (how much of it was read)`.
pub(super) fn work_line(work: &Work) -> String {
    format!("{}: {work} ({})", work.key, work.seen.words())
}

/// The rules and formulas.
pub fn rules() -> Document {
    let facts = explanation::topics()
        .iter()
        .map(|topic| Fact::new(&topic.code, &topic.asks, ""));
    Document {
        title: "Rules".to_owned(),
        blocks: vec![Block::Facts(facts.collect())],
        ..Document::default()
    }
}

/// The dictionary of results.
pub fn results() -> Document {
    let items = dictionary::results().iter().map(|row| {
        let topic = row.topic();
        let rests = topic.map_or_else(String::new, |topic| format!(" [{topic}]"));
        format!("{}{rests}", result_line(row))
    });
    Document {
        title: "Results".to_owned(),
        blocks: vec![
            Block::Items(items.collect()),
            Block::Text(
                "Named by their path in plan --format json; what another command alone gives is marked by it. In brackets the rule or formula behind it. A band has .low, .typical and .high.".to_owned(),
            ),
        ],
        ..Document::default()
    }
}

/// `weight.total_kg, kg: what it all weighs`, or `hours[].ph, in night: pH at the hour`.
pub(super) fn result_line(row: &ResultRow) -> String {
    let unit = match row.unit() {
        "" => String::new(),
        unit => format!(", {unit}"),
    };
    let command = match row.command {
        ResultCommand::Plan => String::new(),
        other => format!(", in {}", other.word()),
    };
    format!("{}{unit}{command}: {}", row.name(), row.says)
}

/// A table of rows that start with the row's name.
fn document<R: CatalogueRow>(title: &str, heads: &[&str], rows: Vec<Vec<String>>) -> Document {
    let mut columns = vec![TableColumn::words("name")];
    columns.extend(heads.iter().enumerate().map(|(index, head)| TableColumn {
        head: (*head).to_owned(),
        align: alignment(&rows, index + 1),
    }));
    let sources = R::all()
        .iter()
        .flat_map(R::sources)
        .collect::<std::collections::BTreeSet<_>>();
    let keys: Vec<&str> = sources.into_iter().map(|source| source.key()).collect();
    let mut blocks = vec![Block::Table(Table { columns, rows })];
    if !keys.is_empty() {
        blocks.push(Block::Text(format!("Sources: {}.", keys.join(", "))));
    }
    blocks.push(Block::Text(
        "--format json gives every column, trade name, source and basis.".to_owned(),
    ));
    Document {
        title: title.to_owned(),
        blocks,
        ..Document::default()
    }
}

/// Right where every cell starts with a digit.
fn alignment(rows: &[Vec<String>], column: usize) -> Align {
    let numeric = rows
        .iter()
        .filter_map(|row| row.get(column))
        .all(|cell| cell.starts_with(|c: char| c.is_ascii_digit()));
    if numeric { Align::Right } else { Align::Left }
}

fn named(row: &impl CatalogueRow) -> Vec<String> {
    vec![row.name().to_owned()]
}

fn typical(band: Band) -> String {
    show::significant(band.typical, 2)
}

/// "9 (5-14)", or the typical value where the band has no width.
fn band(band: Band) -> String {
    let [low, typical, high] =
        [band.low, band.typical, band.high].map(|value| show::significant(value, 2));
    if low == high {
        typical
    } else {
        format!("{typical} ({low}-{high})")
    }
}

fn yes(value: bool) -> String {
    if value { "yes" } else { "-" }.to_owned()
}

/// "stem 2, bunch 13".
fn portions(plant: &Plant) -> String {
    let portions: Vec<String> = plant
        .fresh_g
        .iter()
        .map(|(portion, grams)| format!("{} {}", Portion::singular(*portion), typical(*grams)))
        .collect();
    portions.join(", ")
}
