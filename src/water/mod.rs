//! Fresh water: physical properties, dissolved gases, carbonate, ammonia.
//!
//! Formulas for the water of a tank at 0-40 C with next to no salt. Each file
//! states the range of its formula once, as a [`Validity`](crate::source::Validity);
//! outside it a formula still answers, and it is for the caller to say so.

pub mod ammonia;
pub mod atmosphere;
pub mod carbon_dioxide;
pub mod carbonate;
pub mod card;
pub mod chlorine;
pub mod density;
pub mod diffusion;
pub mod mixing;
pub mod oxygen;
pub mod salt;
pub mod schmidt;
pub mod stoichiometry;
pub mod surface_tension;
pub mod tap;
pub mod viscosity;

pub use density::density;
pub use diffusion::{Solute, diffusivity};
pub use schmidt::{Gas, schmidt_number};
pub use surface_tension::surface_tension;
pub use viscosity::viscosity;
