//! `light.long`: long days in a tank that feeds algae.

use super::case::NightCase;
use super::declaration::{About, Judge, Rule};
use super::light_short;
use super::verdict::{Verdict, finding};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status};
use crate::night::limits::LONG_LIGHT_H;
use crate::source::Basis;
use crate::units::show::significant;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::LightLong,
    about: About::Tank,
    judge: Judge::Night(|case| vec![judged(case)]),
    orders: &[Action::RunDevice, Action::ReachIn],
    steps: light_short::steps,
    explanation: Explanation {
        asks: "Is the day so long that algae gain?",
        limits: || {
            format!(
                "watch over {LONG_LIGHT_H} h while light and nutrients are left over for algae (common practice)"
            )
        },
        formula: || {
            "algae window: days on which nitrogen, phosphorus and light in the water are all over what films of algae need".to_owned()
        },
        symbols: &[],
        range: || "what algae do is hardly predictable; the window says when they could".to_owned(),
        basis: Basis::Practice,
        sources: &[],
    },
};

/// `light.long`: hours of light while nutrients and light favour algae.
///
/// # Source
/// Common practice, no source.
///
/// # Example
/// ```
/// use lentic::{finding::Status, plan::rule::light_long::verdict};
/// assert_eq!([verdict(12.0, 5.0).status, verdict(10.0, 5.0).status], [Status::Watch, Status::Ok]);
/// ```
pub fn verdict(hours: f64, algae_window_days: f64) -> Verdict {
    Verdict {
        status: if hours > LONG_LIGHT_H && algae_window_days > 0.0 {
            Status::Watch
        } else {
            Status::Ok
        },
        value: hours,
        unit: "h",
        low: None,
        high: Some(LONG_LIGHT_H),
        basis: Basis::Practice,
        source: None,
    }
}

/// Long days in a tank that feeds algae.
fn judged(case: &NightCase<'_>) -> Finding {
    let window_d = case.night.algae_window_d;
    let verdict = verdict(case.night.lighting.hours, window_d);
    let hours = significant(verdict.value, 2);
    let says = match verdict.status {
        Status::Ok => format!("{hours} h of light a day"),
        Status::Note | Status::Watch | Status::Act => format!(
            "{hours} h of light while for {window_d:.0} days there is more light and food than plants take"
        ),
    };
    let remedy = (verdict.status >= Status::Watch).then(|| Remedy {
        says: format!(
            "light it {LONG_LIGHT_H:.0} h a day at most until the algae window has closed"
        ),
        quantity: Some(LONG_LIGHT_H),
        unit: "h",
    });
    finding(Code::LightLong, verdict, "light", says, remedy)
}
