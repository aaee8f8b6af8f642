//! How a running tank stands.

use super::feeding::HUNGRY_PCT;
use super::section::{WeekRow, WeeklySection};
use crate::finding::Status;

/// Alkalinity under which nitrification may fail, dKH: judgement.
pub const LEAST_DKH: f64 = 1.0;

/// To watch where nitrate ends over its limit or alkalinity gives out, a note where plants
/// are hungry.
pub(super) fn status(week: &WeeklySection, weeks: &[WeekRow], nitrate_limit_mg_l: f64) -> Status {
    let last = weeks.last().map(|row| row.nitrate_mg_l);
    let nitrate = week.nitrate_steady_mg_l.or(last);
    let is_high = nitrate.is_some_and(|nitrate| nitrate.typical() > nitrate_limit_mg_l);
    let alkalinity = week.alkalinity_steady_dkh;
    let is_soft = alkalinity.is_some_and(|steady| steady.typical() < LEAST_DKH);
    let fed = week.feed_share_pct;
    let is_hungry = fed.is_some_and(|share| share.typical() < HUNGRY_PCT);
    if is_high || is_soft {
        Status::Watch
    } else if is_hungry {
        Status::Note
    } else {
        Status::Ok
    }
}
