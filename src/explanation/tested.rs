//! How far the models were held against what others observed.

/// How far the figures of a section lay from observations; none where none were found.
///
/// The numbers are those of the table of observed cases in `DEVELOPERS.md`.
///
/// # Example
/// ```
/// use lentic::explanation::tested;
/// assert!(tested("night").is_some_and(|said| said.contains("dawn oxygen")));
/// assert_eq!(tested("weight"), None);
/// ```
pub fn tested(section: &str) -> Option<&'static str> {
    match section {
        "startup" => Some(STARTUP),
        "night" => Some(NIGHT),
        _ => None,
    }
}

const STARTUP: &str = "How far it lay from observations: standing ammonia of fed aquaria 0.18 for 0.21 mg N/L, ready on day 35 for 46; ammonium from a flooded organic soil 5.5 times the measured, phosphate from a farm soil 0.8 to 1.3 times (numbers were set with these two in view). No measured start of a potting-mix tank was found.";
const NIGHT: &str = "How far it lay from observations: dawn oxygen up to 3 mg/L too high in ponds and lakes, the largest of the day within 4 %, pH within 0.5 (all in view while it was written); in a bed of water chestnut, which was not, mean oxygen 5.6 for 5.1 and the least 5.3 for 2.5 mg/L. No measured night of a small tank was found.";
