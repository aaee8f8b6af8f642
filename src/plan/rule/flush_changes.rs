//! `flush.changes`: how much water the first weeks take.

use super::case::FlushCase;
use super::declaration::{About, Judge, Rule};
use crate::finding::{Action, Code, Explanation, Finding, Remedy, Status, WorkingStep, step};
use crate::plan::flush::ReadingChanges;
use crate::plan::outcome::Plan;
use crate::plan::words::of_100;
use crate::source::Basis;
use crate::units::show::significant;

/// Water that a keeper changes a week in the median start before that is too much to call a
/// plan sound, in fillings of the tank: half the water a week (judgement).
pub const MOST_FILLINGS_PER_WEEK: f64 = 0.5;

/// The rule.
pub(in crate::plan) const RULE: Rule = Rule {
    code: Code::FlushChanges,
    about: About::Tank,
    judge: Judge::Flush(|case| vec![judged(case)]),
    orders: &[Action::LayBed, Action::Plant, Action::ChangeWater],
    steps: |_, plan| steps(plan),
    explanation: Explanation {
        asks: "How much water is changed in the first weeks, and does it help?",
        limits: || {
            format!(
                "watch where the chance asked for takes changes of water, and the median start takes more than {MOST_FILLINGS_PER_WEEK} of a filling a week up to its last change; note where changes would make it worse"
            )
        },
        formula: || {
            "C after = (1 - s) C + s C(tap), at every second day's test that reads over a threshold; every start is run once without and once with the rule".to_owned()
        },
        symbols: &[
            "s: share of the water replaced",
            "C, C(tap): what is in the tank and in the tap water",
        ],
        range: || {
            "each start is tested without error; more changes can hold fewer starts, why is not told apart: then none are advised. The same starts choose whether changes are advised and give their odds, so that a gain of a few in 100 may be chance".to_owned()
        },
        basis: Basis::Judgement,
        sources: &[],
    },
};

fn judged(case: &FlushCase<'_>) -> Finding {
    let changes = case.startup.changes_by_reading.as_ref();
    let is_needed = case.startup.odds_as_written < case.asked();
    let used = changes.map_or(0.0, |changes| changes.fillings_per_week);
    let status = match changes {
        Some(_) if is_needed && used > MOST_FILLINGS_PER_WEEK => Status::Watch,
        None if makes_it_worse(case) => Status::Note,
        _ => Status::Ok,
    };
    Finding {
        code: Code::FlushChanges,
        status,
        subject: "water changes".to_owned(),
        value: Some(used),
        unit: "fillings/week",
        low: None,
        high: Some(MOST_FILLINGS_PER_WEEK),
        says: says(case, changes),
        remedy: (status >= Status::Watch).then(|| less_to_change(case)),
        basis: Basis::Judgement,
        source: None,
    }
}

fn makes_it_worse(case: &FlushCase<'_>) -> bool {
    case.odds_if_changed < case.startup.odds_as_written
}

fn says(case: &FlushCase<'_>, changes: Option<&ReadingChanges>) -> String {
    changes.map_or_else(
        || {
            let reason = case.startup.changes_by_reading_reason.clone();
            reason.unwrap_or_else(|| "no change of water is advised".to_owned())
        },
        |changes| {
            format!(
                "changing water by readings comes to {}: {} of the water a week in the median start",
                changes.how_often(),
                significant(changes.fillings_per_week, 2)
            )
        },
    )
}

/// What makes a start that takes much water take less.
fn less_to_change(case: &FlushCase<'_>) -> Remedy {
    let soaking = if case.design.draft().soil.soaked == 0 {
        ", soak and drain it before use"
    } else {
        ""
    };
    Remedy {
        says: format!("take less or poorer soil{soaking}, or plant more"),
        quantity: None,
        unit: "",
    }
}

/// The rule, the odds without it and with it, and what the changes come to.
fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let startup = &plan.startup;
    let changes = startup.changes_by_reading.as_ref();
    let rule = changes.into_iter().flat_map(|changes| {
        [
            step("a test every", changes.least_days_between, "d"),
            step(
                "changed where ammonia is over",
                changes.threshold_ammonia_mg_l,
                "mg N/L",
            ),
            step(
                "changed where nitrite is over",
                changes.threshold_nitrite_mg_l,
                "mg NO2/L",
            ),
            step("share of the water", changes.share * 100.0, "%"),
            step("changes in the median start", changes.expected, ""),
        ]
    });
    let odds = [
        ("as written", Some(startup.odds_as_written)),
        ("as advised", startup.odds_with_changes),
    ];
    let odds = odds.into_iter().filter_map(|(how, odds)| {
        let name = format!("starts of 100 that hold {how}");
        Some(step(&name, of_100(odds?), ""))
    });
    let used = changes.map_or(0.0, |changes| changes.fillings_per_week);
    let used = step("fillings a week in the median start", used, "fillings/week");
    rule.chain(odds).chain([used]).collect()
}
