//! Where numbers come from and how far they hold.
//!
//! A value stands on a [`Basis`]; a published one names its [`Source`] by key.
//! A value known only roughly is a [`Band`]. A formula states the range of each
//! input as a [`Validity`].

mod band;
mod basis;
mod citation;
mod validity;

pub use band::{Band, UnorderedBand};
pub use basis::Basis;
pub use citation::{Seen, Source, all, find};
pub use validity::{OutOfRange, Validity};
