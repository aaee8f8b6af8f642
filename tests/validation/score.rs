//! How predictions lie to observations: coverage, ratio, and how wide they are.

use std::fmt::Write;

use lentic::numerics::quantile::quantiles;

use crate::case::Kind;
use crate::suite::Compared;

/// Over all observations that count.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Score {
    pub(crate) points: u32,
    /// Observed values within 10 to 90 % of the members: 80 % of them, were the bands right.
    pub(crate) inside: u32,
    /// Observed ranges that share something with the band.
    pub(crate) overlapping: u32,
    /// Of log10(predicted / observed), where that is compared: every case weighs one.
    pub(crate) median_log10: f64,
    pub(crate) rms_log10: f64,
    /// Width of the band, log10(high / low): a wide band holds anything.
    pub(crate) width_log10: f64,
}

impl Compared {
    pub(crate) fn is_inside(&self) -> bool {
        self.predicted.contains(self.observed.value)
    }

    pub(crate) fn overlaps(&self) -> bool {
        self.predicted.low <= self.observed.high && self.observed.low <= self.predicted.high
    }

    /// log10 of the ratio; none where a difference is compared.
    fn log10(&self) -> Option<f64> {
        (self.observed.kind == Kind::Ratio)
            .then(|| (self.predicted.typical.max(f64::MIN_POSITIVE) / self.observed.value).log10())
    }

    fn width_log10(&self) -> f64 {
        (self.predicted.high / self.predicted.low.max(f64::MIN_POSITIVE)).log10()
    }
}

impl Score {
    pub(crate) fn of(all: &[Compared]) -> Self {
        let counted: Vec<&Compared> = all.iter().filter(|one| !one.in_view).collect();
        let count =
            |holds: fn(&Compared) -> bool| counted.iter().filter(|one| holds(one)).count() as u32;
        let by_case = means(&counted, Compared::log10);
        let squares = means(&counted, |one| Some(one.log10()?.powi(2)));
        let widths = means(&counted, |one| Some(one.width_log10()));
        Self {
            points: counted.len() as u32,
            inside: count(Compared::is_inside),
            overlapping: count(Compared::overlaps),
            median_log10: median(&by_case),
            rms_log10: (squares.iter().sum::<f64>() / squares.len().max(1) as f64).sqrt(),
            width_log10: median(&widths),
        }
    }

    /// As it is kept.
    pub(crate) fn recorded(&self) -> String {
        format!(
            "# UPDATE_SCORE=1 cargo test --test validation\npoints = {}\ninside = {}\noverlapping = {}\nmedian_log10 = {:.3}\nrms_log10 = {:.3}\nwidth_log10 = {:.3}\n",
            self.points,
            self.inside,
            self.overlapping,
            self.median_log10,
            self.rms_log10,
            self.width_log10
        )
    }

    pub(crate) fn read(text: &str) -> Self {
        let table: toml::Table = text.parse().expect("score.toml");
        let count = |key: &str| u32::try_from(table[key].as_integer().expect(key)).expect(key);
        let number = |key: &str| table[key].as_float().expect(key);
        Self {
            points: count("points"),
            inside: count("inside"),
            overlapping: count("overlapping"),
            median_log10: number("median_log10"),
            rms_log10: number("rms_log10"),
            width_log10: number("width_log10"),
        }
    }

    /// The exact 95 % interval of a share, as the recorded count may come about by chance.
    pub(crate) fn interval(count: u32, of: u32) -> (f64, f64) {
        let below = |share: f64| (0..=count).map(|k| binomial(k, of, share)).sum::<f64>();
        let above = |share: f64| (count..=of).map(|k| binomial(k, of, share)).sum::<f64>();
        let steps = || (0..=1000).map(|step| f64::from(step) / 1000.0);
        let low = steps().find(|share| above(*share) >= 0.025).unwrap_or(0.0);
        let high = steps()
            .rev()
            .find(|share| below(*share) >= 0.025)
            .unwrap_or(1.0);
        (low, high)
    }
}

fn binomial(k: u32, n: u32, share: f64) -> f64 {
    let ways = (0..k)
        .map(|i| f64::from(n - i) / f64::from(i + 1))
        .product::<f64>();
    ways * share.powi(k.cast_signed()) * (1.0 - share).powi((n - k).cast_signed())
}

/// The mean of each case, so that every case weighs one.
fn means(counted: &[&Compared], value: impl Fn(&Compared) -> Option<f64>) -> Vec<f64> {
    let mut names: Vec<&str> = counted.iter().map(|one| one.case.as_str()).collect();
    names.dedup();
    let of = |name: &&str| {
        let values: Vec<f64> = counted
            .iter()
            .filter(|one| one.case == *name)
            .filter_map(|one| value(one))
            .collect();
        (!values.is_empty()).then(|| values.iter().sum::<f64>() / values.len() as f64)
    };
    names.iter().filter_map(of).collect()
}

fn median(values: &[f64]) -> f64 {
    quantiles(values.iter().copied(), [0.5]).map_or(0.0, |[median]| median)
}

/// The table, misses included.
pub(crate) fn table(all: &[Compared]) -> String {
    let mut text = "| case | quantity | observed | predicted, 10-90 % | in band | counted |\n|---|---|---|---|---|---|\n".to_owned();
    for one in all {
        let observed = &one.observed;
        let when = match (observed.hour.as_str(), observed.day) {
            ("", None) => String::new(),
            ("", Some(day)) => format!(" day {day}"),
            (hour, _) => format!(" {hour}"),
        };
        let inside = match (one.is_inside(), one.overlaps()) {
            (true, _) => "yes",
            (false, true) => "range only",
            (false, false) => "NO",
        };
        let _ = writeln!(
            text,
            "| {} | {}{when} | {} ({}-{}) {} | {:.3} ({:.3}-{:.3}) | {inside} | {} |",
            one.case,
            observed.path,
            observed.value,
            observed.low,
            observed.high,
            observed.unit,
            one.predicted.typical,
            one.predicted.low,
            one.predicted.high,
            if one.in_view { "no, in view" } else { "yes" }
        );
    }
    text
}
