//! The reference start-up as JSON: its numbers, three cubes, their curves and the time of a run.
// An example program prints.
#![allow(clippy::print_stdout)]

use std::time::Instant;

use lentic::source::Band;
use lentic::startup::parameters::descriptions;
use lentic::startup::{Feed, Inputs, Parameters, Planting, run};
use lentic::units::{Area, Concentration, Length, Mass, PhotonFlux, Share, Temperature};
use serde_json::{Map, Value, json};

const FLOOR_M2: f64 = 0.0493;
const DAYS: u32 = 90;
const RUNS: u32 = 50;
/// Name, light, floaters %, stems and slow growers g dry/m2.
const CUBES: [(&str, f64, f64, f64, f64); 3] = [
    ("dark and bare", 0.0, 0.0, 0.0, 0.0),
    ("lit and bare", 100.0, 0.0, 0.0, 0.0),
    ("planted heavily", 100.0, 40.0, 100.0, 25.0),
];

fn cube(light: f64, cover_pct: f64, fast: f64, slow: f64) -> Inputs {
    let floor = Area::from_m2(FLOOR_M2);
    Inputs {
        floor,
        water: floor * Length::from_cm(16.0),
        soil_depth: Length::from_mm(25.0),
        cap_depth: Length::from_mm(25.0),
        planting: Planting {
            cover: Share::from_percent(cover_pct),
            floating: Mass::ZERO,
            fast: Mass::from_g(fast * FLOOR_M2),
            slow: Mass::from_g(slow * FLOOR_M2),
        },
        light: PhotonFlux::from_umol_m2_s(light),
        light_hours: 10.0,
        temperature: Temperature::from_celsius(25.0),
        ph: 7.2,
        oxygen: Concentration::from_mg_l(7.0),
        feed: Feed::default(),
        floaters_above: Some(Share::from_percent(50.0)),
        events: Vec::new(),
    }
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let numbers = Parameters::<Band>::reference().central();
    let named: Map<String, Value> = descriptions()
        .iter()
        .zip(numbers.values())
        .map(|(description, value)| (description.name.to_owned(), json!(value)))
        .collect();
    let mut cubes = Vec::new();
    for (name, light, cover_pct, fast, slow) in CUBES {
        let inputs = cube(light, cover_pct, fast, slow);
        let start = Instant::now();
        for _ in 0..RUNS {
            run(&inputs, &numbers, DAYS)?;
        }
        let seconds = start.elapsed().as_secs_f64() / f64::from(RUNS);
        let course = run(&inputs, &numbers, DAYS)?;
        let days: Vec<[f64; 3]> = course
            .days()
            .map(|day| [day.state.ammonia, day.state.nitrite, day.state.nitrate])
            .collect();
        cubes.push(
            json!({ "name": name, "light": light, "cover": cover_pct / 100.0,
            "fast": fast, "slow": slow, "seconds": seconds, "days": days }),
        );
    }
    println!("{}", json!({ "numbers": named, "cubes": cubes }));
    Ok(())
}
