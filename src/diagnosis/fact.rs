//! What is true of a tank in question, by its spec, its log and its signs.

use super::case::CaseHistory;
use super::measurement::{Measurand, Measurement};
use crate::catalogue::PlantGroup;
use crate::design::{Design, EventKind, FlowDevice, Incident};
use crate::finding::Status;
use crate::plan::watch_limit_mg_l;
use crate::units::Mass;

/// A tank is young up to this day and old from that on.
pub(super) const YOUNG_D: f64 = 45.0;
pub(super) const OLD_D: f64 = 180.0;
/// Light counts as long from these hours on, as strong from this level on, umol/(m2 s).
pub(super) const LONG_H: f64 = 10.0;
pub(super) const STRONG_UMOL: f64 = 100.0;
/// Cover that closes a surface, %.
pub(super) const CLOSED_PCT: f64 = 66.0;
/// Warm water from here on, C.
pub(super) const WARM_C: f64 = 29.0;
/// Soft water, dKH, and acid water.
pub(super) const SOFT_DKH: f64 = 2.0;
pub(super) const ACID_PH: f64 = 6.6;
/// Hard water, dGH.
pub(super) const HARD_DGH: f64 = 15.0;
/// Tap water that brings something: nitrate, mg/L, and ammonia, mg N/L.
pub(super) const TAP_NITRATE_MG_L: f64 = 20.0;
pub(super) const TAP_AMMONIA_MG_L: f64 = 0.2;
/// Food a day over the mass of the animals from which it is much.
pub(super) const MUCH_FEED: f64 = 0.04;
/// Mineral nitrogen from which soil is rich, g/kg.
pub(super) const RICH_G_KG: f64 = 0.4;
/// Oxygen under which a reading is low, mg/L.
pub(super) const LOW_OXYGEN_MG_L: f64 = 4.0;

/// Animals that came by this day came early (common practice, no source).
pub(super) const EARLY_D: f64 = 21.0;
/// Water that counts as very soft, dKH, and as very acid.
pub(super) const VERY_SOFT_DKH: f64 = 1.0;
pub(super) const VERY_ACID_PH: f64 = 6.0;
/// Ammonia, mg N/L, and nitrite, mg/L, under which a reading counts as nothing: the first
/// marks of common kits (judgement).
pub(super) const NO_AMMONIA_MG_N_L: f64 = 0.2;
pub(super) const NO_NITRITE_MG_L: f64 = 0.2;
/// A tank so many times as hard as its tap, and a tap of at least so much, has grown hard
/// (judgement).
const HARDENED: f64 = 1.4;
const LEAST_HARD_DGH: f64 = 4.0;
/// Top-ups with so much softened water bring few salts (judgement).
const MOSTLY_SOFT: f64 = 0.5;
/// Words for medicines that kill nitrifying bacteria too (from memory).
const KILLS_BACTERIA: [&str; 6] = [
    "antibiotic",
    "erythromycin",
    "tetracycline",
    "nitrofuran",
    "methylene blue",
    "formaldehyde",
];
/// Signs of animals that gasp for air.
pub(super) const GASPING: [&str; 2] = ["gasping_at_dawn", "gasping_all_day"];
/// Signs of animals that are ill or dying, gasping aside.
pub(super) const ILL: [&str; 8] = [
    "dead_animal",
    "deaths_after_change",
    "spots_on_animals",
    "rubbing",
    "clamped_fins",
    "listless",
    "failed_moult",
    "circling",
];
/// Whether a status is worse than a note.
pub(super) fn is_bad(status: Status) -> bool {
    status >= Status::Watch
}

/// Whether a reading of the last two weeks passes its limit.
pub(super) fn is_over_limit(case: &CaseHistory<'_>) -> bool {
    let recent = |measurement: &&Measurement| measurement.day >= case.age_d - 14.0;
    case.log.iter().filter(recent).any(|measurement| {
        let limit = measurement
            .of
            .analyte()
            .and_then(|analyte| watch_limit_mg_l(case.design, analyte));
        limit.is_some_and(|limit| measurement.value.at_least() >= limit)
    })
}

pub(super) fn read_under(case: &CaseHistory<'_>, of: Measurand, limit: f64) -> bool {
    let mut readings = case.log.iter().filter(|reading| reading.of == of);
    readings.any(|reading| reading.value.number() < limit)
}

pub(super) fn grows_fast(case: &CaseHistory<'_>) -> bool {
    let planted = case.design.planted();
    planted.fast.dry > Mass::ZERO || planted.feeding_floaters.dry > Mass::ZERO
}

pub(super) fn digs_deep(case: &CaseHistory<'_>) -> bool {
    let cap_mm = case.design.bed().cap.thinnest.depth.mm();
    let stock = case.design.draft().animals.iter();
    stock
        .filter(|stock| stock.count > 0)
        .any(|stock| stock.animal.digs_mm.typical > cap_mm)
}

pub(super) fn surface_may_close(case: &CaseHistory<'_>) -> bool {
    let draft = case.design.draft();
    let floats = draft
        .plants
        .iter()
        .any(|planting| planting.plant.group == PlantGroup::Floater);
    floats
        && (draft.harvest.floaters_above.percent() > CLOSED_PCT
            || case.design.planted().cover.percent() > CLOSED_PCT)
}

pub(super) fn is_fed_much(case: &CaseHistory<'_>) -> bool {
    let beside = case.lately().filter_map(|kind| match kind {
        EventKind::Fed(mass) => Some(*mass),
        _ => None,
    });
    let most = beside.fold(Mass::ZERO, Mass::max);
    let fed = case.design.draft().feed.mass_per_day + most;
    case.is_stocked() && fed > case.animal_mass() * MUCH_FEED
}

/// Whether the tank's water is far harder than the tap's, where both are known.
pub(super) fn has_hardened(case: &CaseHistory<'_>) -> Option<bool> {
    let draft = case.design.draft();
    let read = case.latest(Measurand::Hardness)?.value.number();
    let tap = draft.water.hardness.dgh();
    draft
        .says("water.hardness")
        .then_some(read > HARDENED * tap.max(LEAST_HARD_DGH))
}

/// Whether what dries away is replaced with hard water, where topping up is told of.
pub(super) fn tops_up_hard(case: &CaseHistory<'_>) -> Option<bool> {
    let draft = case.design.draft();
    let mut kinds = draft.events.iter().map(|event| &event.kind);
    let is_told = kinds.any(|kind| matches!(kind, EventKind::ToppedUp(_)));
    is_told.then_some(draft.water.top_up.softened.fraction() < MOSTLY_SOFT)
}

/// Whether the same kits showed something in water that holds nothing, where that was tried.
pub(super) fn fails_blank(case: &CaseHistory<'_>) -> Option<bool> {
    let (_, is_clean) = case.design.draft().latest(|reading| reading.blank)?;
    Some(!is_clean)
}

/// Whether a medicine kills the bacteria of a filter.
pub(super) fn kills_bacteria(incident: &Incident) -> bool {
    let Incident::Medicine(substance) = incident else {
        return false;
    };
    let substance = substance.to_lowercase();
    KILLS_BACTERIA.iter().any(|kind| substance.contains(kind))
}

pub(super) fn brings_something(case: &CaseHistory<'_>) -> bool {
    let water = &case.design.draft().water;
    water.nitrate.mg_l() >= TAP_NITRATE_MG_L || water.ammonia.mg_l() >= TAP_AMMONIA_MG_L
}

pub(super) fn is_soft(case: &CaseHistory<'_>) -> bool {
    case.alkalinity().dkh() < SOFT_DKH
        || read_under(case, Measurand::Ph, ACID_PH)
        || case.ph() < ACID_PH
}

pub(super) fn is_very_soft(case: &CaseHistory<'_>) -> bool {
    case.alkalinity().dkh() < VERY_SOFT_DKH
        || read_under(case, Measurand::Ph, VERY_ACID_PH)
        || case.ph() < VERY_ACID_PH
}

/// Whether nothing moves the water, where the spec says what does.
pub(super) fn is_still(design: &Design) -> Option<bool> {
    let draft = design.draft();
    draft
        .says("air.device")
        .then_some(draft.air.device == FlowDevice::None)
}

pub(super) fn stocked_early(case: &CaseHistory<'_>) -> bool {
    let stock = case.design.draft().animals.iter();
    let mut days = stock
        .filter(|stock| stock.count > 0)
        .map(|stock| stock.from_day);
    days.any(|day| day < EARLY_D)
}

/// Whether ammonia and nitrite read nothing of late, where both were read.
pub(super) fn reads_clean(case: &CaseHistory<'_>) -> Option<bool> {
    let last = |of| case.latest(of).map(|read| read.value.at_least());
    let (ammonia, nitrite) = (last(Measurand::Ammonia)?, last(Measurand::Nitrite)?);
    Some(ammonia < NO_AMMONIA_MG_N_L && nitrite < NO_NITRITE_MG_L)
}
