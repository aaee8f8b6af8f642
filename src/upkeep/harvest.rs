//! What plants give off by the week: floaters thinned, stems trimmed.

use crate::units::{Duration, Mass, Share};

/// Days in a week.
pub(super) const WEEK_D: f64 = 7.0;
/// Share of a stand of stems that is cut at a time: common practice, no source.
pub const CUT: Share = Share::from_fraction(1.0 / 3.0);

/// What a stand that is thinned back once a week grows from one thinning to the next.
///
/// ```text
/// take = M (exp(7 r) - 1)
/// ```
///
/// `M` the stand that is left, `r` its net growth, 1/d.
///
/// # Source
/// Exponential growth.
///
/// # Example
/// ```
/// use lentic::{units::Mass, upkeep::weekly_take};
/// // 22.6 g that grow by 5 % a day, worked by hand
/// let take = weekly_take(Mass::from_g(22.6), 0.05);
/// assert!((take.g() - 9.47).abs() < 0.01);
/// ```
///
/// # Limits
/// Crowding within the week is left out: errs high.
pub fn weekly_take(left: Mass, growth_per_d: f64) -> Mass {
    left * (WEEK_D * growth_per_d).exp_m1().max(0.0)
}

/// How often a stand is cut back by a share of itself; none where it does not grow.
///
/// ```text
/// t = -ln(1 - cut) / r
/// ```
///
/// # Source
/// Exponential growth.
///
/// # Example
/// ```
/// use lentic::upkeep::{CUT, trim_interval};
/// // a third cut at 2 % a day: ln 1.5 / 0.02
/// let interval = trim_interval(0.02, CUT).map(|interval| interval.days());
/// assert!(interval.is_some_and(|days| (days - 20.27).abs() < 0.01));
/// assert_eq!(trim_interval(0.0, CUT), None);
/// ```
pub fn trim_interval(growth_per_d: f64, cut: Share) -> Option<Duration> {
    let days = -(1.0 - cut.fraction()).ln() / growth_per_d;
    (growth_per_d > 0.0).then(|| Duration::from_days(days))
}

/// What was measured on some days comes to by the week: all but the first, over the time
/// since the first; none of fewer than two.
///
/// # Source
/// Arithmetic.
///
/// # Example
/// ```
/// use lentic::upkeep::measured_per_week;
/// // 4 and 6 in the two weeks after the first
/// let measured = [(30.0, 9.0), (37.0, 4.0), (44.0, 6.0)];
/// assert_eq!(measured_per_week(measured.into_iter(), 44.0), Some(5.0));
/// assert_eq!(measured_per_week(measured.into_iter(), 30.0), None);
/// ```
pub fn measured_per_week(
    measured: impl Iterator<Item = (f64, f64)>,
    until_day: f64,
) -> Option<f64> {
    let mut measured: Vec<(f64, f64)> = measured.filter(|(day, _)| *day <= until_day).collect();
    measured.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (first, last) = (measured.first()?.0, measured.last()?.0);
    let later = measured.iter().filter(|(day, _)| *day > first);
    let sum: f64 = later.map(|(_, amount)| amount).sum();
    (last > first).then(|| sum * (WEEK_D / (last - first)))
}
