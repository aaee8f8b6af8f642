//! The one thing to do next.

use serde::Serialize;

use super::CauseResult;
use super::case::Case;
use super::cause::Cause;
use super::emergency::{self, emergency};
use super::look::Look;
use super::remedy::Immediate;
use crate::finding::{Action, Remedy, Status};
use crate::plan::Check;
use crate::result::results;

results! {
    /// The one thing to do next, named as in JSON.
    #[derive(Debug, Clone, PartialEq, Serialize)]
    pub struct NextResult {
        /// the one thing to do next
        pub says: String => "check.cause",
        /// how much of it, in the unit beside it
        pub quantity: Option<f64> => "check.cause",
        /// unit of that quantity
        pub unit: &'static str => "check.cause",
    }
}

impl From<Remedy> for NextResult {
    fn from(remedy: Remedy) -> Self {
        Self {
            says: remedy.says,
            quantity: remedy.quantity,
            unit: remedy.unit,
        }
    }
}

/// The one thing to do next.
pub(super) struct NextStep {
    /// In words.
    pub(super) remedy: Remedy,
    /// Whether it cannot wait.
    pub(super) is_urgent: bool,
    /// The work that it orders beside that of the causes and of the bed.
    pub(super) actions: Vec<Action>,
}

impl NextStep {
    fn unhurried(remedy: Remedy) -> Self {
        Self {
            remedy,
            is_urgent: false,
            actions: Vec::new(),
        }
    }
}

/// The next step.
///
/// Danger to animals comes first; then, where nothing was read or seen, what the bed
/// alone asks for; then the look that parts causes alike, or the remedy of the cause
/// that leads.
pub(super) fn of(
    case: &Case<'_>,
    causes: &[CauseResult],
    alike: &[Cause],
    look: Option<&Look>,
    bed: &Check,
) -> NextStep {
    if let Some(remedy) = emergency(case) {
        return NextStep {
            remedy,
            is_urgent: true,
            actions: emergency::ORDERS.to_vec(),
        };
    }
    if case.is_blind() {
        return NextStep::unhurried(bed.next_step.clone());
    }
    match (causes.first(), look) {
        (Some(_), Some(look)) if !alike.is_empty() => undecided(case, causes, alike, look),
        (Some(first), _) if first.cause == Cause::AsExpected => NextStep::unhurried(sound(bed)),
        (Some(first), _) => NextStep::unhurried(mended(first)),
        (None, _) => NextStep::unhurried(bed.next_step.clone()),
    }
}

fn percent(probability: f64) -> String {
    format!("{:.0} %", probability * 100.0)
}

/// "it cannot be told whether ...: test ... first".
fn undecided(case: &Case<'_>, causes: &[CauseResult], alike: &[Cause], look: &Look) -> NextStep {
    let named: Vec<String> = causes
        .iter()
        .filter(|result| alike.contains(&result.cause))
        .take(3)
        .map(|result| format!("{} ({})", result.cause.label(), percent(result.probability)))
        .collect();
    let changes = Immediate::of(case);
    let meanwhile = changes.map(|changes| format!("; meanwhile {}", changes.says(case)));
    let says = format!(
        "it cannot be told yet which of these it is: {}. Next: {}{}",
        named.join(", "),
        look.asks,
        meanwhile.unwrap_or_default()
    );
    NextStep {
        actions: Vec::from_iter(changes.map(|_| Action::ChangeWater)),
        ..NextStep::unhurried(Remedy {
            says,
            quantity: None,
            unit: "",
        })
    }
}

/// Nothing is wrong; what the bed asks for is said beside it.
fn sound(bed: &Check) -> Remedy {
    let aside = if bed.status() >= Status::Watch {
        format!("; of the bed by itself: {}", bed.next_step.says)
    } else {
        String::new()
    };
    Remedy {
        says: format!("leave it alone: the tank is as it should be at its age{aside}"),
        quantity: None,
        unit: "",
    }
}

fn mended(first: &CauseResult) -> Remedy {
    let lead = format!("{} ({})", first.cause.label(), percent(first.probability));
    match &first.remedy {
        Some(remedy) => Remedy {
            says: format!("{lead}. Next: {}", remedy.says),
            quantity: remedy.quantity,
            unit: remedy.unit,
        },
        None => Remedy {
            says: lead,
            quantity: None,
            unit: "",
        },
    }
}
