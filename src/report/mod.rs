//! Results to text, pages, JSON and CSV.

pub mod at;
pub mod bars;
pub mod chart;
pub mod compose;
pub mod csv;
pub mod dictionary;
pub mod document;
mod figure;
pub mod grid;
pub mod html;
pub mod json;
pub mod listing;
pub mod profile;
pub mod row;
pub mod scatter;
pub mod solved;
mod svg;
pub mod text;
