//! What remedies and calendars order to be done, from which their cautions follow.

use super::{Code, Finding};

/// Work with a hazard of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Action {
    /// Soil is soaked, soil and cap are laid: bags, dust, wet earth.
    LayBed,
    /// Sand goes onto a bed under water.
    AddSand,
    /// A bed that has stood is prodded, flattened or taken off.
    OpenBed,
    /// The empty tank is filled.
    Fill,
    /// A lamp, pump, heater or air stone is put in or set.
    RunDevice,
    /// Water is taken out and new water put in.
    ChangeWater,
    /// Tap water is treated against chlorine.
    Condition,
    /// Hands or a siphon go into the water.
    ReachIn,
    /// Plants are put in, thinned or trimmed.
    Plant,
    /// Animals are put in or taken out.
    MoveAnimals,
    /// Potassium nitrate is weighed and dissolved.
    DoseNitrate,
}

impl Code {
    /// What the remedy of a finding with this code may order.
    pub const fn orders(self) -> &'static [Action] {
        use Action::{
            AddSand, ChangeWater, LayBed, MoveAnimals, OpenBed, Plant, ReachIn, RunDevice,
        };
        match self {
            Self::CapCoarse | Self::CapFine => &[LayBed],
            Self::CapThin => &[AddSand],
            Self::CapLeak => &[AddSand, LayBed, Plant, ChangeWater],
            Self::CapDeep | Self::CapSlope => &[OpenBed],
            Self::SoilThin | Self::SoilDeep => &[LayBed, OpenBed],
            Self::BedGas | Self::BedOxygen => &[OpenBed, Plant],
            Self::PlantsLoad | Self::FlushAmmonia | Self::FlushNitrite | Self::FlushNitrate => {
                &[LayBed, Plant, ChangeWater]
            }
            Self::PlantsCover | Self::PlantsMix | Self::PlantsListed => &[Plant],
            Self::AirDawn => &[RunDevice, Plant, MoveAnimals],
            Self::FlowSlack | Self::FlowStrong | Self::LightShort | Self::LightLong => {
                &[RunDevice, ReachIn]
            }
            Self::AnimalsLoad | Self::AnimalsEarly | Self::AnimalsDiggers => &[MoveAnimals],
            Self::WaterSoft => &[ChangeWater],
            // what these order stands with the causes and the next step
            Self::CheckWater | Self::CheckCause => &[],
            Self::WeightFloor | Self::GlassPane => &[Action::Fill],
        }
    }
}

/// What the remedies of some findings order.
pub fn ordered<'a>(
    findings: impl IntoIterator<Item = &'a Finding>,
) -> impl Iterator<Item = Action> {
    let findings = findings.into_iter();
    let remedied = findings.filter(|finding| finding.remedy.is_some());
    remedied.flat_map(|finding| finding.code.orders().iter().copied())
}
