//! What a plan and the check of a bed hold, and how each stands as a whole.

use serde::Serialize;

use super::flush::{BudgetRow, Courses, DayRow, StartupSection};
use super::night::{AnimalsSection, FlowSection, HeatSection, HourRow, LightSection, NightSection};
use super::preparation::PreparationSection;
use super::section::{
    BedSection, CapSection, CostSection, PanesSection, PlantingSection, SoilSection, TankSection,
    WeightSection,
};
use super::shopping::ShoppingItem;
use super::stocking::StockingStep;
use super::words::of_100;
use crate::design::Assumption;
use crate::finding::{Caution, Finding, Remedy, Status};
use crate::result::results;

results! {
    /// A plan; its fields are named as in JSON.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct Plan {
        /// what you call the tank; the file's name where the spec has none
        pub name: String => Spec,
        /// what was taken for what the spec does not say
        pub assumed: Vec<Assumption> => Spec,
        /// The vessel and its water.
        pub tank: TankSection,
        /// Soil to buy.
        pub soil: SoilSection,
        /// Cap to buy.
        pub cap: CapSection,
        /// What the bed gives off.
        pub bed: BedSection,
        /// What it weighs.
        pub weight: WeightSection,
        /// Stress in flat panes, where there are any.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub panes: Option<PanesSection>,
        /// The planting of day one.
        pub planting: PlantingSection,
        /// How the first weeks go.
        pub startup: StartupSection,
        /// The first weeks day by day, for charts; `startup` gives them to scripts.
        #[serde(skip)]
        pub days: Vec<DayRow>,
        /// The same with water changed by readings, for charts; none where that is not advised.
        #[serde(skip)]
        pub days_with_changes: Vec<DayRow>,
        /// The nitrogen of each day, for charts and tables.
        #[serde(skip)]
        pub budget: Vec<BudgetRow>,
        /// The share of starts that is asked to stay under the limits, for the verdict.
        #[serde(skip)]
        pub asked: f64,
        /// A day and a night, on the leanest day.
        pub night: NightSection,
        /// That day hour by hour, for charts; `night` gives it to scripts.
        #[serde(skip)]
        pub hours: Vec<HourRow>,
        /// How the water moves.
        pub flow: FlowSection,
        /// Light below the floaters.
        pub light: LightSection,
        /// Animals against what is carried.
        pub animals: AnimalsSection,
        /// Heat, water and electricity.
        pub heat: HeatSection,
        /// What is got ready before it is filled.
        pub preparation: PreparationSection,
        /// what to buy beside the plants
        pub shopping: Vec<ShoppingItem> => "plan.preparation",
        /// animals in the steps in which they move in
        pub stocking: Vec<StockingStep> => "plan.stocking",
        /// what is done each week once it has grown in
        pub habits: Vec<String> => "plan.stocking" each "a habit in words",
        /// What it costs, where prices are given.
        #[serde(skip_serializing_if = "Option::is_none")]
        pub cost: Option<CostSection>,
        /// every rule that was judged, in the order of the codes
        pub findings: Vec<Finding> => Finding,
        /// hazards, and limits of what was computed
        pub cautions: Vec<Caution> => Caution,
    }
}

/// A check of the bed of an existing tank.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Check {
    /// What the keeper calls the tank.
    pub name: String,
    /// The one thing to do next.
    pub next_step: Remedy,
    /// The soil as it lies.
    pub soil: SoilSection,
    /// The cap as it lies.
    pub cap: CapSection,
    /// What the bed gives off.
    pub bed: BedSection,
    /// Judged results on the bed.
    pub findings: Vec<Finding>,
    /// Hazards and limits.
    pub cautions: Vec<Caution>,
}

impl Plan {
    /// The first weeks for charts.
    pub fn courses(&self) -> Courses<'_> {
        Courses {
            as_written: &self.days,
            with_changes: &self.days_with_changes,
            section: &self.startup,
            readings: &[],
        }
    }

    /// The worst status of its findings.
    pub fn status(&self) -> Status {
        worst(&self.findings)
    }

    /// The plan in one sentence: what is to be done about it, and in how many starts it holds.
    pub fn verdict(&self) -> String {
        let count = |status| {
            let findings = self.findings.iter();
            findings.filter(|finding| finding.status == status).count()
        };
        let odds = self.startup.odds_in_words();
        match (count(Status::Act), count(Status::Watch)) {
            (0, 0) => self.sound(&odds),
            (0, watch) => format!("{} to watch; {odds}", things(watch)),
            (act, 0) => format!("{} to mend before it is filled; {odds}", things(act)),
            (act, watch) => format!(
                "{} to mend before it is filled, {} to watch; {odds}",
                things(act),
                things(watch)
            ),
        }
    }

    /// Sound, or how far it stays behind what is asked.
    fn sound(&self, odds: &str) -> String {
        let held = self.startup.odds_with_changes;
        if self.startup.members > 0 && held.is_some_and(|held| held < self.asked) {
            return format!(
                "sound in the typical start, but {odds}, where {} are asked for",
                of_100(self.asked)
            );
        }
        format!("sound: {odds}")
    }
}

impl Check {
    /// The worst status of its findings.
    pub fn status(&self) -> Status {
        worst(&self.findings)
    }
}

fn things(count: usize) -> String {
    if count == 1 {
        "1 thing".to_owned()
    } else {
        format!("{count} things")
    }
}

fn worst(findings: &[Finding]) -> Status {
    let statuses = findings.iter().map(|finding| finding.status);
    statuses.max().unwrap_or(Status::Ok)
}
