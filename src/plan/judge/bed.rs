//! `bed.gas` and `bed.oxygen`.

use super::Case;
use crate::finding::{Code, Finding, Status};
use crate::source::{Basis, Source};
use crate::substrate::verdict::GasRelease;
use crate::units::Length;

/// Gas made in the soil against what can diffuse out.
pub(super) fn gas(case: &Case<'_>) -> Finding {
    let verdict = GasRelease::judge(case.bed.gas_ratio, case.bed.entry_over_overburden);
    let says = match verdict {
        GasRelease::Dissolved => {
            "about as much gas forms in the soil as leaves dissolved: few bubbles"
        }
        GasRelease::BubblesPushingGrains => {
            "more gas forms in fresh soil than can diffuse out: expect bubbles that push grains aside for weeks; a deeper or finer cap makes fewer, larger ones"
        }
        GasRelease::BubblesThroughPores => {
            "more gas forms in fresh soil than can diffuse out: expect bubbles through the cap's pores for weeks"
        }
    };
    Finding {
        code: Code::BedGas,
        status: verdict.status(),
        subject: "bed".to_owned(),
        value: Some(case.bed.gas_ratio),
        unit: "ratio",
        low: None,
        high: Some(1.0),
        says: says.to_owned(),
        remedy: None,
        basis: Basis::Judgement,
        source: Some(Source::Baird2004),
    }
}

/// How far oxygen reaches into the bed.
pub(super) fn oxygen(case: &Case<'_>) -> Finding {
    let units = case.design.draft().units;
    let front = Length::from_mm(case.bed.oxic_front_mm);
    Finding {
        code: Code::BedOxygen,
        status: Status::Ok,
        subject: "bed".to_owned(),
        value: Some(case.bed.oxic_front_mm),
        unit: "mm",
        low: None,
        high: None,
        says: format!(
            "oxygen reaches about {} into the cap; soil without oxygen below is normal",
            units.depth(front)
        ),
        remedy: None,
        basis: Basis::Judgement,
        source: Some(Source::Bouldin1968),
    }
}
