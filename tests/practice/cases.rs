//! Tanks from practice with what is wrong with them: the cause that is to lead, words that
//! the next step has to hold, and words that it must not. All of it is common practice, no
//! source.

use std::path::Path;

use lentic::diagnosis::{Diagnosis, diagnose};
use lentic::plan::Options;
use rayon::prelude::*;
use serde::Deserialize;

/// Share of the cases in which the true cause leads, at least.
const LEADS: f64 = 0.75;

/// A tank with what practice says of it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Case {
    /// What a keeper would tell.
    #[serde(rename = "story")]
    _story: String,
    /// The cause; of several, any.
    cause: Vec<String>,
    /// What the next step must not say.
    forbidden: Vec<String>,
    /// What the next step has to say.
    wanted: Vec<String>,
    spec: String,
}

fn cases() -> Vec<(String, Case)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/practice/cases");
    let mut cases: Vec<(String, Case)> = std::fs::read_dir(folder)
        .expect("the cases")
        .map(|entry| {
            let path = entry.expect("a case").path();
            let name = path.file_stem().expect("a name").to_string_lossy();
            let text = std::fs::read_to_string(&path).expect("a text");
            (name.into_owned(), toml::from_str(&text).expect("a case"))
        })
        .collect();
    cases.sort_by(|one, other| one.0.cmp(&other.0));
    cases
}

fn found(name: &str, case: &Case) -> Diagnosis {
    let design =
        lentic::spec::parse(&case.spec).unwrap_or_else(|faults| panic!("{name}: {faults}"));
    let options = Options {
        members: 8,
        ..Options::default()
    };
    diagnose(&design, &[], options).expect("a diagnosis")
}

#[test]
fn the_cause_of_three_cases_in_four_leads_and_no_first_step_harms() {
    let cases = cases();
    assert!(cases.len() >= 20, "{} cases", cases.len());
    let (mut led, mut faults) = (0, Vec::new());
    let found: Vec<Diagnosis> = cases
        .par_iter()
        .map(|(name, case)| found(name, case))
        .collect();
    for ((name, case), found) in cases.iter().zip(&found) {
        let leading = &found.causes[0];
        let says = found.next_step.says.to_lowercase();
        println!(
            "{name}: {} {:.2}, {} {:.2}: {says}",
            leading.cause.name(),
            leading.probability,
            found.causes[1].cause.name(),
            found.causes[1].probability
        );
        let leads = case.cause.iter().any(|cause| cause == leading.cause.name());
        led += usize::from(leads);
        for word in case.forbidden.iter().filter(|word| says.contains(*word)) {
            faults.push(format!("{name} says \"{word}\": {says}"));
        }
        for word in case
            .wanted
            .iter()
            .filter(|word| leads && !says.contains(*word))
        {
            faults.push(format!("{name} lacks \"{word}\": {says}"));
        }
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    let share = f64::from(u32::try_from(led).expect("few")) / cases.len() as f64;
    println!("{led} of {} lead", cases.len());
    assert!(share >= LEADS, "{led} of {}", cases.len());
}
