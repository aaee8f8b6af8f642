//! Panes of glass and how they bend.

use lentic::geometry::plate::{Bending, SideBending, SidePane, Support};
use lentic::units::{Length, Pressure};

/// A pane of glass of 70 kN/mm2.
pub(crate) fn pane(length_m: f64, height_m: f64, thickness_mm: f64) -> SidePane {
    SidePane {
        length: Length::from_m(length_m),
        height: Length::from_m(height_m),
        thickness: Length::from_mm(thickness_mm),
        stiffness: Pressure::from_mpa(70_000.0),
    }
}

/// Its stress and deflection under water, where they can be given.
pub(crate) fn figures(pane: &SidePane, support: Support) -> Bending {
    match pane.bend(support) {
        SideBending::Figures(bending) => bending,
        SideBending::NeedsBrace { ratio } => panic!("no figure at {ratio}"),
    }
}
