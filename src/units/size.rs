//! Three lengths written together, as in "60 x 30 x 36 cm".

use super::error::{QuantityError, QuantityProblem};
use super::{Length, Quantity, parse};

/// Length, width and height of a box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Size {
    /// Along the front.
    pub length: Length,
    /// From front to back.
    pub width: Length,
    /// From bottom to rim.
    pub height: Length,
}

/// What a size is called and how it is written.
const NAME: &str = "a size";
/// A size as a person would write it.
const EXAMPLE: &str = "60 x 30 x 36 cm";

impl Size {
    /// How many lengths it has.
    pub const DIMENSIONS: usize = 3;

    /// Reads three lengths parted by `x`; the unit stands once at the end or after each.
    ///
    /// # Errors
    /// As [`Quantity::parse`], and for any other number of lengths.
    ///
    /// # Example
    /// ```
    /// use lentic::units::size::Size;
    /// let size = Size::parse("20 x 10 x 12 in")?;
    /// assert!((size.length.cm() - 50.8).abs() < 1e-12);
    /// # Ok::<(), lentic::units::QuantityError>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let parts: Vec<&str> = text.split(['x', 'X', '×', '*']).map(str::trim).collect();
        let &[length, width, height] = parts.as_slice() else {
            return Err(QuantityError {
                quantity: NAME,
                example: EXAMPLE,
                problem: QuantityProblem::DimensionCount {
                    text: text.trim().to_owned(),
                    found: parts.iter().filter(|part| !part.is_empty()).count(),
                },
            });
        };
        let unit = parse::split_number(height).map_or("", |(_, unit)| unit);
        let read = |part: &str| match parse::split_number(part) {
            Ok((_, "")) => Length::parse(&format!("{part} {unit}")),
            _ => Length::parse(part),
        };
        Ok(Self {
            length: read(length)?,
            width: read(width)?,
            height: read(height)?,
        })
    }
}
