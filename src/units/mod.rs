//! Physical quantities as people write them and as formulas need them.
//!
//! A quantity is a newtype over `f64` in one base unit. It is built and read
//! with the unit named (`Length::from_cm(5.0)`, `depth.mm()`), parsed from text
//! that carries its unit ([`Quantity::parse`]) and shown by [`show`], the one
//! place that rounds.

pub mod analyte;
pub mod constants;
pub mod error;
pub mod parse;
pub mod pattern;
pub mod quantity;
pub mod show;
pub mod size;

mod chemistry;
mod ending;
mod heat;
mod light;
pub(crate) mod list;
mod matter;
mod printable;
mod share;
mod space;
mod time;
mod transport;

#[cfg(test)]
mod tests;

pub use analyte::Analyte;
pub use chemistry::{Alkalinity, Concentration, Conductivity, Hardness};
pub use ending::{BAND_ENDS, MONEY, TYPICAL_END, parted, unit_of_result, without_band_end};
pub use error::QuantityError;
pub use heat::{Power, Pressure, Temperature};
pub use light::{LuminousFlux, PhotonFlux};
pub use matter::{ArealDensity, Content, Density, Mass, Sorption};
pub use printable::{is_printable, printable};
pub use quantity::{Quantity, Unit};
pub use share::Share;
pub use show::UnitSystem;
pub use space::{Area, Length, Volume};
pub use time::{Duration, Flow};
pub use transport::{Diffusivity, MassRate, SurfaceTension, Transmittance, Velocity, Viscosity};
