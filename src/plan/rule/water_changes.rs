//! Water changes as remedies word them.

use super::case::FlushCase;
use crate::finding::Remedy;
use crate::plan::flush::ReadingChanges;
use crate::plan::words::of_100;
use crate::units::show;

/// Water changes by reading where these help, else the planting.
pub(super) fn against_the_flush(case: &FlushCase<'_>) -> Remedy {
    match &case.startup.changes_by_reading {
        Some(changes) => water_change(case, changes),
        None => Remedy {
            says: "plant as under plants.load, soak the soil before use, and keep animals out until two clean tests a week apart".to_owned(),
            quantity: None,
            unit: "",
        },
    }
}

fn water_change(case: &FlushCase<'_>, changes: &ReadingChanges) -> Remedy {
    let litres = case.design.water() * changes.share;
    let units = case.design.draft().units;
    let odds = case.startup.odds_with_changes.unwrap_or_default();
    let short = if odds < case.asked() {
        "; planting, soaking and less soil do more"
    } else {
        ""
    };
    Remedy {
        says: format!(
            "test every {} days; change {:.0} % ({}) when ammonia reads over {} mg N/L or nitrite over {} mg/L: {} of 100 starts hold{short}",
            show::fixed(changes.least_days_between, 0),
            changes.share * 100.0,
            units.volume(litres),
            show::significant(changes.threshold_ammonia_mg_l, 2),
            show::significant(changes.threshold_nitrite_mg_l, 2),
            of_100(odds)
        ),
        quantity: Some(litres.litres()),
        unit: "L",
    }
}
