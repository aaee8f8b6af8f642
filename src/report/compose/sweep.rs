//! What keys that are varied do to a result: a line for one, a grid for two.

use super::compared::Compared;
use crate::report::chart::{Across, Chart, LimitLine, Series};
use crate::report::document::Block;
use crate::report::grid::Grid;
use crate::source::Band;
use crate::study::{Cell, Shown, TankRow};
use crate::units::{MONEY, show, unit_of_result};

/// What is drawn where nobody says what.
const STANDARD: &str = "planting.index";
/// Levels up to which a grid is drawn.
const MOST_LEVELS: usize = 16;

/// The pictures of a sweep; none where it is none, or of several tanks.
pub(super) fn pictures(compared: &Compared<'_>) -> Vec<Block> {
    let is_one_tank = compared
        .rows
        .windows(2)
        .all(|pair| pair[0].base == pair[1].base);
    let shown = compared.columns[..compared.shown].iter();
    let mut numbers = shown.enumerate().filter(|(_, column)| !column.is_word());
    let result = if compared.standard {
        numbers.find(|(_, column)| column.name() == STANDARD)
    } else {
        numbers.next()
    };
    let Some((place, column)) = result.filter(|_| is_one_tank) else {
        return Vec::new();
    };
    let value = |row: &TankRow| {
        row.cells
            .as_ref()
            .ok()?
            .get(place)?
            .as_ref()
            .and_then(Cell::number)
    };
    let name = with_unit(column.name());
    match compared.axes {
        [axis] => line(&compared.rows.iter().collect::<Vec<_>>(), value)
            .map(|series| {
                let title = format!("{name} over {}", in_words(&axis.name));
                over(title, series, &[])
            })
            .into_iter()
            .collect(),
        [across, up] => grid(compared.rows, value)
            .map(|grid| Grid {
                title: name,
                across: (in_words(&across.name), grid.across.1),
                up: (in_words(&up.name), grid.up.1),
                ..grid
            })
            .map(Block::Grid)
            .into_iter()
            .collect(),
        _ => Vec::new(),
    }
}

/// A result over what is varied, with the bounds asked of it.
pub(super) fn over(title: String, line: Vec<(f64, f64)>, bounds: &[f64]) -> Block {
    let line = line.into_iter();
    let limits = bounds.iter().map(|bound| LimitLine {
        name: "asked".to_owned(),
        value: *bound,
    });
    Block::Chart(Chart {
        title,
        across: Across::Varied,
        series: vec![Series {
            name: "result".to_owned(),
            line: line.map(|(at, value)| (at, Band::exact(value))).collect(),
        }],
        limits: limits.collect(),
        ..Chart::default()
    })
}

/// The result at each number of one key, from the least on; none where it is no number.
fn line(rows: &[&TankRow], value: impl Fn(&TankRow) -> Option<f64>) -> Option<Vec<(f64, f64)>> {
    let points = rows.iter().map(|row| match &row.levels.first()?.shown {
        Shown::Number(number) => Some((*number, value(row)?)),
        Shown::Text(_) => None,
    });
    let mut points: Vec<(f64, f64)> = points.collect::<Option<_>>()?;
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
    (points.len() > 1).then_some(points)
}

fn grid(rows: &[TankRow], value: impl Fn(&TankRow) -> Option<f64>) -> Option<Grid> {
    let [across, up] = [0, 1].map(|axis| {
        let mut levels: Vec<&Shown> = Vec::new();
        for row in rows {
            let level = &row.levels[axis].shown;
            if !levels.contains(&level) {
                levels.push(level);
            }
        }
        levels.sort_by(|a, b| match (a, b) {
            (Shown::Number(a), Shown::Number(b)) => a.total_cmp(b),
            _ => std::cmp::Ordering::Equal,
        });
        levels
    });
    let is_grid = |levels: &[&Shown]| (2..=MOST_LEVELS).contains(&levels.len());
    if !is_grid(&across) || !is_grid(&up) {
        return None;
    }
    let at = |up: &Shown, across: &Shown| {
        let mut rows = rows.iter();
        let found =
            rows.find(|row| row.levels[0].shown == *across && row.levels[1].shown == *up)?;
        value(found)
    };
    let cells = up
        .iter()
        .map(|up| across.iter().map(|across| at(up, across)).collect());
    let names = |levels: &[&Shown]| levels.iter().map(|level| shown(level)).collect();
    Some(Grid {
        cells: cells.collect(),
        across: (String::new(), names(&across)),
        up: (String::new(), names(&up)),
        ..Grid::default()
    })
}

/// A level as it is read.
pub(super) fn shown(level: &Shown) -> String {
    match level {
        Shown::Number(number) => show::significant(*number, 6),
        Shown::Text(text) => text.clone(),
    }
}

/// "planting index", "cap depth, mm": a path without its marks, its unit set apart.
pub(super) fn in_words(path: &str) -> String {
    let words = path.replace(['.', '_'], " ");
    let unit = unit_of_result(path);
    let ending = format!("_{}", unit.to_lowercase());
    match path.strip_suffix(ending.as_str()) {
        Some(rest) if !unit.is_empty() => format!("{}, {unit}", rest.replace(['.', '_'], " ")),
        _ => words,
    }
}

/// A result in words with its unit.
pub(super) fn with_unit(path: &str) -> String {
    let (words, unit) = (in_words(path), unit_of_result(path));
    if unit.is_empty() || unit == MONEY || words.ends_with(&format!(", {unit}")) {
        words
    } else {
        format!("{words}, {unit}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_path_is_told_in_words_with_its_unit() {
        assert_eq!(in_words("cap.depth_mm"), "cap depth, mm");
        assert_eq!(in_words("tank.water_l"), "tank water, L");
        assert_eq!(in_words("planting.index"), "planting index");
        assert_eq!(in_words("stands"), "stands");
        assert_eq!(
            with_unit("startup.ammonia_peak_mg_l"),
            "startup ammonia peak mg l, mg/L"
        );
    }
}
