//! The day that repeats itself.

use super::course::{Accuracy, Schedule, walk};
use super::model::{NightModel, NightState, Phase};
use crate::numerics::real::Real;
use crate::numerics::rodas::IntegrationError;
use crate::numerics::three::{Three, adjugate, applied, determinant, identity, inverse, product};
use crate::units::constants::HOURS_PER_DAY;

/// Corrections of the start of the day at most.
const MOST_CORRECTIONS: u32 = 20;
/// Store that is guessed at first, mg of oxygen per gram of submerged plants.
const FIRST_STORE_MG_G: f64 = 2.0;
/// Carbon dioxide that is guessed at first, over that in balance with the room.
const FIRST_CARBON: f64 = 2.0;
/// Oxygen that is guessed at first, as a share of saturation.
const FIRST_OXYGEN: f64 = 0.8;
/// What a correction leaves of a state at least, as a share.
const LEAST_LEFT: f64 = 0.2;
/// Largest growth of carbon and store at once: where no oxygen is left to breathe it with,
/// the store grows every day.
const MOST_GROWN: f64 = 10.0;
/// Determinant under which a day ends as it starts, wherever that is.
const LEAST_DETERMINANT: f64 = 1e-200;

/// A start from which a day repeats itself.
#[derive(Debug, Clone, Copy)]
pub(super) struct Settled<R> {
    pub(super) start: NightState<R>,
    /// Oxygen, carbon and store gained or lost over the day after all, mg/L.
    pub(super) drift: NightState<R>,
    /// Lowest oxygen of that day, mg/L.
    pub(super) low: R,
}

/// The start from which a day repeats itself, by Newton's method on the map from the start
/// of a day to its end.
///
/// ```text
/// x := x - (P' - 1)^-1 (P(x) - x)
/// ```
///
/// The slopes of that map are carried along the day. Where a leap goes out of what water
/// can be, the day is repeated from its own end. Where it does not close, the last start is
/// kept and [`Settled::drift`] says by how much it misses.
pub(super) fn settle<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    guess: NightState<R>,
    accuracy: Accuracy,
) -> Result<Settled<R>, IntegrationError> {
    let pass = |start: NightState<R>| Passed::through(model, schedule, start, accuracy);
    let mut at = pass(guess)?;
    for _ in 0..MOST_CORRECTIONS {
        if at.missed(model) < accuracy.closed {
            break;
        }
        at = match pass(at.leap()) {
            Ok(next) => next,
            Err(_) => pass(at.end())?,
        };
    }
    Ok(Settled {
        start: at.start,
        drift: at.gained,
        low: at.low,
    })
}

/// The same as closely as one day by itself: roughly first.
pub(super) fn settle_finely<R: Real>(
    model: &NightModel<R>,
    schedule: &Schedule,
    guess: NightState<R>,
) -> Result<Settled<R>, IntegrationError> {
    let rough = settle(model, schedule, guess, Accuracy::COARSE)?;
    settle(model, schedule, rough.start, Accuracy::FINE)
}

/// A first guess: water in balance with the air, but for more carbon dioxide.
pub(super) fn in_balance<R: Real>(model: &NightModel<R>) -> NightState<R> {
    let numbers = &model.coefficients;
    [
        R::splat(FIRST_OXYGEN * model.saturation_mg_l),
        model
            .carbonate
            .all_about(numbers.room_carbon * FIRST_CARBON),
        numbers.submerged_g_l * FIRST_STORE_MG_G,
    ]
}

/// A day gone through.
struct Passed<R> {
    start: NightState<R>,
    gained: NightState<R>,
    low: R,
    /// How its end moves with its start.
    slopes: Three<R>,
}

impl<R: Real> Passed<R> {
    fn through(
        model: &NightModel<R>,
        schedule: &Schedule,
        start: NightState<R>,
        accuracy: Accuracy,
    ) -> Result<Self, IntegrationError> {
        let mut low = start[0];
        let mut carried = CarriedSlopes::new();
        let [_, end] = walk(model, schedule, start, accuracy, |phase, step, slopes| {
            let middle = step.at(f64::midpoint(step.start, step.end));
            low = low.min(middle[0]).min(step.to[0]);
            carried.take(Stretch {
                phase,
                length: step.end - step.start,
                slopes: *slopes,
            });
        })?;
        Ok(Self {
            start,
            gained: std::array::from_fn(|row| end[row] - start[row]),
            low,
            slopes: carried.over_the_day(),
        })
    }

    fn end(&self) -> NightState<R> {
        std::array::from_fn(|row| self.start[row] + self.gained[row])
    }

    /// By how much the day does not repeat itself, mg/L; of the store what a day's breath
    /// makes of it, which is nothing where there is always enough.
    fn missed(&self, model: &NightModel<R>) -> f64 {
        let numbers = &model.coefficients;
        let [oxygen, carbon, store] = self.gained;
        let full = self.start[2].abs() + numbers.store_half;
        let breathed =
            numbers.submerged_breath * HOURS_PER_DAY * numbers.store_half / (full * full);
        let store = store.abs() * breathed.min(R::splat(1.0));
        oxygen.abs().max(carbon.abs()).max(store).largest()
    }

    /// A Newton step, shortened where it would leave the sensible.
    fn leap(&self) -> NightState<R> {
        let start = &self.start;
        let less = solved(&self.slopes, &self.gained);
        let left = |place: usize| (start[place] - less[place]).max(start[place] * LEAST_LEFT);
        let grown = |place: usize| left(place).min(start[place] * MOST_GROWN);
        [left(0), grown(1), grown(2)]
    }
}

/// A step, and the slopes of the rates where it starts.
struct Stretch<R> {
    phase: Phase,
    length: f64,
    slopes: Three<R>,
}

impl<R: Real> Stretch<R> {
    /// How its end moves with its start, by a method of order two that damps what is fast.
    ///
    /// ```text
    /// (1 - g z)^-2 (1 + (1 - 2 g) z),    z = h J,    g = 1 - 1/sqrt(2)
    /// ```
    fn across(&self, slopes: &Three<R>) -> Three<R> {
        let damping = 1.0 - std::f64::consts::FRAC_1_SQRT_2;
        let one_and = |share: f64| {
            let mut matrix = slopes.map(|row| row.map(|slope| slope * (share * self.length)));
            for (place, row) in matrix.iter_mut().enumerate() {
                row[place] = row[place] + 1.0;
            }
            matrix
        };
        let back = inverse(&one_and(-damping));
        product(&back, &product(&back, &one_and(1.0 - 2.0 * damping)))
    }
}

/// How the state moves with the start of the day, step by step.
struct CarriedSlopes<R> {
    so_far: Three<R>,
    /// The step that is yet to be taken in: its end is where the next starts.
    last: Option<Stretch<R>>,
}

impl<R: Real> CarriedSlopes<R> {
    fn new() -> Self {
        Self {
            so_far: identity(),
            last: None,
        }
    }

    fn take(&mut self, next: Stretch<R>) {
        if let Some(last) = self.last.take() {
            let slopes = if last.phase == next.phase {
                mean(&last.slopes, &next.slopes)
            } else {
                last.slopes
            };
            self.so_far = product(&last.across(&slopes), &self.so_far);
        }
        self.last = Some(next);
    }

    fn over_the_day(&self) -> Three<R> {
        match &self.last {
            Some(last) => product(&last.across(&last.slopes), &self.so_far),
            None => self.so_far,
        }
    }
}

fn mean<R: Real>(one: &Three<R>, other: &Three<R>) -> Three<R> {
    let entry = |row: usize, column: usize| (one[row][column] + other[row][column]) * 0.5;
    std::array::from_fn(|row| std::array::from_fn(|column| entry(row, column)))
}

/// What would take back a gain, where the end moves so with the start; what ends the day as
/// it starts, wherever that is, as the store of a tank without plants, asks for no
/// correction.
fn solved<R: Real>(slopes: &Three<R>, gained: &NightState<R>) -> NightState<R> {
    let mut rows = *slopes;
    for (place, row) in rows.iter_mut().enumerate() {
        let own = row[place] - 1.0;
        row[place] = own.map(|slope| if slope == 0.0 { -1.0 } else { slope });
    }
    let over = determinant(&rows).map(|value| {
        if value.abs() < LEAST_DETERMINANT {
            0.0
        } else {
            value.recip()
        }
    });
    applied(&adjugate(&rows), gained).map(|less| less * over)
}
