//! The first weeks of a tank: nitrogen from the flooded soil against plants,
//! bacteria and algae.
//!
//! [`run`] follows one tank with one set of numbers; [`supply()`] is what the bed
//! would give off without plants.

pub mod ensemble;
pub mod floating;
pub mod forecast;
pub mod inputs;
pub mod limits;
pub mod nitrification;
pub mod state;
pub mod submerged;
pub mod trajectory;
pub mod uptake;

mod ageing;
mod algae;
mod balance;
mod budget;
mod by_reading;
mod clock;
mod day;
mod daylight;
mod elimination;
mod events;
mod flow;
mod habitat;
mod model;
mod parting;
mod passages;
mod recorder;
mod run;
mod running;
mod slopes;
mod soil;
mod supply;
mod surroundings;
mod tank;
mod turnover;

pub use crate::parameters::Parameters;
pub use ageing::SoilStores;
pub use balance::fed_nitrogen;
pub use budget::{Budget, budget};
pub use by_reading::ChangesByReading;
pub use day::{LightNeeds, Stands, TakenStand, day_state, light_needs, stands};
pub use ensemble::{Draw, Member};
pub use events::carried;
pub use forecast::Forecast;
pub use inputs::{
    DailyFeed, Dissolved, Inputs, ModelEvent, ModelEventKind, NutrientDose, PlantedMass,
};
pub use parting::{DailyStates, courses};
pub use run::{PlannedGrowth, planned_growth, run};
pub use state::State;
pub use supply::{Barrier, Supply, barrier, supply};
pub use tank::surface_light;
pub use trajectory::{Peak, Peaks, Sample, Trajectory};
