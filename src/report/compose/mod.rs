//! Results to documents.

mod check;
mod compare;
mod explain;
mod finding;
mod plan;

pub use check::check;
pub use compare::compare;
pub use explain::{explain_finding, explain_source};
pub use plan::plan;
