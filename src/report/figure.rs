//! The pictures of a block with what a page says around them.

use super::document::Block;
use super::svg::{self, DrawingSize, Readout, Scale};
use crate::geometry::ViewSide;

/// The class of the view from the front.
pub(super) const FRONT: &str = "front";

/// A picture with its caption and, below it, what it cannot show.
pub(super) struct Figure<'a> {
    pub(super) class: &'static str,
    pub(super) caption: &'a str,
    pub(super) svg: String,
    pub(super) readout: Option<Readout>,
    pub(super) notes: Vec<[&'a str; 2]>,
}

impl<'a> Figure<'a> {
    const fn new(class: &'static str, caption: &'a str, svg: String) -> Self {
        Self {
            class,
            caption,
            svg,
            readout: None,
            notes: Vec::new(),
        }
    }
}

/// The pictures of a block; none where it has none.
pub(super) fn figures(block: &Block) -> Vec<Figure<'_>> {
    match block {
        Block::Drawing(sheet) => {
            let [large, small] = [DrawingSize::Large, DrawingSize::Small]
                .map(|size| Scale::of(&sheet.drawing, size));
            let view = |seen, scale| svg::elevation(sheet, seen, scale);
            vec![
                Figure::new(FRONT, "From the front", view(ViewSide::Front, large)),
                Figure::new("view", "From the right", view(ViewSide::Right, small)),
                Figure::new("view", "From above", svg::above(sheet, small)),
            ]
        }
        Block::Fleet(sheets) => {
            let scale = Scale::common(sheets.iter().map(|sheet| &sheet.drawing));
            let view = |sheet| svg::elevation(sheet, ViewSide::Front, scale);
            sheets
                .iter()
                .map(|sheet| Figure::new("one", &sheet.drawing.name, view(sheet)))
                .collect()
        }
        Block::Grid(grid) => vec![Figure::new("heat", &grid.title, svg::grid(grid))],
        Block::Chart(chart) => vec![Figure {
            readout: svg::readout(chart),
            ..Figure::new("chart", &chart.title, svg::chart(chart))
        }],
        Block::Bars(bars) => {
            let said = bars.bars.iter().filter(|bar| !bar.says.is_empty());
            vec![Figure {
                notes: said.map(|bar| [bar.label.as_str(), &bar.says]).collect(),
                ..Figure::new("bars", &bars.title, svg::bars(bars))
            }]
        }
        Block::Scatter(scatter) => vec![Figure::new(
            "chart",
            "Two results of each tank",
            svg::scatter(scatter),
        )],
        _ => Vec::new(),
    }
}
