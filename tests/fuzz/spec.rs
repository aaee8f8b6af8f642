//! Any text is read as a spec, or refused with faults that can be drawn.

#![no_main]

use lentic::spec;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    if let Err(faults) = spec::parse(text) {
        assert!(!faults.0.is_empty());
        for fault in &faults.0 {
            assert!(fault.span.start <= fault.span.end && fault.span.end <= text.len());
        }
        assert!(!spec::draw(&faults, text, "tank.toml", true).is_empty());
    }
});
