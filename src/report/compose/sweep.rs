//! What keys that are varied do to a result: a line for one, a grid for two.

use super::compared::Compared;
use crate::report::chart::{Across, Chart, LimitLine, Series};
use crate::report::document::Block;
use crate::report::grid::{Grid, Square};
use crate::source::Band;
use crate::study::{Cell, ResultColumn, Shown, TankRow};
use crate::units::show::counted;
use crate::units::{MONEY, parted, show};

/// What is drawn where nobody says what.
const STANDARD: &str = "planting.index";
/// Levels up to which a grid is drawn.
const MOST_LEVELS: usize = 16;

/// What a page about rows is called: the result over what is varied, or how many tanks.
pub fn title(compared: &Compared<'_>) -> String {
    let names = compared.axes.iter().map(|axis| named(&axis.name));
    let names: Vec<String> = names.collect();
    let tank = compared.rows.first().map_or("", |row| row.name.as_str());
    match result(compared) {
        Some((_, column)) if !names.is_empty() && is_of_one_tank(compared) => {
            let over = names.join(" and ");
            format!("{tank}: {} over {over}", named(column.name()))
        }
        _ => format!(
            "{} side by side",
            counted(compared.rows.len() as f64, "tank")
        ),
    }
}

/// Whether all rows come from one tank.
fn is_of_one_tank(compared: &Compared<'_>) -> bool {
    let mut pairs = compared.rows.windows(2);
    pairs.all(|pair| pair[0].base == pair[1].base)
}

/// The result that is drawn: the first number shown, or a usual one.
fn result<'a>(compared: &Compared<'a>) -> Option<(usize, &'a ResultColumn)> {
    let shown = compared.columns[..compared.shown].iter();
    let mut numbers = shown.enumerate().filter(|(_, column)| !column.is_word());
    if compared.standard {
        numbers.find(|(_, column)| column.name() == STANDARD)
    } else {
        numbers.next()
    }
}

/// The pictures of a sweep; none where it is none, or of several tanks.
pub(super) fn pictures(compared: &Compared<'_>) -> Vec<Block> {
    let Some((place, column)) = result(compared).filter(|_| is_of_one_tank(compared)) else {
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
    let name = in_words(column.name());
    match compared.axes {
        [axis] => line(&compared.rows.iter().collect::<Vec<_>>(), value)
            .map(|series| {
                let title = format!("{name} over {}", in_words(&axis.name));
                over(title, series, &[])
            })
            .into_iter()
            .collect(),
        [across, up] => grid(compared, value)
            .map(|grid| Grid {
                title: name,
                across: (in_words(&across.name), grid.across.1),
                up: (in_words(&up.name), grid.up.1),
                asked: compared.asked.clone(),
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

fn grid(compared: &Compared<'_>, value: impl Fn(&TankRow) -> Option<f64>) -> Option<Grid> {
    let all = || compared.rows.iter().chain(compared.missed);
    let [across, up] = [0, 1].map(|axis| {
        let mut levels: Vec<&Shown> = Vec::new();
        for row in all() {
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
        let is_here = |row: &&TankRow| row.levels[0].shown == *across && row.levels[1].shown == *up;
        let met = compared.rows.iter().find(is_here);
        let row = met.or_else(|| compared.missed.iter().find(is_here))?;
        Some(Square {
            value: value(row)?,
            is_met: met.is_some(),
        })
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
    let (words, unit) = (named(path), parted(path).1);
    if unit.is_empty() || unit == MONEY {
        words
    } else {
        format!("{words}, {unit}")
    }
}

/// The same without its unit.
pub(super) fn named(path: &str) -> String {
    parted(path).0.replace(['.', '_'], " ")
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
            in_words("startup.ammonia_peak_mg_l"),
            "startup ammonia peak, mg/L"
        );
        assert_eq!(
            named("startup.ammonia_peak_mg_l.typical"),
            "startup ammonia peak"
        );
    }
}
