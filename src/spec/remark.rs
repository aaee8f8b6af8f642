//! What is remarked at a key: a violation, and the other place that it disagrees with.

use std::ops::Range;

use crate::design::Violation;

/// A violation with the other place that it concerns.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Remark {
    /// Why the value does not fit.
    pub(super) violation: Violation,
    /// The other place, and what stands there.
    pub(super) related: Option<(Range<usize>, String)>,
}

impl From<Violation> for Remark {
    fn from(violation: Violation) -> Self {
        Self {
            violation,
            related: None,
        }
    }
}

impl Violation {
    /// The violation with its other place.
    pub(super) fn beside(self, span: Range<usize>, says: impl Into<String>) -> Remark {
        Remark {
            violation: self,
            related: Some((span, says.into())),
        }
    }
}
