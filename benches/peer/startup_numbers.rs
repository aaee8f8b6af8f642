//! The reference start-ups as JSON: numbers, inputs, daily curves and time per run, for
//! another program to follow the same tanks.
// What it prints is what it is for.
#![allow(clippy::print_stdout)]

use std::hint::black_box;
use std::time::Instant;

use lentic::numerics::rodas::IntegrationError;
use lentic::parameters;
use lentic::source::Band;
use lentic::startup::{Inputs, Parameters, Planting, State, run};
use lentic::units::{Mass, PhotonFlux, Share};
use serde_json::{Value, json};

const DAYS: u32 = 90;
/// Runs timed together, and how often.
const RUNS: u32 = 20;
const BATCHES: u32 = 5;

fn tank(light_umol_m2_s: f64, (cover_pct, fast_g_m2, slow_g_m2): (f64, f64, f64)) -> Inputs {
    let bare = Inputs::reference();
    let dry = |g_m2: f64| Mass::from_g(g_m2 * bare.floor.m2());
    Inputs {
        planting: Planting {
            cover: Share::from_percent(cover_pct),
            fast: dry(fast_g_m2),
            slow: dry(slow_g_m2),
            ..Planting::default()
        },
        light: PhotonFlux::from_umol_m2_s(light_umol_m2_s),
        floaters_above: Some(Share::from_percent(50.0)),
        ..bare
    }
}

fn inputs_json(inputs: &Inputs) -> Value {
    let floor_m2 = inputs.floor.m2();
    json!({
        "water_depth_m": (inputs.water / inputs.floor).m(),
        "soil_depth_m": inputs.soil_depth.m(),
        "cap_depth_m": inputs.cap_depth.m(),
        "cover": inputs.planting.cover.fraction(),
        "fast_g_m2": inputs.planting.fast.g() / floor_m2,
        "slow_g_m2": inputs.planting.slow.g() / floor_m2,
        "light_umol_m2_s": inputs.light.umol_m2_s(),
        "light_hours": inputs.light_hours,
        "temperature_c": inputs.temperature.celsius(),
        "ph": inputs.ph,
        "oxygen_mg_l": inputs.oxygen.mg_l(),
        "thinned_to_cover": inputs.floaters_above.map(Share::fraction),
    })
}

/// Seconds a run takes in the fastest of the batches.
fn fastest(inputs: &Inputs, numbers: &Parameters<f64>) -> Result<f64, IntegrationError> {
    let mut fastest = f64::INFINITY;
    for _ in 0..BATCHES {
        let start = Instant::now();
        for _ in 0..RUNS {
            black_box(run(black_box(inputs), numbers, DAYS)?);
        }
        fastest = fastest.min(start.elapsed().as_secs_f64() / f64::from(RUNS));
    }
    Ok(fastest)
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let central = Parameters::<Band>::reference().central();
    let names = parameters::descriptions();
    let numbers: serde_json::Map<String, Value> = (names.iter().zip(central.values()))
        .map(|(description, value)| (description.name.to_owned(), value.into()))
        .collect();
    let mut cases = Vec::new();
    for (name, light, planting) in [
        ("dark, no plants", 0.0, (0.0, 0.0, 0.0)),
        ("lit, no plants", 100.0, (0.0, 0.0, 0.0)),
        ("heavily planted", 100.0, (40.0, 100.0, 25.0)),
    ] {
        let inputs = tank(light, planting);
        let trajectory = run(&inputs, &central, DAYS)?;
        let curve = |of: fn(&State) -> f64| -> Vec<f64> {
            trajectory.days().map(|sample| of(&sample.state)).collect()
        };
        cases.push(json!({
            "name": name,
            "inputs": inputs_json(&inputs),
            "ammonia": curve(|state| state.ammonia),
            "nitrite": curve(|state| state.nitrite),
            "nitrate": curve(|state| state.nitrate),
            "seconds_per_run": fastest(&inputs, &central)?,
        }));
    }
    println!("{}", json!({ "numbers": numbers, "cases": cases }));
    Ok(())
}
