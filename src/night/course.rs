//! A day cut at every switch, and the day that repeats itself.

use super::inputs::NightInputs;
use super::model::{
    CARBON_PARTS, DayPhase, LEDGER, Ledger, NightModel, OXYGEN_PARTS, Phase, STATES,
};
use crate::numerics::lanes::Lanes;
use crate::numerics::real::Real;
use crate::numerics::rodas::{Control, IntegrationError, Step, System, integrate};
use crate::units::Concentration;
use crate::units::constants::HOURS_PER_DAY;
use crate::water::carbonate;

/// Samples kept of each hour.
pub(super) const SAMPLES_PER_HOUR: u32 = 6;
/// Samples of a day, both ends included.
pub(super) const SAMPLES: u32 = 24 * SAMPLES_PER_HOUR + 1;
/// How closely a day is followed and closed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Accuracy {
    /// Error allowed per step, as a share and in mg/L.
    step: f64,
    /// A day repeats itself when it ends this close to where it began, mg/L.
    closed: f64,
}

impl Accuracy {
    /// For one day looked at by itself.
    pub(super) const FINE: Self = Self {
        step: 1e-6,
        closed: 1e-6,
    };
    /// For one of many.
    pub(super) const COARSE: Self = Self {
        step: 1e-4,
        closed: 1e-3,
    };
}

/// Corrections of the start of the day at most.
const MOST_CORRECTIONS: u32 = 20;
/// Share of what a day misses that known slopes may leave; where they leave more they are taken
/// anew.
const KEEPS: f64 = 0.5;
/// Shift by which the answer of a day to its start is felt, mg/L.
const SHIFT_MG_L: f64 = 0.05;
/// Store that is guessed at first, mg of oxygen per gram of submerged plants.
const FIRST_STORE_MG_G: f64 = 2.0;
/// What a correction leaves of a state at least, as a share.
const LEAST_LEFT: f64 = 0.2;
/// Largest growth of carbon and store at once: where no oxygen is left to breathe it with,
/// the store grows every day.
const MOST_GROWN: f64 = 10.0;
/// Determinant under which a day ends as it starts, wherever that is.
const LEAST_DETERMINANT: f64 = 1e-200;

/// The phases of a day with their ends, in hours from when the lamp goes on.
#[derive(Debug, Clone, Copy)]
pub(super) struct Schedule {
    pub(super) light_hours: f64,
    day: Phase,
    night: Phase,
}

impl Schedule {
    pub(super) fn of(inputs: &NightInputs) -> Self {
        let (by_day, by_night) = inputs.runs();
        Self {
            light_hours: inputs.light_hours,
            day: Phase {
                lit: true,
                running: by_day,
            },
            night: Phase {
                lit: false,
                running: by_night,
            },
        }
    }

    fn parts(&self) -> [(f64, f64, Phase); 2] {
        [
            (0.0, self.light_hours, self.day),
            (self.light_hours, HOURS_PER_DAY, self.night),
        ]
    }
}

/// Oxygen, all inorganic carbon and store.
pub(super) type NightState<R> = [R; STATES];

/// What each state gains over a day, row by row, for a unit more of each at its start.
type Slopes<R> = [NightState<R>; STATES];

/// A day followed through.
pub(super) struct FollowedDay<R> {
    /// [`SAMPLES`] points, evenly spaced.
    pub(super) samples: Vec<NightState<R>>,
    /// When the lamp goes off.
    pub(super) dusk: NightState<R>,
    /// At the end.
    pub(super) end: NightState<R>,
    /// Oxygen moved by each process, mg/L.
    pub(super) oxygen: [R; OXYGEN_PARTS],
    /// Carbon dioxide moved in each way, mg/L.
    pub(super) carbon: [R; CARBON_PARTS],
}

impl FollowedDay<Lanes> {
    /// One member of the eight.
    pub(super) fn lane(&self, lane: usize) -> FollowedDay<f64> {
        let one = |point: &NightState<Lanes>| point.map(|lanes| lanes.0[lane]);
        FollowedDay {
            samples: self.samples.iter().map(one).collect(),
            dusk: one(&self.dusk),
            end: one(&self.end),
            oxygen: self.oxygen.map(|lanes| lanes.0[lane]),
            carbon: self.carbon.map(|lanes| lanes.0[lane]),
        }
    }
}

/// A start from which a day repeats itself.
#[derive(Debug, Clone, Copy)]
pub(super) struct Settled<R> {
    pub(super) start: NightState<R>,
    /// Oxygen, carbon and store gained or lost over the day after all, mg/L.
    pub(super) drift: NightState<R>,
    /// Lowest oxygen of that day, mg/L.
    pub(super) low: R,
    slopes: Option<Slopes<R>>,
}

impl<R: Real> Settled<R> {
    /// Where to search for the day of a tank that is much like this one.
    pub(super) fn as_guess(&self) -> Guess<R> {
        Guess {
            start: self.start,
            slopes: self.slopes,
        }
    }
}

/// Follows a day from a start, with what each process moved.
pub(super) fn follow<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    start: NightState<R>,
    accuracy: Accuracy,
) -> Result<FollowedDay<R>, IntegrationError> {
    let mut state = [R::splat(0.0); LEDGER];
    state[..STATES].copy_from_slice(&start);
    let mut samples = vec![start];
    let mut dusk = start;
    for (from, to, phase) in schedule.parts() {
        let system = Ledger { model, phase };
        state = part(&system, (from, to), state, accuracy, |step| {
            sample(&mut samples, step);
        })?;
        if phase.lit {
            dusk = point(&state);
        }
    }
    Ok(FollowedDay {
        samples,
        dusk,
        end: point(&state),
        oxygen: std::array::from_fn(|place| state[STATES + place]),
        carbon: std::array::from_fn(|place| state[STATES + OXYGEN_PARTS + place]),
    })
}

/// A start to search from, with how the end of a day moves with it where that is known.
#[derive(Debug, Clone, Copy)]
pub(super) struct Guess<R> {
    pub(super) start: NightState<R>,
    pub(super) slopes: Option<Slopes<R>>,
}

/// The start from which a day repeats itself, by Newton's method on the map from
/// the start of a day to its end.
///
/// ```text
/// x := x - (P' - 1)^-1 (P(x) - x)
/// ```
///
/// The slopes are kept while they halve what a day misses, and taken anew where they do not.
/// Where a fresh leap goes out of what water can be, the day is repeated from its own end.
/// Where it does not close, the last start is kept and [`Settled::drift`] says by how much it
/// misses.
pub(super) fn settle<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    guess: Guess<R>,
    accuracy: Accuracy,
) -> Result<Settled<R>, IntegrationError> {
    let pass = |start: NightState<R>| pass(model, schedule, start, accuracy);
    let mut at = pass(guess.start)?;
    let mut slopes = guess.slopes;
    for _ in 0..MOST_CORRECTIONS {
        let missed = farthest(&at.gained);
        if missed < accuracy.closed {
            break;
        }
        let kept = slopes.and_then(|slopes| pass(at.leap(&slopes)).ok());
        if let Some(next) = kept.filter(|next| farthest(&next.gained) < KEEPS * missed) {
            at = next;
            continue;
        }
        let fresh = at.slopes(pass)?;
        slopes = Some(fresh);
        at = match pass(at.leap(&fresh)) {
            Ok(next) => next,
            Err(_) => pass(at.end())?,
        };
    }
    Ok(Settled {
        start: at.start,
        drift: at.gained,
        low: at.low,
        slopes,
    })
}

/// A day passed without the ledger.
struct Passed<R> {
    start: NightState<R>,
    gained: NightState<R>,
    low: R,
}

impl<R: Real> Passed<R> {
    fn end(&self) -> NightState<R> {
        std::array::from_fn(|row| self.start[row] + self.gained[row])
    }

    /// How what is gained moves with the start, by differences.
    fn slopes(
        &self,
        pass: impl Fn(NightState<R>) -> Result<Self, IntegrationError>,
    ) -> Result<Slopes<R>, IntegrationError> {
        let mut slopes = [[R::splat(0.0); STATES]; STATES];
        for column in 0..STATES {
            let mut shifted = self.start;
            shifted[column] = self.start[column] + SHIFT_MG_L;
            let there = pass(shifted)?.gained;
            for row in 0..STATES {
                slopes[row][column] = (there[row] - self.gained[row]) / SHIFT_MG_L;
            }
        }
        Ok(slopes)
    }

    fn leap(&self, slopes: &Slopes<R>) -> NightState<R> {
        corrected(self.start, slopes, self.gained)
    }
}

fn pass<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    start: NightState<R>,
    accuracy: Accuracy,
) -> Result<Passed<R>, IntegrationError> {
    let mut low = start[0];
    let mut state = start;
    for (from, to, phase) in schedule.parts() {
        let system = DayPhase { model, phase };
        state = part(&system, (from, to), state, accuracy, |step| {
            let middle = step.at(f64::midpoint(step.start, step.end));
            low = low.min(middle[0]).min(step.to[0]);
        })?;
    }
    Ok(Passed {
        start,
        gained: std::array::from_fn(|row| state[row] - start[row]),
        low,
    })
}

/// A first guess: water in balance with the air, but for twice the carbon dioxide.
pub(super) fn in_balance<R: Real>(model: &NightModel<R>, inputs: &NightInputs) -> Guess<R> {
    let ph = |carbon_mg_l: f64| {
        carbonate::ph(
            Concentration::from_mg_l(2.0 * carbon_mg_l),
            inputs.alkalinity,
            inputs.temperature,
            carbonate::Activity::Ideal,
        )
    };
    let numbers = &model.coefficients;
    Guess {
        start: [
            R::splat(0.8 * model.saturation_mg_l),
            model.carbonate.all_at(numbers.room_carbon.map(ph)),
            (numbers.fast_g_l + numbers.slow_g_l) * FIRST_STORE_MG_G,
        ],
        slopes: None,
    }
}

/// One phase of a day; nothing where it is empty.
pub(super) fn part<R: Real, const N: usize>(
    system: &impl System<R, N>,
    (from, to): (f64, f64),
    state: [R; N],
    accuracy: Accuracy,
    on_step: impl FnMut(&Step<R, N>),
) -> Result<[R; N], IntegrationError> {
    let control = Control::new(accuracy.step, [accuracy.step; N]);
    integrate(system, (from, to), state, &control, on_step).map(|(state, _)| state)
}

fn sample<R: Real>(samples: &mut Vec<NightState<R>>, step: &Step<R, LEDGER>) {
    while samples.len() < SAMPLES as usize {
        let hour = hour_of(samples.len());
        if hour > step.end {
            break;
        }
        let state = step.at(hour);
        samples.push(point(&state));
    }
}

/// The hour of a sample.
pub(super) fn hour_of(sample: usize) -> f64 {
    sample as f64 / f64::from(SAMPLES_PER_HOUR)
}

/// The states without what was moved.
fn point<R: Real>(state: &[R; LEDGER]) -> NightState<R> {
    std::array::from_fn(|place| state[place])
}

fn farthest<R: Real>(gained: &NightState<R>) -> f64 {
    let of = |most: R, one: &R| most.max(one.abs());
    gained.iter().fold(R::splat(0.0), of).largest()
}

/// A Newton step, shortened where it would leave the sensible.
fn corrected<R: Real>(
    start: NightState<R>,
    slopes: &Slopes<R>,
    gained: NightState<R>,
) -> NightState<R> {
    let less = solved(slopes, gained);
    let left = |place: usize| (start[place] - less[place]).max(start[place] * LEAST_LEFT);
    let grown = |place: usize| left(place).min(start[place] * MOST_GROWN);
    [left(0), grown(1), grown(2)]
}

/// Solves three equations by Cramer's rule, member by member; what ends the day as it
/// starts, wherever that is, as the store of a tank without plants, asks for no correction.
fn solved<R: Real>(slopes: &Slopes<R>, right: NightState<R>) -> NightState<R> {
    let mut rows = *slopes;
    for (place, row) in rows.iter_mut().enumerate() {
        row[place] = row[place].map(|slope| if slope == 0.0 { -1.0 } else { slope });
    }
    let inverse = determinant(&rows).map(|value| {
        if value.abs() < LEAST_DETERMINANT {
            0.0
        } else {
            value.recip()
        }
    });
    std::array::from_fn(|unknown| {
        let mut replaced = rows;
        for (row, value) in replaced.iter_mut().zip(right) {
            row[unknown] = value;
        }
        determinant(&replaced) * inverse
    })
}

fn determinant<R: Real>(&[[a, b, c], [d, e, f], [g, h, i]]: &Slopes<R>) -> R {
    a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}
