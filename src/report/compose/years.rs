//! A tank over its years: the last one as charts, the soil's as a table.

use super::estimate::ranged;
use crate::plan::Estimate;
use crate::report::chart::{Across, Chart, LimitLine, Series};
use crate::report::document::{Fact, Table, TableColumn};
use crate::units::show::fixed;
use crate::upkeep::{AgeingSection, WeekRow};

/// The year: nitrate, hardness, plants.
pub(super) fn charts(rows: &[WeekRow], nitrate_limit: f64) -> impl Iterator<Item = Chart> {
    let limit = LimitLine {
        name: "limit".to_owned(),
        value: nitrate_limit,
    };
    let nitrate = Chart {
        limits: vec![limit],
        ..year(
            "nitrate, mg NO3/L",
            vec![series("nitrate", rows, |row| row.nitrate_mg_l)],
        )
    };
    let hardness = series("hardness", rows, |row| Estimate::Exact(row.hardness_dgh));
    let plants = [
        series("floaters", rows, |row| row.floating_g),
        series("fast growers", rows, |row| row.fast_g),
    ];
    let grown = plants
        .into_iter()
        .filter(|series| series.line.iter().any(|(_, band)| band.typical > 0.0));
    let charts = [
        nitrate,
        year("hardness, dGH", vec![hardness]),
        year("plants, g fresh", grown.collect()),
    ];
    charts.into_iter().filter(|chart| !chart.series.is_empty())
}

fn year(title: &str, series: Vec<Series>) -> Chart {
    Chart {
        title: title.to_owned(),
        across: Across::Days,
        series,
        ..Chart::default()
    }
}

fn series(name: &str, rows: &[WeekRow], value: fn(&WeekRow) -> Estimate) -> Series {
    Series {
        name: name.to_owned(),
        line: rows
            .iter()
            .map(|row| (f64::from(row.day), value(row).band()))
            .collect(),
    }
}

/// What the soil gives, year by year.
pub(super) fn years(ageing: &AgeingSection) -> Table {
    let rows = ageing.years.iter().map(|row| {
        let share = row
            .share_of_demand_pct
            .map_or("not given".to_owned(), ranged);
        vec![row.year.to_string(), ranged(row.release_mg_n_m2_d), share]
    });
    Table {
        columns: vec![
            TableColumn::numbers("after years"),
            TableColumn::numbers("it frees, mg N/m2 a day"),
            TableColumn::numbers("of what plants could take, %"),
        ],
        rows: rows.collect(),
    }
}

pub(super) fn soil(ageing: &AgeingSection) -> [Fact; 2] {
    let nitrogen = match ageing.falls_under_demand_years {
        Some(years) if years.band().high < 0.1 => Fact::new(
            "soil's nitrogen",
            "never enough",
            "for plants in this light: they live on feed and tap",
        ),
        Some(years) => Fact::new(
            "soil's nitrogen",
            span(years),
            "then plants want more than soil, feed and tap give",
        ),
        None => Fact::new(
            "soil's nitrogen",
            "no end",
            "feed and tap are enough, or the soil is for 30 years",
        ),
    };
    let phosphorus = match ageing.phosphorus_lasts_years {
        Some(years) => Fact::new(
            "phosphorus",
            span(years),
            "of what the bed holds, at today's pace",
        ),
        None => Fact::new("phosphorus", "no end", "in 30 years"),
    };
    [nitrogen.by("upkeep.ageing"), phosphorus.by("upkeep.ageing")]
}

/// Weeks up to a year, years from there on.
fn span(years: Estimate) -> String {
    if years.typical() >= 1.0 {
        return format!("{} years", ranged(years));
    }
    let band = years.band().scaled(WEEKS_A_YEAR);
    let weeks = [band.low, band.typical, band.high].map(|weeks| fixed(weeks, 0));
    match weeks {
        [low, typical, high] if low == high => format!("{typical} weeks"),
        [low, typical, high] => format!("{typical} ({low}-{high}) weeks"),
    }
}

const WEEKS_A_YEAR: f64 = 365.25 / 7.0;
