//! What the spec and the other readings say by themselves: facts that are commoner where
//! a cause is at work.
//!
//! How often each holds stands in the table of evidence; here stands when it does.

use super::case::CaseHistory;
use super::cause::{ByCause, Cause};
use super::dawn::Dawn;
use super::fact::{
    GASPING, HARD_DGH, LONG_H, LOW_OXYGEN_MG_L, OLD_D, RICH_G_KG, STRONG_UMOL, WARM_C, YOUNG_D,
    brings_something, digs_deep, fails_blank, grows_fast, has_hardened, is_bad, is_fed_much,
    is_over_limit, is_soft, is_still, is_very_soft, kills_bacteria, read_under, reads_clean,
    stocked_early, surface_may_close, tops_up_hard,
};
use super::measurement::Measurand;
use super::sign::SUFFERING;
use crate::catalogue::{SpecFact, facts};
use crate::design::Incident;

/// No fact holds in more than this share of the tanks, or in less.
const MOST: f64 = 0.95;
const LEAST: f64 = 0.02;

/// A case with what was computed for its facts.
#[derive(Debug, Clone, Copy)]
pub struct Facts<'a> {
    /// The case.
    pub case: &'a CaseHistory<'a>,
    /// The night as the model has it, where it was followed.
    pub dawn: Option<Dawn>,
}

/// Every fact with whether it holds; without those of which the case does not say, or which
/// are no question for it.
pub fn known<'a>(case: &'a Facts<'_>) -> impl Iterator<Item = (&'static SpecFact, bool)> + 'a {
    facts().iter().filter_map(|fact| {
        let (_, holds) = HOLDS.iter().find(|(name, _)| *name == fact.name)?;
        Some((fact, holds(case)?))
    })
}

/// The likelihood of a fact's holding or not, under each cause.
pub fn likelihood(fact: &SpecFact, holds: bool) -> ByCause {
    ByCause::of(|cause: Cause| {
        let share = fact.odds.share(cause.name()).clamp(LEAST, MOST);
        if holds { share } else { 1.0 - share }
    })
}

/// Whether a fact holds, where that is known.
type Holds = fn(&Facts<'_>) -> Option<bool>;

/// By the names of the table of evidence.
const HOLDS: &[(&str, Holds)] = &[
    ("cap_coarse", |facts| {
        Some(is_bad(facts.case.standing.coarse))
    }),
    ("bed_tight", |facts| {
        let standing = &facts.case.standing;
        let tight = is_bad(standing.fine) || is_bad(standing.deep) || is_bad(standing.soil_deep);
        let known = knows(facts, "cap.depth") && knows(facts, "soil.depth");
        (known || tight).then_some(tight)
    }),
    ("cap_thin", |facts| {
        knows(facts, "cap.depth").then(|| is_bad(facts.case.standing.thin))
    }),
    ("soil_rich", |facts| {
        let soil = &facts.case.design.draft().soil;
        Some(soil.material.rich || soil.mineral_n_g_kg().typical >= RICH_G_KG)
    }),
    ("planting_short", |facts| {
        Some(facts.case.standing.index < 1.0)
    }),
    ("nothing_fast", |facts| Some(!grows_fast(facts.case))),
    ("surface_may_close", |facts| {
        Some(surface_may_close(facts.case))
    }),
    ("lamp_long", |facts| {
        let inputs = &facts.case.inputs;
        Some(inputs.light_hours > LONG_H || inputs.light.umol_m2_s() > STRONG_UMOL)
    }),
    ("young", |facts| Some(facts.case.age_d <= YOUNG_D)),
    ("old", |facts| Some(facts.case.age_d >= OLD_D)),
    ("stocked", |facts| Some(facts.case.is_stocked())),
    ("diggers", |facts| Some(digs_deep(facts.case))),
    ("warm", |facts| {
        let read = facts.case.log.iter();
        let warm = facts.case.temperature().celsius() >= WARM_C
            || read
                .filter(|reading| reading.of == Measurand::Temperature)
                .any(|reading| reading.value.number() >= WARM_C);
        Some(warm)
    }),
    ("soft", |facts| Some(is_soft(facts.case))),
    ("very_soft", |facts| {
        is_soft(facts.case).then(|| is_very_soft(facts.case))
    }),
    ("hard_tap", |facts| {
        Some(facts.case.design.draft().water.hardness.dgh() > HARD_DGH)
    }),
    ("changed", |facts| {
        Some(facts.case.design.draft().water.change.is_some())
    }),
    ("still", |facts| is_still(facts.case.design)),
    ("tap_brings", |facts| Some(brings_something(facts.case))),
    ("fed_much", |facts| Some(is_fed_much(facts.case))),
    ("low_dawn_gasping", |facts| {
        let gasps = facts.case.has_one_of(&GASPING);
        gasps.then_some(facts.dawn.is_some_and(|dawn| dawn.is_low()))
    }),
    ("low_dawn", |facts| {
        let gasps = facts.case.has_one_of(&GASPING);
        (!gasps).then_some(facts.dawn.is_some_and(|dawn| dawn.is_low()))
    }),
    ("oxygen_low", |facts| {
        Some(read_under(facts.case, Measurand::Oxygen, LOW_OXYGEN_MG_L))
    }),
    ("stocked_early", |facts| {
        let is_young = facts.case.is_stocked() && facts.case.age_d <= YOUNG_D;
        is_young.then(|| stocked_early(facts.case))
    }),
    ("medicine", |facts| {
        came_in(facts.case, |incident| {
            matches!(incident, Incident::Medicine(_))
        })
    }),
    ("kills_bacteria", |facts| {
        came_in(facts.case, kills_bacteria)
    }),
    ("lamp_changed", |facts| {
        came_in(facts.case, |incident| *incident == Incident::LampChanged)
    }),
    ("came_in", |facts| {
        came_in(facts.case, |incident| {
            matches!(
                incident,
                Incident::Sprayed | Incident::GasAdded | Incident::AnimalsAdded(_)
            )
        })
    }),
    ("clean", |facts| {
        let suffers = facts.case.is_stocked() && facts.case.has_one_of(&SUFFERING);
        suffers.then(|| reads_clean(facts.case)).flatten()
    }),
    ("hardened", |facts| has_hardened(facts.case)),
    ("topped_up", |facts| tops_up_hard(facts.case)),
    ("blank", |facts| fails_blank(facts.case)),
    // clean readings are weighed as readings already
    ("over_limit", |facts| {
        is_over_limit(facts.case).then_some(true)
    }),
];

/// Whether the spec says what stands at a key.
fn knows(facts: &Facts<'_>, key: &str) -> bool {
    facts.case.design.draft().says(key)
}

/// That something of a kind came in of late; nothing where none is told of.
fn came_in(case: &CaseHistory<'_>, is_so: fn(&Incident) -> bool) -> Option<bool> {
    case.incidents().any(is_so).then_some(true)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_fact_of_the_table_is_looked_for_and_no_other() {
        let table: Vec<&str> = facts().iter().map(|fact| fact.name.as_str()).collect();
        let code: Vec<&str> = HOLDS.iter().map(|(name, _)| *name).collect();
        assert_eq!(table, code);
    }
}
