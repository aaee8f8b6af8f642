//! Values over time as a picture: bands, lines, limits, readings, moments.

use super::axis::{ticks, ticks_by};
use super::canvas::{Anchor, At, Canvas, tenth};
use crate::report::chart::{Across, Chart, Series};
use crate::source::Band;
use crate::units::show::{fixed, significant};

/// Size of the picture, and the room around what is drawn in it, px.
const WIDTH: f64 = 340.0;
const HEIGHT: f64 = 200.0;
const LEFT: f64 = 42.0;
const RIGHT: f64 = 10.0;
/// Room for the names of several lines.
const NAMES: f64 = 84.0;
const TOP: f64 = 14.0;
const BOTTOM: f64 = 34.0;
/// Steps of the axis.
const DAY_STEPS: [f64; 9] = [1.0, 2.0, 5.0, 10.0, 15.0, 30.0, 60.0, 90.0, 180.0];
const HOUR_STEPS: [f64; 5] = [1.0, 2.0, 3.0, 4.0, 6.0];
/// Room that the name of a moment takes, px a letter.
const LETTER: f64 = 5.6;

/// A chart as a picture; nothing where there is no line.
pub(in crate::report) fn chart(chart: &Chart) -> String {
    let Some([first, last]) = chart.span() else {
        return String::new();
    };
    let names = if chart.series.len() > 1 { NAMES } else { RIGHT };
    let frame = Frame {
        from: first,
        span: (last - first).max(f64::MIN_POSITIVE),
        top: chart.top() * 1.06,
        right: WIDTH - names,
    };
    let mut canvas = Canvas::new(WIDTH, HEIGHT, &chart.title, &described(chart));
    frame.axes(&mut canvas, chart.across, last);
    for (i, series) in chart.series.iter().enumerate() {
        frame.band(&mut canvas, series, i);
    }
    for (i, series) in chart.series.iter().enumerate() {
        frame.line(&mut canvas, series, i);
    }
    for level in &chart.limits {
        let y = frame.y(level.value);
        canvas.line("limit", (LEFT, y), (frame.right, y));
        let says = format!("{} {}", level.name, significant(level.value, 2));
        canvas.text("label", (frame.right - 2.0, y - 4.0), Anchor::End, &says);
    }
    frame.marks(&mut canvas, chart);
    if chart.series.len() > 1 {
        frame.names(&mut canvas, chart);
    }
    if let Some((time, value)) = chart.peak {
        let (x, y) = frame.at(time, value);
        let diamond = format!("M{} {}l5 5l-5 5l-5 -5z", tenth(x), tenth(y - 5.0));
        canvas.path("reading", &diamond);
    }
    for &(time, value) in &chart.points {
        if (first..=last).contains(&time) {
            let (x, y) = frame.at(time, value);
            let cross = format!("M{} {}l7 7m0 -7l-7 7", tenth(x - 3.5), tenth(y - 3.5));
            canvas.path("reading", &cross);
        }
    }
    canvas.finish()
}

/// Where time and value lie in the picture.
struct Frame {
    from: f64,
    span: f64,
    top: f64,
    right: f64,
}

impl Frame {
    fn x(&self, time: f64) -> f64 {
        LEFT + (time - self.from) / self.span * (self.right - LEFT)
    }

    fn y(&self, value: f64) -> f64 {
        let foot = HEIGHT - BOTTOM;
        foot - value.max(0.0) / self.top * (foot - TOP)
    }

    fn at(&self, time: f64, value: f64) -> At {
        (self.x(time), self.y(value))
    }

    fn axes(&self, canvas: &mut Canvas, across: Across, last: f64) {
        let foot = HEIGHT - BOTTOM;
        for value in ticks(0.0, self.top, 5) {
            let y = self.y(value);
            canvas.line("grid", (LEFT, y), (self.right, y));
            canvas.text(
                "tick",
                (LEFT - 5.0, y + 3.5),
                Anchor::End,
                &significant(value, 3),
            );
        }
        let steps: &[f64] = match across {
            Across::Days => &DAY_STEPS,
            Across::Hours => &HOUR_STEPS,
        };
        for time in ticks_by(self.from, last, 6, steps) {
            let x = self.x(time);
            canvas.line("axis", (x, foot), (x, foot + 4.0));
            canvas.text("tick", (x, foot + 15.0), Anchor::Middle, &fixed(time, 0));
        }
        canvas.line("axis", (LEFT, foot), (self.right, foot));
        let middle = f64::midpoint(LEFT, self.right);
        canvas.text(
            "quiet",
            (middle, HEIGHT - 5.0),
            Anchor::Middle,
            across.word(),
        );
    }

    /// A dotted line and a triangle for each moment; the first of a kind has its name.
    fn marks(&self, canvas: &mut Canvas, chart: &Chart) {
        let foot = HEIGHT - BOTTOM;
        let mut named: Vec<&str> = Vec::new();
        let mut taken: Vec<[f64; 3]> = Vec::new();
        for mark in chart.marks_within() {
            let x = self.x(mark.at);
            canvas.line("moment", (x, TOP), (x, foot));
            canvas.polygon(
                "notch",
                &[(x - 3.0, foot), (x + 3.0, foot), (x, foot - 6.0)],
            );
            if named.contains(&mark.name.as_str()) {
                continue;
            }
            named.push(&mark.name);
            let room = mark.name.chars().count() as f64 * LETTER;
            let to_left = x + room > self.right;
            let (left, anchor) = if to_left {
                (x - 3.0 - room, Anchor::End)
            } else {
                (x + 3.0, Anchor::Start)
            };
            let is_free = |y: f64| {
                taken.iter().all(|[from, to, other]| {
                    (other - y).abs() > 1.0 || left > *to || left + room < *from
                })
            };
            let rows = [TOP + 8.0, TOP + 20.0, TOP + 32.0];
            let y = rows.into_iter().find(|y| is_free(*y)).unwrap_or(TOP + 44.0);
            taken.push([left, left + room, y]);
            let stands = if to_left { x - 3.0 } else { x + 3.0 };
            canvas.text("quiet", (stands, y), anchor, &mark.name);
        }
    }

    fn band(&self, canvas: &mut Canvas, series: &Series, place: usize) {
        if !series.has_width() {
            return;
        }
        let edge = |value: fn(&Band) -> f64| {
            let line = series.line.iter();
            line.map(move |(time, band)| self.at(*time, value(band)))
                .collect::<Vec<At>>()
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
        canvas.polyline(&format!("line line-{place}"), &points);
    }

    /// The name of each line at its end, none over another.
    fn names(&self, canvas: &mut Canvas, chart: &Chart) {
        let mut ends: Vec<(f64, usize)> = chart
            .series
            .iter()
            .enumerate()
            .filter_map(|(i, series)| {
                let (_, band) = series.line.last()?;
                Some((self.y(band.typical), i))
            })
            .collect();
        ends.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut above = f64::INFINITY;
        for (y, i) in ends {
            let stands = y.min(above - 12.0);
            above = stands;
            let x = self.right;
            let class = format!("line line-{i}");
            canvas.polyline(
                &class,
                &[(x + 2.0, y), (x + 7.0, stands), (x + 17.0, stands)],
            );
            let name = &chart.series[i].name;
            canvas.text("label", (x + 20.0, stands + 3.5), Anchor::Start, name);
        }
    }
}

/// The chart in words: where each line starts, peaks and ends.
fn described(chart: &Chart) -> String {
    let across = chart.across.word();
    let lines = chart.series.iter().filter_map(|series| {
        let (first, last) = (series.line.first()?, series.line.last()?);
        let peak = series
            .line
            .iter()
            .max_by(|a, b| a.1.typical.total_cmp(&b.1.typical))?;
        let value = |entry: &(f64, Band)| significant(entry.1.typical, 2);
        Some(format!(
            "{}: {} on {across} {}, highest {} about {across} {}, {} on {across} {}.",
            series.name,
            value(first),
            fixed(first.0, 0),
            value(peak),
            fixed(peak.0, 0),
            value(last),
            fixed(last.0, 0)
        ))
    });
    let limits = chart.limits.iter();
    let limits = limits.map(|level| format!("{} {}.", level.name, significant(level.value, 2)));
    let words: Vec<String> = lines.chain(limits).collect();
    words.join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::chart::{Level, Mark};

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
            limits: vec![Level {
                name: "limit".to_owned(),
                value: 0.5,
            }],
            points: vec![(15.0, 1.2)],
            peak: Some((8.0, 0.4)),
            marks: vec![Mark {
                at: 7.0,
                name: "water change".to_owned(),
            }],
        };
        insta::assert_snapshot!(chart(&chart_of));
        assert_eq!(chart(&Chart::default()), "");
    }
}
