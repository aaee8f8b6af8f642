//! Any design is planned, without the ensemble, and written as JSON, as text and as a page;
//! the states of members of its start, drawn at random, can all be.

#![no_main]

use lentic::plan::{Options, plan};
use lentic::report::{compose, html, json};
use lentic::spec;
use libfuzzer_sys::fuzz_target;

#[path = "../support/odd.rs"]
mod odd;
#[path = "../support/random_spec.rs"]
#[expect(dead_code, reason = "sections are put in another order by the laws alone")]
mod random_spec;
#[path = "../support/states.rs"]
mod states;

/// Members whose states are looked at.
const MEMBERS: u32 = 2;

/// Few days: the rules see them all, and the run is most of the time.
const OPTIONS: Options = Options {
    members: 0,
    seed: 1,
    days: 14,
};

fuzz_target!(|bytes: &[u8]| {
    let Ok(design) = spec::parse(&random_spec::spec(bytes)) else {
        return;
    };
    let plan = plan(&design, OPTIONS).expect("finite numbers");
    assert_eq!(odd::odd_in(&plan), Vec::<String>::new());
    assert_eq!(states::impossible(&design, MEMBERS, OPTIONS.days), None);
    let written = json::pretty(&json::object("lentic/plan/1", &plan));
    assert!(written.starts_with('{') && written.ends_with("}\n"));
    let page = html::render(&compose::plan(&design, &plan));
    assert!(page.trim_end().ends_with("</html>"));
});
