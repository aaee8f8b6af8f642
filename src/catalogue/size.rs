//! Tank sizes as sold.

use serde::{Deserialize, Deserializer, Serialize, Serializer, de};

use super::row::row;
use crate::source::{Basis, Source};
use crate::units::size::Size;
use crate::units::{Length, Quantity, Volume};

/// A quantity together with the text it was read from.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed<T> {
    /// As printed, with its unit.
    pub text: String,
    /// What that means.
    pub value: T,
}

/// A tank size as sold. Makers differ by frame and glass: measure the inside.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TankSize {
    /// Name in snake case.
    pub name: String,
    /// Name for people.
    pub label: String,
    /// Trade words.
    #[serde(default)]
    pub aliases: Vec<String>,
    /// Outside length, width and height.
    pub outside: Printed<Size>,
    /// Thickness of the glass, bottom included.
    pub wall: Printed<Length>,
    /// The volume it is sold under; more than it holds.
    pub nominal: Option<Printed<Volume>>,
    /// What the row rests on.
    pub basis: Basis,
    /// Keys of the sources.
    #[serde(default)]
    pub source: Vec<Source>,
    /// What to know about it.
    #[serde(default)]
    pub note: String,
}

row!(TankSize, "tank size", sizes, "data/sizes.toml");

impl TankSize {
    /// Volume to the rim within walls and bottom of one thickness.
    ///
    /// ```text
    /// V = (L - 2 t) (W - 2 t) (H - t)
    /// ```
    pub fn inside_volume(&self) -> Volume {
        let inside = self.inside();
        Volume::from_m3(inside.length.m() * inside.width.m() * inside.height.m())
    }

    /// Length, width and height within walls and bottom.
    pub fn inside(&self) -> Size {
        let (outside, wall) = (self.outside.value, self.wall.value);
        Size {
            length: outside.length - wall * 2.0,
            width: outside.width - wall * 2.0,
            height: outside.height - wall,
        }
    }
}

impl<T> Serialize for Printed<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.text)
    }
}

impl<'de> Deserialize<'de> for Printed<Size> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let value = Size::parse(&text).map_err(de::Error::custom)?;
        Ok(Self { text, value })
    }
}

impl<'de, Q: Quantity> Deserialize<'de> for Printed<Q> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let value = Q::parse(&text).map_err(de::Error::custom)?;
        Ok(Self { text, value })
    }
}
