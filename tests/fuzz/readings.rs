//! Any text is read as a log of readings, and any line of one as what is varied.

#![no_main]

use lentic::spec;
use libfuzzer_sys::fuzz_target;

fuzz_target!(|text: &str| {
    let log = spec::log::parse(text, None);
    for measured in &log.measurements {
        assert!(measured.day.is_finite() && measured.value.number().is_finite());
    }
    for fault in &log.faults {
        assert!(fault.line > 0 && !fault.says.is_empty());
    }
    let first = text.lines().next().unwrap_or_default();
    match spec::axis(first) {
        Ok(axis) => assert_ne!(axis.count(), Some(0)),
        Err(violation) => assert!(!violation.help.is_empty()),
    }
});
