//! One plan that holds: the fewest changes to a spec after which nothing is to be watched
//! or mended, and the start holds as often as is asked.
//!
//! Every candidate is a text: the keeper's own with some keys changed, read and judged as
//! any spec is. Levers are turned one after the other, the one that helps most first; then
//! each is turned back as far as the plan still holds without it.

mod held;
mod keep;
mod lever;
mod outcome;
mod search;
mod trial;

#[cfg(test)]
mod tests;

pub use keep::{Keep, UnknownKey};
pub use outcome::{KeyChange, Mended, Unmet};

use thiserror::Error;

use crate::design::Design;
use crate::numerics::rodas::IntegrationError;
use crate::plan::Options;
use search::PlanSearch;
use trial::Bench;

/// What is to be mended, and what is not to be touched.
#[derive(Debug, Clone, Copy)]
pub struct MendRequest<'a> {
    /// The spec.
    pub text: &'a str,
    /// The same, read.
    pub design: &'a Design,
    /// The keys that stay as they are.
    pub keep: &'a Keep,
    /// How a start is followed; a plan is proved with all members.
    pub options: Options,
}

/// Why nothing could be mended.
#[derive(Debug, Error)]
pub enum MendError {
    /// The spec as it stands could not be followed.
    #[error(transparent)]
    Run(#[from] IntegrationError),
}

/// Changes a spec until its plan holds, by the fewest levers; the nearest that there is
/// where none does. `advance` is called for every plan that is tried, from any thread.
///
/// # Errors
/// When the spec as it stands cannot be followed.
///
/// # Example
/// ```
/// use lentic::mend::{Keep, MendRequest, mend};
/// use lentic::{Options, Status, spec};
/// let text = r#"
/// [tank]
/// size = "60 x 30 x 36 cm"
/// [soil]
/// material = "loam_topsoil"
/// depth = "15 mm"
/// [cap]
/// material = "pea_gravel" # from the yard
/// depth = "40 mm"
/// [[plants]]
/// name = "lemna_minor"
/// amount = "40 %"
/// "#;
/// let (mended, new) = mend(
///     &MendRequest {
///         text,
///         design: &spec::parse(text)?,
///         keep: &Keep::default(),
///         options: Options { members: 16, ..Options::default() },
///     },
///     &|| (),
/// )?;
/// assert_eq!(mended.status_before, Status::Act);
/// assert!(mended.changes.iter().any(|change| change.key == "cap.material"));
/// assert!(new.contains("# from the yard"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn mend(
    request: &MendRequest<'_>,
    advance: &(dyn Fn() + Sync),
) -> Result<(Mended, String), MendError> {
    let bench = Bench::new(request, advance);
    let before = bench.as_written()?;
    let found = PlanSearch::new(&bench).from(before.clone());
    let mended = outcome::mended(&bench, &before, &found);
    Ok((mended, found.text))
}

/// Members that levers are turned by, and that candidates are screened with; what they settle
/// on is proved with all.
const GLANCED: u32 = 16;
const SCREENED: u32 = 32;
