//! Small dense systems of linear equations.

use super::real::Real;

/// A square matrix split into triangular factors.
///
/// Plain numbers are eliminated with row exchanges. Lanes are not, because
/// each lane would want its own order; that is sound for the matrices of the
/// integrator, whose diagonal grows as the step shrinks.
#[derive(Debug, Clone)]
pub struct Factors<R, const N: usize> {
    lower_upper: [[R; N]; N],
    order: [usize; N],
}

impl<R: Real, const N: usize> Factors<R, N> {
    /// Splits a matrix by Gaussian elimination.
    ///
    /// A singular matrix gives factors that are not finite, and so do the
    /// solutions made from them: the caller has to look at those.
    pub fn new(mut matrix: [[R; N]; N]) -> Self {
        let mut order = std::array::from_fn(|row| row);
        for column in 0..N {
            if R::PIVOTS {
                let best = pivot_row(&matrix, column);
                matrix.swap(column, best);
                order.swap(column, best);
            }
            eliminate(&mut matrix, column);
        }
        Self {
            lower_upper: matrix,
            order,
        }
    }

    /// The vector that the matrix maps to `right`.
    pub fn solve(&self, right: &[R; N]) -> [R; N] {
        let mut solution = self.order.map(|row| right[row]);
        for row in 0..N {
            for column in 0..row {
                let known = solution[column];
                solution[row] -= self.lower_upper[row][column] * known;
            }
        }
        for row in (0..N).rev() {
            for column in row + 1..N {
                let known = solution[column];
                solution[row] -= self.lower_upper[row][column] * known;
            }
            solution[row] = solution[row] / self.lower_upper[row][row];
        }
        solution
    }
}

fn pivot_row<R: Real, const N: usize>(matrix: &[[R; N]; N], column: usize) -> usize {
    let size = |row: usize| matrix[row][column].abs().largest();
    (column + 1..N).fold(
        column,
        |best, row| {
            if size(row) > size(best) { row } else { best }
        },
    )
}

fn eliminate<R: Real, const N: usize>(matrix: &mut [[R; N]; N], column: usize) {
    let pivot = matrix[column];
    for row in matrix.iter_mut().skip(column + 1) {
        let factor = row[column] / pivot[column];
        row[column] = factor;
        for (entry, above) in row.iter_mut().zip(&pivot).skip(column + 1) {
            *entry -= factor * *above;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::numerics::lanes::Lanes;

    #[test]
    fn a_zero_on_the_diagonal_is_exchanged() {
        let factors = Factors::new([[0.0, 2.0, 1.0], [1.0, 1.0, 0.0], [3.0, 0.0, -1.0]]);
        let solution = factors.solve(&[7.0, 3.0, 0.0]);
        for (value, expected) in solution.into_iter().zip([1.0, 2.0, 3.0]) {
            assert!((value - expected).abs() < 1e-14);
        }
    }

    #[test]
    fn lanes_solve_their_own_systems() {
        let diagonal = Lanes([4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0]);
        let one = Lanes::splat(1.0);
        let factors = Factors::new([[diagonal, one], [one, diagonal]]);
        let solution = factors.solve(&[diagonal + 2.0, diagonal * 2.0 + 1.0]);
        assert!((solution[0] - 1.0).abs().largest() < 1e-14);
        assert!((solution[1] - 2.0).abs().largest() < 1e-14);
    }

    #[test]
    fn a_singular_matrix_gives_no_finite_solution() {
        let factors = Factors::new([[1.0, 2.0], [2.0, 4.0]]);
        assert!(!factors.solve(&[1.0, 1.0])[1].is_finite());
    }
}
