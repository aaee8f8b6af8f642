//! How a start is followed.

/// How a start is followed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// Members of the ensemble; 0 for the central numbers alone.
    pub members: u32,
    /// What the ensemble is drawn with.
    pub seed: u64,
    /// Days followed.
    pub days: u32,
}

impl Default for Options {
    fn default() -> Self {
        Self {
            members: 200,
            seed: 1,
            days: 90,
        }
    }
}
