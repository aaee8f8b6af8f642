//! A line with its band over time, drawn in characters.

use crate::source::Band;
use crate::units::show::significant;

/// A value with its band over days or hours.
#[derive(Debug, Clone, PartialEq)]
pub struct Chart {
    /// What is drawn, with its unit: "ammonia, mg N/L".
    pub title: String,
    /// What runs along the foot: "day".
    pub along: &'static str,
    /// Place along the foot and value, in order of place.
    pub line: Vec<(f64, Band)>,
    /// A level drawn across, where there is one.
    pub limit: Option<f64>,
    /// Place and value of single readings.
    pub points: Vec<(f64, f64)>,
}

/// The characters of a chart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Glyphs {
    typical: char,
    band: char,
    limit: char,
    point: char,
    axis: char,
}

impl Glyphs {
    /// For terminals that show Unicode.
    pub const UNICODE: Self = Self {
        typical: '•',
        band: '░',
        limit: '┄',
        point: '×',
        axis: '│',
    };
    /// For all others.
    pub const ASCII: Self = Self {
        typical: '*',
        band: ':',
        limit: '-',
        point: 'x',
        axis: '|',
    };
}

/// Rows that the values are drawn in.
const ROWS: usize = 8;
/// Columns left of the axis.
const MARGIN: usize = 9;
/// The most columns the days are drawn in.
const MOST_COLUMNS: usize = 62;

/// Draws a chart in at most `width` columns; nothing where there is no line.
pub fn lines(chart: &Chart, width: usize, glyphs: Glyphs) -> Vec<String> {
    let (Some(first), Some(last)) = (chart.line.first(), chart.line.last()) else {
        return Vec::new();
    };
    let columns = width.saturating_sub(MARGIN + 1).clamp(1, MOST_COLUMNS);
    let grid = Grid {
        columns,
        from: first.0,
        days: (last.0 - first.0).max(f64::MIN_POSITIVE),
        top: top(chart),
    };
    let cells = grid.cells(chart, glyphs);
    let mut lines = vec![chart.title.clone()];
    lines.extend(cells.iter().enumerate().map(|(row, cells)| {
        let label = match row {
            0 => significant(grid.top, 2),
            _ if row == ROWS - 1 => "0".to_owned(),
            _ => String::new(),
        };
        let row: String = cells.iter().collect();
        format!("{label:>MARGIN$}{}{}", glyphs.axis, row.trim_end())
    }));
    lines.push(grid.foot(chart.along));
    lines
}

/// The value at the upper edge: the largest drawn, but no less than the limit.
fn top(chart: &Chart) -> f64 {
    let values = chart.line.iter().map(|(_, band)| band.high);
    let points = chart.points.iter().map(|(_, value)| *value);
    let most = values.chain(points).chain(chart.limit).fold(0.0, f64::max);
    if most > 0.0 { most } else { 1.0 }
}

struct Grid {
    columns: usize,
    from: f64,
    days: f64,
    top: f64,
}

impl Grid {
    fn cells(&self, chart: &Chart, glyphs: Glyphs) -> Vec<Vec<char>> {
        let mut cells = vec![vec![' '; self.columns]; ROWS];
        if let Some(limit) = chart.limit {
            cells[self.row(limit)].fill(glyphs.limit);
        }
        for (column, band) in self.bands(chart).enumerate() {
            let (high, low) = (self.row(band.high), self.row(band.low));
            for row in &mut cells[high..=low] {
                row[column] = glyphs.band;
            }
            cells[self.row(band.typical)][column] = glyphs.typical;
        }
        for &(day, value) in &chart.points {
            if let Some(column) = self.column(day) {
                cells[self.row(value)][column] = glyphs.point;
            }
        }
        cells
    }

    /// The row of a value, the uppermost being 0.
    fn row(&self, value: f64) -> usize {
        let share = (value / self.top).clamp(0.0, 1.0);
        let from_below = (share * (ROWS - 1) as f64).round() as usize;
        ROWS - 1 - from_below
    }

    fn column(&self, day: f64) -> Option<usize> {
        let share = (day - self.from) / self.days;
        (0.0..=1.0)
            .contains(&share)
            .then(|| (share * (self.columns - 1) as f64).round() as usize)
    }

    /// The value nearest to each column.
    fn bands<'a>(&'a self, chart: &'a Chart) -> impl Iterator<Item = Band> + 'a {
        let last = (self.columns - 1).max(1) as f64;
        (0..self.columns).filter_map(move |column| {
            let day = self.from + column as f64 / last * self.days;
            let distance = |entry: &&(f64, Band)| (entry.0 - day).abs();
            let nearest = chart
                .line
                .iter()
                .min_by(|a, b| distance(a).total_cmp(&distance(b)));
            nearest.map(|(_, band)| *band)
        })
    }

    /// "day 0      45      90" under the axis.
    fn foot(&self, along: &str) -> String {
        let marks = [0.0, 0.5, 1.0].map(|share| significant(self.from + share * self.days, 3));
        let [start, middle, end] = marks;
        let half = self.columns / 2;
        let left = format!("{start:<half$}{middle}");
        let room = self.columns.saturating_sub(left.len());
        format!("{along:>MARGIN$} {left}{end:>room$}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_rise_and_fall_is_drawn_with_its_band_limit_and_reading() {
        let line = (0..=20).map(|day| {
            let height = 1.0 - (f64::from(day) - 10.0).abs() / 10.0;
            (
                f64::from(day),
                Band::new(0.5 * height, height, 1.5 * height),
            )
        });
        let chart = Chart {
            title: "ammonia, mg N/L".to_owned(),
            along: "day",
            line: line.collect(),
            limit: Some(0.5),
            points: vec![(15.0, 1.2)],
        };
        let drawn = lines(&chart, 40, Glyphs::ASCII).join("\n");
        insta::assert_snapshot!(drawn, @"
        ammonia, mg N/L
              1.5|              ::
                 |           ::::::::   x
                 |          ::::**::::
                 |       ::::***::***::::
                 |      ::***::::::::***::
                 |----::**::::::::::::::**::----
                 | ::***::::          ::::***::
                0|***:                      :***
              day 0              10           20
        ");
    }

    #[test]
    fn nothing_is_drawn_without_a_line_and_zeros_stay_at_the_foot() {
        let mut chart = Chart {
            title: String::new(),
            along: "day",
            line: Vec::new(),
            limit: None,
            points: Vec::new(),
        };
        assert!(lines(&chart, 80, Glyphs::UNICODE).is_empty());
        chart.line = vec![(0.0, Band::exact(0.0)), (90.0, Band::exact(0.0))];
        let drawn = lines(&chart, 80, Glyphs::UNICODE);
        assert!(drawn[ROWS].contains('•') && !drawn[1].contains('•'));
    }
}
