//! The one thing to do next.

use super::CauseResult;
use super::case::Case;
use super::cause::Cause;
use super::emergency::emergency;
use super::look::Look;
use super::remedy::Immediate;
use crate::finding::{Remedy, Status};
use crate::plan::Check;

/// The next step, and whether it cannot wait.
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
) -> (Remedy, bool) {
    if let Some(now) = emergency(case) {
        return (now, true);
    }
    if case.is_blind() {
        return (bed.next_step.clone(), false);
    }
    let step = match (causes.first(), look) {
        (Some(_), Some(look)) if !alike.is_empty() => undecided(case, causes, alike, look),
        (Some(first), _) if first.cause == Cause::AsExpected => sound(bed),
        (Some(first), _) => mended(first),
        (None, _) => bed.next_step.clone(),
    };
    (step, false)
}

fn percent(probability: f64) -> String {
    format!("{:.0} %", probability * 100.0)
}

/// "it cannot be told whether ...: test ... first".
fn undecided(case: &Case<'_>, causes: &[CauseResult], alike: &[Cause], look: &Look) -> Remedy {
    let named: Vec<String> = causes
        .iter()
        .filter(|result| alike.contains(&result.cause))
        .take(3)
        .map(|result| format!("{} ({})", result.cause.label(), percent(result.probability)))
        .collect();
    let meanwhile =
        Immediate::of(case).map(|changes| format!("; meanwhile {}", changes.says(case)));
    Remedy {
        says: format!(
            "it cannot be told yet which of these it is: {}. Next: {}{}",
            named.join(", "),
            look.asks,
            meanwhile.unwrap_or_default()
        ),
        quantity: None,
        unit: "",
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
