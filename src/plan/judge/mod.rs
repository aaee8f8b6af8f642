//! The findings of a plan: each rule's limits, words and remedy.

mod animals;
mod bed;
pub(super) mod cap_depth;
pub(super) mod cap_grain;
pub(super) mod flush;
pub(super) mod night;
mod plants;
mod soil;
mod structure;

use super::load::Load;
use super::planting::Needed;
use super::section::{BedSection, PanesSection, WeightSection};
use crate::design::Design;
use crate::finding::{Code, Finding};
use crate::numerics::rodas::IntegrationError;

/// What the rules judge.
pub(super) struct Case<'a> {
    pub(super) design: &'a Design,
    pub(super) load: &'a Load<'a>,
    pub(super) bed: &'a BedSection,
    pub(super) weight: &'a WeightSection,
    pub(super) panes: Option<&'a PanesSection>,
    pub(super) planting: &'a Needed,
    pub(super) flush: flush::Case<'a>,
    pub(super) night: night::Case<'a>,
}

/// Every finding of a plan, in the order of the codes.
pub(super) fn all(case: &Case<'_>) -> Result<Vec<Finding>, IntegrationError> {
    let design = case.design;
    let mut findings = vec![
        cap_grain::coarse(design),
        cap_grain::fine(design),
        cap_depth::thin(design),
        plants::leak(case)?,
        cap_depth::deep(design),
        cap_depth::slope(design),
        soil::thin(design),
        soil::deep(design),
        bed::gas(case),
        bed::oxygen(case),
        plants::load(case),
        plants::cover(design),
        plants::mix(design),
        animals::diggers(design),
        structure::weight(case),
    ];
    findings.extend(flush::all(&case.flush));
    findings.extend(night::all(&case.night));
    findings.extend(plants::listed(design));
    findings.extend(case.panes.map(|panes| structure::panes(design, panes)));
    findings.sort_by_key(|finding| finding.code);
    Ok(findings)
}

/// Whether a code is about soil, cap, bed or what digs in them.
pub(super) fn is_about_bed(code: Code) -> bool {
    let text = code.text();
    ["cap.", "soil.", "bed.", "animals.diggers"]
        .iter()
        .any(|prefix| text.starts_with(prefix))
}
