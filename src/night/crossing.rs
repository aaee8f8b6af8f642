//! Where each member's lowest oxygen crosses a limit as one thing about the tank is turned.

use rayon::prelude::*;

use super::course::{Accuracy, Schedule};
use super::inputs::NightInputs;
use super::members::{MemberGroup, Nights, packed};
use super::model::NightState;
use super::settle::{Settled, settle};
use crate::numerics::lanes::{LANES, Lanes};
use crate::numerics::real::Scalar;
use crate::numerics::rodas::IntegrationError;

/// Oxygen from the limit that counts as there, mg/L: the rest goes by a straight line.
const NEAR_MG_L: f64 = 0.005;
/// Bracket that counts as closed, as a share of the setting.
const CLOSED: f64 = 1e-3;
/// Largest growth of a setting at once.
const MOST_GROWN: f64 = 4.0;
/// Tries after which a bracket is halved and nothing else.
const PATIENCE: u32 = 8;
/// How far a start is led on beyond the last two, over what lies between them.
const MOST_LED_ON: f64 = 3.0;
/// What that leaves of a state at least, as a share.
const LEAST_LEFT: f64 = 0.2;

/// Settings that are tried.
#[derive(Debug, Clone, Copy)]
pub(super) struct SettingRange {
    pub(super) first: f64,
    pub(super) most: f64,
}

/// What oxygen does as the setting is turned up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Turn {
    Rises,
    Falls,
}

/// One thing about a tank.
pub(super) struct Crossing<'a, F> {
    pub(super) nights: &'a Nights,
    /// The tank at a setting; nothing is where it has least.
    pub(super) at: F,
    pub(super) span: SettingRange,
    pub(super) limit_mg_l: f64,
    pub(super) turn: Turn,
}

/// A group with what is known of it so far.
pub(super) struct Seat {
    seekers: [Seeker; LANES],
    trail: Trail,
    /// Lowest oxygen last found, mg/L.
    pub(super) low: Lanes,
}

impl Seat {
    /// The setting at which each member crosses the limit: 0 where it has crossed it with
    /// nothing, infinite where it never does.
    pub(super) fn settings(&self) -> [f64; LANES] {
        let found = |seeker: &Seeker| seeker.found.unwrap_or(f64::INFINITY);
        self.seekers.each_ref().map(found)
    }
}

impl<F: Fn(f64) -> NightInputs + Sync> Crossing<'_, F> {
    /// Every group at one setting, from where the tank as it is has settled.
    pub(super) fn seated(&self, setting: f64) -> Result<Vec<Seat>, IntegrationError> {
        let groups = self.nights.groups.par_iter();
        let seated = groups.map(|group| {
            let mut trail = Trail::from(group.settled.start);
            let settled = self.settled(group, &mut trail, [setting; LANES])?;
            let surpluses = self.surpluses(settled.low);
            Ok(Seat {
                seekers: surpluses.map(|surplus| Seeker::from(surplus, self.span.first)),
                trail,
                low: settled.low,
            })
        });
        seated.collect()
    }

    /// Every group where its members cross the limit, from where they are with nothing.
    pub(super) fn sought(&self, seats: Vec<Seat>) -> Result<Vec<Seat>, IntegrationError> {
        let groups = self.nights.groups.par_iter().zip(seats);
        groups.map(|(group, seat)| self.seek(group, seat)).collect()
    }

    fn seek(&self, group: &MemberGroup, mut seat: Seat) -> Result<Seat, IntegrationError> {
        while seat.seekers.iter().any(|seeker| seeker.found.is_none()) {
            let settings = seat.seekers.each_ref().map(|seeker| seeker.next);
            seat.low = self.settled(group, &mut seat.trail, settings)?.low;
            let surpluses = self.surpluses(seat.low);
            for (seeker, surplus) in seat.seekers.iter_mut().zip(surpluses) {
                seeker.take(surplus, self.span.most);
            }
        }
        Ok(seat)
    }

    fn settled(
        &self,
        group: &MemberGroup,
        trail: &mut Trail,
        settings: [f64; LANES],
    ) -> Result<Settled<Lanes>, IntegrationError> {
        let tanks = settings.map(&self.at);
        let model = packed(&group.rates, |lane| &tanks[lane]);
        let most = settings.into_iter().fold(0.0, f64::max);
        let schedule = Schedule::of(&(self.at)(most));
        let guess = trail.led_on(settings);
        let settled = settle(&model, &schedule, guess, Accuracy::COARSE)?;
        trail.go_on(settings, settled.start);
        Ok(settled)
    }

    /// By how much each member is yet to cross the limit, mg/L.
    fn surpluses(&self, low: Lanes) -> [f64; LANES] {
        low.0.map(|low| match self.turn {
            Turn::Falls => low - self.limit_mg_l,
            Turn::Rises => self.limit_mg_l - low,
        })
    }
}

/// The same seats before a search in which every member tries first what it was found to
/// need in another.
pub(super) fn again(seats: Vec<Seat>) -> Vec<Seat> {
    let again = seats.into_iter().map(|seat| Seat {
        seekers: seat.seekers.map(Seeker::again),
        ..seat
    });
    again.collect()
}

/// A setting and what is left to cross there.
#[derive(Debug, Clone, Copy)]
struct Known {
    setting: f64,
    surplus: f64,
}

/// Where a straight line through two of them is at the limit.
fn straight(one: Known, other: Known) -> f64 {
    let rise = (other.setting - one.setting) / (other.surplus - one.surplus);
    one.setting - one.surplus * rise
}

/// The search of one member, for where a surplus falls to nothing.
#[derive(Debug, Clone, Copy)]
struct Seeker {
    /// The surplus with nothing.
    at_first: Known,
    /// The largest setting that leaves a surplus, and the least that leaves none.
    below: Known,
    above: Option<Known>,
    last: Known,
    next: f64,
    tries: u32,
    found: Option<f64>,
}

impl Seeker {
    fn from(surplus: f64, first: f64) -> Self {
        let at_first = Known {
            setting: 0.0,
            surplus,
        };
        Self {
            at_first,
            below: at_first,
            above: None,
            last: at_first,
            next: first,
            tries: 0,
            found: (surplus <= 0.0).then_some(0.0),
        }
    }

    fn again(self) -> Self {
        let found = self
            .found
            .filter(|found| *found <= 0.0 || found.is_infinite());
        Self {
            found,
            ..Self::from(self.at_first.surplus, self.found.unwrap_or(self.next))
        }
    }

    fn take(&mut self, surplus: f64, most: f64) {
        if self.found.is_some() {
            return;
        }
        let now = Known {
            setting: self.next,
            surplus,
        };
        let line = straight(self.last, now);
        self.last = now;
        self.tries += 1;
        if surplus > 0.0 {
            self.below = now;
        } else {
            self.above = Some(now);
        }
        self.next = match self.above {
            _ if surplus.abs() <= NEAR_MG_L => {
                self.found = Some(line);
                return;
            }
            None if now.setting >= most => {
                self.found = Some(f64::INFINITY);
                return;
            }
            None => self.further(line).min(most),
            Some(above) if above.setting - self.below.setting <= CLOSED * above.setting => {
                self.found = Some(straight(self.below, above));
                return;
            }
            Some(above) => self.between(above, line),
        };
    }

    fn further(&self, line: f64) -> f64 {
        let most = self.below.setting * MOST_GROWN;
        if line > self.below.setting {
            line.min(most)
        } else {
            most
        }
    }

    fn between(&self, above: Known, line: f64) -> f64 {
        let (low, high) = (self.below.setting, above.setting);
        if self.tries < PATIENCE && line > low && line < high {
            line
        } else {
            f64::midpoint(low, high)
        }
    }
}

/// The settings last tried, and where the days began that then repeated themselves.
struct Trail {
    last: ([f64; LANES], NightState<Lanes>),
    before: Option<([f64; LANES], NightState<Lanes>)>,
}

impl Trail {
    fn from(start: NightState<Lanes>) -> Self {
        Self {
            last: ([0.0; LANES], start),
            before: None,
        }
    }

    /// Where the day may begin at other settings, straight on from the last two.
    fn led_on(&self, settings: [f64; LANES]) -> NightState<Lanes> {
        let (last, start) = self.last;
        let Some((before, from)) = self.before else {
            return start;
        };
        let share = Lanes(std::array::from_fn(|lane| {
            let between = last[lane] - before[lane];
            let share = (settings[lane] - last[lane]) / between;
            if between == 0.0 {
                0.0
            } else {
                share.clamp(-MOST_LED_ON, MOST_LED_ON)
            }
        }));
        std::array::from_fn(|state| {
            let led = start[state] + (start[state] - from[state]) * share;
            led.max(start[state] * LEAST_LEFT)
        })
    }

    fn go_on(&mut self, settings: [f64; LANES], start: NightState<Lanes>) {
        self.before = Some(std::mem::replace(&mut self.last, (settings, start)));
    }
}
