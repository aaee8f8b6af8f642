//! A peak of the first weeks against its limits, and the working behind it.

use super::case::FlushCase;
use super::water_changes::against_the_flush;
use crate::finding::{Code, Finding, Status, WorkingStep, step};
use crate::plan::estimate::Estimate;
use crate::plan::load::FLUSH_DAYS;
use crate::plan::outcome::Plan;
use crate::startup::limits::Limit;
use crate::units::show;

/// A peak to be judged.
pub(super) struct JudgedPeak {
    pub(super) name: &'static str,
    pub(super) unit: &'static str,
    pub(super) value: Estimate,
    pub(super) day: Option<Estimate>,
    /// The limit to watch, the keeper's own where there is one.
    pub(super) watch: f64,
    pub(super) share_over: f64,
    pub(super) aside: String,
}

/// A keeper's own watch limit may lie above the act limit and then replaces it too.
pub(super) fn status(value: f64, (watch, act): (f64, f64)) -> Status {
    if value >= act.max(watch) {
        Status::Act
    } else if value >= watch {
        Status::Watch
    } else {
        Status::Ok
    }
}

pub(super) fn finding(
    case: &FlushCase<'_>,
    code: Code,
    status: Status,
    peak: &JudgedPeak,
    limit: &Limit,
) -> Finding {
    let typical = peak.value.typical().max(0.0);
    let day = peak
        .day
        .filter(|_| typical > 0.0)
        .map_or_else(String::new, |day| {
            format!(
                " about day {:.0} in the median of the starts",
                day.typical()
            )
        });
    let share = if case.startup.members == 0 {
        String::new()
    } else {
        format!(
            "; over {} in {:.0} %",
            show::significant(peak.watch, 2),
            peak.share_over * 100.0
        )
    };
    Finding {
        code,
        status,
        subject: peak.name.to_owned(),
        value: Some(typical),
        unit: peak.unit,
        low: None,
        high: Some(peak.watch),
        says: format!(
            "{} peaks at {} {}{}{day}{share}",
            peak.name,
            show::significant(typical, 2),
            peak.unit,
            peak.aside
        ),
        remedy: (status >= Status::Watch).then(|| against_the_flush(case)),
        basis: limit.basis,
        source: Some(limit.source),
    }
}

pub(super) fn steps(plan: &Plan) -> Vec<WorkingStep> {
    let startup = &plan.startup;
    let mut steps = vec![
        step(
            &format!("released in {FLUSH_DAYS} days"),
            plan.bed.release_21_d_g_n_m2,
            "g N/m2",
        ),
        step("members", f64::from(startup.members), ""),
        step(
            "ammonia, typical peak",
            startup.ammonia_peak_mg_l.typical().max(0.0),
            "mg N/L",
        ),
        step(
            "un-ionised",
            startup.un_ionised_peak_mg_l.typical().max(0.0),
            "mg N/L",
        ),
        step(
            "nitrite, typical peak",
            startup.nitrite_peak_mg_l.typical().max(0.0),
            "mg NO2/L",
        ),
        step(
            "nitrate, typical peak",
            startup.nitrate_peak_mg_l.typical().max(0.0),
            "mg NO3/L",
        ),
    ];
    if let Some(day) = startup.ready_day {
        steps.push(step("ready, typical day", day.typical(), "d"));
    }
    if let Some(day) = startup.ready_day_advised {
        steps.push(step("animals advised from day", day, "d"));
    }
    steps
}
