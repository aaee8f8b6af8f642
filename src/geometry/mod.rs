//! Shapes, the beds laid in them and the panes around them.
//!
//! A [`Shape`] has dimensions; a [`Vessel`] is the space they leave inside walls; a
//! [`Bed`] is soil and cap in a vessel. All volumes are closed forms.

pub mod pane;
pub mod plate;

mod bed;
mod edge;
mod error;
mod layer;
mod outline;
mod pile;
mod plane;
mod region;
mod shape;
mod spot;
mod vessel;
mod view;
mod zone;

#[cfg(test)]
mod tests;

pub use bed::Bed;
pub use error::{Dimension, GeometryError, Measure, SIDE_RANGE, TANK_RANGE};
pub use layer::{BedTop, Extreme, FloorPlace, Layer, LayerDepth};
pub use shape::Shape;
pub use spot::{Spot, edges_at};
pub use vessel::{Measured, Vessel, Wall};
pub use view::{Above, Elevation, ViewSide};
