//! What is usual where a keeper says nothing and another key decides.

use super::Stock;
use crate::geometry::{Dimension, Shape};
use crate::source::Band;
use crate::units::show::{fixed, significant};
use crate::units::{Length, Mass, Share};

/// Protein in dry food, %: memory, labels state about 40 to 50 %.
macro_rules! protein_pct {
    () => {
        45
    };
}

const PROTEIN_PCT: u8 = protein_pct!();
/// Protein in dry food.
pub const PROTEIN: Share = Share::from_fraction(PROTEIN_PCT as f64 / 100.0);
/// The same as it is listed.
pub const PROTEIN_IN_WORDS: &str = concat!(protein_pct!(), " %");
/// The same as TOML.
pub const PROTEIN_WRITTEN: &str = concat!("\"", protein_pct!(), " %\"");
/// Why that much protein.
pub const PROTEIN_WHY: &str = "memory: dry foods state about 40 to 50 %";
/// Why a wall's thickness was taken by the tank's height.
pub const WALL_WHY: &str =
    "practice: common for the tank's height; used for weight and panes, measure your own";
/// Why that much food.
pub const FEED_WHY: &str = "practice: the usual share of the animals' mass, by the catalogue";

/// Depth of the soil of a tank that stands, where nobody knows it, mm (judgement: what beds
/// of this kind are laid with).
pub const SOIL_DEPTH_MM: Band = Band::new(15.0, 25.0, 50.0);
/// The same of the cap.
pub const CAP_DEPTH_MM: Band = Band::new(20.0, 40.0, 70.0);

/// A usual wall for a tank's height, or for what a bowl is across, by common practice
/// without source: 5 mm to 30 cm, 6 mm to 40 cm, 8 mm to 50 cm, 10 mm above.
pub fn wall(shape: &Shape) -> Length {
    const WALLS: &[(f64, f64)] = &[(30.0, 5.0), (40.0, 6.0), (50.0, 8.0)];
    /// Lets a height given in inches or summed from parts meet its row.
    const SLACK_CM: f64 = 0.05;
    let height = height(shape);
    let row = WALLS
        .iter()
        .find(|(up_to_cm, _)| height.cm() <= up_to_cm + SLACK_CM);
    Length::from_mm(row.map_or(10.0, |(_, wall_mm)| *wall_mm))
}

/// The height, or across for a bowl, whose height follows.
fn height(shape: &Shape) -> Length {
    let measures = shape.measures();
    let of = |dimension| {
        measures
            .iter()
            .find(|measure| measure.dimension == dimension)
    };
    of(Dimension::Height)
        .or_else(|| of(Dimension::Diameter))
        .map_or(Length::ZERO, |measure| measure.value)
}

/// Dry food a day by the animals' mass.
pub fn feed(animals: &[Stock]) -> Mass {
    let daily = |stock: &Stock| stock.mass() * (stock.animal.feed_pct_per_d.typical / 100.0);
    animals.iter().map(daily).sum()
}

/// A wall as it is listed: "6 mm".
pub fn wall_in_words(wall: Length) -> String {
    format!("{} mm", fixed(wall.mm(), 2))
}

/// Food as it is listed: "50 mg".
pub fn feed_in_words(mass: Mass) -> String {
    format!("{} mg", significant(mass.mg(), 2))
}

/// A day as it is listed: "7".
pub fn day_in_words(day: f64) -> String {
    fixed(day, 1)
}
