//! Where numbers come from and how far they hold.
//!
//! A value stands on a [`Basis`]; a published one names its [`Source`].
//! What that is, its [`Work`] tells.
//! A value known only roughly is a [`Band`]. A formula states the range of each
//! input as a [`Validity`].

mod band;
mod basis;
mod key;
mod validity;
mod work;

pub use band::{Band, UnorderedBand};
pub use basis::Basis;
pub use key::Source;
pub use validity::{OutOfRange, Validity};
pub use work::{ReadExtent, Work, works};
