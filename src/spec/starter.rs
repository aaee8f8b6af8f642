//! The commented spec that a keeper starts from.

use thiserror::Error;

use crate::catalogue::{self, TankSize};
use crate::units::size::Size;
use crate::units::{Length, QuantityError, UnitSystem};

/// The spec with a word in braces wherever unit systems or sizes differ.
const TEMPLATE: &str = include_str!("starter.toml");

/// Each word in braces that no size changes, in metric and in US units.
const WORDS: &[(&str, &str, &str)] = &[
    ("{units}", "metric", "us"),
    ("{freeboard}", "3 cm", "1 in"),
    ("{soil_bag}", "10 L", "8 dry_qt"),
    ("{cap_bag}", "10 kg", "50 lb"),
    ("{stones}", "2 kg", "5 lb"),
    ("{water}", "24 C", "75 F"),
    ("{cold}", "12 C", "54 F"),
    ("{hot}", "60 C", "140 F"),
    ("{dose}", "5 mL per 40 L", "5 mL per 10 us_gal"),
    ("{pruned}", "9 g", "0.3 oz"),
    ("{lamp}", "20 cm", "8 in"),
    ("{flow}", "0.5 L/min", "8 us_gal/h"),
    ("{air_depth}", "25 cm", "10 in"),
    ("{room}", "20 C", "68 F"),
    ("{altitude}", "100 m", "300 ft"),
    ("{added}", "10 mm", "1/2 in"),
];

/// The lines of a box measured inside.
const INSIDE: &str = r#"# length x width x height, measured inside the glass
size = {size}
# true where you measured outside; then the wall is needed
#outside = false
#wall = "{wall}""#;
/// The lines of a box as sold.
const OUTSIDE: &str = r#"# length x width x height over the glass, and its wall: makers differ, measure your own
size = {size}
outside = true
wall = "{wall}""#;

/// The box that a starter is for, as the keeper wrote it.
#[derive(Debug, Clone, PartialEq)]
pub struct StarterSize {
    written: String,
    /// Of its inside.
    size: Size,
    /// Its wall where it is written by its outside.
    wall: Option<&'static str>,
}

/// Why a text is no size of a starter's box.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum StarterSizeError {
    /// It is no size.
    #[error(transparent)]
    Unread(#[from] QuantityError),
    /// A side is too short for a bed, or longer than any tank's.
    #[error("each side is from {SHORTEST_CM} cm to {LONGEST_CM} cm long")]
    OutOfRange,
}

/// A shorter side leaves no water over a bed.
const SHORTEST_CM: f64 = 12.0;
/// As far as a starter's planting has been thought through.
const LONGEST_CM: f64 = 300.0;

impl StarterSize {
    /// Reads length x width x height, or the name of a size as sold.
    ///
    /// # Errors
    /// A text that is no size, or a side that no starter is made for.
    ///
    /// # Example
    /// ```
    /// use lentic::{spec::{self, starter::{self, StarterSize}}, units::UnitSystem};
    /// let size = StarterSize::parse("12 x 8 x 10 in").unwrap();
    /// let text = starter::sized(&size, UnitSystem::Us);
    /// assert!(text.contains("size = \"12 x 8 x 10 in\""));
    /// assert!(spec::parse(&text).is_ok());
    /// ```
    pub fn parse(text: &str) -> Result<Self, StarterSizeError> {
        if let Ok(sold) = catalogue::find::<TankSize>(text) {
            return Ok(Self {
                written: sold.outside.text.clone(),
                size: sold.inside(),
                wall: Some(&sold.wall.text),
            });
        }
        let size = Size::parse(text)?;
        let sides = [size.length, size.width, size.height];
        let fits = |side: &Length| (SHORTEST_CM..=LONGEST_CM).contains(&side.cm());
        if !sides.iter().all(fits) {
            return Err(StarterSizeError::OutOfRange);
        }
        Ok(Self {
            written: text.trim().to_owned(),
            size,
            wall: None,
        })
    }

    /// The usual box in a unit system.
    fn usual(units: UnitSystem) -> Self {
        let [length, width, height] = match units {
            UnitSystem::Metric => [60.0, 30.0, 36.0].map(Length::from_cm),
            UnitSystem::Us => [24.0, 12.0, 16.0].map(Length::from_inches),
        };
        let written = match units {
            UnitSystem::Metric => "60 x 30 x 36 cm",
            UnitSystem::Us => "24 x 12 x 16 in",
        };
        Self {
            written: written.to_owned(),
            size: Size {
                length,
                width,
                height,
            },
            wall: None,
        }
    }
}

/// A soil and a cap that suit each other.
struct StarterBed {
    soil_mm: f64,
    cap_mm: f64,
    /// Soil and cap in metric and in US units.
    written: [(&'static str, &'static str); 2],
}

/// Beds to choose from, the deepest first.
const BEDS: [StarterBed; 3] = [
    StarterBed {
        soil_mm: 25.0,
        cap_mm: 40.0,
        written: [("25 mm", "40 mm"), ("1 in", "1 1/2 in")],
    },
    StarterBed {
        soil_mm: 20.0,
        cap_mm: 30.0,
        written: [("20 mm", "30 mm"), ("3/4 in", "1 1/4 in")],
    },
    StarterBed {
        soil_mm: 15.0,
        cap_mm: 25.0,
        written: [("15 mm", "25 mm"), ("1/2 in", "1 in")],
    },
];

/// Judgement: a bed of more than this share of the height looks and works like a tub.
const MOST_OF_HEIGHT: f64 = 0.3;

/// The deepest bed that leaves enough of the height to the water, else the shallowest.
fn bed(height: Length) -> &'static StarterBed {
    let room_mm = height.mm() * MOST_OF_HEIGHT;
    let [.., shallowest] = &BEDS;
    BEDS.iter()
        .find(|bed| bed.soil_mm + bed.cap_mm <= room_mm)
        .unwrap_or(shallowest)
}

/// Judgement: floor that one bunch of a fast stem plant takes, cm2.
const FLOOR_PER_BUNCH_CM2: f64 = 150.0;
/// Judgement: floor beside which one pot of a slow plant stands, cm2.
const FLOOR_PER_POT_CM2: f64 = 450.0;

/// A spec with every section, those that are not needed commented out.
///
/// # Example
/// ```
/// use lentic::{spec, units::UnitSystem};
/// let text = spec::starter::text(UnitSystem::Metric);
/// assert!(spec::parse(&text).is_ok());
/// ```
pub fn text(units: UnitSystem) -> String {
    sized(&StarterSize::usual(units), units)
}

/// The same for a box of some size, with bed and planting fitted to it.
pub fn sized(size: &StarterSize, units: UnitSystem) -> String {
    let bed = bed(size.size.height);
    let (soil, cap) = match units {
        UnitSystem::Metric => bed.written[0],
        UnitSystem::Us => bed.written[1],
    };
    let floor_cm2 = size.size.length.cm() * size.size.width.cm();
    let count = |floor: f64| (floor_cm2 / floor).round().max(1.0);
    let usual_wall = match units {
        UnitSystem::Metric => "6 mm",
        UnitSystem::Us => "1/4 in",
    };
    let fitted = [
        ("{box}", size.wall.map_or(INSIDE, |_| OUTSIDE).to_owned()),
        ("{wall}", size.wall.unwrap_or(usual_wall).to_owned()),
        // Quoted as TOML needs it: a size in inches may hold quotes of its own.
        (
            "{size}",
            toml::Value::from(size.written.as_str()).to_string(),
        ),
        ("{soil_depth}", soil.to_owned()),
        ("{cap_depth}", cap.to_owned()),
        ("{bunches}", count(FLOOR_PER_BUNCH_CM2).to_string()),
        ("{pots}", count(FLOOR_PER_POT_CM2).to_string()),
    ];
    let words = WORDS.iter().map(|(word, metric, us)| match units {
        UnitSystem::Metric => (*word, (*metric).to_owned()),
        UnitSystem::Us => (*word, (*us).to_owned()),
    });
    words
        .chain(fitted)
        .fold(TEMPLATE.to_owned(), |text, (word, value)| {
            text.replace(word, &value)
        })
}
