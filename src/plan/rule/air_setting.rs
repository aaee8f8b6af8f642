//! Flows of air to set, as every text words them.

use super::case::NightCase;
use crate::finding::{WorkingStep, step};
use crate::units::{Flow, Length, UnitSystem};

/// A flow to set: up to the next twentieth of a litre a minute.
pub fn air_setting(flow: Flow) -> Flow {
    Flow::from_l_min((flow.l_min() * 20.0).ceil() / 20.0)
}

/// The least air that was found, and what is set for it, where any is needed.
pub(in crate::plan) fn steps(found: &str, l_min: Option<f64>) -> Vec<WorkingStep> {
    let Some(l_min) = l_min else {
        return Vec::new();
    };
    let setting = air_setting(Flow::from_l_min(l_min));
    vec![
        step(found, l_min, "L/min"),
        step("set, by twentieths of a litre", setting.l_min(), "L/min"),
    ]
}

pub(super) fn units(case: &NightCase<'_>) -> UnitSystem {
    case.design().draft().units
}

/// A depth to hang something at.
pub(super) fn depth(case: &NightCase<'_>, depth: Length) -> String {
    let units = units(case);
    units.dimension(units.down(depth))
}
