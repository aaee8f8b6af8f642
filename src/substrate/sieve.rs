//! Openings of test sieves by mesh number.

use crate::units::Length;

/// Mesh number and opening in millimetres (ASTM E11; the openings are those of
/// ISO 3310-1, series R40/3). Older Tyler numbers differ in places.
const OPENING_MM: &[(&str, f64)] = &[
    ("3.5", 5.60),
    ("4", 4.75),
    ("5", 4.00),
    ("6", 3.35),
    ("7", 2.80),
    ("8", 2.36),
    ("10", 2.00),
    ("12", 1.70),
    ("14", 1.40),
    ("16", 1.18),
    ("18", 1.00),
    ("20", 0.850),
    ("25", 0.710),
    ("30", 0.600),
    ("35", 0.500),
    ("40", 0.425),
    ("45", 0.355),
    ("50", 0.300),
    ("60", 0.250),
    ("70", 0.212),
    ("80", 0.180),
    ("100", 0.150),
    ("120", 0.125),
    ("140", 0.106),
    ("170", 0.090),
    ("200", 0.075),
    ("230", 0.063),
    ("270", 0.053),
    ("325", 0.045),
    ("400", 0.038),
    ("450", 0.032),
    ("500", 0.025),
    ("635", 0.020),
];

/// The opening of the sieve with this ASTM E11 number, where there is one.
///
/// # Example
/// ```
/// use lentic::substrate::sieve::opening;
/// assert_eq!(opening("200").map(|size| size.mm()), Some(0.075));
/// assert_eq!(opening("21"), None);
/// ```
pub fn opening(mesh: &str) -> Option<Length> {
    OPENING_MM
        .iter()
        .find(|(number, _)| *number == mesh)
        .map(|&(_, mm)| Length::from_mm(mm))
}

/// The two sieves of a mesh range such as "20/40", coarser first.
///
/// The numbers may stand in either order and be parted by a slash, a dash or `x`.
///
/// # Example
/// ```
/// use lentic::substrate::sieve::range;
/// // 1.70 and 0.850 mm (astm_e11)
/// let sizes = range("20-12").map(|(coarse, fine)| (coarse.mm(), fine.mm()));
/// assert_eq!(sizes, Some((1.70, 0.850)));
/// ```
pub fn range(text: &str) -> Option<(Length, Length)> {
    let mut sizes = text
        .split(['/', '-', 'x', 'X', '×'])
        .map(|part| opening(part.trim()));
    let (first, second) = (sizes.next()??, sizes.next()??);
    let complete = sizes.next().is_none() && first != second;
    complete.then(|| (first.max(second), first.min(second)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_mesh_range_reads_in_either_order() {
        let wanted = Some((Length::from_mm(0.85), Length::from_mm(0.425)));
        assert_eq!(range("20/40"), wanted);
        assert_eq!(range("40 - 20"), wanted);
        assert_eq!(range("20 x 40"), wanted);
    }

    #[test]
    fn half_a_range_or_an_unknown_mesh_is_no_range() {
        for text in ["20", "20/", "20/41", "20/30/40", "20/20", ""] {
            assert_eq!(range(text), None, "{text:?}");
        }
    }

    #[test]
    fn higher_numbers_are_finer() {
        assert!(OPENING_MM.windows(2).all(|pair| pair[0].1 > pair[1].1));
    }
}
