//! The whole tank: what was asked for, checked and measured.
//!
//! A [`Draft`] is plain data that anyone may fill in; [`Draft::check`] turns it
//! into a [`Design`] or lists every [`Violation`]. A `Design` that exists is valid.

mod bed;
mod checks;
mod draft;
mod event;
mod follow;
pub mod key;
mod knob;
mod limits;
mod living;
mod measured;
mod planted;
mod surroundings;
mod tank;
mod tap;
pub mod usual;
mod violation;

pub use bed::{BagSize, CapGrading, CapLayer, PlacedStone, PricedBag, SoilLayer, SoilProperties};
pub use draft::{Assumption, Draft};
pub use event::{Dosed, Event, EventKind, Goal, Incident, KitMarks, Looked, Reading, Signs};
pub use knob::{Knob, Setting};
pub use living::{Amount, Feed, Harvest, Planting, Stock, Taken};
pub use measured::Design;
pub use planted::{Areas, Biomass, FloaterTraits, Planted, closed};
pub use surroundings::{
    Air, DutyHours, FillWater, FlowDevice, Light, LightLevel, Room, WaterChange,
};
pub use tank::{Material, Rim, Tank};
pub use tap::{Conditioner, Disinfectant, LabelDose, Softened, TopUp, WaterGoal};
pub use violation::Violation;
