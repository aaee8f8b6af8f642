//! Shares as bars, what speaks for each below it.

use super::canvas::{Anchor, Canvas};
use crate::report::bars::Bars;

/// Width of the picture, of a full bar, and height of a bar with its label, px.
const WIDTH: f64 = 340.0;
const FULL: f64 = 290.0;
const ROW: f64 = 32.0;

/// Bars as a picture; nothing where there are none.
pub(in crate::report) fn bars(bars: &Bars) -> String {
    if bars.bars.is_empty() {
        return String::new();
    }
    let words: Vec<String> = bars
        .bars
        .iter()
        .map(|bar| format!("{} {}", bar.label, bar.value()))
        .collect();
    let height = ROW * bars.bars.len() as f64 + 4.0;
    let mut canvas = Canvas::new(WIDTH, height, &bars.title, &words.join(", "));
    for (i, bar) in bars.bars.iter().enumerate() {
        let y = ROW * i as f64;
        let length = FULL * bar.share.clamp(0.0, 1.0);
        canvas.text("label", (0.0, y + 12.0), Anchor::Start, &bar.label);
        canvas.rectangle("rail", (0.0, y + 17.0), (FULL, 9.0));
        canvas.rectangle("bar", (0.0, y + 17.0), (length, 9.0));
        canvas.text("label", (FULL + 6.0, y + 26.0), Anchor::Start, &bar.value());
    }
    canvas.finish()
}
