//! Measures beside a drawing: lines with ticks, labels that do not overlap, the bar that
//! tells the scale.

use super::canvas::{Anchor, At, Canvas};
use super::scale::Scale;
use crate::units::{Length, UnitSystem};

/// Half a tick, px.
const TICK: f64 = 3.0;
/// From the line of a chain to its labels, px.
const LEADER: f64 = 12.0;

/// On which side of a drawing a chain of measures stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Beside {
    Left,
    Right,
}

/// One measure of a chain: from and to where it goes, and what it says.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct DimensionSpan {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) says: String,
}

/// A vertical chain of measures, each labelled at its middle.
pub(super) fn chain(
    canvas: &mut Canvas,
    x: f64,
    beside: Beside,
    measures: &[DimensionSpan],
    line: f64,
) {
    let (outwards, anchor) = match beside {
        Beside::Left => (-1.0, Anchor::End),
        Beside::Right => (1.0, Anchor::Start),
    };
    for measure in measures {
        canvas.line("measure", (x, measure.from), (x, measure.to));
        for y in [measure.from, measure.to] {
            canvas.line("measure", (x - TICK, y), (x + TICK, y));
        }
    }
    let middles: Vec<f64> = measures
        .iter()
        .map(|measure| f64::midpoint(measure.from, measure.to))
        .collect();
    let labels = spread(&middles, line);
    for ((measure, middle), label) in measures.iter().zip(middles).zip(labels) {
        let end = x + outwards * LEADER;
        canvas.line(
            "leader",
            (x + outwards * TICK, middle),
            (end - outwards * 2.0, label),
        );
        canvas.text("label", (end, label + 4.0), anchor, &measure.says);
    }
}

/// A horizontal measure with its words below the line.
pub(super) fn across(canvas: &mut Canvas, from: At, to_x: f64, says: &str, line: f64) {
    let (left, y) = from;
    canvas.line("measure", from, (to_x, y));
    for x in [left, to_x] {
        canvas.line("measure", (x, y - TICK), (x, y + TICK));
    }
    canvas.text(
        "label",
        (f64::midpoint(left, to_x), y + line),
        Anchor::Middle,
        says,
    );
}

/// A vertical measure with its words running up on its left.
pub(super) fn upright(canvas: &mut Canvas, from: At, to_y: f64, says: &str) {
    let (x, low) = from;
    canvas.line("measure", from, (x, to_y));
    for y in [low, to_y] {
        canvas.line("measure", (x - TICK, y), (x + TICK, y));
    }
    canvas.upright("label", (x - 7.0, f64::midpoint(low, to_y)), says);
}

/// A bar of a round length from a place on, in black and white halves, with its length.
pub(super) fn bar(canvas: &mut Canvas, (x, y): At, scale: Scale, units: UnitSystem) {
    let length = match units {
        UnitSystem::Metric => Length::from_cm(10.0),
        UnitSystem::Us => Length::from_inches(4.0),
    };
    let half = scale.px(length) / 2.0;
    canvas.rectangle("rule", (x, y), (half * 2.0, 4.0));
    canvas.rectangle("ruled", (x, y), (half, 4.0));
    let says = (x + half * 2.0 + 6.0, y + 6.0);
    canvas.text("label", says, Anchor::Start, &units.dimension(length));
}

/// Places near those desired, in their order and at least a line apart.
pub(super) fn spread(desired: &[f64], line: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..desired.len()).collect();
    order.sort_by(|a, b| desired[*a].total_cmp(&desired[*b]));
    // Each label joins a block of neighbours that touch, centred on what they wish.
    let mut blocks: Vec<(f64, usize)> = Vec::new();
    for &i in &order {
        blocks.push((desired[i], 1));
        while let [.., (above, above_count), (below, below_count)] = blocks.as_slice() {
            let apart = line * (above_count + below_count) as f64 / 2.0;
            if below - above >= apart {
                break;
            }
            let count = above_count + below_count;
            let middle = (above * *above_count as f64 + below * *below_count as f64) / count as f64;
            blocks.truncate(blocks.len() - 2);
            blocks.push((middle, count));
        }
    }
    let mut places = vec![0.0; desired.len()];
    let in_blocks = blocks.iter().flat_map(|(middle, count)| {
        let top = middle - line * (*count as f64 - 1.0) / 2.0;
        (0..*count).map(move |i| top + line * i as f64)
    });
    for (&i, place) in order.iter().zip(in_blocks) {
        places[i] = place;
    }
    places
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_keep_their_order_and_their_distance() {
        let spread = |desired: &[f64]| spread(desired, 13.0);
        assert_eq!(spread(&[10.0, 100.0]), [10.0, 100.0]);
        assert_eq!(spread(&[100.0, 102.0]), [94.5, 107.5]);
        assert_eq!(spread(&[102.0, 100.0, 50.0]), [107.5, 94.5, 50.0]);
        let many = spread(&[0.0, 1.0, 2.0, 3.0]);
        assert!(many.windows(2).all(|pair| pair[1] - pair[0] >= 13.0));
        assert_eq!(spread(&[]), Vec::<f64>::new());
    }
}
