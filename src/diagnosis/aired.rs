//! The night of a tank whose animals lack oxygen, as it stands and with the air advised.

use super::CauseResult;
use super::case::CaseHistory;
use super::cause::Cause;
use super::dawn::{AIR_SOUGHT, night_inputs};
use crate::design::DutyHours;
use crate::night::limits::DAWN_WATCH_MG_L;
use crate::night::sizing::with_stone;
use crate::night::{HourBand, NightInputs, Outlook, Rates, outlook};
use crate::units::Flow;

/// Oxygen that a flow rounded to what is shown may miss the limit by, mg/L.
const ROUNDED_MG_L: f64 = 0.1;

/// A day and night twice over.
#[derive(Debug, Clone, PartialEq)]
pub struct Aired {
    /// As the tank stands.
    pub as_it_is: Vec<HourBand>,
    /// With the air.
    pub with_air: Vec<HourBand>,
    /// The air.
    pub flow: Flow,
}

impl Aired {
    /// Both nights, from the tank that the air was sized for; none where air is not what the
    /// likeliest cause asks for, or the numbers leave the finite ones.
    pub(super) fn of(case: &CaseHistory<'_>, causes: &[CauseResult]) -> Option<Self> {
        let leading = causes.first()?;
        let remedy = leading.remedy.as_ref()?;
        let is_of_air = matches!(leading.cause, Cause::NightExchange | Cause::StillWater);
        if !is_of_air || remedy.unit != "L/min" {
            return None;
        }
        let flow = Flow::from_l_min(remedy.quantity?);
        let inputs = night_inputs(case).ok()?;
        let aired = |duty| {
            followed(&NightInputs {
                flow,
                duty,
                ..with_stone(&inputs)
            })
        };
        let mut night = aired(DutyHours::Night)?;
        if night.low_mg_l.low < DAWN_WATCH_MG_L - ROUNDED_MG_L {
            night = aired(DutyHours::Always)?;
        }
        Some(Self {
            as_it_is: followed(&inputs)?.hours,
            with_air: night.hours,
            flow,
        })
    }
}

fn followed(inputs: &NightInputs) -> Option<Outlook> {
    outlook(inputs, &Rates::of(inputs), AIR_SOUGHT).ok()
}
