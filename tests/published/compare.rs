//! The one two-sided comparison, which prints what it compared.

/// How far a value may lie from the published one.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Within {
    /// In the value's own unit.
    Absolute(f64),
    /// As a fraction of the published value.
    Relative(f64),
}

/// Fails when `value` lies further from `published` than allowed, on either side.
#[track_caller]
pub(crate) fn check(what: &str, value: f64, published: f64, within: Within) {
    let limit = match within {
        Within::Absolute(limit) => limit,
        Within::Relative(fraction) => fraction * published.abs(),
    };
    let difference = value - published;
    assert!(
        difference.abs() <= limit,
        "{what}: computed {value}, published {published}, difference {difference:e}, limit {limit:e}"
    );
}
