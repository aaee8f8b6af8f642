//! A tank by its days, and what becomes of it where more is done to it from some day on.

use super::inputs::{Inputs, ModelEvent};
use super::model::StartupModel;
use super::recorder::RunRecord;
use super::run::{Detail, Run, in_order};
use super::running::RunningTank;
use super::state::State;
use crate::numerics::rodas::IntegrationError;
use crate::parameters::Parameters;

/// A tank on each whole day from filling on, before what is done to it on that day; on the
/// first after it.
pub type DailyStates = Result<Vec<State>, IntegrationError>;

/// The course of a tank followed as closely as a member, and of the same tank with each of
/// some turns: events beside its own. What lies before a turn is followed once for all.
///
/// # Errors
/// In the courses, [`IntegrationError`] as for a run; where the tank itself cannot be followed
/// to a turn, there too.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{ModelEvent, ModelEventKind, Inputs, Parameters, courses};
/// use lentic::units::Share;
/// let change = ModelEvent { day: 10.0, kind: ModelEventKind::WaterChange(Share::from_percent(50.0)) };
/// let numbers = Parameters::<Band>::reference().central();
/// let (own, turned) = courses(&Inputs::reference(), &numbers, 20, &[vec![change]]);
/// let (own, turned) = (own?, turned[0].clone()?);
/// assert_eq!(own[..11], turned[..11]);
/// assert!(turned[11].ammonia < own[11].ammonia);
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
pub fn courses(
    inputs: &Inputs,
    parameters: &Parameters<f64>,
    days: u32,
    turns: &[Vec<ModelEvent>],
) -> (DailyStates, Vec<DailyStates>) {
    let end = f64::from(days);
    let turns: Vec<Vec<&ModelEvent>> = turns.iter().map(in_order).collect();
    let mut marks: Vec<(f64, usize)> = turns
        .iter()
        .enumerate()
        .map(|(turn, events)| (events.first().map_or(end, |event| event.day.min(end)), turn))
        .collect();
    marks.sort_by(|a, b| a.0.total_cmp(&b.0));
    let at = marks.iter().map(|(day, _)| *day).collect();
    let mut run = Run::of(
        RunningTank::filled(inputs, parameters),
        inputs.changes_by_reading,
        Detail::MEMBER,
        CourseRecorder::new(days, at),
    );
    let mut turned: Vec<Option<DailyStates>> = vec![None; turns.len()];
    let mut parted = 0;
    let own = run.through(0.0, &in_order(&inputs.events), end, |run, to_come| {
        while let Some((state, (day, turn))) = run.recorder.left.get(parted).zip(marks.get(parted))
        {
            let mut tank = run.tank.clone();
            tank.state = *state;
            let days = run.recorder.until(*day);
            let events = in_order(to_come.iter().chain(&turns[*turn]).copied());
            turned[*turn] = Some(gone_on((tank, days), (*day, end), &events, inputs));
            parted += 1;
        }
    });
    let own = own.map(|()| run.recorder.states);
    let missing = |course: Option<DailyStates>| course.unwrap_or_else(|| own.clone());
    let turned = turned.into_iter().map(missing).collect();
    (own, turned)
}

/// The course of a tank that stands on a day, with what came before.
fn gone_on(
    (tank, days): (RunningTank, CourseRecorder),
    (day, end): (f64, f64),
    events: &[&ModelEvent],
    inputs: &Inputs,
) -> DailyStates {
    let mut run = Run::of(tank, inputs.changes_by_reading, Detail::MEMBER, days);
    run.through(day, events, end, |_, _| ())?;
    Ok(run.recorder.states)
}

/// Keeps every whole day, and the state at some moments from which a turn is taken.
struct CourseRecorder {
    states: Vec<State>,
    last: usize,
    /// The moments, in order.
    marks: Vec<f64>,
    /// The states at those passed.
    left: Vec<State>,
}

impl CourseRecorder {
    fn new(days: u32, marks: Vec<f64>) -> Self {
        Self {
            states: Vec::with_capacity(days as usize + 1),
            last: days as usize,
            left: Vec::with_capacity(marks.len()),
            marks,
        }
    }

    /// The days up to a moment; of filling itself none, for its day is shown once all is done.
    fn until(&self, day: f64) -> Self {
        let passed = if day > 0.0 { day as usize + 1 } else { 0 };
        let mut states = Vec::with_capacity(self.last + 1);
        states.extend(self.states.iter().take(passed));
        Self {
            states,
            last: self.last,
            marks: Vec::new(),
            left: Vec::new(),
        }
    }
}

impl RunRecord for CourseRecorder {
    type Mark = [usize; 2];

    fn look(&mut self, _: &StartupModel, until: f64, state_at: impl Fn(f64) -> State) {
        while let Some(mark) = self
            .marks
            .get(self.left.len())
            .filter(|mark| **mark <= until)
        {
            self.left.push(state_at(*mark));
        }
        while self.states.len() <= self.last && self.states.len() as f64 <= until {
            self.states
                .push(state_at(self.states.len() as f64).present());
        }
    }

    fn recorded(&self) -> Self::Mark {
        [self.states.len(), self.left.len()]
    }

    fn go_back(&mut self, [states, left]: Self::Mark) {
        self.states.truncate(states);
        self.left.truncate(left);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::sobol::Sobol;
    use crate::source::Band;
    use crate::startup::ensemble::days_of;
    use crate::startup::inputs::{DailyFeed, ModelEventKind};
    use crate::units::{Mass, Share};

    const DAYS: u32 = 30;

    fn event(day: f64, kind: ModelEventKind) -> ModelEvent {
        ModelEvent { day, kind }
    }

    fn tank() -> Inputs {
        let change = |day| event(day, ModelEventKind::WaterChange(Share::from_percent(25.0)));
        Inputs {
            events: vec![change(7.0), change(14.0), change(21.0)],
            ..Inputs::reference()
        }
    }

    /// Before the first day, between two events, on the day of one, and never.
    fn turns() -> Vec<Vec<ModelEvent>> {
        let stirred = |day| event(day, ModelEventKind::Disturbed(Share::from_percent(5.0)));
        let fed = DailyFeed {
            mass_per_day: Mass::from_mg(40.0),
            protein: Share::from_percent(45.0),
        };
        vec![
            vec![stirred(0.0)],
            vec![stirred(18.6), event(9.3, ModelEventKind::Fed(fed))],
            vec![event(
                14.0,
                ModelEventKind::BacteriaLost {
                    ammonia: Share::from_percent(90.0),
                    nitrite: Share::from_percent(90.0),
                },
            )],
            Vec::new(),
        ]
    }

    /// The tank with a turn, followed by itself.
    fn alone(turn: &[ModelEvent], numbers: &Parameters<f64>) -> Vec<State> {
        let mut inputs = tank();
        inputs.events.extend_from_slice(turn);
        let days = days_of(&inputs, numbers, DAYS).expect("a course");
        days.iter().map(|sample| sample.state).collect()
    }

    #[test]
    fn a_turn_from_a_shared_past_goes_as_the_same_tank_alone() {
        let points = Sobol::new(3);
        let reference = Parameters::<Band>::reference();
        for member in 0..8 {
            let numbers = reference.draw(|place| points.coordinate(member, place));
            let (own, turned) = courses(&tank(), &numbers, DAYS, &turns());
            assert_eq!(own.expect("a course"), alone(&[], &numbers));
            for (turn, course) in turns().iter().zip(turned) {
                let (course, alone) = (course.expect("a course"), alone(turn, &numbers));
                assert_eq!(course.len(), alone.len());
                for (one, other) in course.iter().zip(&alone) {
                    for (one, other) in [
                        (one.ammonia, other.ammonia),
                        (one.nitrite, other.nitrite),
                        (one.nitrate, other.nitrate),
                        (one.floating, other.floating),
                    ] {
                        let near = 2e-3 * (other.abs() + 0.05);
                        assert!((one - other).abs() < near, "{turn:?}: {one} for {other}");
                    }
                }
            }
        }
    }
}
