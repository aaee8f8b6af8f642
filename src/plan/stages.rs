//! The stages of a plan, each computed once, when it is first asked for.

use std::cell::OnceCell;

use super::bed::BedFacts;
use super::flush::{Flush, StartupSection};
use super::load::Load;
use super::night::{self, NightPlan, OnDay, Remedies};
use super::options::Options;
use super::planting::{self, Needed};
use super::rule::{self, DesignCase, FlushCase, NightCase};
use super::section::WeightSection;
use super::section::{BedSection, CapSection, CostSection, PanesSection, SoilSection};
use super::{quantity, weight};
use crate::design::Design;
use crate::finding::{Code, Finding, Status};
use crate::numerics::rodas::IntegrationError;

/// A design with what has been computed of it so far.
pub(super) struct Stages<'a> {
    pub(super) design: &'a Design,
    pub(super) options: Options,
    /// Whether the night seeks its remedies.
    remedies: Remedies,
    /// Whether the tank stands already.
    pub(super) is_running: bool,
    /// Whether starts are followed no longer than asked for.
    is_screened: bool,
    load: OnceCell<Load<'a>>,
    flush: OnceCell<Flush<'a>>,
    night: OnceCell<NightPlan<'a>>,
}

/// What is had from the measures of a design alone.
pub(super) struct MeasuredSections {
    pub(super) soil: SoilSection,
    pub(super) cap: CapSection,
    pub(super) weight: WeightSection,
    pub(super) panes: Option<PanesSection>,
    pub(super) cost: Option<CostSection>,
}

impl<'a> Stages<'a> {
    pub(super) fn of(design: &'a Design, options: Options, remedies: Remedies) -> Self {
        Self {
            design,
            options,
            remedies,
            is_running: false,
            is_screened: false,
            load: OnceCell::new(),
            flush: OnceCell::new(),
            night: OnceCell::new(),
        }
    }

    /// The same, its starts followed no longer than asked for.
    pub(super) fn screened(self) -> Self {
        Self {
            is_screened: true,
            ..self
        }
    }

    /// The same for a tank that stands already.
    pub(super) fn running(self) -> Self {
        Self {
            is_running: true,
            ..self
        }
    }

    /// Quantities, weight and cost; the cap without its verdict.
    pub(super) fn measures(&self) -> MeasuredSections {
        let (soil, cap) = (quantity::soil(self.design), quantity::cap(self.design));
        MeasuredSections {
            weight: weight::weight(self.design, &soil, &cap),
            panes: weight::panes(self.design),
            cost: cost(self.design, &soil, &cap),
            soil,
            cap,
        }
    }

    /// What the bed gives off without plants.
    pub(super) fn load(&self) -> Result<&Load<'a>, IntegrationError> {
        computed(&self.load, || Load::of(self.design))
    }

    /// The first weeks.
    pub(super) fn flush(&self) -> Result<&Flush<'a>, IntegrationError> {
        let load = self.load()?;
        computed(&self.flush, || {
            let ph_dusk = night::ph_at_dusk(self.design, self.options)?;
            let flush = Flush::of(self.design, load, self.options, ph_dusk, &|_| ())?;
            Ok(if self.is_screened {
                flush.no_longer()
            } else {
                flush
            })
        })
    }

    /// The leanest night of the start.
    pub(super) fn night(&self) -> Result<&NightPlan<'a>, IntegrationError> {
        computed(&self.night, || {
            NightPlan::of(self.design, self.options, OnDay::default(), self.remedies)
        })
    }

    pub(super) fn bed(&self) -> Result<BedSection, IntegrationError> {
        let load = self.load()?;
        Ok(BedFacts::of(self.design, load).section(load))
    }

    /// The planting with the smallest addition that meets the load.
    pub(super) fn needed(&self) -> Result<Needed, IntegrationError> {
        planting::needed(self.load()?, self.options, self.flush()?)
    }

    /// The findings but those on the night, without a search for remedies.
    pub(super) fn findings_of_start(
        &self,
        measures: &MeasuredSections,
    ) -> Result<Vec<Finding>, IntegrationError> {
        let planting = planting::as_given(self.load()?, self.flush()?)?;
        rule::of_start(&self.case(&Results {
            measures,
            bed: &self.bed()?,
            planting: &planting,
            startup: &self.flush()?.section(),
            seeks_remedies: false,
        })?)
    }

    /// The findings on the night.
    pub(super) fn findings_of_night(&self) -> Result<Vec<Finding>, IntegrationError> {
        let met = self.load()?.met_by(self.design.planted())?;
        let case = NightCase::of(self.night()?, met.is_met());
        Ok(rule::of_night(&case))
    }

    /// What the rules are held against.
    pub(super) fn case<'r>(
        &'r self,
        results: &Results<'r>,
    ) -> Result<DesignCase<'r>, IntegrationError> {
        Ok(DesignCase {
            design: self.design,
            load: self.load()?,
            bed: results.bed,
            weight: &results.measures.weight,
            panes: results.measures.panes.as_ref(),
            planting: results.planting,
            flush: FlushCase::of(self.design, self.flush()?, results.startup),
            seeks_remedies: results.seeks_remedies,
            is_running: self.is_running,
        })
    }
}

/// What has been computed so far, to be judged.
pub(super) struct Results<'r> {
    pub(super) measures: &'r MeasuredSections,
    pub(super) bed: &'r BedSection,
    pub(super) planting: &'r Needed,
    pub(super) startup: &'r StartupSection,
    pub(super) seeks_remedies: bool,
}

/// Code and status of some findings.
pub(super) fn standing(findings: &[Finding]) -> Vec<(Code, Status)> {
    let pair = |finding: &Finding| (finding.code, finding.status);
    findings.iter().map(pair).collect()
}

/// What a cell holds, computed if it holds nothing yet.
fn computed<T>(
    cell: &OnceCell<T>,
    compute: impl FnOnce() -> Result<T, IntegrationError>,
) -> Result<&T, IntegrationError> {
    if let Some(value) = cell.get() {
        return Ok(value);
    }
    let value = compute()?;
    Ok(cell.get_or_init(|| value))
}

fn cost(design: &Design, soil: &SoilSection, cap: &CapSection) -> Option<CostSection> {
    let plants = planting::cost(&design.draft().plants);
    let known = [soil.cost, cap.cost, plants];
    known.iter().any(Option::is_some).then(|| CostSection {
        soil: soil.cost,
        cap: cap.cost,
        plants,
        total: known.iter().flatten().sum(),
    })
}
