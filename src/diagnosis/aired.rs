//! The night of a tank whose animals lack oxygen, as it stands and with the air advised.

use super::Diagnosis;
use super::cause::Cause;
use crate::design::{Air, Design, Device, DutyHours};
use crate::plan::{self, HourRow, OnDay, Options};
use crate::units::Flow;

/// A day and night twice over.
#[derive(Debug, Clone, PartialEq)]
pub struct Aired {
    /// As the tank stands.
    pub as_it_is: Vec<HourRow>,
    /// With the air.
    pub with_air: Vec<HourRow>,
    /// The air.
    pub flow: Flow,
}

impl Aired {
    /// Both nights on the day of the check; none where air is not what the likeliest cause
    /// asks for, or the numbers leave the finite ones.
    pub fn of(design: &Design, found: &Diagnosis) -> Option<Self> {
        let leading = found.leading()?;
        let remedy = leading.remedy.as_ref()?;
        if !matches!(leading.cause, Cause::NightExchange | Cause::StillWater)
            || remedy.unit != "L/min"
        {
            return None;
        }
        let flow = Flow::from_l_min(remedy.quantity?);
        let mut draft = design.clone().into_draft();
        draft.air = Air {
            device: Device::AirStone,
            flow,
            hours: DutyHours::Night,
            ..draft.air
        };
        let aired = draft.check().ok()?;
        let options = Options {
            members: found.members,
            seed: found.seed,
            ..Options::default()
        };
        let day = found.day.round() as u32;
        let hours = |design: &Design| {
            let (night, _) = plan::night(design, options, OnDay::Day(day)).ok()?;
            Some(night.hours)
        };
        Some(Self {
            as_it_is: hours(design)?,
            with_air: hours(&aired)?,
            flow,
        })
    }
}
