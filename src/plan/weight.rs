//! What the tank weighs, and the stress in its panes.

use super::section::{CapSection, PanesSection, SoilSection, WeightSection};
use crate::design::{Design, Rim};
use crate::geometry::pane::Pane;
use crate::geometry::plate::{Bending, SideBending, SidePane, Support};
use crate::units::Pressure;
use crate::units::constants::GRAVITY_M_S2;
use crate::water;

/// Masses and the pressure under the footprint.
pub(super) fn weight(design: &Design, soil: &SoilSection, cap: &CapSection) -> WeightSection {
    let draft = design.draft();
    let shell_kg = (draft.tank.material.density() * design.vessel().shell()).kg();
    let hardscape_kg = design.hardscape_mass().kg();
    let water_kg = (water::density(draft.water.temperature) * design.water()).kg();
    let stand_kg = draft.tank.stand.kg();
    let total_kg =
        shell_kg + soil.wet_mass_kg + cap.wet_mass_kg + hardscape_kg + water_kg + stand_kg;
    let pressure_pa = total_kg * GRAVITY_M_S2 / design.vessel().footprint().m2();
    WeightSection {
        shell_kg,
        soil_kg: soil.wet_mass_kg,
        cap_kg: cap.wet_mass_kg,
        hardscape_kg,
        water_kg,
        stand_kg,
        total_kg,
        footprint_pressure_kpa: Pressure::from_pa(pressure_pa).kpa(),
    }
}

/// Stress and bend of the flat panes with water to the rim; none for a tank without any.
pub(super) fn panes(design: &Design) -> Option<PanesSection> {
    let vessel = design.vessel();
    let long = bending(design, vessel.long_pane()?);
    let end = vessel.end_pane().and_then(|pane| bending(design, pane));
    Some(PanesSection {
        long_pane_stress_mpa: long.map(|bent| bent.stress.mpa()),
        long_pane_deflection_mm: long.map(|bent| bent.deflection.mm()),
        end_pane_stress_mpa: end.map(|bent| bent.stress.mpa()),
    })
}

/// None where an unbraced pane is too long for a figure.
fn bending(design: &Design, pane: Pane) -> Option<Bending> {
    let tank = &design.draft().tank;
    let support = match tank.rim {
        Rim::Free => Support::TopFree,
        Rim::Braced => Support::FourEdges,
    };
    let side = SidePane {
        length: pane.length,
        height: design.vessel().height(),
        thickness: tank.wall,
        stiffness: tank.material.stiffness(),
    };
    match side.bend(support) {
        SideBending::Figures(bending) if bending.small => Some(bending),
        // Beyond half its thickness a pane bends otherwise than the theory says.
        SideBending::Figures(_) | SideBending::NeedsBrace { .. } => None,
    }
}
