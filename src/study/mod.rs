//! Many tanks at once: compared, varied, weighed against each other, solved for.
//!
//! [`compare()`] turns [`Axis`] after axis of some tanks and gives a [`TankRow`] for each
//! point, computing no more of a plan than the [`ResultColumn`]s ask for; [`solve()`] turns one
//! until a [`Condition`] holds.
//!
//! ```
//! use lentic::plan::Options;
//! use lentic::study::{BaseTank, ResultColumn, Question, Space, compare};
//!
//! let text = r#"
//! [tank]
//! shape = "box"
//! size = "60 x 30 x 36 cm"
//! [soil]
//! material = "loam_topsoil"
//! depth = "25 mm"
//! [cap]
//! material = "filter_sand"
//! depth = "40 mm"
//! "#;
//! let bases = [BaseTank::of(0, lentic::spec::parse(text)?.into_draft())];
//! let axes = vec![lentic::spec::axis("cap.depth=20..40mm/3")?];
//! let question = Question {
//!     columns: vec![ResultColumn::of("weight.total_kg")?],
//!     ..Question::about(Space::grid(axes)?, Options::default())
//! };
//! let weights: Vec<f64> = compare(&question, &bases)
//!     .filter_map(|row| row.cells.ok()?[0].as_ref()?.number())
//!     .collect();
//! assert!(weights[0] < weights[1] && weights[1] < weights[2]);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod axis;
mod cell;
mod choice;
mod column;
mod compare;
mod field;
mod sensitivity;
mod solve;
mod space;

pub use axis::{Axis, AxisRange, Level, Levels, Read, Shown, Spacing};
pub use cell::Cell;
pub use choice::{Aim, Bound, Condition, Front, Relation};
pub use column::{ResultColumn, UnknownResult};
pub use compare::{BaseTank, Question, RowError, Shard, TankRow, TankRows, compare};
pub use sensitivity::{KeyInfluence, Sensitivity};
pub use solve::{Answer, SolveProblem, Tried, solve};
pub use space::{Space, SpaceError};
