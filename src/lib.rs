//! Designs and checks low-tech planted freshwater tanks: a nutrient soil under
//! a sand cap, planted heavily from the first day.
//!
//! Text to a design, a design to a plan:
//!
//! ```
//! let text = lentic::spec::starter::text(lentic::UnitSystem::Metric);
//! let design = lentic::spec::parse(&text)?;
//! let plan = lentic::plan::plan(&design, lentic::Options { members: 0, ..Default::default() })?;
//! assert!(plan.planting.index > 2.0);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! Modules stand in layers; each may use only those above it in this list. The types
//! that every use of them meets are named here again. The command is the feature `cli`,
//! on by default; without it no crate for arguments, files or terminals is built.

pub use design::Design;
pub use finding::{Finding, Status};
pub use plan::{Options, Plan};
pub use spec::Faults;
pub use units::UnitSystem;

pub mod units;

pub mod numerics;

pub mod source;

pub mod finding;

pub mod catalogue;

pub mod geometry;

pub mod substrate;

pub mod plants;

pub mod water;

pub mod air;

pub mod heat;

pub mod design;

pub mod state;

pub mod startup;

pub mod night;

pub mod plan;

pub mod diagnosis;

pub mod study;

pub mod spec;

pub mod report;

#[cfg(feature = "cli")]
pub mod cli;
