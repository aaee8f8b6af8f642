//! The values of a chart as words over its picture, for the pointer and the keyboard.

use super::chart::{LEFT, PlotArea, WIDTH, banded};
use crate::report::chart::{Across, Chart};
use crate::units::show::fixed;

/// Days between two values where a chart follows more than a month, and else.
const DAYS: [f64; 2] = [3.0, 1.0];
const MONTH: f64 = 31.0;

/// What is told at even steps along a chart.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::report) struct Readout {
    /// What tells it from those of other charts.
    pub(in crate::report) name: String,
    /// Where its steps begin and end, as a style.
    pub(in crate::report) place: String,
    /// The values, step by step.
    pub(in crate::report) values: Vec<String>,
}

/// The values of a chart; none where there is no line or nothing to be seen on it.
pub(in crate::report) fn readout(chart: &Chart) -> Option<Readout> {
    let frame = PlotArea::of(chart)?;
    if chart.is_flat() || chart.across == Across::Varied {
        return None;
    }
    let step = match chart.across {
        Across::Days if frame.span > MONTH => DAYS[0],
        _ => DAYS[1],
    };
    let steps = (frame.span / step + 1e-9).floor();
    let times = (0..=steps as usize).map(|i| frame.from + step * i as f64);
    let half = (frame.x(frame.from + step) - LEFT) / 2.0;
    let end = frame.x(frame.from + steps * step) + half;
    let percent = |px: f64| fixed(px / WIDTH * 100.0, 2);
    Some(Readout {
        name: chart
            .title
            .chars()
            .take_while(|c| c.is_alphanumeric())
            .collect(),
        place: format!(
            "left:{}%;width:{}%",
            percent(LEFT - half),
            percent(end - LEFT + half)
        ),
        values: times.map(|time| at(chart, time)).collect(),
    })
}

/// "day 30, 5 Apr: as written 0.4 (0.1-0.9), as advised 0.3".
fn at(chart: &Chart, time: f64) -> String {
    let values = chart.series.iter().filter_map(|series| {
        let distance = |entry: &&(f64, _)| (entry.0 - time).abs();
        let nearest = series
            .line
            .iter()
            .min_by(|a, b| distance(a).total_cmp(&distance(b)))?;
        let name = if chart.series.len() > 1 {
            format!("{} ", series.name)
        } else {
            String::new()
        };
        Some(format!("{name}{}", banded(&nearest.1)))
    });
    let values: Vec<String> = values.collect();
    let date = chart.date(time);
    let date = date.map_or_else(String::new, |date| format!(", {date}"));
    format!(
        "{} {}{date}: {}",
        chart.across.word(),
        fixed(time, 0),
        values.join(", ")
    )
}
