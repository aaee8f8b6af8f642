//! What the bed gives to the water where no plant takes it.

use super::inputs::{Conditions, DailyFeed, Inputs, ModelEventKind, PlantedMass};
use super::passages::Passages;
use super::run::run;
use super::running::RunningTank;
use super::soil::pore_water;
use super::trajectory::Peak;
use crate::numerics::rodas::IntegrationError;
use crate::parameters::Parameters;
use crate::substrate::diffusion::effective_diffusion;
use crate::substrate::release::{FILM_M, Passage};
use crate::units::{Diffusivity, PhotonFlux, Share};

/// Nitrogen that a planting has to meet over the first days.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Supply {
    /// Given off through the cap, g N/m2.
    pub released_g_m2: f64,
    /// Stirred into the water at filling and by disturbances, g N/m2.
    pub stirred_g_m2: f64,
    /// Largest release, g N/(m2 d).
    pub peak_release: Peak,
    /// Ammonium in the soil's pore water at filling, mg N/L.
    pub first_pore_water_mg_l: f64,
}

impl Supply {
    /// Both together, g N/m2.
    pub fn total_g_m2(&self) -> f64 {
        self.released_g_m2 + self.stirred_g_m2
    }
}

/// The supply over some days in a dark run of the same bed under water without nitrogen,
/// without plants, feed or water changes but with nitrifiers, so that the release works
/// against the ammonia that builds up.
///
/// # Errors
/// [`IntegrationError`], as for a run.
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, supply};
/// let numbers = Parameters::<Band>::reference().central();
/// let released = supply(&Inputs::reference(), &numbers, 90)?.released_g_m2;
/// // 6.16 g N/m2 in an independent program for the same bed without a stable rest, which
/// // sets free 2 % of 87.5 g N/m2 a year beside that
/// assert!((6.16..6.16 + 0.02 * 87.5 * 90.0 / 365.0).contains(&released));
/// # Ok::<(), lentic::numerics::rodas::IntegrationError>(())
/// ```
pub fn supply(
    inputs: &Inputs,
    parameters: &Parameters<f64>,
    days: u32,
) -> Result<Supply, IntegrationError> {
    let of_the_bed = |kind: &ModelEventKind| {
        matches!(
            kind,
            ModelEventKind::CapAdded(_) | ModelEventKind::Disturbed(_)
        )
    };
    let bare = Inputs {
        planting: PlantedMass::default(),
        light: PhotonFlux::ZERO,
        feed: DailyFeed::default(),
        events: inputs
            .events
            .iter()
            .filter(|event| of_the_bed(&event.kind))
            .copied()
            .collect(),
        ..inputs.clone()
    };
    let mut numbers = *parameters;
    // Ammonia of the tap would hold the bed's back, and dirty water look like a sound bed.
    let tap = &mut numbers.tap;
    (tap.ammonia, tap.nitrite, tap.nitrate) = (0.0, 0.0, 0.0);
    let trajectory = run(&bare, &numbers, days)?;
    let released = trajectory.samples.last();
    Ok(Supply {
        released_g_m2: released.map_or(0.0, |sample| sample.state.released_n),
        stirred_g_m2: trajectory.stirred_g_m2,
        peak_release: trajectory.peaks().release,
        first_pore_water_mg_l: trajectory
            .samples
            .first()
            .map_or(0.0, |sample| sample.pore_water_mg_l),
    })
}

/// What stands between the soil's ammonium and the water on the day of filling.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Barrier {
    /// Resistances of soil, cap and film to ammonium.
    pub passage: Passage,
    /// Ammonium in the soil's pore water, mg N/L.
    pub pore_water_mg_l: f64,
    /// Effective diffusion of ammonium in the cap.
    pub cap_diffusion: Diffusivity,
}

/// The barrier of a tank just filled.
///
/// # Source
/// As [`Passage::new`].
///
/// # Example
/// ```
/// use lentic::source::Band;
/// use lentic::startup::{Inputs, Parameters, barrier};
/// let numbers = Parameters::<Band>::reference().central();
/// let barrier = barrier(&Inputs::reference(), &numbers);
/// // 97 % of 1.75 g N/m2, after what filling stirs up, over a store of 0.0525 m
/// assert!((barrier.pore_water_mg_l - 32.33).abs() < 0.05);
/// ```
pub fn barrier(inputs: &Inputs, parameters: &Parameters<f64>) -> Barrier {
    let conditions = Conditions::new(inputs);
    let passage = Passages::new(parameters, &conditions).ammonium;
    Barrier {
        pore_water_mg_l: pore_water(
            RunningTank::filled(inputs, parameters).state.soil_n,
            &passage,
        ),
        cap_diffusion: Diffusivity::from_m2_d(effective_diffusion(
            FILM_M / passage.film_d_m,
            Share::from_fraction(parameters.cap.porosity),
        )),
        passage,
    }
}
