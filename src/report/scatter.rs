//! Two results of several tanks against each other, and their drawing in characters.

use crate::units::show::significant;

/// Two results against each other.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Scatter {
    /// What runs to the right, with its unit.
    pub across: String,
    /// What runs upwards, with its unit.
    pub up: String,
    /// The tanks.
    pub dots: Vec<Dot>,
}

/// One tank.
#[derive(Debug, Clone, PartialEq)]
pub struct Dot {
    /// Its name.
    pub name: String,
    /// Its result to the right.
    pub across: f64,
    /// Its result upwards.
    pub up: f64,
    /// Whether no other tank is better in both.
    pub best: bool,
}

/// Rows that the dots are drawn in.
const ROWS: usize = 12;
/// Columns left of the axis.
const MARGIN: usize = 9;
/// The most columns that the dots are drawn in.
const MOST_COLUMNS: usize = 62;

impl Scatter {
    /// The least and the greatest of a result, drawn apart where they are one.
    pub fn span(&self, of: impl Fn(&Dot) -> f64) -> [f64; 2] {
        let least = self.dots.iter().map(&of).fold(f64::INFINITY, f64::min);
        let greatest = self.dots.iter().map(&of).fold(f64::NEG_INFINITY, f64::max);
        if greatest > least {
            [least, greatest]
        } else {
            [least - 0.5, least + 0.5]
        }
    }
}

/// Draws the dots in at most `width` columns: best tanks as `@`, others as `o`.
pub fn lines(scatter: &Scatter, width: usize) -> Vec<String> {
    if scatter.dots.is_empty() {
        return Vec::new();
    }
    let columns = width.saturating_sub(MARGIN + 1).clamp(2, MOST_COLUMNS);
    let across = scatter.span(|dot| dot.across);
    let up = scatter.span(|dot| dot.up);
    let place = |value: f64, [least, greatest]: [f64; 2], cells: usize| {
        ((value - least) / (greatest - least) * (cells - 1) as f64).round() as usize
    };
    let mut cells = vec![vec![' '; columns]; ROWS];
    for dot in scatter
        .dots
        .iter()
        .filter(|dot| !dot.best)
        .chain(scatter.dots.iter().filter(|dot| dot.best))
    {
        let row = ROWS - 1 - place(dot.up, up, ROWS);
        cells[row][place(dot.across, across, columns)] = if dot.best { '@' } else { 'o' };
    }
    let mut lines = vec![format!(
        "{} (up) against {}; @ best",
        scatter.up, scatter.across
    )];
    lines.extend(cells.iter().enumerate().map(|(row, cells)| {
        let label = match row {
            0 => significant(up[1], 3),
            _ if row == ROWS - 1 => significant(up[0], 3),
            _ => String::new(),
        };
        let row: String = cells.iter().collect();
        format!("{label:>MARGIN$}|{}", row.trim_end())
    }));
    let [left, right] = across.map(|value| significant(value, 3));
    let room = columns.saturating_sub(left.len());
    lines.push(format!("{:MARGIN$} {left}{right:>room$}", ""));
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_best_are_marked_and_drawn_over_others() {
        let dot = |across, up, best| Dot {
            name: String::new(),
            across,
            up,
            best,
        };
        let scatter = Scatter {
            across: "cost".to_owned(),
            up: "index".to_owned(),
            dots: vec![
                dot(10.0, 1.0, false),
                dot(10.0, 1.0, true),
                dot(20.0, 3.0, true),
            ],
        };
        let drawn = lines(&scatter, 40);
        assert!(drawn[1].ends_with('@') && drawn[1].starts_with("        3|"));
        assert_eq!(drawn[ROWS], "        1|@");
        assert_eq!(lines(&Scatter::default(), 40), Vec::<String>::new());
    }
}
