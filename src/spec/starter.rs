//! The commented spec that a keeper starts from.

use crate::units::UnitSystem;

/// The spec with a word in braces wherever the two unit systems differ.
const TEMPLATE: &str = include_str!("starter.toml");

/// Each word in braces, in metric and in US units.
const WORDS: &[(&str, &str, &str)] = &[
    ("{units}", "metric", "us"),
    ("{size}", "60 x 30 x 36 cm", "24 x 12 x 16 in"),
    ("{wall}", "6 mm", "1/4 in"),
    ("{freeboard}", "3 cm", "1 in"),
    ("{soil_depth}", "25 mm", "1 in"),
    ("{soil_bag}", "10 L", "8 dry_qt"),
    ("{cap_depth}", "40 mm", "1 1/2 in"),
    ("{cap_bag}", "10 kg", "50 lb"),
    ("{stones}", "2 kg", "5 lb"),
    ("{water}", "24 C", "75 F"),
    ("{lamp}", "20 cm", "8 in"),
    ("{flow}", "0.5 L/min", "8 us_gal/h"),
    ("{air_depth}", "25 cm", "10 in"),
    ("{room}", "20 C", "68 F"),
    ("{altitude}", "100 m", "300 ft"),
    ("{added}", "10 mm", "1/2 in"),
];

/// A spec with every section, those that are not needed commented out.
///
/// # Example
/// ```
/// use lentic::{spec, units::UnitSystem};
/// let text = spec::starter::text(UnitSystem::Metric);
/// assert!(spec::parse(&text).is_ok());
/// ```
pub fn text(units: UnitSystem) -> String {
    WORDS
        .iter()
        .fold(TEMPLATE.to_owned(), |text, (word, metric, us)| {
            let value = match units {
                UnitSystem::Metric => metric,
                UnitSystem::Us => us,
            };
            text.replace(word, value)
        })
}
