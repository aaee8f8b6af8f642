//! A result over two things that are varied.

/// Values in a grid.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Grid {
    /// What is shown, with its unit.
    pub title: String,
    /// What is varied to the right, and to what.
    pub across: (String, Vec<String>),
    /// What is varied upwards, and to what, from below.
    pub up: (String, Vec<String>),
    /// What is asked of each place, in words; empty where nothing is.
    pub asked: String,
    /// What is at each place, by rows from below; none where there is no tank.
    pub cells: Vec<Vec<Option<Square>>>,
}

/// A value in a grid.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Square {
    /// What is shown.
    pub value: f64,
    /// Whether what is asked is met.
    pub is_met: bool,
}

impl Grid {
    /// The least and the greatest value.
    pub fn span(&self) -> Option<[f64; 2]> {
        let values = || {
            self.cells
                .iter()
                .flatten()
                .flatten()
                .map(|square| square.value)
        };
        let least = values().reduce(f64::min)?;
        Some([least, values().reduce(f64::max)?])
    }
}
