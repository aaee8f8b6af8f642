//! Regular water changes, up to what a keeper is asked for.

use super::{Lever, Now, Rung, number, text};
use crate::design::WaterChange;
use crate::spec::Edit;

/// Shares of the water that are changed once a week, %: judgement, half of it is the most.
const SHARES_PCT: [f64; 2] = [25.0, 50.0];
/// Last days of the changes.
const UNTIL: [u32; 3] = [28, 42, 90];
/// The first day: before the water is judged.
const FROM: u32 = 2;
/// Days between two changes.
const EVERY_D: f64 = 7.0;

/// More water changed, no more than half of it a week.
pub(super) fn changes(now: &Now<'_>) -> Vec<Rung> {
    let base = now.base;
    let own = base.draft().water.change;
    let now = own.map_or(0.0, a_week);
    let plans = SHARES_PCT
        .into_iter()
        .flat_map(|share| UNTIL.map(|until| (share, until)));
    plans
        .filter(|(share, until)| {
            let longer = own.is_none_or(|own| own.until < f64::from(*until));
            let share = share / 100.0;
            share > now || (longer && share >= now)
        })
        .map(|(share, until)| {
            let effort = 4.0 + share / 50.0 + f64::from(until) / 90.0;
            Rung::new(Lever::Changes, effort, edits(own.is_some(), share, until))
        })
        .collect()
}

/// Share of the water changed in a week.
fn a_week(change: WaterChange) -> f64 {
    change.share.fraction() * EVERY_D / change.every.days()
}

fn edits(is_written: bool, share_pct: f64, until: u32) -> Vec<Edit> {
    if is_written {
        return vec![
            text("water.change.share", format!("{share_pct} %")),
            text("water.change.every", format!("{EVERY_D} d")),
            number("water.change.from", FROM),
            number("water.change.until", until),
        ];
    }
    let table = format!(
        "{{ share = \"{share_pct} %\", every = \"{EVERY_D} d\", from = {FROM}, until = {until} }}"
    );
    vec![number("water.change", table)]
}
