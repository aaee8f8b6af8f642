//! The depths of soil and cap, which three rules are worked through with.

use crate::design::Design;
use crate::finding::{WorkingStep, step};

pub(super) fn steps(design: &Design) -> Vec<WorkingStep> {
    let bed = design.bed();
    vec![
        step("mean depth of the soil", bed.soil.mean.mm(), "mm"),
        step("deepest soil", bed.soil.deepest.depth.mm(), "mm"),
        step("mean depth of the cap", bed.cap.mean.mm(), "mm"),
        step(
            "inner height of the tank",
            design.vessel().height().mm(),
            "mm",
        ),
        step(
            "bed over height",
            (bed.soil.mean + bed.cap.mean) / design.vessel().height() * 100.0,
            "%",
        ),
    ]
}
