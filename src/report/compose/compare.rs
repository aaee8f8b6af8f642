//! Rows of a comparison side by side.

use super::compared::Compared;
use super::sweep;
use crate::catalogue::FINDINGS;
use crate::finding::Status;
use crate::plan::of_100;
use crate::report::document::{Block, Document, Sortable, Table, TableColumn as Head};
use crate::report::scatter::{Dot, Scatter};
use crate::study::{Axis, Cell, KeyInfluence, ResultColumn, Shown, TankRow};
use crate::units::{Length, MONEY, Mass, UnitSystem, Volume, show, unit_of_result};

/// What is shown where nobody says what, with its head.
const STANDARD: [(&str, &str); 7] = [
    ("status", "stands"),
    (ODDS, "odds"),
    ("startup.changes_by_reading.expected", "changes"),
    ("night.dawn_oxygen_mg_l", "dawn O2"),
    ("startup.ready_day_advised", "animals"),
    ("weight.total_kg", "weight"),
    ("cost.total", "cost"),
];
/// The odds of a start, told out of a hundred.
const ODDS: &str = "startup.odds_with_changes";

/// The standard results, and after them how each finding stands.
pub fn standard_columns() -> (Vec<ResultColumn>, Vec<ResultColumn>) {
    let standard = STANDARD.iter();
    let shown = standard.filter_map(|(name, _)| ResultColumn::of(name).ok());
    let findings = ResultColumn::every().filter(|column| column.name().starts_with(FINDINGS));
    (shown.collect(), findings.collect())
}

/// A table of the rows, with the tanks or what is varied as pictures; for standard results,
/// what is not in order below it.
pub fn compare(compared: &Compared<'_>) -> Document {
    let on_page = |block| Block::OnPage(Box::new(block));
    let mut blocks = Vec::new();
    let swept = sweep::pictures(compared);
    let is_swept = !swept.is_empty();
    blocks.extend(swept.into_iter().map(on_page));
    if !compared.rows.is_empty() {
        let table = table(compared);
        if table.rows.len() <= MOST_SORTED && table.columns.len() <= MOST_SORTED_BY {
            let worded = Table {
                columns: table.columns.iter().map(worded).collect(),
                rows: whole_names(compared, &table),
            };
            let ranks = ranks(compared, &worded);
            let table = Block::Table(table);
            blocks.push(Block::InText(Box::new(table)));
            let sortable = Sortable {
                table: worded,
                ranks,
            };
            blocks.push(on_page(Block::Sortable(sortable)));
        } else {
            blocks.push(Block::Table(table));
        }
    }
    if compared.sheets.len() > 1 {
        blocks.push(on_page(Block::Heading(AT_ONE_SCALE.to_owned())));
        blocks.push(on_page(Block::Fleet(compared.sheets.clone())));
    }
    if !is_swept {
        let scatter = scatter(compared).map(Block::Scatter);
        blocks.extend(scatter.map(on_page));
    }
    if !compared.remark.is_empty() {
        blocks.push(Block::Text(compared.remark.clone()));
    }
    if compared.standard && compared.axes.is_empty() {
        let troubles: Vec<String> = compared
            .rows
            .iter()
            .filter_map(|row| troubles(row, compared.columns))
            .collect();
        if !troubles.is_empty() {
            blocks.push(Block::Heading("Not in order".to_owned()));
            blocks.push(Block::Items(troubles));
        }
    }
    if let Some((result, influences)) = &compared.influences {
        blocks.push(Block::Heading(format!("What moves {result}")));
        blocks.push(Block::Table(influence_table(influences)));
    }
    Document {
        title: String::new(),
        blocks,
        ..Document::default()
    }
}

/// The heading of the drawings.
const AT_ONE_SCALE: &str = "The tanks at one scale";
/// Rows and columns up to which a page offers to order rows.
const MOST_SORTED: usize = 200;
const MOST_SORTED_BY: usize = 12;

/// A head in words: no path.
fn worded(head: &Head) -> Head {
    Head {
        head: sweep::in_words(&head.head),
        ..head.clone()
    }
}

/// The rows with the whole names of tanks, for which a page has room.
fn whole_names(compared: &Compared<'_>, table: &Table) -> Vec<Vec<String>> {
    let named = names_tanks(compared);
    let rows = table.rows.iter().zip(compared.rows);
    rows.map(|(cells, row)| {
        let mut cells = cells.clone();
        if let Some(cell) = cells.first_mut().filter(|_| named) {
            cell.clone_from(&row.name);
        }
        cells
    })
    .collect()
}

/// The place of each row in the order of each column: numbers by size, words by letters,
/// statuses by weight.
fn ranks(compared: &Compared<'_>, table: &Table) -> Vec<Vec<usize>> {
    let before = table.columns.len() - compared.shown;
    let number = |row: usize, column: usize| {
        let result = column.checked_sub(before);
        let value = result.and_then(|place| {
            let cells = compared.rows[row].cells.as_deref().unwrap_or_default();
            cells.get(place)?.as_ref()?.number()
        });
        value.or_else(|| table.rows[row].get(column)?.parse().ok())
    };
    let status = |row: usize, column: usize| {
        let words = [Status::Ok, Status::Note, Status::Watch, Status::Act];
        let cell = table.rows[row].get(column)?;
        words.iter().position(|status| status.word() == cell)
    };
    let mut ranks = vec![vec![0; table.columns.len()]; table.rows.len()];
    let columns = 0..table.columns.len();
    columns.for_each(|column| {
        let mut order: Vec<usize> = (0..table.rows.len()).collect();
        order.sort_by(|&a, &b| {
            let by_number = number(a, column)
                .zip(number(b, column))
                .map(|(a, b)| a.total_cmp(&b));
            let by_status = || status(b, column).cmp(&status(a, column));
            by_number.unwrap_or_else(|| {
                by_status().then(table.rows[a][column].cmp(&table.rows[b][column]))
            })
        });
        for (rank, row) in order.into_iter().enumerate() {
            ranks[row][column] = rank;
        }
    });
    ranks
}

/// The first two numbers shown against each other, where every row has both.
fn scatter(compared: &Compared<'_>) -> Option<Scatter> {
    let numbers = |row: &TankRow| -> Vec<Option<f64>> {
        let cells = row.cells.as_deref().unwrap_or_default().iter();
        let shown = cells.take(compared.shown);
        shown
            .map(|cell| cell.as_ref().and_then(Cell::number))
            .collect()
    };
    let rows: Vec<Vec<Option<f64>>> = compared.rows.iter().map(numbers).collect();
    let known = |place: &usize| {
        rows.iter()
            .all(|row| matches!(row.get(*place), Some(Some(_))))
    };
    let mut places =
        (0..compared.shown).filter(|place| !compared.columns[*place].is_word() && known(place));
    let (across, up) = (places.next()?, places.next()?);
    if compared.rows.len() < 2 {
        return None;
    }
    let dots = compared
        .rows
        .iter()
        .zip(&rows)
        .filter_map(|(row, numbers)| {
            Some(Dot {
                name: dot_name(row),
                across: (*numbers.get(across)?)?,
                up: (*numbers.get(up)?)?,
                best: compared.chosen,
            })
        });
    Some(Scatter {
        across: sweep::in_words(compared.columns[across].name()),
        up: sweep::in_words(compared.columns[up].name()),
        dots: dots.collect(),
    })
}

/// The tank, or what was varied in it.
fn dot_name(row: &TankRow) -> String {
    if row.levels.is_empty() {
        return shortened(&row.name);
    }
    let levels = row.levels.iter().map(|level| match &level.shown {
        Shown::Number(number) => show::significant(*number, 6),
        Shown::Text(text) => text.clone(),
    });
    levels.collect::<Vec<_>>().join(", ")
}

fn table(compared: &Compared<'_>) -> Table {
    let names_tanks = names_tanks(compared);
    let name = names_tanks.then(|| Head::words("tank"));
    let axes = compared.axes.iter().map(|axis| {
        if is_number(compared, axis) {
            Head::numbers(axis.name.as_str())
        } else {
            Head::words(axis.name.as_str())
        }
    });
    let results = compared.columns[..compared.shown].iter().map(|column| {
        let head = head(column, compared.standard);
        if column.is_status() {
            Head::status(head)
        } else if column.is_word() {
            Head::words(head)
        } else {
            Head::numbers(head)
        }
    });
    let rows = compared.rows.iter().map(|row| {
        let name = names_tanks.then(|| shortened(&row.name));
        let levels = row.levels.iter().map(|level| match &level.shown {
            Shown::Number(number) => show::significant(*number, 6),
            Shown::Text(text) => text.clone(),
        });
        let cells = row.cells.as_deref().unwrap_or_default();
        let results = compared.columns[..compared.shown]
            .iter()
            .zip(cells)
            .map(|(column, cell)| shown(compared.units, column.name(), cell.as_ref()));
        name.into_iter().chain(levels).chain(results).collect()
    });
    Table {
        rows: rows.collect(),
        columns: name.into_iter().chain(axes).chain(results).collect(),
    }
}

/// Whether rows are told apart by the names of tanks; those of one tank by what is varied.
fn names_tanks(compared: &Compared<'_>) -> bool {
    let first = compared.rows.first().map(|row| &row.name);
    let mut rows = compared.rows.iter();
    compared.axes.is_empty() || rows.any(|row| Some(&row.name) != first)
}

fn is_number(compared: &Compared<'_>, axis: &Axis) -> bool {
    let place = compared
        .axes
        .iter()
        .position(|other| other.name == axis.name);
    let first = place.and_then(|place| compared.rows.first()?.levels.get(place));
    first.is_some_and(|level| matches!(level.shown, Shown::Number(_)))
}

fn head(column: &ResultColumn, standard: bool) -> String {
    let short = STANDARD.iter().find(|(name, _)| *name == column.name());
    match short {
        Some((_, head)) if standard => (*head).to_owned(),
        _ => column.name().to_owned(),
    }
}

/// A value by the unit that its name ends in.
fn shown(units: UnitSystem, name: &str, cell: Option<&Cell>) -> String {
    let number = match cell {
        None => return "-".to_owned(),
        Some(Cell::Word(word)) => return word.clone(),
        Some(Cell::Flag(flag)) => return flag.to_string(),
        Some(Cell::Whole(whole)) => return whole.to_string(),
        Some(Cell::Number(number)) => *number,
    };
    match unit_of_result(name) {
        _ if name == ODDS => format!("{:.0} of 100", of_100(number)),
        _ if name == "startup.ready_day_advised" => format!("day {number:.0}"),
        "mg/L" => format!("{} mg/L", show::significant(number, 2)),
        MONEY => format!("{number:.2}"),
        "L" if name.starts_with("soil.") => units.bulk_volume(Volume::from_litres(number)),
        "L" => units.volume(Volume::from_litres(number)),
        "kg" => units.mass(Mass::from_kg(number)),
        "cm" => units.dimension(Length::from_cm(number)),
        _ if name == "planting.index" => show::significant(number, 2),
        _ => show::significant(number, 3),
    }
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
fn troubles(row: &TankRow, columns: &[ResultColumn]) -> Option<String> {
    let cells = row.cells.as_deref().unwrap_or_default();
    let codes: Vec<String> = columns
        .iter()
        .zip(cells)
        .filter_map(|(column, cell)| {
            let code = column.name().strip_prefix(FINDINGS)?;
            let Some(Cell::Word(status)) = cell else {
                return None;
            };
            let is_trouble = [Status::Watch, Status::Act]
                .iter()
                .any(|trouble| trouble.word() == status);
            is_trouble.then(|| format!("{status} {code}"))
        })
        .collect();
    (!codes.is_empty()).then(|| format!("{}: {}", row.name, codes.join(", ")))
}

fn influence_table(influences: &[KeyInfluence]) -> Table {
    let number = |value: Option<f64>, percent: bool| match value {
        None => "-".to_owned(),
        Some(value) if percent => format!("{} %", show::fixed(value * 100.0, 0)),
        Some(value) => show::fixed(value, 2),
    };
    Table {
        columns: vec![
            Head::words("varied"),
            Head::numbers("share of its variance"),
            Head::numbers("rank correlation"),
        ],
        rows: influences
            .iter()
            .map(|influence| {
                vec![
                    influence.key.clone(),
                    number(influence.variance_share, true),
                    number(influence.rank_correlation, false),
                ]
            })
            .collect(),
    }
}
