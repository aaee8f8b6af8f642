//! Lines over days or hours with their bands, limits and readings, and their drawing in characters.

use jiff::Span;
use jiff::civil::Date;

use crate::source::Band;
use crate::units::show::significant;

/// Values over time.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Chart {
    /// What is drawn, with its unit: "ammonia, mg N/L".
    pub title: String,
    /// What time is counted in.
    pub across: Across,
    /// The lines; where there is one, its name is in the title.
    pub series: Vec<Series>,
    /// Levels that values are held against.
    pub limits: Vec<LimitLine>,
    /// Time and value of single readings.
    pub points: Vec<(f64, f64)>,
    /// Day and height of the peak that texts speak of.
    pub peak: Option<(f64, f64)>,
    /// Moments at which something is done.
    pub marks: Vec<Mark>,
    /// The date of day 0, where it is known.
    pub start: Option<Date>,
    /// From when to when the lamp is off.
    pub dark: Vec<[f64; 2]>,
    /// The moment that is now.
    pub now: Option<f64>,
}

/// What time is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Across {
    /// Days since flooding.
    #[default]
    Days,
    /// Hours of a day.
    Hours,
    /// No time: what is varied, which the title names.
    Varied,
}

impl Across {
    /// The word on the axis.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Days => "day",
            Self::Hours => "hour",
            Self::Varied => "at",
        }
    }
}

/// One line with its band.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Series {
    /// What it follows.
    pub name: String,
    /// Time and value, in order of time.
    pub line: Vec<(f64, Band)>,
}

impl Series {
    /// Whether it has a band to be seen beside its line.
    pub fn has_width(&self) -> bool {
        self.line.iter().any(|(_, band)| band.high > band.low)
    }
}

/// A level that values are held against.
#[derive(Debug, Clone, PartialEq)]
pub struct LimitLine {
    /// What it is.
    pub name: String,
    /// Where it lies.
    pub value: f64,
}

/// A moment at which something is done.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// When.
    pub at: f64,
    /// What.
    pub name: String,
}

impl Chart {
    /// The first and the last moment of its lines; none where there is no line.
    pub fn span(&self) -> Option<[f64; 2]> {
        let times = self.series.iter().flat_map(|series| &series.line);
        let times = times.map(|(time, _)| *time);
        let first = times.clone().reduce(f64::min)?;
        Some([first, times.reduce(f64::max)?])
    }

    /// The value at the upper edge: the largest drawn, but no less than the highest limit.
    pub fn top(&self) -> f64 {
        let lines = self.series.iter().flat_map(|series| &series.line);
        let highs = lines.map(|(_, band)| band.high);
        let points = self.points.iter().chain(&self.peak);
        let points = points.map(|(_, value)| *value);
        let limits = self.limits.iter().map(|level| level.value);
        let most = highs.chain(points).chain(limits).fold(0.0, f64::max);
        if most > 0.0 { most } else { 1.0 }
    }

    /// Whether nothing comes near any of its limits.
    pub fn is_flat(&self) -> bool {
        let limits = self.limits.iter().map(|level| level.value);
        let Some(least) = limits.reduce(f64::min) else {
            return false;
        };
        let lines = self.series.iter().flat_map(|series| &series.line);
        let highs = lines.map(|(_, band)| band.high);
        let points = self.points.iter().map(|(_, value)| *value);
        highs.chain(points).fold(0.0, f64::max) < least * FLAT_SHARE
    }

    /// "5 Apr", where the date of day 0 is known.
    pub fn date(&self, day: f64) -> Option<String> {
        let days = Span::new().try_days(day as i64).ok()?;
        let date = self.start?.checked_add(days).ok()?;
        Some(date.strftime("%-d %b").to_string())
    }

    /// The moments that lie within the lines.
    pub fn marks_within(&self) -> impl Iterator<Item = &Mark> {
        let span = self.span();
        let within =
            move |mark: &&Mark| span.is_some_and(|[first, last]| (first..=last).contains(&mark.at));
        self.marks.iter().filter(within)
    }
}

/// A course that stays under this share of its limits is flat.
const FLAT_SHARE: f64 = 0.15;

/// The characters of a chart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Glyphs {
    lines: [char; 3],
    band: char,
    limit: char,
    point: char,
    peak: char,
    axis: char,
}

impl Glyphs {
    /// For terminals that show Unicode.
    pub const UNICODE: Self = Self {
        lines: ['•', '+', 'o'],
        band: '░',
        limit: '┄',
        point: '×',
        peak: '◇',
        axis: '│',
    };
    /// For all others.
    pub const ASCII: Self = Self {
        lines: ['*', '+', 'o'],
        band: ':',
        limit: '-',
        point: 'x',
        peak: '^',
        axis: '|',
    };

    /// The character of a line by its place among the lines.
    const fn line(self, place: usize) -> char {
        self.lines[place % self.lines.len()]
    }

    /// Whether these are characters of Unicode.
    pub const fn are_unicode(self) -> bool {
        !self.axis.is_ascii()
    }
}

/// Rows that the values are drawn in.
const ROWS: usize = 8;
/// Columns left of the axis.
const MARGIN: usize = 9;
/// The most columns that time is drawn in.
const MOST_COLUMNS: usize = 62;

/// Draws a chart in at most `width` columns; nothing where there is no line.
pub fn lines(chart: &Chart, width: usize, glyphs: Glyphs) -> Vec<String> {
    let Some([first, last]) = chart.span() else {
        return Vec::new();
    };
    let grid = Grid {
        columns: width.saturating_sub(MARGIN + 1).clamp(1, MOST_COLUMNS),
        from: first,
        span: (last - first).max(f64::MIN_POSITIVE),
        top: chart.top(),
    };
    let cells = grid.cells(chart, glyphs);
    let mut lines = vec![headline(chart, glyphs)];
    lines.extend(cells.iter().enumerate().map(|(row, cells)| {
        let label = match row {
            0 => significant(grid.top, 2),
            _ if row == ROWS - 1 => "0".to_owned(),
            _ => String::new(),
        };
        let row: String = cells.iter().collect();
        format!("{label:>MARGIN$}{}{}", glyphs.axis, row.trim_end())
    }));
    lines.push(grid.time_line(chart.across));
    lines
}

/// The title, and which line is which where there are several.
fn headline(chart: &Chart, glyphs: Glyphs) -> String {
    if chart.series.len() < 2 {
        return chart.title.clone();
    }
    let names = chart.series.iter().enumerate();
    let names: Vec<String> = names
        .map(|(i, series)| format!("{} {}", glyphs.line(i), series.name))
        .collect();
    format!("{}: {}", chart.title, names.join(", "))
}

struct Grid {
    columns: usize,
    from: f64,
    span: f64,
    top: f64,
}

impl Grid {
    fn cells(&self, chart: &Chart, glyphs: Glyphs) -> Vec<Vec<char>> {
        let mut cells = vec![vec![' '; self.columns]; ROWS];
        for level in &chart.limits {
            cells[self.row(level.value)].fill(glyphs.limit);
        }
        // Bands of several lines would hide each other.
        let wide: Vec<&Series> = chart
            .series
            .iter()
            .filter(|line| line.has_width())
            .collect();
        if let [series] = wide.as_slice() {
            for (column, band) in self.bands(series).enumerate() {
                let (high, low) = (self.row(band.high), self.row(band.low));
                for row in &mut cells[high..=low] {
                    row[column] = glyphs.band;
                }
            }
        }
        for (i, series) in chart.series.iter().enumerate() {
            for (column, band) in self.bands(series).enumerate() {
                cells[self.row(band.typical)][column] = glyphs.line(i);
            }
        }
        let peak = chart.peak.iter().map(|at| (at, glyphs.peak));
        let points = chart.points.iter().map(|at| (at, glyphs.point));
        for (&(time, value), glyph) in peak.chain(points) {
            if let Some(column) = self.column(time) {
                cells[self.row(value)][column] = glyph;
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

    fn column(&self, time: f64) -> Option<usize> {
        let share = (time - self.from) / self.span;
        (0.0..=1.0)
            .contains(&share)
            .then(|| (share * (self.columns - 1) as f64).round() as usize)
    }

    /// The value nearest to each column.
    fn bands<'a>(&'a self, series: &'a Series) -> impl Iterator<Item = Band> + 'a {
        let last = (self.columns - 1).max(1) as f64;
        (0..self.columns).filter_map(move |column| {
            let time = self.from + column as f64 / last * self.span;
            let distance = |entry: &&(f64, Band)| (entry.0 - time).abs();
            let nearest = series
                .line
                .iter()
                .min_by(|a, b| distance(a).total_cmp(&distance(b)));
            nearest.map(|(_, band)| *band)
        })
    }

    /// "day 0      45      90" under the axis.
    fn time_line(&self, across: Across) -> String {
        let marks = [0.0, 0.5, 1.0].map(|share| significant(self.from + share * self.span, 3));
        let [start, middle, end] = marks;
        let half = self.columns / 2;
        let left = format!("{start:<half$}{middle}");
        let room = self.columns.saturating_sub(left.len());
        format!("{:>MARGIN$} {left}{end:>room$}", across.word())
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
            series: vec![Series {
                name: "ammonia".to_owned(),
                line: line.collect(),
            }],
            limits: vec![LimitLine {
                name: "watch".to_owned(),
                value: 0.5,
            }],
            points: vec![(15.0, 1.2)],
            ..Chart::default()
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
        let mut chart = Chart::default();
        assert!(lines(&chart, 80, Glyphs::UNICODE).is_empty());
        chart.series.push(Series {
            name: String::new(),
            line: vec![(0.0, Band::exact(0.0)), (90.0, Band::exact(0.0))],
        });
        let drawn = lines(&chart, 80, Glyphs::UNICODE);
        assert!(drawn[ROWS].contains('•') && !drawn[1].contains('•'));
    }

    #[test]
    fn several_lines_have_a_character_each_and_no_band() {
        let series = |name: &str, slope: f64| Series {
            name: name.to_owned(),
            line: (0..=10)
                .map(|day| {
                    let value = slope * f64::from(day);
                    (f64::from(day), Band::new(0.0, value, 2.0 * value))
                })
                .collect(),
        };
        let chart = Chart {
            title: "plants, g".to_owned(),
            series: vec![series("floaters", 1.0), series("fast growers", 0.5)],
            ..Chart::default()
        };
        let drawn = lines(&chart, 40, Glyphs::ASCII);
        assert_eq!(drawn[0], "plants, g: * floaters, + fast growers");
        let rows = drawn[1..].join("\n");
        assert!(rows.contains('*') && rows.contains('+'), "{rows}");
        assert!(!rows.contains(Glyphs::ASCII.band), "{rows}");
    }
}
