//! Points on a drawing sheet, and where an outline of them is cut.

use crate::units::Length;

/// A point on the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// To the right.
    pub across: Length,
    /// Upwards.
    pub up: Length,
}

/// The lowest and the highest place at which a vertical line cuts an outline; none
/// where it passes beside it.
///
/// # Example
/// ```
/// use lentic::geometry::{Spot, edges_at};
/// use lentic::units::Length;
/// let spot = |across, up| Spot { across: Length::from_cm(across), up: Length::from_cm(up) };
/// let wedge = [spot(0.0, 0.0), spot(10.0, 0.0), spot(10.0, 5.0)];
/// let [low, high] = edges_at(&wedge, Length::from_cm(4.0)).ok_or("beside it")?;
/// assert!(low.cm().abs() < 1e-12 && (high.cm() - 2.0).abs() < 1e-12);
/// assert_eq!(edges_at(&wedge, Length::from_cm(11.0)), None);
/// # Ok::<(), &str>(())
/// ```
pub fn edges_at(outline: &[Spot], across: Length) -> Option<[Length; 2]> {
    let next = outline.iter().cycle().skip(1);
    let cuts = outline.iter().zip(next).filter_map(|(a, b)| {
        let run = b.across - a.across;
        let within = across >= a.across.min(b.across) && across <= a.across.max(b.across);
        let share = (across - a.across) / run;
        (within && share.is_finite()).then(|| a.up + (b.up - a.up) * share)
    });
    cuts.fold(None, |edges, cut| match edges {
        None => Some([cut, cut]),
        Some([low, high]) => Some([low.min(cut), high.max(cut)]),
    })
}
