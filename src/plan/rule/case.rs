//! What the rules judge.

use crate::design::Design;
use crate::plan::flush::{DayRow, Flush, Readiness, StartupSection};
use crate::plan::limits::watch_limit_mg_l;
use crate::plan::load::Load;
use crate::plan::night::NightPlan;
use crate::plan::planting::Needed;
use crate::plan::section::{BedSection, PanesSection, WeightSection};
use crate::startup::forecast::PeakBand;
use crate::units::Analyte;

/// A design with what its bed gives off, its planting and its measures.
pub(in crate::plan) struct DesignCase<'a> {
    pub(in crate::plan) design: &'a Design,
    pub(in crate::plan) load: &'a Load<'a>,
    pub(in crate::plan) bed: &'a BedSection,
    pub(in crate::plan) weight: &'a WeightSection,
    pub(in crate::plan) panes: Option<&'a PanesSection>,
    pub(in crate::plan) planting: &'a Needed,
    pub(in crate::plan) flush: FlushCase<'a>,
    /// Whether remedies that take a search are sought.
    pub(in crate::plan) seeks_remedies: bool,
    /// Whether the tank stands already, soil and water in it.
    pub(in crate::plan) is_running: bool,
}

/// The first weeks of a design.
pub(in crate::plan) struct FlushCase<'a> {
    pub(super) design: &'a Design,
    pub(super) startup: &'a StartupSection,
    /// When animals may move in.
    pub(super) readiness: &'a Readiness,
    /// Most alkalinity used at once, meq/L.
    pub(super) alkalinity_used: PeakBand,
    /// The share of the starts that would hold with changes by reading, advised or not.
    pub(super) odds_if_changed: f64,
    /// The typical run, day by day.
    pub(super) days: Vec<TypicalDay>,
}

/// Stands and nutrients on a day of the typical run.
pub(super) struct TypicalDay {
    pub(super) day: f64,
    /// Fresh.
    pub(super) floating_g: f64,
    pub(super) fast_g: f64,
    pub(super) ammonia_mg_l: f64,
    pub(super) nitrate_mg_l: f64,
    pub(super) phosphate_p_mg_l: f64,
}

impl TypicalDay {
    fn of(row: &DayRow) -> Self {
        Self {
            day: f64::from(row.day),
            floating_g: row.floating_g.typical(),
            fast_g: row.fast_g.typical(),
            ammonia_mg_l: row.ammonia_mg_l.typical(),
            nitrate_mg_l: row.nitrate_mg_l.typical(),
            phosphate_p_mg_l: row.phosphate_p_mg_l.typical(),
        }
    }
}

impl<'a> FlushCase<'a> {
    pub(in crate::plan) fn of(
        design: &'a Design,
        flush: &'a Flush<'_>,
        startup: &'a StartupSection,
    ) -> Self {
        Self {
            design,
            startup,
            readiness: flush.readiness(),
            alkalinity_used: flush.alkalinity_used(),
            odds_if_changed: flush.odds_if_changed(),
            days: flush.days().iter().map(TypicalDay::of).collect(),
        }
    }

    /// The share of the starts that is asked to hold.
    pub(super) fn asked(&self) -> f64 {
        self.design.draft().goal.probability.fraction()
    }

    /// The limit to watch of a nutrient, the keeper's own where there is one.
    pub(super) fn watch_limit(&self, analyte: Analyte, otherwise: f64) -> f64 {
        watch_limit_mg_l(self.design, analyte).unwrap_or(otherwise)
    }
}

/// A day and a night of a design.
pub(in crate::plan) struct NightCase<'a> {
    pub(super) night: &'a NightPlan<'a>,
    /// Whether the planting meets its load.
    pub(super) load_is_met: bool,
}

impl<'a> NightCase<'a> {
    pub(in crate::plan) const fn of(night: &'a NightPlan<'a>, load_is_met: bool) -> Self {
        Self { night, load_is_met }
    }

    pub(super) const fn design(&self) -> &Design {
        self.night.design
    }
}
