//! The rows of a comparison with what is said of them.

use crate::report::document::Sheet;
use crate::study::{Axis, KeyInfluence, ResultColumn, TankRow};
use crate::units::UnitSystem;

/// Rows to be shown.
#[derive(Debug)]
pub struct Compared<'a> {
    /// What was varied.
    pub axes: &'a [Axis],
    /// The results in the cells of each row.
    pub columns: &'a [ResultColumn],
    /// How many of them are shown.
    pub shown: usize,
    /// Whether these are the standard ones, under short heads.
    pub standard: bool,
    /// The rows.
    pub rows: &'a [TankRow],
    /// Those that do not meet what is asked, where they are drawn.
    pub missed: &'a [TankRow],
    /// What is asked of the rows, in words; empty where nothing is.
    pub asked: String,
    /// The units that all of them are shown in.
    pub units: UnitSystem,
    /// Whether these are the rows that no other beats.
    pub chosen: bool,
    /// What is said of how the rows were chosen; may be empty.
    pub remark: String,
    /// The tanks to be drawn; none where there are many.
    pub sheets: Vec<Sheet>,
    /// A result with what moves it.
    pub influences: Option<(&'a str, Vec<KeyInfluence>)>,
}
