//! Runs every case: each member draws its own inputs and its own uncertain numbers.

use std::path::{Path, PathBuf};

use lentic::numerics::quantile::quantiles;
use lentic::numerics::sobol::Sobol;
use lentic::parameters::{Aeration, OxygenUse, Photosynthesis};
use lentic::plan::{self, OnDay, Options};
use lentic::source::Band;
use serde_json::{Value, json};

use crate::case::{Case, Observation};

/// Members of a case.
const MEMBERS: u32 = 16;
const SEED: u64 = 1;

/// A prediction beside its observation.
pub(crate) struct Compared {
    pub(crate) case: String,
    pub(crate) in_view: bool,
    pub(crate) observed: Observation,
    /// 10, 50 and 90 % of the members.
    pub(crate) predicted: Band,
}

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
pub(crate) fn compared() -> Vec<Compared> {
    cases().into_iter().flat_map(followed).collect()
}

fn followed(case: Case) -> Vec<Compared> {
    let points = Sobol::new(SEED);
    let results: Vec<Value> = (0..MEMBERS)
        .map(|member| result(&case, points, member))
        .collect();
    let of = |observed: &Observation| {
        if case.run == "parameters" {
            return band(&results[0], &observed.path);
        }
        let members = results.iter().map(|result| predicted(result, observed));
        let [low, typical, high] = quantiles(members, [0.1, 0.5, 0.9]).expect("members");
        Band::new(low, typical, high)
    };
    let bands: Vec<Band> = case.observations.iter().map(of).collect();
    let pairs = case.observations.into_iter().zip(bands);
    pairs
        .map(|(observed, predicted)| Compared {
            case: case.name.clone(),
            in_view: case.in_view,
            observed,
            predicted,
        })
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
        "parameters" => bands(),
        other => panic!("{}: {other} is nothing to run", case.name),
    }
}

/// The bands that an observation may stand beside by themselves.
fn bands() -> Value {
    let said = |band: Band| json!({ "low": band.low, "typical": band.typical, "high": band.high });
    let (air, use_of) = (Aeration::reference(), OxygenUse::reference());
    json!({
        "aeration": { "open_k600": said(air.open_k600), "mat_passage": said(air.mat_passage) },
        "photosynthesis": { "light_yield": said(Photosynthesis::reference().light_yield) },
        "oxygen_use": { "bed": said(use_of.bed) },
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

fn at<'a>(result: &'a Value, path: &str) -> &'a Value {
    path.split('.').fold(result, |value, step| &value[step])
}

/// A plain number, or the typical of a band.
fn number(value: &Value, path: &str) -> f64 {
    let plain = value.as_f64().or_else(|| value["typical"].as_f64());
    plain.unwrap_or_else(|| panic!("{path}: {value} is no number"))
}
