//! A day and a night in the tank: oxygen, carbon dioxide and pH hour by hour, the
//! air and the animals that go with them, flow, light, heat.
//!
//! [`cycle`] follows one tank with one set of numbers until its days repeat;
//! [`outlook`] does so for the whole range of the numbers that nobody knows.
//! Hours count from the moment the lamp goes on.

pub mod inputs;
pub mod lighting;
pub mod limits;
pub mod outage;
pub mod sizing;
pub mod stock;
pub mod upkeep;

mod canopy;
mod carbon;
mod coefficients;
mod course;
mod crossing;
mod cycle;
mod film;
mod gas;
mod half_saturation;
mod members;
mod model;
mod numbers;
mod outlook;
mod phases;
mod rates;
mod settle;
mod slopes;

pub use cycle::{CarbonTotals, Cycle, Hour, Low, Totals, cycle};
pub use inputs::{Ceiling, Kept, NightInputs, Users, air_depth};
pub use members::{Ensemble, Nights, lows_mg_l};
pub use outlook::{HourBand, Outlook, outlook};
pub use rates::{Rates, Shade};
