//! Plants that are added: floaters first, then fast growers, in steps.

use super::super::case::CaseHistory;
use crate::catalogue::{Plant, PlantGroup, Portion, plants};
use crate::design::closed;
use crate::startup::PlantedMass;
use crate::units::Mass;

/// Floaters are brought to at most this cover, %.
const MOST_COVER_PCT: f64 = 45.0;
/// Steps of floaters, then of fast growers.
const FLOATER_STEPS: u32 = 4;
const STEM_STEPS: u32 = 10;
/// Dry fast growers of one step over the floor, g/m2.
const STEM_STEP_G_M2: f64 = 20.0;
/// The floater and the fast grower suggested where none is planted.
const FLOATER: &str = "lemna_minor";
const STEM: &str = "hygrophila_difformis";

/// Plants to add, dry.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Addition {
    floater: &'static Plant,
    stem: &'static Plant,
    floating: Mass,
    fast: Mass,
    /// Share of the surface that the floaters added cover, %.
    cover_pct: f64,
}

impl Addition {
    /// Steps there are.
    pub(super) const STEPS: u32 = FLOATER_STEPS + STEM_STEPS;

    /// The addition of a step, each more than the one before.
    pub(super) fn step(case: &CaseHistory<'_>, step: u32) -> Self {
        let floater = chosen(case, PlantGroup::Floater, FLOATER);
        let stem = chosen(case, PlantGroup::Fast, STEM);
        let planted = case.design.planted().cover.percent();
        let room = (MOST_COVER_PCT - planted).max(0.0);
        let cover_pct = room * f64::from(step.min(FLOATER_STEPS)) / f64::from(FLOATER_STEPS);
        let stems = f64::from(step.saturating_sub(FLOATER_STEPS));
        let floor_m2 = case.design.bed().area().m2();
        Self {
            floater,
            stem,
            floating: closed(floater, case.design.surface()) * (cover_pct / 100.0),
            fast: Mass::from_g(stems * STEM_STEP_G_M2 * floor_m2),
            cover_pct,
        }
    }

    /// As the model takes it.
    pub(super) fn planting(&self) -> PlantedMass {
        PlantedMass {
            floating: self.floating,
            fast: self.fast,
            ..PlantedMass::default()
        }
    }

    /// Fresh mass of all of it.
    pub(super) fn fresh(&self) -> Mass {
        self.floating / self.floater.dry_per_fresh.typical
            + self.fast / self.stem.dry_per_fresh.typical
    }

    /// "12 g of duckweed (40 % of the surface) and 9 stems of wisteria".
    pub(super) fn says(&self) -> String {
        let mut parts = Vec::new();
        if self.floating > Mass::ZERO {
            let fresh = self.floating / self.floater.dry_per_fresh.typical;
            parts.push(format!(
                "{:.0} g of {} ({:.0} % of the surface)",
                fresh.g().ceil(),
                self.floater.label,
                self.cover_pct
            ));
        }
        if self.fast > Mass::ZERO {
            parts.push(stems(self.stem, self.fast));
        }
        parts.join(" and ")
    }
}

fn stems(plant: &Plant, dry: Mass) -> String {
    let fresh_g = (dry / plant.dry_per_fresh.typical).g();
    let smallest = plant
        .fresh_g
        .iter()
        .map(|(portion, grams)| (*portion, grams.typical))
        .min_by(|a: &(Portion, f64), b| a.1.total_cmp(&b.1));
    match smallest {
        Some((portion, grams)) => {
            let count = (fresh_g / grams).ceil();
            let word = if count > 1.0 {
                portion.plural()
            } else {
                portion.singular()
            };
            format!("{count:.0} {word} of {} ({fresh_g:.0} g)", plant.label)
        }
        None => format!("{fresh_g:.0} g of {}", plant.label),
    }
}

/// The keeper's own plant of a group, or the one suggested.
fn chosen(case: &CaseHistory<'_>, group: PlantGroup, suggested: &str) -> &'static Plant {
    let own = case
        .design
        .draft()
        .plants
        .iter()
        .map(|planting| planting.plant);
    let fits =
        |plant: &&Plant| plant.group == group && !plant.fixes_nitrogen && plant.listed.is_empty();
    own.into_iter()
        .find(|plant| fits(plant))
        .unwrap_or_else(|| {
            let known = plants();
            known
                .iter()
                .find(|plant| plant.name == suggested)
                .unwrap_or(&known[0])
        })
}
