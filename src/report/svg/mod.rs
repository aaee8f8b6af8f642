//! Figures as SVG, styled by the classes of the page that holds them.
//!
//! Every picture is drawn for a width of about 340 pixels, so that its letters keep their
//! size on a phone. Colour never stands alone: lines differ by dash, marks by shape.

mod above;
mod axis;
mod bars;
mod canvas;
mod chart;
mod dimension;
mod elevation;
mod scale;
mod scatter;

pub(super) use above::above;
pub(super) use bars::bars;
pub(super) use chart::chart;
pub(super) use elevation::elevation;
pub(super) use scale::Scale;
pub(super) use scatter::scatter;
