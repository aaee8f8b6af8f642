//! Any text is read as a spec, or refused with faults that can be drawn; what is a design
//! has finite measures.

#![no_main]

use lentic::plan::{Options, PlanPart, partial};
use lentic::spec;
use libfuzzer_sys::fuzz_target;

#[path = "../support/odd.rs"]
mod odd;

fuzz_target!(|text: &str| match spec::parse(text) {
    Ok(design) => {
        let measures =
            partial(&design, Options::default(), &[PlanPart::Measures]).expect("nothing is integrated");
        assert_eq!(odd::odd_in(&measures), Vec::<String>::new());
    }
    Err(faults) => {
        assert!(!faults.0.is_empty());
        for fault in &faults.0 {
            assert!(fault.span.start <= fault.span.end && fault.span.end <= text.len());
        }
        assert!(!spec::draw(&faults, text, "tank.toml", true).is_empty());
    }
});
