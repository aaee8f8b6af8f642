//! What plants give off by the week: floaters thinned, stems trimmed.

use crate::design::Taken;
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

/// What prunings that were weighed come to by the week: all but the first, over the time
/// since the first; none of fewer than two.
///
/// # Source
/// Arithmetic.
pub fn weighed_per_week(
    taken: &[Taken],
    of: impl Fn(&Taken) -> Option<Mass>,
    until_day: f64,
) -> Option<Mass> {
    let mut weighed: Vec<(f64, Mass)> = taken
        .iter()
        .filter(|taken| taken.day <= until_day)
        .filter_map(|taken| Some((taken.day, of(taken)?)))
        .collect();
    weighed.sort_by(|a, b| a.0.total_cmp(&b.0));
    let (first, last) = (weighed.first()?.0, weighed.last()?.0);
    let later = weighed.iter().filter(|(day, _)| *day > first);
    let sum: Mass = later.map(|(_, mass)| *mass).sum();
    (last > first).then(|| sum * (WEEK_D / (last - first)))
}
