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
    /// The value at each place, by rows from below; none where what is asked is not met, or
    /// where there is no tank.
    pub cells: Vec<Vec<Option<f64>>>,
}

impl Grid {
    /// The least and the greatest value.
    pub fn span(&self) -> Option<[f64; 2]> {
        let values = || self.cells.iter().flatten().flatten().copied();
        let least = values().reduce(f64::min)?;
        Some([least, values().reduce(f64::max)?])
    }
}
