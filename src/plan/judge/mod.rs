//! The findings of a plan: each rule's limits, words and remedy.

mod animals;
mod bed;
pub(super) mod cap_depth;
pub(super) mod cap_grain;
pub(super) mod flush;
pub(super) mod night;
mod plants;
pub(super) mod soil;
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
    /// Whether remedies that take a search are sought.
    pub(super) seeks_remedies: bool,
    /// Whether the tank stands already, soil and water in it.
    pub(super) is_running: bool,
}

/// Every finding of a plan, in the order of the codes.
pub(super) fn all(
    case: &Case<'_>,
    night: &night::Case<'_>,
) -> Result<Vec<Finding>, IntegrationError> {
    let mut findings = of_start(case)?;
    findings.extend(night::all(night));
    findings.sort_by_key(|finding| finding.code);
    Ok(findings)
}

/// The findings that no night has to be looked at for.
pub(super) fn of_start(case: &Case<'_>) -> Result<Vec<Finding>, IntegrationError> {
    let mut findings = of_design(case.design);
    findings.extend([
        plants::leak(case)?,
        bed::gas(case),
        bed::oxygen(case),
        plants::load(case),
        structure::weight(case),
    ]);
    findings.extend(flush::all(&case.flush));
    findings.extend(case.panes.map(|panes| structure::panes(case.design, panes)));
    findings.sort_by_key(|finding| finding.code);
    Ok(findings)
}

/// The findings that nothing has to be run for.
pub(super) fn of_design(design: &Design) -> Vec<Finding> {
    let mut findings = vec![
        cap_grain::coarse(design),
        cap_grain::fine(design),
        cap_depth::thin(design),
        cap_depth::deep(design),
        cap_depth::slope(design),
        soil::thin(design),
        soil::deep(design),
        plants::cover(design),
        plants::mix(design),
        animals::diggers(design),
    ];
    findings.extend(plants::listed(design));
    findings
}

/// Whether a code is among those of [`of_design`].
pub(super) fn is_of_design(code: Code) -> bool {
    matches!(
        code,
        Code::CapCoarse
            | Code::CapFine
            | Code::CapThin
            | Code::CapDeep
            | Code::CapSlope
            | Code::SoilThin
            | Code::SoilDeep
            | Code::PlantsCover
            | Code::PlantsMix
            | Code::PlantsListed
            | Code::AnimalsDiggers
    )
}

/// Whether a code is among those on a night.
pub(super) fn is_of_night(code: Code) -> bool {
    let text = code.text();
    text == Code::AnimalsLoad.text()
        || ["air.", "flow.", "light."]
            .iter()
            .any(|prefix| text.starts_with(prefix))
}

/// Whether a code is about soil, cap, bed or what digs in them.
pub(super) fn is_about_bed(code: Code) -> bool {
    let text = code.text();
    ["cap.", "soil.", "bed.", "animals.diggers"]
        .iter()
        .any(|prefix| text.starts_with(prefix))
}
