//! Figures as SVG, styled by the classes of the page that holds them.
//!
//! Charts are drawn for a width of 400 pixels, so that their letters keep their size on a
//! phone; drawings of tanks for 540, with room for letters that the page makes larger there. Colour never stands alone: lines differ by dash, marks by shape.

mod above;
mod axis;
mod bars;
mod bounds;
mod canvas;
mod chart;
mod creature;
mod dimension;
mod elevation;
mod ends;
mod garden;
mod grid;
mod leaf;
mod readout;
mod scale;
mod scatter;
mod stone;

pub(super) use above::above;
pub(super) use axis::day_ticks;
pub(super) use bars::bars;
pub(super) use chart::chart;
pub(super) use elevation::elevation;
pub(super) use grid::grid;
pub(super) use readout::{Readout, readout};
pub(super) use scale::{DrawingSize, Scale};
pub(super) use scatter::scatter;
