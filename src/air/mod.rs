//! Gas exchange with the air, bubbles, lift by air, and what uses oxygen.
//!
//! Exchange is reckoned as a *clearance*: the flow of water that would carry the
//! same gas if it left saturated. Clearances add up, and a balance is
//! `dC/dt = clearance (saturation - C) / volume`.

pub mod airlift;
pub mod bubble;
pub mod circulation;
pub mod demand;
pub mod exchange;
pub mod plume;
pub mod pump;
pub mod surface;

pub use airlift::Airlift;
pub use bubble::{Bubbles, Diffuser};
pub use exchange::{Clearance, Exchange};
pub use surface::Surface;
