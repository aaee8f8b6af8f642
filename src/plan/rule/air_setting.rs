//! Flows of air to set, as remedies word them.

use super::case::NightCase;
use crate::units::show::significant;
use crate::units::{Flow, Length};

/// A flow to set: up to the next twentieth of a litre.
pub(super) fn air_setting_l_min(flow: Flow) -> f64 {
    (flow.l_min() * 20.0).ceil() / 20.0
}

/// Air pumps are sold by litres a minute in either system.
pub(super) fn litres_a_minute(flow: Flow) -> String {
    format!("{} L/min", significant(flow.l_min(), 2))
}

pub(super) fn depth(case: &NightCase<'_>, depth: Length) -> String {
    case.design().draft().units.dimension(depth)
}
