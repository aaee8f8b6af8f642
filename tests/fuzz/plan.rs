//! Any design is planned, without the ensemble, and written as JSON and as text.

#![no_main]

use lentic::plan::{Options, plan};
use lentic::report::{compose, json};
use lentic::spec;
use libfuzzer_sys::fuzz_target;

#[path = "../support/random_spec.rs"]
mod random_spec;

/// Few days: the rules see them all, and the run is most of the time.
const OPTIONS: Options = Options {
    members: 0,
    seed: 1,
    days: 14,
};

fuzz_target!(|bytes: &[u8]| {
    let text = random_spec::spec(bytes);
    let Ok(design) = spec::parse(&text) else {
        return;
    };
    let plan = plan(&design, OPTIONS).expect("finite numbers");
    let written = json::pretty(&json::object("lentic/plan/1", &plan));
    assert!(written.starts_with('{') && written.ends_with("}\n"));
    assert!(!compose::plan(&design, &plan).blocks.is_empty());
});
