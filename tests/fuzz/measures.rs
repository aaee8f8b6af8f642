//! Any design is measured, weighed and judged as it stands, without any integration.

#![no_main]

use lentic::plan::{Options, PlanPart, partial};
use lentic::report::json;
use lentic::spec;
use libfuzzer_sys::fuzz_target;

#[path = "../support/odd.rs"]
mod odd;
#[path = "../support/random_spec.rs"]
#[expect(dead_code, reason = "sections are put in another order by the laws alone")]
mod random_spec;

fuzz_target!(|bytes: &[u8]| {
    let Ok(design) = spec::parse(&random_spec::spec(bytes)) else {
        return;
    };
    let measures =
        partial(&design, Options::default(), &[PlanPart::Measures]).expect("nothing is integrated");
    assert_eq!(odd::odd_in(&measures), Vec::<String>::new());
    let written = json::line(&json::object("lentic/measures/1", &measures));
    assert!(written.starts_with('{') && written.ends_with("}\n"));
});
