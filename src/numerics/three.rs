//! Matrices of three rows, written out.

use super::real::Real;

/// Three rows of three.
pub type Three<R> = [[R; 3]; 3];

/// The matrix that changes nothing.
pub fn identity<R: Real>() -> Three<R> {
    std::array::from_fn(|row| {
        std::array::from_fn(|column| R::splat(if row == column { 1.0 } else { 0.0 }))
    })
}

/// Determinant.
pub fn determinant<R: Real>(&[[a, b, c], [d, e, f], [g, h, i]]: &Three<R>) -> R {
    a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}

/// The matrix with which a product is [`identity`] times the determinant.
pub fn adjugate<R: Real>(&[[a, b, c], [d, e, f], [g, h, i]]: &Three<R>) -> Three<R> {
    [
        [e * i - f * h, c * h - b * i, b * f - c * e],
        [f * g - d * i, a * i - c * g, c * d - a * f],
        [d * h - e * g, b * g - a * h, a * e - b * d],
    ]
}

/// The inverse by Cramer's rule; not finite where the matrix has none.
///
/// # Example
/// ```
/// use lentic::numerics::three::{applied, inverse};
/// let matrix = [[2.0, 0.0, 1.0], [0.0, 4.0, 0.0], [0.0, 1.0, 1.0]];
/// assert_eq!(applied(&inverse(&matrix), &[3.0, 8.0, 3.0]), [1.0, 2.0, 1.0]);
/// ```
pub fn inverse<R: Real>(matrix: &Three<R>) -> Three<R> {
    let over = R::splat(1.0) / determinant(matrix);
    adjugate(matrix).map(|row| row.map(|entry| entry * over))
}

/// A matrix times a vector.
pub fn applied<R: Real>(matrix: &Three<R>, vector: &[R; 3]) -> [R; 3] {
    let [x, y, z] = *vector;
    matrix.map(|[a, b, c]| a * x + b * y + c * z)
}

/// A matrix times another.
pub fn product<R: Real>(left: &Three<R>, right: &Three<R>) -> Three<R> {
    let [x, y, z] = right;
    left.map(|[a, b, c]| {
        std::array::from_fn(|column| a * x[column] + b * y[column] + c * z[column])
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_matrix_times_its_inverse_changes_nothing() {
        let matrix = [[2.0, -1.0, 0.5], [0.0, 3.0, 1.0], [4.0, 1.0, -2.0]];
        // 2 (-6 - 1) + (0 - 4) + 0.5 (0 - 12)
        assert!((determinant(&matrix) + 24.0).abs() < 1e-12);
        let same = product(&inverse(&matrix), &matrix);
        for (row, expected) in same.iter().zip(identity::<f64>()) {
            for (entry, expected) in row.iter().zip(expected) {
                assert!((entry - expected).abs() < 1e-12, "{same:?}");
            }
        }
    }
}
