//! What a rule is made of.

use super::case::{DesignCase, FlushCase, NightCase};
use crate::design::Design;
use crate::finding::{Action, Code, Explanation, Finding, WorkingStep};
use crate::numerics::rodas::IntegrationError;
use crate::plan::outcome::Plan;

/// A rule: how it judges, what its remedy orders, and what stands behind it.
pub(in crate::plan) struct Rule {
    /// The code of its findings.
    pub(super) code: Code,
    pub(super) about: About,
    pub(super) judge: Judge,
    /// What its remedy may order.
    pub(super) orders: &'static [Action],
    /// Its formula followed through with a design's numbers.
    pub(super) steps: fn(&Design, &Plan) -> Vec<WorkingStep>,
    pub(super) explanation: Explanation,
}

/// The part of a tank that a rule is about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::plan) enum About {
    /// The cap, which is part of the bed.
    Cap,
    /// Soil, bed, or what digs in them.
    Bed,
    /// The planting, the water, the animals, the vessel.
    Tank,
}

/// How a rule judges, by what has to be computed for it.
#[derive(Clone, Copy)]
pub(in crate::plan) enum Judge {
    /// By the design alone.
    Design(fn(&Design) -> Vec<Finding>),
    /// By what the bed gives off, the planting, and the measures of the tank.
    Start(fn(&DesignCase<'_>) -> Result<Vec<Finding>, IntegrationError>),
    /// By the run of the first weeks.
    Flush(fn(&FlushCase<'_>) -> Vec<Finding>),
    /// By a day and a night.
    Night(fn(&NightCase<'_>) -> Vec<Finding>),
}
