//! Results to documents.

mod check;
mod compare;
mod estimate;
mod explain;
mod finding;
mod night;
mod plan;
mod startup;

pub use check::check;
pub use compare::compare;
pub use explain::{explain_finding, explain_source};
pub use night::night;
pub use plan::plan;
pub use startup::startup;
