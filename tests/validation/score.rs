//! How predictions lie to observations: coverage, ratio, and how wide they are.

use std::fmt::{self, Display, Formatter, Write};

use lentic::catalogue::ObservedComparison;
use lentic::numerics::quantile::quantiles;

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

/// log10 of predicted over observed; none where a difference is compared.
fn log10(one: &ObservedComparison) -> Option<f64> {
    one.is_ratio
        .then(|| (one.band().typical.max(f64::MIN_POSITIVE) / one.observed()).log10())
}

fn width_log10(one: &ObservedComparison) -> f64 {
    (one.band().high / one.band().low.max(f64::MIN_POSITIVE)).log10()
}

impl Score {
    pub(crate) fn of(all: &[ObservedComparison]) -> Self {
        let counted: Vec<&ObservedComparison> = all.iter().filter(|one| !one.in_view).collect();
        let count = |holds: fn(&ObservedComparison) -> bool| {
            counted.iter().filter(|one| holds(one)).count() as u32
        };
        let by_case = means(&counted, log10);
        let squares = means(&counted, |one| Some(log10(one)?.powi(2)));
        let widths = means(&counted, |one| Some(width_log10(one)));
        Self {
            points: counted.len() as u32,
            inside: count(ObservedComparison::is_inside),
            overlapping: count(ObservedComparison::overlaps),
            median_log10: median(&by_case),
            rms_log10: (squares.iter().sum::<f64>() / squares.len().max(1) as f64).sqrt(),
            width_log10: median(&widths),
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

/// In a line.
impl Display for Score {
    fn fmt(&self, text: &mut Formatter<'_>) -> fmt::Result {
        let (low, high) = Self::interval(self.inside, self.points);
        write!(
            text,
            "{} of {} points that count lie in the band (95 % of a binomial: {low:.2} to {high:.2}) and {} of their ranges touch it; predicted over observed is {:.2} in the median of the cases with an rms factor of {:.1}; the band is a factor of {:.1} wide in the median",
            self.inside,
            self.points,
            self.overlapping,
            10_f64.powf(self.median_log10),
            10_f64.powf(self.rms_log10),
            10_f64.powf(self.width_log10)
        )
    }
}

fn binomial(k: u32, n: u32, share: f64) -> f64 {
    let ways = (0..k)
        .map(|i| f64::from(n - i) / f64::from(i + 1))
        .product::<f64>();
    ways * share.powi(k.cast_signed()) * (1.0 - share).powi((n - k).cast_signed())
}

/// The mean of each case, so that every case weighs one.
fn means(
    counted: &[&ObservedComparison],
    value: impl Fn(&ObservedComparison) -> Option<f64>,
) -> Vec<f64> {
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
pub(crate) fn table(all: &[ObservedComparison]) -> String {
    let mut text = "| case | quantity | observed | predicted, 10-90 % | in band | counted |\n|---|---|---|---|---|---|\n".to_owned();
    for one in all {
        let inside = match (one.is_inside(), one.overlaps()) {
            (true, _) => "yes",
            (false, true) => "range only",
            (false, false) => "NO",
        };
        let ([low, value, high], band) = (one.observed, one.band());
        let _ = writeln!(
            text,
            "| {} | {} | {value} ({low}-{high}) {} | {} ({}-{}) | {inside} | {} |",
            one.case,
            one.quantity,
            one.unit,
            band.typical,
            band.low,
            band.high,
            if one.in_view { "no, in view" } else { "yes" }
        );
    }
    text
}
