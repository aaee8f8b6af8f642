//! Air and flow: a device, and how much of it.

use super::{Lever, Now, Rung, text};
use crate::design::{Design, FlowDevice};
use crate::night::inputs::air_depth;
use crate::spec::Edit;
use crate::units::show::significant;

/// Air that is tried, L/min.
const AIR_L_MIN: [f64; 7] = [0.1, 0.2, 0.3, 0.5, 0.8, 1.2, 2.0];
/// Air that a sponge filter is tried with, L/min.
const SPONGE_L_MIN: [f64; 3] = [0.5, 1.0, 2.0];
/// How much more or less of a device that is there.
const TIMES: [f64; 7] = [0.1, 0.25, 0.5, 0.75, 1.5, 2.5, 4.0];

/// A device, or another flow of the one that is there.
pub(super) fn devices(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let air = &base.draft().air;
    if air.device == FlowDevice::None {
        let stones = AIR_L_MIN.map(|flow| new(base, "air_stone", flow, 3.5));
        let sponges = SPONGE_L_MIN.map(|flow| new(base, "sponge_filter", flow, 4.0));
        return stones.into_iter().chain(sponges).collect();
    }
    let flows = TIMES.map(|times| {
        let flow = significant(air.flow.l_min() * times, 2);
        let effort = 2.0 + times.ln().abs() / 2.0;
        Rung::new(Lever::Air, effort, [in_litres(&flow)]).less(times < 1.0)
    });
    flows.to_vec()
}

/// A new device near the bed.
fn new(base: &Design, device: &str, flow_l_min: f64, effort: f64) -> Rung {
    let depth_cm = (air_depth(base).cm() * 0.9).max(0.1);
    let edits = [
        text("air.device", device),
        in_litres(&flow_l_min.to_string()),
        text("air.depth", format!("{} cm", significant(depth_cm, 2))),
    ];
    Rung::new(Lever::Air, effort + flow_l_min, edits)
}

fn in_litres(flow: &str) -> Edit {
    text("air.flow", format!("{flow} L/min"))
}
