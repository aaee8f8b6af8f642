//! Why there is no such water.

use thiserror::Error;

use crate::mixture::NoMixture;

/// Why there is no such water.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum MakeupError {
    /// None is asked for.
    #[error("no water is asked for")]
    Nothing,
    /// More than goes in.
    #[error("{asked} is more than the {holds} of water that the tank holds")]
    MoreThanTank {
        /// What is asked for.
        asked: String,
        /// The free water.
        holds: String,
    },
    /// Both waters have more than is asked for.
    #[error(transparent)]
    NoMixture(#[from] NoMixture),
}

impl MakeupError {
    /// What to do instead.
    pub fn way_out(&self) -> String {
        match self {
            Self::Nothing => "say how much, for example --litres 10, or --fill".to_owned(),
            Self::MoreThanTank { holds, .. } => {
                format!("ask for {holds} at most, or fill the tank with --fill")
            }
            Self::NoMixture(NoMixture {
                key, soft, unit, ..
            }) => format!(
                "ask for at least {soft} {unit} in water.goal.{key}, or mix with softer water in water.softened.{key}: pure water has none"
            ),
        }
    }
}
