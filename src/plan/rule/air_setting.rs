//! Flows of air to set, as every text words them.

use super::case::NightCase;
use crate::units::{Flow, Length, UnitSystem};

/// A flow to set: up to the next twentieth of a litre a minute.
pub fn air_setting(flow: Flow) -> Flow {
    Flow::from_l_min((flow.l_min() * 20.0).ceil() / 20.0)
}

pub(super) fn units(case: &NightCase<'_>) -> UnitSystem {
    case.design().draft().units
}

/// A depth to hang something at.
pub(super) fn depth(case: &NightCase<'_>, depth: Length) -> String {
    let units = units(case);
    units.dimension(units.down(depth))
}
