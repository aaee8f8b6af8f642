//! The whole plan of a design, its remedies tried.

use super::outcome::Plan;
use super::rule::{self, NightCase};
use super::stages::{Results, Stages};
use super::tried::{self, Advice};
use super::{hazard, preparation, quantity, range, shopping, stocking};
use crate::numerics::rodas::IntegrationError;

impl Stages<'_> {
    /// The whole plan.
    pub(super) fn plan(&self) -> Result<Plan, IntegrationError> {
        let mut measures = self.measures();
        let needed = self.needed()?;
        let startup = self.flush()?.section();
        let bed = self.bed()?;
        let night = self.night()?;
        let case = self.case(&Results {
            measures: &measures,
            bed: &bed,
            planting: &needed,
            startup: &startup,
            seeks_remedies: true,
        })?;
        let mut findings = rule::all(&case, &NightCase::of(night, needed.met.is_met()))?;
        if !self.is_running {
            let advice = Advice {
                design: self.design,
                needed: &needed.section.needed,
            };
            findings = tried::tried(&advice, self.options, findings)?;
        }
        measures.cap.verdict = rule::cap_verdict(&findings);
        let mut cautions = if self.is_running {
            let of_bed = findings
                .iter()
                .filter(|finding| rule::is_about_bed(finding.code));
            hazard::cautions_of_bed(self.design, rule::ordered(of_bed))
        } else {
            let calendar = startup.calendar.iter().flat_map(|entry| &entry.actions);
            let all = calendar.copied().chain(rule::ordered(&findings));
            hazard::cautions(self.design, all)
        };
        cautions.extend(night.ph_outside().map(range::ph_outside));
        let draft = self.design.draft();
        let (heat, air) = (night.heat(), night.night());
        let ready = preparation::preparation(self.design, &measures.soil, &heat);
        Ok(Plan {
            shopping: shopping::shopping(self.design, &measures.cap, &ready, &startup, &air),
            preparation: ready,
            stocking: stocking::steps(self.design, &startup.animals_from),
            habits: stocking::habits(self.design, &heat),
            name: draft.name.clone(),
            assumed: draft.assumed.clone(),
            tank: quantity::tank(self.design),
            cost: measures.cost,
            cautions,
            hours: night.hours(),
            night: air,
            flow: night.flow(),
            light: night.light(),
            animals: night.animals(),
            heat,
            soil: measures.soil,
            cap: measures.cap,
            bed,
            weight: measures.weight,
            panes: measures.panes,
            planting: needed.section,
            startup,
            days: self.flush()?.days(),
            days_with_changes: self.flush()?.days_with_changes(),
            budget: self.flush()?.budget(),
            asked: draft.goal.probability.fraction(),
            findings,
        })
    }
}
