//! Oxygen at which what breathes goes at half its rate.

/// Oxygen at half respiration, mg/L: plants, whose uptake falls as a hyperbola
/// (`sorrell_1989`; the value a judgement), animals, which hold theirs until little is
/// left, bacteria on dead matter, and the bed (all judgement).
pub(super) const PLANT_HALF_MG_L: f64 = 2.0;
pub(super) const ANIMAL_HALF_MG_L: f64 = 0.5;
pub(super) const DEAD_HALF_MG_L: f64 = 1.0;
pub(super) const BED_HALF_MG_L: f64 = 2.0;
/// Oxygen at half growth of nitrifiers, mg/L (`hiatt_grady_2008`).
pub(super) const AMMONIA_OXIDISER_HALF_MG_L: f64 = 0.6;
pub(super) const NITRITE_OXIDISER_HALF_MG_L: f64 = 1.2;
