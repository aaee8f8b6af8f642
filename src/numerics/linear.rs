//! Small dense systems of linear equations.

use super::real::Real;

/// A square matrix, given by its columns, split into triangular factors.
///
/// Plain numbers are eliminated with row exchanges. Lanes are not, because
/// each lane would want its own order; that is sound for the matrices of the
/// integrator, whose diagonal grows as the step shrinks.
#[derive(Debug, Clone)]
pub struct LuFactors<R, const N: usize> {
    /// Columns of both factors; the lower one has ones on its diagonal.
    columns: [[R; N]; N],
    /// One over each diagonal entry of the upper factor.
    inverse: [R; N],
    order: [usize; N],
    coupled: usize,
}

impl<R: Real, const N: usize> LuFactors<R, N> {
    /// Splits a matrix by Gaussian elimination.
    ///
    /// A singular matrix gives factors that are not finite, and so do the
    /// solutions made from them: the caller has to look at those.
    pub fn new(columns: [[R; N]; N]) -> Self {
        Self::of_coupled(columns, N)
    }

    /// The same for a matrix whose columns from `coupled` on hold nothing but
    /// their diagonal entry; they cost no elimination.
    pub fn of_coupled(columns: [[R; N]; N], coupled: usize) -> Self {
        let mut factors = Self {
            columns,
            inverse: [R::splat(1.0); N],
            order: std::array::from_fn(|row| row),
            coupled: coupled.min(N),
        };
        for column in 0..factors.coupled {
            if R::PIVOTS {
                factors.exchange(column);
            }
            factors.eliminate(column);
        }
        for row in 0..N {
            factors.inverse[row] = R::splat(1.0) / factors.columns[row][row];
        }
        factors
    }

    /// The vector that the matrix maps to `right`.
    pub fn solve(&self, right: &[R; N]) -> [R; N] {
        let mut solution = self.order.map(|row| right[row]);
        for (column, entries) in self.columns.iter().enumerate().take(self.coupled) {
            let known = solution[column];
            subtract(&mut solution[column + 1..], &entries[column + 1..], known);
        }
        let totals = solution.iter_mut().zip(&self.inverse).skip(self.coupled);
        for (entry, inverse) in totals {
            *entry = *entry * *inverse;
        }
        for (column, entries) in self.columns.iter().enumerate().take(self.coupled).rev() {
            let known = solution[column] * self.inverse[column];
            solution[column] = known;
            subtract(&mut solution[..column], &entries[..column], known);
        }
        solution
    }

    /// Brings the largest entry at or below the diagonal of a column up to it.
    fn exchange(&mut self, column: usize) {
        let entries = &self.columns[column];
        let larger = |best: usize, row: usize| {
            if entries[row].abs().largest() > entries[best].abs().largest() {
                row
            } else {
                best
            }
        };
        let best = (column + 1..self.coupled).fold(column, larger);
        if best != column {
            self.order.swap(column, best);
            for entries in &mut self.columns[..self.coupled] {
                entries.swap(column, best);
            }
        }
    }

    fn eliminate(&mut self, column: usize) {
        let (left, right) = self.columns.split_at_mut(column + 1);
        let pivot = &mut left[column];
        let scale = R::splat(1.0) / pivot[column];
        for entry in &mut pivot[column + 1..] {
            *entry = *entry * scale;
        }
        for entries in &mut right[..self.coupled - column - 1] {
            let above = entries[column];
            if !above.is_zero() {
                subtract(&mut entries[column + 1..], &pivot[column + 1..], above);
            }
        }
    }
}

/// Takes a multiple of one column off another.
fn subtract<R: Real>(from: &mut [R], column: &[R], factor: R) {
    for (entry, value) in from.iter_mut().zip(column) {
        *entry -= *value * factor;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::lanes::Lanes;
    use crate::numerics::real::Scalar;

    #[test]
    fn a_zero_on_the_diagonal_is_exchanged() {
        // 2y + z = 7, x + y = 3, 3x - z = 0
        let factors = LuFactors::new([[0.0, 1.0, 3.0], [2.0, 1.0, 0.0], [1.0, 0.0, -1.0]]);
        let solution = factors.solve(&[7.0, 3.0, 0.0]);
        for (value, expected) in solution.into_iter().zip([1.0, 2.0, 3.0]) {
            assert!((value - expected).abs() < 1e-14);
        }
    }

    #[test]
    fn lanes_solve_their_own_systems() {
        let diagonal = Lanes([4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0]);
        let one = Lanes::splat(1.0);
        let factors = LuFactors::new([[diagonal, one], [one, diagonal]]);
        let solution = factors.solve(&[diagonal + 2.0, diagonal * 2.0 + 1.0]);
        assert!((solution[0] - 1.0).abs().largest() < 1e-14);
        assert!((solution[1] - 2.0).abs().largest() < 1e-14);
    }

    #[test]
    fn a_total_beside_the_coupled_states_is_solved_without_elimination() {
        // 2y = 2, 4x + y = 5, 3x + 5y + 2z = 14
        let matrix = [[0.0, 4.0, 3.0], [2.0, 1.0, 5.0], [0.0, 0.0, 2.0]];
        let right = [2.0, 5.0, 14.0];
        let whole = LuFactors::new(matrix).solve(&right);
        let block = LuFactors::of_coupled(matrix, 2).solve(&right);
        for (value, expected) in block.into_iter().zip([1.0, 1.0, 3.0]) {
            assert!((value - expected).abs() < 1e-14);
        }
        for (value, expected) in block.into_iter().zip(whole) {
            assert!((value - expected).abs() < 1e-14);
        }
    }

    #[test]
    fn a_singular_matrix_gives_no_finite_solution() {
        let factors = LuFactors::new([[1.0, 2.0], [2.0, 4.0]]);
        assert!(!factors.solve(&[1.0, 1.0])[1].is_finite());
    }
}
