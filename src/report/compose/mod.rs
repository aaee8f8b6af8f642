//! Results to documents.

mod budget;
mod chart;
mod check;
mod compare;
mod compared;
mod estimate;
mod explain;
mod finding;
mod mend;
mod night;
mod plan;
mod preparation;
mod reason;
mod shopping;
mod short;
mod solve;
mod startup;
mod sweep;
mod upkeep;
mod water;
mod what_if;
mod years;

pub use check::check;
pub use compare::{compare, standard_columns};
pub use compared::Compared;
pub use explain::{
    Resting, WorkedExample, explain_result, explain_section, explain_source, explain_topic,
};
pub use mend::mend;
pub use night::night;
pub use plan::{SECTIONS, plan, plan_sections, sheet};
pub use short::{check_in_short, plan_in_short};
pub use solve::{condition_in_words, solve};
pub use startup::startup;
pub use sweep::title as compared_title;
pub use upkeep::{upkeep, upkeep_in_short};
pub use water::water;
