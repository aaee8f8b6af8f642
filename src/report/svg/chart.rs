//! Values over time as a picture: bands, lines, limits, readings, moments.
//!
//! Names stand beside and above what is drawn, never on it.

use super::axis::{DAY_STEPS, ticks, ticks_by};
use super::canvas::{Anchor, At, Canvas, tenth, thinned};
use super::dimension::spread;
use crate::report::chart::{Across, Chart, Series};
use crate::source::Band;
use crate::units::show::{fixed, significant};

/// Size of the picture, and its height where nothing comes near a limit, px.
pub(super) const WIDTH: f64 = 400.0;
const HEIGHT: f64 = 208.0;
const FLAT_HEIGHT: f64 = 108.0;
/// Room for numbers on the left, and for names on the right.
pub(super) const LEFT: f64 = 40.0;
const NAMES: f64 = 96.0;
const RIGHT: f64 = 12.0;
/// Room above, and for each row of names of moments.
const TOP: f64 = 8.0;
const ROW: f64 = 14.0;
/// Room for the numbers of the axis, and for dates under them.
const BOTTOM: f64 = 20.0;
const DATES: f64 = 14.0;
const HOUR_STEPS: [f64; 5] = [1.0, 2.0, 3.0, 4.0, 6.0];
/// How far a drawn line strays from the one computed, px.
const STRAY: f64 = 0.25;
/// Room that a name takes, px a letter.
const LETTER: f64 = 6.2;

/// A chart as a picture; nothing where there is no line.
pub(in crate::report) fn chart(chart: &Chart) -> String {
    let Some(frame) = PlotArea::of(chart) else {
        return String::new();
    };
    let mut canvas = Canvas::new(WIDTH, frame.height, &chart.title, &described(chart));
    for &[from, to] in &chart.dark {
        let (left, right) = (frame.x(from), frame.x(to));
        canvas.rectangle("dark", (left, frame.ceiling), (right - left, frame.depth()));
    }
    frame.axes(&mut canvas, chart);
    for (i, series) in chart.series.iter().enumerate() {
        frame.band(&mut canvas, series, i);
    }
    frame.moments(&mut canvas, chart);
    for level in &chart.limits {
        let y = frame.y(level.value);
        canvas.line("limit", (LEFT, y), (frame.right, y));
    }
    for (i, series) in chart.series.iter().enumerate() {
        frame.line(&mut canvas, series, i);
    }
    frame.names(&mut canvas, chart);
    if let Some((time, value)) = chart.peak {
        let (x, y) = frame.at(time, value);
        let diamond = format!("M{} {}l5 5l-5 5l-5 -5z", tenth(x), tenth(y - 5.0));
        canvas.path("reading", &diamond);
    }
    for &(time, value) in &chart.points {
        if (frame.from..=frame.from + frame.span).contains(&time) {
            let (x, y) = frame.at(time, value);
            let cross = format!("M{} {}l7 7m0 -7l-7 7", tenth(x - 3.5), tenth(y - 3.5));
            canvas.path("reading", &cross);
        }
    }
    canvas.finish()
}

/// The name of a moment over the chart.
struct Name<'a> {
    at: f64,
    says: &'a str,
    row: usize,
    anchor: Anchor,
}

/// Where time and value lie in the picture.
pub(super) struct PlotArea {
    pub(super) from: f64,
    pub(super) span: f64,
    top: f64,
    ceiling: f64,
    foot: f64,
    height: f64,
    pub(super) right: f64,
}

impl PlotArea {
    /// None where there is no line.
    pub(super) fn of(chart: &Chart) -> Option<Self> {
        let [first, last] = chart.span()?;
        let named = chart.series.len() > 1 || !chart.limits.is_empty();
        let mut frame = Self {
            from: first,
            span: (last - first).max(f64::MIN_POSITIVE),
            top: chart.top() * 1.06,
            ceiling: TOP,
            foot: 0.0,
            height: if chart.is_flat() { FLAT_HEIGHT } else { HEIGHT },
            right: WIDTH - if named { NAMES } else { RIGHT },
        };
        let rows = frame
            .moment_names(chart)
            .iter()
            .map(|name| name.row + 1)
            .max();
        frame.ceiling += ROW * rows.unwrap_or(0) as f64;
        frame.height += ROW * rows.unwrap_or(0) as f64;
        let dates = if chart.start.is_some() { DATES } else { 0.0 };
        frame.foot = frame.height - BOTTOM;
        frame.height += dates;
        Some(frame)
    }

    pub(super) fn x(&self, time: f64) -> f64 {
        let last = self.from + self.span;
        LEFT + (time.clamp(self.from, last) - self.from) / self.span * (self.right - LEFT)
    }

    fn y(&self, value: f64) -> f64 {
        self.foot - value.max(0.0) / self.top * self.depth()
    }

    fn depth(&self) -> f64 {
        self.foot - self.ceiling
    }

    fn at(&self, time: f64, value: f64) -> At {
        (self.x(time), self.y(value))
    }

    fn axes(&self, canvas: &mut Canvas, chart: &Chart) {
        let most = if chart.is_flat() { 2 } else { 5 };
        for value in ticks(0.0, self.top, most) {
            let y = self.y(value);
            canvas.line("grid", (LEFT, y), (self.right, y));
            let says = significant(value, 3);
            canvas.text("tick", (LEFT - 5.0, y + 3.5), Anchor::End, &says);
        }
        let steps: &[f64] = match chart.across {
            Across::Days => &DAY_STEPS,
            Across::Hours => &HOUR_STEPS,
            Across::Varied => &[],
        };
        let below = self.foot + 15.0;
        for time in ticks_by(self.from, self.from + self.span, 6, steps) {
            let x = self.x(time);
            canvas.line("axis", (x, self.foot), (x, self.foot + 4.0));
            canvas.text("tick", (x, below), Anchor::Middle, &significant(time, 3));
            if let Some(date) = chart.date(time) {
                canvas.text("tick", (x, below + DATES), Anchor::Middle, &date);
            }
        }
        canvas.line("axis", (LEFT, self.foot), (self.right, self.foot));
        let word = chart.across.word();
        canvas.text("tick", (LEFT - 14.0, below), Anchor::End, word);
    }

    /// The first moment of each kind and the present with their names, none over another.
    fn moment_names<'a>(&self, chart: &'a Chart) -> Vec<Name<'a>> {
        let mut moments: Vec<(f64, &str)> = chart.now.iter().map(|now| (*now, "today")).collect();
        for mark in chart.marks_within() {
            if !moments.iter().any(|(_, name)| *name == mark.name) {
                moments.push((mark.at, &mark.name));
            }
        }
        moments.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut taken: Vec<[f64; 2]> = Vec::new();
        moments
            .into_iter()
            .map(|(at, says)| {
                let x = self.x(at);
                let room = says.chars().count() as f64 * LETTER;
                let to_left = x + room > WIDTH;
                let [left, right] = if to_left {
                    [x - room, x]
                } else {
                    [x, x + room]
                };
                let is_free = |row: &[f64; 2]| left > row[1] + LETTER || right + LETTER < row[0];
                let row = taken.iter().position(is_free).unwrap_or(taken.len());
                match taken.get_mut(row) {
                    Some(row) => *row = [row[0].min(left), row[1].max(right)],
                    None => taken.push([left, right]),
                }
                let anchor = if to_left { Anchor::End } else { Anchor::Start };
                Name {
                    at,
                    says,
                    row,
                    anchor,
                }
            })
            .collect()
    }

    /// A dotted line and a triangle for each moment, a full line for the present.
    fn moments(&self, canvas: &mut Canvas, chart: &Chart) {
        for mark in chart.marks_within() {
            let x = self.x(mark.at);
            canvas.line("moment", (x, self.ceiling), (x, self.foot));
            let (left, right) = ((x - 3.0, self.ceiling), (x + 3.0, self.ceiling));
            canvas.polygon("notch", &[left, right, (x, self.ceiling + 5.0)]);
        }
        if let Some(now) = chart.now {
            let x = self.x(now);
            canvas.line("now", (x, self.ceiling), (x, self.foot));
        }
        for name in self.moment_names(chart) {
            let y = self.ceiling - 4.0 - ROW * name.row as f64;
            canvas.text("quiet", (self.x(name.at), y), name.anchor, name.says);
        }
    }

    fn band(&self, canvas: &mut Canvas, series: &Series, place: usize) {
        if !series.has_width() {
            return;
        }
        let edge = |value: fn(&Band) -> f64| {
            let line = series.line.iter();
            let edge = line.map(|(time, band)| self.at(*time, value(band)));
            thinned(&edge.collect::<Vec<At>>(), STRAY)
        };
        let mut around = edge(|band| band.high);
        around.extend(edge(|band| band.low).into_iter().rev());
        canvas.polygon(&format!("band line-{place}"), &around);
    }

    fn line(&self, canvas: &mut Canvas, series: &Series, place: usize) {
        let points: Vec<At> = series
            .line
            .iter()
            .map(|(time, band)| self.at(*time, band.typical))
            .collect();
        canvas.polyline(&format!("line line-{place}"), &thinned(&points, STRAY));
    }

    /// The names of lines, where there are several, and of limits beside their ends, none
    /// over another.
    fn names(&self, canvas: &mut Canvas, chart: &Chart) {
        let several = chart.series.len() > 1;
        let ends = chart.series.iter().enumerate().filter(|_| several);
        let ends = ends.filter_map(|(i, series)| {
            let (_, band) = series.line.last()?;
            let y = self.y(band.typical);
            Some((y, format!("line line-{i}"), series.name.clone()))
        });
        let limits = chart.limits.iter().map(|level| {
            let says = format!("{} {}", level.name, significant(level.value, 2));
            (self.y(level.value), "limit".to_owned(), says)
        });
        let ends: Vec<(f64, String, String)> = ends.chain(limits).collect();
        let desired: Vec<f64> = ends.iter().map(|end| end.0).collect();
        let mut places = spread(&desired, ROW);
        let lowest = places.iter().copied().fold(0.0, f64::max);
        let over = (lowest - self.foot - 2.0).max(0.0);
        for place in &mut places {
            // those at the foot move up together
            if lowest - *place < ROW * 3.0 {
                *place -= over;
            }
        }
        for ((y, class, says), stands) in ends.iter().zip(places) {
            let x = self.right;
            let bend = [(x + 1.0, *y), (x + 5.0, stands), (x + 11.0, stands)];
            canvas.polyline(&format!("{class} end"), &bend);
            canvas.text("label", (x + 14.0, stands + 3.5), Anchor::Start, says);
        }
    }
}

/// The chart in words: where each line starts, peaks and ends with its band, and how it lies
/// to the limits.
fn described(chart: &Chart) -> String {
    let across = chart.across.word();
    let lines = chart.series.iter().filter_map(|series| {
        let (first, last) = (series.line.first()?, series.line.last()?);
        let by = |a: &&(f64, Band), b: &&(f64, Band)| a.1.typical.total_cmp(&b.1.typical);
        let (peak, least) = (
            series.line.iter().max_by(by)?,
            series.line.iter().min_by(by)?,
        );
        let value =
            |entry: &(f64, Band)| format!("{} {across} {}", banded(&entry.1), fixed(entry.0, 0));
        Some(format!(
            "{}: {}, highest {}, lowest {}, {} at the end.{}",
            series.name,
            value(first),
            value(peak),
            value(least),
            value(last),
            if series.has_width() {
                " In brackets: 10 to 90 %."
            } else {
                ""
            }
        ))
    });
    let limits = chart.limits.iter().map(|level| {
        let name = format!("{} {}", level.name, significant(level.value, 2));
        let lies = chart.series.iter().map(|series| lies(series, level.value));
        format!("{name}: {}.", lies.collect::<Vec<_>>().join("; "))
    });
    let words: Vec<String> = lines.chain(limits).collect();
    words.join(" ")
}

/// How a line and its band lie to a level.
fn lies(series: &Series, level: f64) -> String {
    let over = |value: fn(&Band) -> f64| {
        let line = series.line.iter();
        let over = line.filter(|(_, band)| value(band) > level).count();
        (over > 0, over == series.line.len())
    };
    let side = match over(|band| band.typical) {
        (_, true) if over(|band| band.low).1 => "stays over it with its band",
        (_, true) => "stays over it, its band falls under it",
        (true, false) => "crosses it",
        (false, _) if over(|band| band.high).0 => "stays under it, its band rises over it",
        (false, _) => "stays under it with its band",
    };
    format!("{} {side}", series.name)
}

/// "0.33 (0.1-0.6)", or one number where the band has no width.
pub(super) fn banded(band: &Band) -> String {
    let [low, typical, high] =
        [band.low, band.typical, band.high].map(|value| significant(value, 2));
    if low == high {
        typical
    } else {
        format!("{typical} ({low}-{high})")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::chart::{LimitLine, Mark};

    #[test]
    fn a_small_chart_is_drawn_with_all_its_parts() {
        let line = [(0.0, 0.0), (10.0, 1.0), (20.0, 0.2)];
        let chart_of = Chart {
            title: "ammonia, mg N/L".to_owned(),
            across: Across::Days,
            series: vec![Series {
                name: "ammonia".to_owned(),
                line: line
                    .map(|(day, value)| (day, Band::new(value * 0.5, value, value * 2.0)))
                    .to_vec(),
            }],
            limits: vec![LimitLine {
                name: "limit".to_owned(),
                value: 0.5,
            }],
            points: vec![(15.0, 1.2)],
            peak: Some((8.0, 0.4)),
            marks: vec![Mark {
                at: 7.0,
                name: "water change".to_owned(),
            }],
            start: None,
            dark: vec![[18.0, 20.0]],
            now: Some(16.0),
        };
        insta::assert_snapshot!(chart(&chart_of));
        assert_eq!(chart(&Chart::default()), "");
    }
}
