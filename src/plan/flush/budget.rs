//! Nitrogen dissolved in the water by the day.

use crate::design::Design;
use crate::source::Band;
use crate::startup::ensemble::central;
use crate::startup::{Budget, Inputs, Parameters, budget};

/// Milligrams in a gram.
const MG_PER_G: f64 = 1e3;

/// What brings nitrogen to the water on a day and what takes it, mg in the whole tank.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BudgetRow {
    /// Days after flooding.
    pub day: f64,
    /// Out of the soil.
    pub from_soil: f64,
    /// By feed and dead matter.
    pub from_matter: f64,
    /// Into plants.
    pub to_plants: f64,
    /// Into algae, and to the air.
    pub to_others: f64,
    /// With changed water; below zero where the tap brings more.
    pub changed: f64,
    /// Ammonia that bacteria turn into nitrite and nitrate; it stays in the water.
    pub oxidised: f64,
}

/// Every day of the typical run; none where its numbers leave the finite ones.
pub(super) fn rows(design: &Design, inputs: &Inputs, days: u32) -> Vec<BudgetRow> {
    let bands = Parameters::<Band>::of(design);
    let (numbers, floor_m2) = (bands.central(), design.bed().area().m2());
    let followed = central(inputs, &bands, days).map_or_else(|_| Vec::new(), |run| run.days);
    let row = |sample| budget(inputs, &numbers, sample);
    followed
        .iter()
        .map(|sample| BudgetRow::of(sample.day, &row(sample), floor_m2))
        .collect()
}

impl BudgetRow {
    fn of(day: f64, budget: &Budget, floor_m2: f64) -> Self {
        let mg = |g_m2: f64| g_m2 * floor_m2 * MG_PER_G;
        Self {
            day,
            from_soil: mg(budget.from_soil),
            from_matter: mg(budget.from_matter),
            to_plants: mg(budget.to_plants),
            to_others: mg(budget.to_algae + budget.to_air),
            changed: mg(budget.changed),
            oxidised: mg(budget.oxidised),
        }
    }

    /// What the water holds more after the day.
    pub fn left(&self) -> f64 {
        self.from_soil + self.from_matter - self.to_plants - self.to_others - self.changed
    }
}
