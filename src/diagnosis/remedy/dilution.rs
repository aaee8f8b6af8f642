//! Water changes: those that bring a reading under its limit now, and those that hold
//! it there.

use super::super::case::Case;
use super::super::estimate::Estimate;
use super::super::hypotheses::AHEAD_D;
use super::super::scenario::Scenario;
use super::limit::{Limits, NUTRIENTS};
use crate::numerics::rodas::IntegrationError;
use crate::startup::{Event, EventKind};
use crate::units::{Analyte, Share};

/// A limit is met with this share of it to spare (judgement).
const SPARE: f64 = 0.8;
/// Largest share changed at once, so that animals bear it (common practice, no source).
const MOST_AT_ONCE: f64 = 0.5;
/// Rounds at most within the first days, half a day apart.
const MOST_ROUNDS: u32 = 4;
const ROUND_D: f64 = 0.5;
/// Shares are asked for in these steps, %.
const STEP_PCT: f64 = 5.0;
/// A change under this is not asked for, %.
const LEAST_PCT: f64 = 10.0;
/// Share of the water, %, and days between: each more than the one before; over half at
/// once only where no animals are in.
const PACES: [(f64, f64); 8] = [
    (25.0, 7.0),
    (25.0, 4.0),
    (50.0, 4.0),
    (50.0, 3.0),
    (50.0, 2.0),
    (50.0, 1.0),
    (50.0, 0.5),
    (80.0, 1.0),
];
/// The most that a keeper would do for weeks where no pace holds the limits (judgement).
const MOST_WORTH_DOING: Pace = Pace {
    share_pct: 50.0,
    every_d: 1.0,
    until_d: UNTIL_D[1],
};
/// Days that they go on for.
const UNTIL_D: [f64; 2] = [14.0, AHEAD_D as f64];
/// Days from now after which the limits are to hold.
pub(super) const SETTLED_D: f64 = 3.0;

/// Changes of the next days.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Immediate {
    /// How many.
    pub rounds: u32,
    /// Share of the water each time, %.
    pub share_pct: f64,
}

impl Immediate {
    /// The changes that bring every reading under its limit; none where none is over.
    ///
    /// ```text
    /// share = (C - 0.8 limit)/(C - tap);    n rounds of at most half: (1 - 1/2)^n
    /// ```
    pub fn of(case: &Case<'_>) -> Option<Self> {
        let limits = Limits::of(case);
        let water = &case.design.draft().water;
        let shares = NUTRIENTS.iter().filter_map(|of| {
            let reading = case.latest(*of)?.element();
            let (analyte, own) = match of.analyte()? {
                Analyte::Ammonia => (Analyte::Ammonia, water.ammonia),
                Analyte::Nitrite => (Analyte::Nitrite, water.nitrite),
                analyte => (analyte, water.nitrate),
            };
            let tap = analyte.element(own).mg_l();
            let aim = SPARE * limits.get(*of);
            (reading >= limits.get(*of) && tap < aim).then(|| (reading - aim) / (reading - tap))
        });
        Self::reaching(shares.fold(0.0, f64::max))
    }

    /// The changes that replace a share of the water in all.
    pub fn reaching(share: f64) -> Option<Self> {
        if share <= 0.0 {
            return None;
        }
        let rounds = ((1.0 - share).ln() / (1.0 - MOST_AT_ONCE).ln())
            .ceil()
            .clamp(1.0, f64::from(MOST_ROUNDS)) as u32;
        let each = 1.0 - (1.0 - share).powf(1.0 / f64::from(rounds));
        let percent = (100.0 * each / STEP_PCT).ceil() * STEP_PCT;
        Some(Self {
            rounds,
            share_pct: percent.clamp(LEAST_PCT, 100.0 * MOST_AT_ONCE),
        })
    }

    pub(super) fn apply(&self, tank: &mut Scenario, now_d: f64) {
        for round in 0..self.rounds {
            let day = now_d + ROUND_D * f64::from(round) + 1e-3;
            let kind = EventKind::WaterChange(Share::from_percent(self.share_pct));
            tank.inputs.events.push(Event { day, kind });
        }
    }

    /// "change 50 % (27 L) of the water now and again after 12 hours".
    pub fn says(&self, case: &Case<'_>) -> String {
        let litres = case.design.water() * (self.share_pct / 100.0);
        let again = match self.rounds {
            1 => String::new(),
            2 => " and again after 12 hours".to_owned(),
            rounds => format!(" and {} more times, 12 hours apart", rounds - 1),
        };
        format!(
            "change {:.0} % ({}) of the water now{again}, with tap water treated against chlorine and as warm as the tank",
            self.share_pct,
            case.design.draft().units.volume(litres)
        )
    }
}

/// Regular changes from now on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pace {
    /// Share of the water each time, %.
    pub share_pct: f64,
    /// Days between.
    pub every_d: f64,
    /// Days from now until they end.
    pub until_d: f64,
}

impl Pace {
    fn apply(self, tank: &mut Scenario, now_d: f64) {
        let mut day = now_d + self.every_d;
        while day <= now_d + self.until_d {
            let kind = EventKind::WaterChange(Share::from_percent(self.share_pct));
            tank.inputs.events.push(Event { day, kind });
            day += self.every_d;
        }
    }

    /// "25 % of the water every 7 days for 14 days".
    pub fn says(self) -> String {
        let every = if self.every_d < 1.0 {
            "12 hours".to_owned()
        } else if self.every_d <= 1.0 {
            "day".to_owned()
        } else {
            format!("{:.0} days", self.every_d)
        };
        format!(
            "{:.0} % of the water every {every} for {:.0} days",
            self.share_pct, self.until_d
        )
    }
}

/// A tank with the weakest schedule that holds its limits.
#[derive(Debug, Clone, PartialEq)]
pub struct Held {
    /// The tank with all changes.
    pub tank: Scenario,
    /// Changes of the next days.
    pub immediate: Option<Immediate>,
    /// Regular changes, where any are needed.
    pub pace: Option<Pace>,
    /// Whether the limits are met in the typical run, from the third day on.
    pub holds: bool,
}

impl Held {
    /// Whether it holds where another does not, or takes less water.
    pub(super) fn is_less_than(&self, other: &Self) -> bool {
        let water = |held: &Self| {
            held.pace
                .map_or(0.0, |pace| pace.share_pct * pace.until_d / pace.every_d)
        };
        match (self.holds, other.holds) {
            (true, false) => true,
            (false, true) => false,
            _ => water(self) < water(other),
        }
    }
}

/// Adds the changes that a treated tank still needs; where none would do, the most that
/// is worth doing.
pub(super) fn hold(
    case: &Case<'_>,
    estimate: &Estimate,
    treated: &Scenario,
) -> Result<Held, IntegrationError> {
    let limits = Limits::of(case);
    let immediate = Immediate::of(case);
    let mut changed = treated.clone();
    if let Some(immediate) = immediate {
        immediate.apply(&mut changed, estimate.now_d);
    }
    let bearable = |share_pct: &f64| !case.is_stocked() || *share_pct <= 100.0 * MOST_AT_ONCE;
    let paces = PACES
        .iter()
        .filter(|(share_pct, _)| bearable(share_pct))
        .flat_map(|(share_pct, every_d)| {
            UNTIL_D.map(|until_d| Pace {
                share_pct: *share_pct,
                every_d: *every_d,
                until_d,
            })
        });
    let at = |pace: Option<Pace>| {
        let mut tank = changed.clone();
        if let Some(pace) = pace {
            pace.apply(&mut tank, estimate.now_d);
        }
        Held {
            tank,
            immediate,
            pace,
            holds: false,
        }
    };
    for pace in std::iter::once(None).chain(paces.map(Some)) {
        let held = at(pace);
        if is_held(estimate, &held.tank, &limits, SETTLED_D)? {
            return Ok(Held {
                holds: true,
                ..held
            });
        }
    }
    Ok(at(Some(MOST_WORTH_DOING)))
}

/// Whether a tank stays under its limits from some days after now.
///
/// # Errors
/// When its numbers leave the finite ones.
pub(super) fn is_held(
    estimate: &Estimate,
    tank: &Scenario,
    limits: &Limits,
    after_d: f64,
) -> Result<bool, IntegrationError> {
    let ahead = estimate.ahead(tank)?;
    Ok(ahead
        .iter()
        .filter(|sample| sample.day >= estimate.now_d + after_d)
        .all(|sample| limits.hold(sample)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounds_of_half_the_water_reach_any_share() {
        assert_eq!(Immediate::reaching(0.0), None);
        for share in [0.05, 0.3, 0.5, 0.51, 0.7, 0.9] {
            let changes = Immediate::reaching(share).unwrap();
            let left = (1.0 - changes.share_pct / 100.0).powf(f64::from(changes.rounds));
            assert!(1.0 - left >= share - 1e-9, "{share}: {changes:?}");
            assert!(changes.share_pct <= 50.0, "{share}: {changes:?}");
        }
        // three quarters take two halves
        assert_eq!(Immediate::reaching(0.75).unwrap().rounds, 2);
    }
}
