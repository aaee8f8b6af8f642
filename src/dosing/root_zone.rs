//! Nitrogen among the roots, where the bed bears it.

use super::section::RootZone;
use crate::design::Design;
use crate::startup::limits::AMMONIA;

/// Share of the need that roots take up: judgement.
const ROOTED: f64 = 0.5;
/// Weeks for which it is laid in: practice, the life of slow prills.
const WEEKS: f64 = 13.0;
/// How deep spots lie at least, mm: practice.
const DEEP_MM: f64 = 50.0;
/// Animals that dig as deep open spots, mm.
const DIGS_MM: f64 = 30.0;

/// Spots for a quarter of a year, each so small that one torn open leaves ammonia at its
/// limit; nothing where the bed is thinner than they lie or is dug in.
pub(super) fn of(design: &Design, need_mg_per_week: f64) -> Option<RootZone> {
    let bed = design.bed();
    let depth_mm = (bed.soil.mean + bed.cap.mean).mm();
    let mut animals = design.draft().animals.iter();
    let is_dug = animals.any(|stock| stock.animal.digs_mm.typical >= DIGS_MM);
    if depth_mm < DEEP_MM || is_dug {
        return None;
    }
    let total_mg = ROOTED * need_mg_per_week * WEEKS;
    let nitrogen_mg = (AMMONIA.watch * design.water().litres()).min(total_mg);
    let spots = (total_mg / nitrogen_mg).ceil();
    Some(RootZone {
        spots: spots as u32,
        nitrogen_mg,
        grid_cm: (bed.area().cm2() / spots).sqrt(),
    })
}
