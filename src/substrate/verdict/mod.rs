//! Verdicts on soil and cap: each a set of limits that judges numbers.
//!
//! Where science gives no number the trade's practice is used; the limits say
//! which is which.

mod depth;
mod gas;
mod grain;
mod slope;

#[cfg(test)]
mod tests;

pub use depth::{
    BedDepth, CapDepth, CapDepthLimits, DeepReason, Richness, SoilDepth, SoilDepthLimits, Thickness,
};
pub use gas::GasRelease;
pub use grain::{CoarseLimits, Coarseness, FineLimits, Fineness};
pub use slope::Slope;
