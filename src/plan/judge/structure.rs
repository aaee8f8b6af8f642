//! `weight.floor` and `glass.pane`: figures and caution, no pass or fail.

use super::Case;
use crate::design::Design;
use crate::finding::{Code, Finding, Status};
use crate::plan::section::PanesSection;
use crate::source::{Basis, Source};
use crate::units::{Length, Mass, Pressure, show};

/// Weight and pressure on the floor.
pub(super) fn weight(case: &Case<'_>) -> Finding {
    let units = case.design.draft().units;
    let total = units.mass(Mass::from_kg(case.weight.total_kg));
    let pressure = units.floor_pressure(Pressure::from_kpa(case.weight.footprint_pressure_kpa));
    Finding {
        code: Code::WeightFloor,
        status: Status::Note,
        subject: "floor".to_owned(),
        value: Some(case.weight.total_kg),
        unit: "kg",
        low: None,
        high: None,
        says: format!(
            "{total} in all, {pressure} on the footprint: an estimate, not a floor check"
        ),
        remedy: None,
        basis: Basis::Published,
        source: Some(Source::IrcR301_5),
    }
}

/// Stress in the panes.
pub(super) fn panes(design: &Design, panes: &PanesSection) -> Finding {
    let tank = &design.draft().tank;
    let wall = design.draft().units.depth(tank.wall);
    let says = match (panes.long_pane_stress_mpa, panes.long_pane_deflection_mm) {
        (Some(stress), Some(bend)) => format!(
            "the longest pane of {wall} {} would bend {} and carry {} MPa with water to the rim: informative only",
            tank.material.word(),
            design.draft().units.grain(Length::from_mm(bend)),
            show::significant(stress, 2)
        ),
        _ => format!(
            "no figure for the longest pane of {wall} {}: it bends beyond the theory or needs a brace; ask a glazier",
            tank.material.word()
        ),
    };
    Finding {
        code: Code::GlassPane,
        status: Status::Note,
        subject: "panes".to_owned(),
        value: panes.long_pane_stress_mpa,
        unit: "MPa",
        low: None,
        high: None,
        says,
        remedy: None,
        basis: Basis::Memory,
        source: Some(Source::Timoshenko1959),
    }
}
