//! `cap.coarse` and `cap.fine`.

use crate::catalogue::SoilKind;
use crate::design::Design;
use crate::finding::{Code, Finding, Remedy, Status};
use crate::source::{Basis, Source};
use crate::substrate::filter::{Base, Soil};
use crate::substrate::verdict::{CoarseLimits, Coarseness, FineLimits, Fineness};
use crate::units::{Length, Share, UnitSystem};

/// Depth that a sand that packs is kept at, mm: practice.
const PACKING_DEPTH_MM: (f64, f64) = (25.0, 35.0);

/// The filter rule's reading of the design's soil.
pub(in crate::plan) fn filter_soil(design: &Design) -> Soil {
    let soil = design.draft().soil.material;
    match (soil.kind, soil.fines_pct, soil.d15_mm, soil.d85_mm) {
        (SoilKind::Mineral, Some(fines), Some(d15), Some(d85)) => Soil::Mineral(Base {
            fines: Share::from_percent(fines.typical),
            d85: Length::from_mm(d85.typical),
            d15: Length::from_mm(d15.typical),
        }),
        _ => Soil::Organic,
    }
}

/// Cap grains against what holds the soil back.
pub(in crate::plan) fn coarse(design: &Design) -> Finding {
    let draft = design.draft();
    let limits = CoarseLimits::over(&filter_soil(design));
    let d15 = Length::from_mm(draft.cap.d15_mm().typical);
    let verdict = limits.judge(d15);
    let (cap, soil) = (&draft.cap.material.label, &draft.soil.material.label);
    let size = draft.units.grain(d15);
    let says = match verdict {
        Coarseness::HoldsSoil => format!("{cap} (D15 {size}) holds {soil} down"),
        Coarseness::LeaksLonger => format!(
            "{cap} (D15 {size}) is coarse for {soil}: usable, leaks for longer and clouds when stirred"
        ),
        Coarseness::LosesSoil => {
            format!("{cap} (D15 {size}) is too coarse for {soil}: soil lifts through the gaps")
        }
    };
    let limit = draft.units.grain(limits.watch_above);
    let remedy = match verdict {
        Coarseness::HoldsSoil => None,
        Coarseness::LeaksLonger => Some(format!(
            "leave it unstirred, plant heavily; a finer cap (D15 up to {limit}) would hold better"
        )),
        Coarseness::LosesSoil => Some(format!(
            "take a finer cap, such as filter sand or 20/40 grit (D15 up to {limit})"
        )),
    }
    .map(|says| Remedy {
        says,
        quantity: Some(limits.watch_above.mm()),
        unit: "mm",
    });
    Finding {
        code: Code::CapCoarse,
        status: verdict.status(),
        subject: cap.clone(),
        value: Some(d15.mm()),
        unit: "mm",
        low: None,
        high: Some(limits.watch_above.mm()),
        says,
        remedy,
        basis: match filter_soil(design) {
            Soil::Mineral(_) => Basis::Published,
            Soil::Organic => Basis::Judgement,
        },
        source: Some(Source::NrcsNeh633Ch26),
    }
}

/// Cap grains that pack or seal.
pub(in crate::plan) fn fine(design: &Design) -> Finding {
    let draft = design.draft();
    let limits = FineLimits::over(&filter_soil(design));
    let d10 = Length::from_mm(draft.cap.d10_mm().typical);
    let d15 = Length::from_mm(draft.cap.d15_mm().typical);
    let fines = draft.cap.material.fines_pct.typical;
    // The keeper's own sieve sizes speak for another sand than the catalogue's.
    let own = draft.cap.grading.d10.is_some();
    let known_fines = (!own).then(|| Share::from_percent(fines));
    let verdict = limits.judge(d10, d15, known_fines);
    let cap = &draft.cap.material.label;
    let units = draft.units;
    let (says, value, low) = match verdict {
        Fineness::Loose => (
            format!(
                "{cap} (d10 {}) stays open for water and gas",
                units.grain(d10)
            ),
            d10,
            limits.d10_loose,
        ),
        Fineness::Packs => (
            format!(
                "{cap} (d10 {}) packs; gas leaves in bursts",
                units.grain(d10)
            ),
            d10,
            limits.d10_loose,
        ),
        Fineness::Silty => (
            format!("{cap} holds {fines:.0} % finer than 0.075 mm: it clouds and seals"),
            d15,
            limits.d15_least,
        ),
        Fineness::Seals => (
            format!(
                "{cap} (D15 {}) is too fine: it seals the soil and clouds the water",
                units.grain(d15)
            ),
            d15,
            limits.d15_least,
        ),
    };
    Finding {
        code: Code::CapFine,
        status: verdict.status(),
        subject: cap.clone(),
        value: Some(value.mm()),
        unit: "mm",
        low: Some(low.mm()),
        high: None,
        says,
        remedy: coarser(verdict.status(), &limits, units),
        basis: match verdict {
            Fineness::Loose | Fineness::Packs => Basis::Practice,
            Fineness::Silty | Fineness::Seals => Basis::Published,
        },
        source: match verdict {
            Fineness::Loose | Fineness::Packs => None,
            Fineness::Silty | Fineness::Seals => Some(Source::NrcsNeh633Ch26),
        },
    }
}

/// A coarser sand, or what to do with one that packs.
fn coarser(status: Status, limits: &FineLimits, units: UnitSystem) -> Option<Remedy> {
    match status {
        Status::Act => Some(Remedy {
            says: format!(
                "take a washed sand with D15 of at least {}, such as filter sand",
                units.grain(limits.d15_least)
            ),
            quantity: Some(limits.d15_least.mm()),
            unit: "mm",
        }),
        Status::Watch => Some(Remedy {
            says: format!(
                "rinse it until clear and keep it {} to {} deep",
                units.depth(Length::from_mm(PACKING_DEPTH_MM.0)),
                units.depth(Length::from_mm(PACKING_DEPTH_MM.1))
            ),
            quantity: Some(PACKING_DEPTH_MM.1),
            unit: "mm",
        }),
        Status::Ok | Status::Note => None,
    }
}
