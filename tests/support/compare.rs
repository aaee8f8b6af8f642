//! The one two-sided comparison, which prints what it compared.

/// How far a value may lie from the expected one.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Within {
    /// In the value's own unit.
    Absolute(f64),
    /// As a fraction of the expected value.
    Relative(f64),
}

/// Fails when `value` lies further from `expected` than allowed, on either side.
#[track_caller]
pub(crate) fn check(what: &str, value: f64, expected: f64, within: Within) {
    let limit = match within {
        Within::Absolute(limit) => limit,
        Within::Relative(fraction) => fraction * expected.abs(),
    };
    let difference = value - expected;
    assert!(
        difference.abs() <= limit,
        "{what}: computed {value}, expected {expected}, difference {difference:e}, limit {limit:e}"
    );
}
