//! Heat that a tank loses to the room, water that it evaporates, and what the
//! heater makes of it.

pub mod cooling;
pub mod evaporation;
pub mod heater;
pub mod loss;
pub mod moist_air;
pub mod wall;

pub use evaporation::Climate;
pub use loss::{Enclosure, HeatLoss, Top};
pub use wall::{FilmedWall, Glazing};
