//! Results to text, JSON and CSV.

pub mod chart;
pub mod compose;
pub mod csv;
pub mod document;
pub mod json;
pub mod listing;
pub mod row;
pub mod text;
