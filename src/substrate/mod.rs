//! The bed: grains and filters, diffusion through the cap, oxygen,
//! gas, slopes, and what to buy.
//!
//! What belongs to water (surface tension, oxygen saturation, viscosity, free
//! diffusion coefficients) comes in as an argument, so that nothing here
//! depends on water chemistry.

pub mod diffusion;
pub mod filter;
pub mod gas;
pub mod grading;
pub mod isolation;
pub mod oxygen;
pub mod purchase;
pub mod release;
pub mod repose;
pub mod soaking;
pub mod throat;

/// Seconds in a day: coefficients are per second, results per day.
const S_PER_DAY: f64 = 86_400.0;
