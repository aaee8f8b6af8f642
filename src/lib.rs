//! Designs and checks low-tech planted freshwater tanks: a nutrient soil under
//! a sand cap, planted heavily from the first day.
//!
//! Text to a design, a design to a plan, a plan to what it finds:
//!
//! ```
//! use lentic::{Options, Status};
//!
//! let text = r#"
//! [tank]
//! shape = "box"
//! size = "30 x 30 x 30 cm"
//! [soil]
//! material = "organic_potting_mix"
//! depth = "25 mm"
//! [cap]
//! material = "pea_gravel"
//! depth = "40 mm"
//! "#;
//! let design = lentic::spec::parse(text)?;
//! let plan = lentic::plan::plan(&design, Options { members: 0, ..Options::default() })?;
//! assert!((plan.soil.volume_l - 2.25).abs() < 1e-9); // 3 dm x 3 dm x 0.25 dm
//!
//! let coarse = plan.findings.iter().find(|finding| finding.code.text() == "cap.coarse");
//! assert_eq!(coarse.map(|finding| finding.status), Some(Status::Act));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//!
//! # Doors
//!
//! | from | by | to |
//! |---|---|---|
//! | a spec, as text | [`spec::parse`] | a [`Design`], or all [`Faults`] |
//! | a design | [`plan::plan`] | a [`Plan`] with its [`Finding`]s |
//! | a design, readings and signs | [`diagnosis::diagnose`] | a [`diagnosis::Diagnosis`] |
//! | a design, a day of its years | [`upkeep::upkeep`](upkeep::upkeep()) | an [`upkeep::Upkeep`]: what a week asks for |
//! | a design | [`makeup::makeup`](makeup::makeup()) | new water for it: a [`makeup::Makeup`] |
//! | many designs, keys to vary | [`study::compare`](study::compare()) | a [`study::TankRow`] for each point |
//! | a spec, as text | [`mend::mend`](mend::mend()) | the spec that holds, by the fewest [changes](mend::KeyChange) |
//! | any result | [`report`] | text, a page, JSON, CSV |
//!
//! # Layers
//!
//! Each module uses only those in the rows above its own.
//!
//! | modules | hold |
//! |---|---|
//! | [`units`], [`numerics`], [`result`] | quantities with their units; integrator, roots, samples; how a result is declared |
//! | [`source`] | works cited, bands of values, ranges of formulas |
//! | [`parameters`], [`finding`] | uncertain numbers of the simulations; what is judged: status, code, remedy, caution, working |
//! | [`catalogue`] | soils, caps, stones, plants, animals, devices, sizes, signs |
//! | [`geometry`] | shapes, vessels, beds, panes |
//! | [`substrate`], [`plants`], [`water`] | the bed; the planting and its light; the water |
//! | [`air`], [`heat`] | gas exchange, bubbles, flow; evaporation, loss of heat |
//! | [`design`] | the whole tank, checked and measured, and every key that may vary |
//! | [`state`], [`mixture`] | what lives and is dissolved on a day |
//! | [`startup`], [`night`] | the first ninety days; a day and a night |
//! | [`plan`], [`dosing`] | everything computed and judged for one design; what hungry plants are given |
//! | [`upkeep`], [`diagnosis`], [`makeup`] | a running tank by the week and over its years; causes weighed for a tank that fails; new water mixed, treated and paced |
//! | [`explanation`] | what stands behind findings and figures, found by what people type |
//! | [`study`] | many tanks compared, varied, solved for |
//! | [`spec`] | text to design, and back: a text with some keys changed |
//! | [`mend`] | the fewest changes to a spec after which its plan holds |
//! | [`report`] | results to text, pages, JSON, CSV |
//!
//! A formula stands with its range, its source, an example with a number of that source or
//! of plain arithmetic, and what it leaves out. Outside its range it answers all the same:
//! [`source::Validity`] says so.
//!
//! The types that every use meets are named here again. The command is the feature `cli`,
//! on by default; without it no crate for arguments, files or terminals is built:
//!
//! ```toml
//! [dependencies]
//! lentic = { path = "../lentic", default-features = false }
//! ```

pub use design::Design;
pub use finding::{Finding, Status};
pub use plan::{Options, Plan};
pub use spec::Faults;
pub use units::UnitSystem;

pub mod units;

pub mod numerics;

pub mod result;

pub mod source;

pub mod parameters;

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

pub mod dosing;

pub mod upkeep;

pub mod diagnosis;

pub mod makeup;

pub mod explanation;

pub mod study;

pub mod spec;

pub mod mend;
pub mod mixture;

pub mod report;

#[cfg(feature = "cli")]
pub mod cli;
