//! Water changes: those that bring a reading under its limit now, and those that hold
//! it there.

use super::super::case::CaseHistory;
use super::super::estimate::TankEstimate;
use super::super::hypotheses::AHEAD_D;
use super::super::scenario::Scenario;
use super::limit::{NUTRIENTS, NitrogenLimits};
use crate::finding::Action;
use crate::numerics::rodas::IntegrationError;
use crate::startup::{ModelEvent, ModelEventKind};
use crate::units::{Analyte, Share};

/// Regular changes, share of the water in % and days between, each more than the one before;
/// half the water every second day is the most that is asked of a keeper for weeks (common
/// practice, no source).
const PACES: [(f64, f64); 5] = [
    (25.0, 7.0),
    (25.0, 4.0),
    (50.0, 4.0),
    (50.0, 3.0),
    (50.0, 2.0),
];
/// A limit is met with this share of it to spare (judgement).
const SPARE: f64 = 0.8;
/// Largest share changed at once, so that animals bear it (common practice, no source).
const MOST_AT_ONCE: f64 = 0.5;
/// Rounds at most within the first days, half a day apart (common practice, no source).
const MOST_ROUNDS: u32 = 3;
const ROUND_D: f64 = 0.5;
/// Shares are asked for in these steps, %.
const STEP_PCT: f64 = 5.0;
/// A change under this is not asked for, %.
const LEAST_PCT: f64 = 10.0;
/// Days that changes go on for, at a pace that can be kept up for weeks.
const FORTNIGHT_D: f64 = 14.0;
const WEEKS_D: f64 = AHEAD_D as f64;
/// Days that changes are made for every day (common practice, no source).
const DAILY_D: f64 = 7.0;
/// The most that a keeper does day after day (common practice, no source).
pub(super) const MOST_WORTH_DOING: ChangeSchedule = ChangeSchedule {
    share_pct: 50.0,
    every_d: 1.0,
    until_d: DAILY_D,
};
/// Days from now after which the limits are to hold.
pub(super) const SETTLED_D: f64 = 3.0;

/// What changes are made with.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum ChangeWater {
    /// Tap water as it is.
    Tap,
    /// Tap water with this much rain or demineralised water in it, %.
    Blend(f64),
}

impl ChangeWater {
    /// Share of what the tap water holds that is left.
    fn tap_share(self) -> f64 {
        match self {
            Self::Tap => 1.0,
            Self::Blend(pure_pct) => 1.0 - pure_pct / 100.0,
        }
    }

    const fn says(self) -> &'static str {
        match self {
            Self::Tap => "tap water",
            Self::Blend(_) => "that blend",
        }
    }
}

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
    pub fn of(case: &CaseHistory<'_>) -> Option<Self> {
        Self::with(case, ChangeWater::Tap)
    }

    /// As [`Immediate::of`], with what the changes are made with.
    pub(super) fn with(case: &CaseHistory<'_>, with: ChangeWater) -> Option<Self> {
        let limits = NitrogenLimits::of(case);
        let water = &case.design.draft().water;
        let shares = NUTRIENTS.iter().filter_map(|of| {
            let reading = case.latest(*of)?.element();
            let (analyte, own) = match of.analyte()? {
                Analyte::Ammonia => (Analyte::Ammonia, water.ammonia),
                Analyte::Nitrite => (Analyte::Nitrite, water.nitrite),
                analyte => (analyte, water.nitrate),
            };
            let tap = with.tap_share() * analyte.element(own).mg_l();
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
            let kind = ModelEventKind::WaterChange(Share::from_percent(self.share_pct));
            tank.inputs.events.push(ModelEvent { day, kind });
        }
    }

    /// Days from the first round to the last.
    fn last_d(self) -> f64 {
        ROUND_D * f64::from(self.rounds.saturating_sub(1))
    }

    /// "change 50 % (27 L) of the water now and again after 12 hours".
    pub fn says(&self, case: &CaseHistory<'_>) -> String {
        self.says_with(case, ChangeWater::Tap)
    }

    pub(super) fn says_with(&self, case: &CaseHistory<'_>, with: ChangeWater) -> String {
        let litres = case.design.water() * (self.share_pct / 100.0);
        let again = match self.rounds {
            1 => String::new(),
            2 => " and again after 12 hours".to_owned(),
            rounds => format!(" and {} more times, 12 hours apart", rounds - 1),
        };
        format!(
            "change {:.0} % ({}) of the water now{again}, with {} as warm as the tank, treated against chlorine by the label with air running",
            self.share_pct,
            case.design.draft().units.volume(litres),
            with.says()
        )
    }
}

/// Regular changes from now on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChangeSchedule {
    /// Share of the water each time, %.
    pub share_pct: f64,
    /// Days between.
    pub every_d: f64,
    /// Days from now until they end.
    pub until_d: f64,
}

impl ChangeSchedule {
    /// Those of the list, each for a fortnight and for weeks, and the most that a keeper
    /// does: each is brisker, or kept up for longer, than the one before.
    fn all() -> impl Iterator<Item = Self> {
        let kept_up = PACES.iter().flat_map(|&(share_pct, every_d)| {
            [FORTNIGHT_D, WEEKS_D].map(|until_d| Self {
                share_pct,
                every_d,
                until_d,
            })
        });
        kept_up.chain([MOST_WORTH_DOING])
    }

    fn apply(self, tank: &mut Scenario, now_d: f64) {
        let mut day = now_d + self.every_d;
        while day <= now_d + self.until_d {
            let kind = ModelEventKind::WaterChange(Share::from_percent(self.share_pct));
            tank.inputs.events.push(ModelEvent { day, kind });
            day += self.every_d;
        }
    }

    /// "25 % of the water every 7 days for 14 days".
    pub fn says(self) -> String {
        let every = if self.every_d <= 1.0 {
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
pub struct DilutedTank {
    /// The tank with all changes.
    pub tank: Scenario,
    /// Changes of the next days.
    pub immediate: Option<Immediate>,
    /// Regular changes, where any are needed.
    pub pace: Option<ChangeSchedule>,
    /// Whether the limits are met in the typical run, from the third day on.
    pub holds: bool,
}

impl DilutedTank {
    /// A tank to which nothing is done.
    pub(super) fn untouched(
        case: &CaseHistory<'_>,
        estimate: &TankEstimate,
        tank: &Scenario,
    ) -> Result<Self, IntegrationError> {
        Ok(Self {
            tank: tank.clone(),
            immediate: None,
            pace: None,
            holds: is_held(estimate, tank, &NitrogenLimits::of(case), SETTLED_D)?,
        })
    }

    /// Whether no water is changed, and none need be.
    pub(super) fn asks_nothing(&self) -> bool {
        self.holds && self.immediate.is_none() && self.pace.is_none()
    }

    /// The work of its changes.
    pub(super) fn orders(&self) -> Option<Action> {
        let changes = self.immediate.is_some() || self.pace.is_some();
        changes.then_some(Action::ChangeWater)
    }

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

/// Adds the changes that a treated tank still needs; where not even the most that a
/// keeper does holds the limits, those of the next days alone.
pub(super) fn hold(
    case: &CaseHistory<'_>,
    estimate: &TankEstimate,
    treated: &Scenario,
    with: ChangeWater,
) -> Result<DilutedTank, IntegrationError> {
    let limits = NitrogenLimits::of(case);
    let immediate = Immediate::with(case, with);
    let mut changed = treated.clone();
    if let Some(immediate) = immediate {
        immediate.apply(&mut changed, estimate.now_d);
    }
    let at = |pace: Option<ChangeSchedule>| {
        let mut tank = changed.clone();
        if let Some(pace) = pace {
            let first = immediate.map_or(0.0, Immediate::last_d);
            pace.apply(&mut tank, estimate.now_d + first);
        }
        DilutedTank {
            tank,
            immediate,
            pace,
            holds: false,
        }
    };
    for pace in std::iter::once(None).chain(ChangeSchedule::all().map(Some)) {
        let held = at(pace);
        if is_held(estimate, &held.tank, &limits, SETTLED_D)? {
            return Ok(DilutedTank {
                holds: true,
                ..held
            });
        }
    }
    Ok(at(None))
}

/// Whether a tank stays under its limits from some days after now.
///
/// # Errors
/// When its numbers leave the finite ones.
pub(super) fn is_held(
    estimate: &TankEstimate,
    tank: &Scenario,
    limits: &NitrogenLimits,
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
        for share in [0.05, 0.3, 0.5, 0.51, 0.7, 0.87] {
            let changes = Immediate::reaching(share).unwrap();
            let left = (1.0 - changes.share_pct / 100.0).powf(f64::from(changes.rounds));
            assert!(1.0 - left >= share - 1e-9, "{share}: {changes:?}");
            assert!(changes.share_pct <= 50.0, "{share}: {changes:?}");
        }
        // beyond three halves nobody goes
        assert_eq!(Immediate::reaching(0.99).unwrap().rounds, 3);
        // three quarters take two halves
        assert_eq!(Immediate::reaching(0.75).unwrap().rounds, 2);
    }
}
