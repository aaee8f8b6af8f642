//! Things bought, planted and kept, as rows of embedded tables.
//!
//! Every row says what its numbers rest on; numbers that vary are a
//! [`Band`](crate::source::Band). A row is found by its name, its label or a
//! trade word, however it is cased and spaced: [`find`]. Beside them stand the topics,
//! which say what is computed and why.

mod animal;
mod cap;
mod citing;
mod comparison;
mod device;
mod evidence;
mod listing;
mod names;
mod path;
mod plant;
mod row;
mod sign;
mod size;
mod soil;
mod stone;
mod topic;

#[cfg(test)]
mod tests;

pub use animal::{Animal, Tolerance, animals};
pub use cap::{Cap, CapCaution, Grains, caps};
pub use citing::{CitingRow, citing_rows};
pub use comparison::{ObservedComparison, comparisons};
pub use device::{Device, FlowKind, devices};
pub use evidence::{LookQuestion, Odds, SpecFact, facts, questions, signs};
pub use listing::{
    LISTS_AS_OF, ListText, Listing, ListingPart, RestrictedList, Taxon, restricted_lists,
};
pub use names::names_in;
pub use path::{bracketed, nearest_path, within_lists};
pub use plant::{GrowthForm, Plant, PlantGroup, Portion, plants};
pub use row::{CatalogueRow, Unknown, find};
pub use sign::Sign;
pub use size::{Printed, TankSize, sizes};
pub use soil::{Soil, SoilKind, soils};
pub use stone::{Stone, stones};
pub use topic::{FINDINGS, Topic, figures};
