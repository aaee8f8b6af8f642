//! Fifty tanks of one grid as JSON: numbers, inputs, peaks and time per run, for another
//! program to follow the same tanks.
// What it prints is what it is for.
#![allow(clippy::print_stdout)]

use std::time::Instant;

use lentic::parameters;
use lentic::plan::Options;
use lentic::source::Band;
use lentic::startup::{Inputs, Parameters};
use lentic::study::{Base, Cell, Column, Question, Row, Space, compare};
use lentic::units::Share;
use serde_json::{Value, json};

const SPEC: &str = "[tank]\nshape = \"box\"\nsize = \"50 x 30 x 36 cm\"\n[soil]\nmaterial = \"loam_topsoil\"\ndepth = \"25 mm\"\n[cap]\nmaterial = \"filter_sand\"\ndepth = \"40 mm\"\n[[plants]]\nname = \"hygrophila_difformis\"\namount = \"12 stems\"\n[water]\ntemperature = \"25 C\"\n";
const MEMBERS: u32 = 64;

/// What the equations need to know of the tank of a row.
fn tank(draft: &lentic::design::Draft, space: &Space, row: &Row) -> Option<(Inputs, Value)> {
    let mut draft = draft.clone();
    for (axis, level) in space.axes().iter().zip(&row.levels) {
        axis.knob.turn(&mut draft, level.value).ok()?;
    }
    let design = draft.check().ok()?;
    let central = Parameters::<Band>::of(&design).central();
    let names = parameters::descriptions();
    let numbers: serde_json::Map<String, Value> = (names.iter().zip(central.values()))
        .map(|(description, value)| (description.name.to_owned(), value.into()))
        .collect();
    Some((Inputs::of(&design), numbers.into()))
}

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let draft = lentic::spec::parse(SPEC)?.into_draft();
    let axes = vec![
        lentic::spec::axis("soil.depth=15..45mm/5")?,
        lentic::spec::axis("cap.depth=15..60mm/10")?,
    ];
    let asked = |members| -> Result<Question, Box<dyn std::error::Error>> {
        let options = Options {
            members,
            ..Options::default()
        };
        Ok(Question {
            columns: vec![
                Column::of("startup.ammonia_peak_mg_l")?,
                Column::of("startup.nitrite_peak_mg_l")?,
            ],
            ..Question::about(Space::grid(axes.clone())?, options)
        })
    };
    let bases = [Base::of(0, draft)];
    let ensembles = asked(MEMBERS)?;
    let start = Instant::now();
    let rows = compare(&ensembles, &bases).count();
    let seconds_per_run = start.elapsed().as_secs_f64() / (rows as f64 * f64::from(MEMBERS));
    let question = asked(0)?;
    let mut cases = Vec::new();
    for row in compare(&question, &bases) {
        let (inputs, numbers) = tank(&bases[0].draft, &question.space, &row).ok_or("no tank")?;
        let cells = row.cells?;
        let peak = |place: usize| cells[place].as_ref().and_then(Cell::number);
        cases.push(json!({
            "ammonia": peak(0), "nitrite": peak(1), "numbers": numbers,
            "inputs": {
                "water_depth_m": (inputs.water / inputs.floor).m(),
                "soil_depth_m": inputs.soil_depth.m(), "cap_depth_m": inputs.cap_depth.m(),
                "cover": inputs.planting.cover.fraction(),
                "fast_g_m2": inputs.planting.fast.g() / inputs.floor.m2(),
                "slow_g_m2": inputs.planting.slow.g() / inputs.floor.m2(),
                "light_umol_m2_s": inputs.light.umol_m2_s(), "light_hours": inputs.light_hours,
                "temperature_c": inputs.temperature.celsius(), "ph": inputs.ph,
                "oxygen_mg_l": inputs.oxygen.mg_l(),
                "thinned_to_cover": inputs.floaters_above.map(Share::fraction),
            },
        }));
    }
    let threads = rayon::current_num_threads();
    println!(
        "{}",
        json!({ "cases": cases, "seconds_per_run": seconds_per_run, "threads": threads })
    );
    Ok(())
}
