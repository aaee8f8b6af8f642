//! What a concentration comes to where the same share of water is changed time and again.

use crate::units::Share;

/// A concentration that rises between water changes, each of the same share.
///
/// The unit is the caller's; rise and source share it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Routine {
    /// Share of the water changed at a time.
    pub share: Share,
    /// Rise from one change to the next; below zero a fall.
    pub rise: f64,
    /// In the water that is filled in.
    pub source: f64,
}

impl Routine {
    /// After a number of changes, from what it is after one of them.
    ///
    /// ```text
    /// C' = (1 - s)(C + rise) + s source,   Cn = C* + (C0 - C*)(1 - s)^n
    /// ```
    ///
    /// # Source
    /// Mass balance; where nothing is changed, a straight line.
    ///
    /// # Example
    /// ```
    /// use lentic::{units::Share, upkeep::Routine};
    /// let soft = Routine { share: Share::from_percent(50.0), rise: 0.0, source: 0.0 };
    /// // half of it goes each time: 8, 4, 2, 1
    /// assert!((soft.after(3, 8.0) - 1.0).abs() < 1e-12);
    /// ```
    pub fn after(&self, changes: u32, start: f64) -> f64 {
        match self.steady_after() {
            None => start + self.rise * f64::from(changes),
            Some(steady) => {
                let left = (1.0 - self.share.fraction()).powf(f64::from(changes));
                steady + (start - steady) * left
            }
        }
    }

    /// Just before a change, once it repeats itself; none where nothing is changed.
    ///
    /// ```text
    /// C* = source + rise / s
    /// ```
    ///
    /// # Source
    /// Mass balance.
    ///
    /// # Example
    /// ```
    /// use lentic::{units::Share, upkeep::Routine};
    /// // 3 mg/L gained from one change to the next, a quarter changed for water with 5 mg/L
    /// let nitrate = Routine { share: Share::from_percent(25.0), rise: 3.0, source: 5.0 };
    /// assert_eq!(nitrate.steady_before(), Some(17.0));
    /// assert_eq!(nitrate.steady_after(), Some(14.0));
    /// ```
    ///
    /// # Limits
    /// The rise is taken as steady: what falls below nothing is to be read as nothing.
    pub fn steady_before(&self) -> Option<f64> {
        let share = self.share.fraction();
        (share > 0.0).then(|| self.source + self.rise / share)
    }

    /// The same just after a change.
    pub fn steady_after(&self) -> Option<f64> {
        self.steady_before().map(|before| before - self.rise)
    }
}

/// Share of the water to be changed at a time that keeps a concentration at a goal before
/// each change; none where the source holds as much and the water gains.
///
/// ```text
/// s = rise / (goal - source)
/// ```
///
/// # Source
/// Mass balance.
///
/// # Example
/// ```
/// use lentic::upkeep::share_to_hold;
/// // 3 mg/L a week, water with 5 mg/L, 17 mg/L wanted
/// assert_eq!(share_to_hold(3.0, 5.0, 17.0).map(|share| share.percent()), Some(25.0));
/// assert_eq!(share_to_hold(3.0, 20.0, 17.0), None);
/// ```
///
/// # Limits
/// Over all of the water, more than one change is meant between two of the same rise.
pub fn share_to_hold(rise: f64, source: f64, goal: f64) -> Option<Share> {
    if rise <= 0.0 && source <= goal {
        return Some(Share::ZERO);
    }
    (goal > source).then(|| Share::from_fraction(rise / (goal - source)))
}
