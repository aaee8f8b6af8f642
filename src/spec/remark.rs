//! What is remarked at a key: a misfit, and the other place that it disagrees with.

use std::ops::Range;

use crate::design::key::Misfit;

/// A misfit with the other place that it concerns.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Remark {
    /// Why the value does not fit.
    pub(super) misfit: Misfit,
    /// The other place, and what stands there.
    pub(super) related: Option<(Range<usize>, String)>,
}

impl From<Misfit> for Remark {
    fn from(misfit: Misfit) -> Self {
        Self {
            misfit,
            related: None,
        }
    }
}

impl Misfit {
    /// The misfit with its other place.
    pub(super) fn beside(self, span: Range<usize>, says: impl Into<String>) -> Remark {
        Remark {
            misfit: self,
            related: Some((span, says.into())),
        }
    }
}
