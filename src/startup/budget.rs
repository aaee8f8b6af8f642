//! The nitrogen dissolved in the water on a day: what brings it and what takes it.

use super::inputs::{Inputs, ModelEventKind};
use super::running::RunningTank;
use super::trajectory::Sample;
use crate::parameters::Parameters;

/// Nitrogen dissolved in the water by its ways, g/(m2 d) of floor.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Budget {
    /// Out of the soil, through the cap.
    pub from_soil: f64,
    /// By feed, dead matter and tissue that gives it back.
    pub from_matter: f64,
    /// Into plants.
    pub to_plants: f64,
    /// Into algae.
    pub to_algae: f64,
    /// Lost to the air.
    pub to_air: f64,
    /// With water changed on the day; below zero where the tap brings more.
    pub changed: f64,
    /// Ammonia that bacteria turn into nitrite and nitrate, which stays in the water.
    pub oxidised: f64,
}

impl Budget {
    /// What the water gains between two changes.
    pub fn gained(&self) -> f64 {
        self.from_soil + self.from_matter - self.to_plants - self.to_algae - self.to_air
    }
}

/// The budget of a day of a run.
///
/// ```text
/// z d(NH4 + NO2 + NO3)/dt = soil + matter - plants - algae - air
/// ```
///
/// `z` water volume over floor area. Bacteria move nitrogen from one of the three to the
/// next, which leaves their sum as it is.
///
/// # Source
/// The rates of the model itself.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, budget, run};
/// let (tank, numbers) = (Inputs::reference(), Parameters::<Band>::reference().central());
/// let trajectory = run(&tank, &numbers, 3)?;
/// let day = budget(&tank, &numbers, &trajectory.samples[8]);
/// // nothing is planted, fed or changed
/// assert_eq!((day.to_plants, day.changed), (0.0, 0.0));
/// assert!(day.from_soil > 0.0);
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
///
/// # Limits
/// Changes by reading are left out: only what is written counts.
pub fn budget(inputs: &Inputs, parameters: &Parameters<f64>, sample: &Sample) -> Budget {
    let (model, state) = (
        RunningTank::on(inputs, parameters, sample.day).model(),
        &sample.state,
    );
    let moment = model.moment_on(sample.day);
    let plants = model.plants(&moment, state, &model.surroundings(state), |stand| *stand);
    let turnover = model.turnover(&moment, state);
    let standing = model.standing(state);
    let living = plants.flow();
    let planted = plants.floating.flow + plants.fast.flow + plants.slow.flow;
    let depth_m = (inputs.water / inputs.floor).m();
    let back = living.dead_n * parameters.water.leached_share + living.returned_n;
    Budget {
        from_soil: turnover.ammonia.to_water + turnover.ammonia.on_bed,
        from_matter: model.fed().ammonia * depth_m + standing.decayed_n + back,
        to_plants: planted.taken.total(),
        to_algae: plants.algae.flow.taken.total(),
        to_air: standing.nitrite_lost + standing.nitrate_lost,
        changed: changed_share(inputs, sample.day) * depth_m * over_tap(parameters, sample),
        oxidised: turnover.ammonia_oxidised(),
    }
}

/// Share of the water that is changed on the day that a sample begins.
fn changed_share(inputs: &Inputs, day: f64) -> f64 {
    let changes = inputs.events.iter().filter_map(|event| match event.kind {
        ModelEventKind::WaterChange(share) if (day..day + 1.0).contains(&event.day) => {
            Some(share.fraction())
        }
        _ => None,
    });
    changes.sum()
}

/// Nitrogen in the water over that of the tap, mg/L.
fn over_tap(parameters: &Parameters<f64>, sample: &Sample) -> f64 {
    let (tap, state) = (&parameters.tap, &sample.state);
    state.ammonia + state.nitrite + state.nitrate - tap.ammonia - tap.nitrite - tap.nitrate
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::Band;
    use crate::startup::inputs::{DailyFeed, ModelEvent, PlantedMass};
    use crate::startup::run;
    use crate::units::{Mass, Share};
    use approx::assert_relative_eq;

    /// A fed and planted tank whose water is changed once.
    fn tank() -> Inputs {
        let feed = DailyFeed {
            mass_per_day: Mass::from_mg(100.0),
            protein: Share::from_percent(45.0),
        };
        let event = |day, kind| ModelEvent { day, kind };
        Inputs {
            planting: PlantedMass {
                cover: Share::from_percent(30.0),
                fast: Mass::from_g(3.0),
                slow: Mass::from_g(2.0),
                ..PlantedMass::default()
            },
            events: vec![
                event(5.0, ModelEventKind::Fed(feed)),
                event(9.5, ModelEventKind::WaterChange(Share::from_percent(50.0))),
            ],
            ..Inputs::reference()
        }
    }

    #[test]
    fn what_comes_less_what_goes_is_what_the_model_adds() {
        let (inputs, numbers) = (tank(), Parameters::<Band>::reference().central());
        let trajectory = run(&inputs, &numbers, 20).unwrap();
        let depth_m = (inputs.water / inputs.floor).m();
        for sample in &trajectory.samples {
            let model = RunningTank::on(&inputs, &numbers, sample.day).model();
            let rates = model.change(&model.moment_on(sample.day), &sample.state);
            let adds = (rates.ammonia + rates.nitrite + rates.nitrate) * depth_m;
            let found = budget(&inputs, &numbers, sample);
            assert_relative_eq!(found.gained(), adds, epsilon = 1e-12, max_relative = 1e-9);
        }
    }

    /// By the trapezoid over the samples of a day, less what the change takes.
    #[test]
    fn days_add_up_to_what_the_water_holds() {
        let (inputs, numbers) = (tank(), Parameters::<Band>::reference().central());
        let trajectory = run(&inputs, &numbers, 20).unwrap();
        let depth_m = (inputs.water / inputs.floor).m();
        let held = |sample: &Sample| {
            let state = &sample.state;
            (state.ammonia + state.nitrite + state.nitrate) * depth_m
        };
        let gained = |sample: &Sample| budget(&inputs, &numbers, sample).gained();
        let step = 1.0 / f64::from(trajectory.samples_per_day);
        let days = trajectory
            .samples
            .windows(2)
            .filter(|pair| pair[0].day >= 10.0);
        let sum: f64 = days
            .map(|pair| (gained(&pair[0]) + gained(&pair[1])) * 0.5 * step)
            .sum();
        let (from, to) = (
            trajectory.at_day(10).unwrap(),
            trajectory.at_day(20).unwrap(),
        );
        assert_relative_eq!(sum, held(to) - held(from), epsilon = 1e-4);
        let at = |day: f64| {
            let near = |sample: &&Sample| (sample.day - day).abs() < 0.5 * step;
            trajectory.samples.iter().find(near).expect("a sample")
        };
        let (before, after) = (at(9.25), at(9.75));
        let came = (gained(before) + gained(after)) * 0.25;
        let taken = held(before) + came - held(after);
        let told = budget(&inputs, &numbers, before).changed;
        // told from what the water holds a few hours before
        assert_relative_eq!(taken, told, max_relative = 0.15);
    }
}
