//! Runs every case: each member draws its own inputs and its own uncertain numbers.

use std::path::{Path, PathBuf};

use lentic::air::demand::fish_at_rest;
use lentic::catalogue::ObservedComparison;
use lentic::design::Design;
use lentic::numerics::quantile::quantiles;
use lentic::numerics::sobol::Sobol;
use lentic::parameters::{Aeration, OxygenUse, Parameters, Photosynthesis};
use lentic::plan::{self, OnDay, Options};
use lentic::source::Band;
use lentic::startup;
use lentic::units::{Mass, Temperature};
use serde_json::{Value, json};

use crate::case::{Case, Observation};

/// Members of a case.
const MEMBERS: u32 = 16;
const SEED: u64 = 1;
/// Days between two harvests of a culture.
const HARVEST_D: usize = 7;

/// Where the cases lie.
pub(crate) fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/validation")
}

/// All cases, by name.
pub(crate) fn cases() -> Vec<Case> {
    let entries = std::fs::read_dir(folder()).expect("a folder");
    let mut folders: Vec<PathBuf> = entries
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.is_dir())
        .collect();
    folders.sort();
    folders.iter().map(|folder| Case::read(folder)).collect()
}

/// Every observation of every case.
pub(crate) fn compared() -> Vec<ObservedComparison> {
    cases().iter().flat_map(followed).collect()
}

fn followed(case: &Case) -> Vec<ObservedComparison> {
    let points = Sobol::new(SEED);
    let results: Vec<Value> = (0..MEMBERS)
        .map(|member| result(case, points, member))
        .collect();
    let of = |observed: &Observation| {
        if case.run == "parameters" {
            return band(&results[0], &observed.path);
        }
        let members = results.iter().map(|result| predicted(result, observed));
        let [low, typical, high] = quantiles(members, [0.1, 0.5, 0.9]).expect("members");
        Band::new(low, typical, high)
    };
    let observations = case.observations.iter();
    observations
        .map(|observed| case.compared(observed, of(observed)))
        .collect()
}

/// What the command of a case gives for one member, as JSON.
fn result(case: &Case, points: Sobol, member: u32) -> Value {
    let options = Options {
        members: 1,
        seed: u64::from(member) + 1,
        days: case.day.max(1),
    };
    match case.run.as_str() {
        "night" => {
            let design = case.drawn(points, member);
            let (night, ..) = plan::night(&design, options, OnDay::Day(case.day)).expect("a night");
            serde_json::to_value(night).expect("JSON")
        }
        "startup" => {
            let design = case.drawn(points, member);
            let (startup, _) = plan::startup(&design, options, &|_| ()).expect("a start");
            serde_json::to_value(startup).expect("JSON")
        }
        "growth" => growth(&case.drawn(points, member), case.day, member),
        "parameters" => bands(),
        other => panic!("{}: {other} is nothing to run", case.name),
    }
}

/// Dry stands on a square metre of floor, day by day, floaters unthinned: a culture is
/// harvested by its own rules.
fn growth(design: &Design, days: u32, member: u32) -> Value {
    let inputs = startup::Inputs {
        floaters_above: None,
        ..startup::Inputs::of(design)
    };
    let points = Sobol::new(u64::from(member) + 1);
    let numbers = Parameters::<Band>::of(design).draw(|place| points.coordinate(0, place));
    let run = startup::run(&inputs, &numbers, days).expect("a run");
    let rows = run.days().map(|sample| {
        let state = &sample.state;
        json!({ "day": sample.day, "floating_g_m2": state.floating, "fast_g_m2": state.fast })
    });
    json!({ "days": rows.collect::<Vec<Value>>() })
}

/// The bands that an observation may stand beside by themselves, and what formulas make of
/// them.
fn bands() -> Value {
    let said = |band: Band| json!({ "low": band.low, "typical": band.typical, "high": band.high });
    let (air, use_of) = (Aeration::reference(), OxygenUse::reference());
    let fixing = Photosynthesis::reference();
    let start = Parameters::<Band>::reference();
    let at_rest = |g: f64, celsius: f64| {
        fish_at_rest(Mass::from_g(g), Temperature::from_celsius(celsius)).mg_h()
    };
    // the line of fish at rest states no band: it is a single value
    let swimming = use_of.swimming.scaled(at_rest(10.0, 37.0));
    let closed = start.floating.closed_layer;
    let stand = |of: fn(Band) -> f64| of(fixing.floating) * of(closed) * 1e-3;
    let closed_stand = Band::new(stand(|b| b.low), stand(|b| b.typical), stand(|b| b.high));
    json!({
        "aeration": { "open_k600": said(air.open_k600), "mat_passage": said(air.mat_passage) },
        "photosynthesis": {
            "light_yield": said(fixing.light_yield),
            "closed_floaters_g_m2_h": said(closed_stand),
        },
        "oxygen_use": { "bed": said(use_of.bed) },
        "water": { "denitrification": said(start.water.denitrification) },
        "fish": {
            "swimming_10_g_37_c_mg_h": said(swimming),
            "at_rest_100_g_26_c_mg_h": said(Band::exact(at_rest(100.0, 26.0))),
        },
    })
}

fn band(result: &Value, path: &str) -> Band {
    let found = at(result, path);
    let of = |end: &str| found[end].as_f64().expect(path);
    Band::new(of("low"), of("typical"), of("high"))
}

/// One member's value for an observation.
fn predicted(result: &Value, observed: &Observation) -> f64 {
    let Some((list, field)) = observed.path.split_once("[].") else {
        return number(at(result, &observed.path), &observed.path);
    };
    let rows = result[list].as_array().expect(&observed.path);
    let values = || rows.iter().map(|row| number(&row[field], &observed.path));
    match observed.hour.as_str() {
        "max" => values().fold(f64::NEG_INFINITY, f64::max),
        "min" => values().fold(f64::INFINITY, f64::min),
        "mean" => values().sum::<f64>() / rows.len() as f64,
        "most a day in a week" => weekly(&values().collect::<Vec<f64>>()),
        hour => {
            let (key, wanted) = match observed.day {
                Some(day) => ("day", day),
                None => ("hour", hour.parse().expect("an hour")),
            };
            let row = rows.iter().find(|row| row[key].as_f64() == Some(wanted));
            number(&row.expect("a row")[field], &observed.path)
        }
    }
}

/// The largest gain from one harvest to the next, per day.
fn weekly(values: &[f64]) -> f64 {
    let gains = values
        .iter()
        .zip(&values[HARVEST_D..])
        .map(|(before, after)| (after - before) / HARVEST_D as f64);
    gains.fold(f64::NEG_INFINITY, f64::max)
}

fn at<'a>(result: &'a Value, path: &str) -> &'a Value {
    path.split('.').fold(result, |value, step| &value[step])
}

/// A plain number, or the typical of a band.
fn number(value: &Value, path: &str) -> f64 {
    let plain = value.as_f64().or_else(|| value["typical"].as_f64());
    plain.unwrap_or_else(|| panic!("{path}: {value} is no number"))
}
