//! Systems of linear equations whose matrix is known to hold zeros in the same places always.

use std::marker::PhantomData;

use super::real::Real;

/// Most unknowns that a pattern has.
const MOST: usize = 24;

/// Where a matrix of `M` unknowns may hold anything but zero, and in which order the first
/// `N` of them are eliminated; the rest are totals, on which nothing depends. No rows are
/// exchanged: the entries on the diagonal have to outweigh the rest.
pub trait Pattern<const M: usize, const N: usize> {
    /// By row and column.
    const KNOWN: [[bool; N]; M];
    /// Unknowns in the order of elimination.
    const ORDER: [usize; N] = sparsest_first(coupled(&Self::KNOWN));
    /// Where the factors may hold anything but zero, in that order.
    const FILLED: [[bool; N]; N] = filled(&coupled(&Self::KNOWN), &Self::ORDER);
}

/// The rows of the unknowns that are no totals.
const fn coupled<const M: usize, const N: usize>(known: &[[bool; N]; M]) -> [[bool; N]; N] {
    let mut rows = [[false; N]; N];
    let mut row = 0;
    while row < N && row < M {
        rows[row] = known[row];
        row += 1;
    }
    rows
}

/// An order in which elimination fills few zeros: next comes always the unknown for which
/// the fewest entries are changed.
///
/// # Source
/// Common practice in sparse elimination (from memory).
pub const fn sparsest_first<const N: usize>(mut entries: [[bool; N]; N]) -> [usize; N] {
    let mut order = [0; N];
    let mut left = [true; N];
    let mut done = 0;
    while done < N {
        let (mut best, mut fewest) = (N, (usize::MAX, usize::MAX));
        let mut candidate = 0;
        while candidate < N {
            if left[candidate] {
                let (mut below, mut beside) = (0, 0);
                let mut other = 0;
                while other < N {
                    if left[other] && other != candidate {
                        below += entries[other][candidate] as usize;
                        beside += entries[candidate][other] as usize;
                    }
                    other += 1;
                }
                let cost = (below * beside, below + beside);
                if cost.0 < fewest.0 || (cost.0 == fewest.0 && cost.1 < fewest.1) {
                    (best, fewest) = (candidate, cost);
                }
            }
            candidate += 1;
        }
        left[best] = false;
        order[done] = best;
        done += 1;
        entries = eliminated(entries, best, left);
    }
    order
}

/// The entries after an unknown is taken out of the rows that are left.
const fn eliminated<const N: usize>(
    mut entries: [[bool; N]; N],
    pivot: usize,
    left: [bool; N],
) -> [[bool; N]; N] {
    let mut row = 0;
    while row < N {
        if left[row] && entries[row][pivot] {
            let mut column = 0;
            while column < N {
                if left[column] && entries[pivot][column] {
                    entries[row][column] = true;
                }
                column += 1;
            }
        }
        row += 1;
    }
    entries
}

/// The entries of both factors, rows and columns in an order.
const fn filled<const N: usize>(known: &[[bool; N]; N], order: &[usize; N]) -> [[bool; N]; N] {
    let mut entries = *known;
    let mut left = [true; N];
    let mut done = 0;
    while done < N {
        left[order[done]] = false;
        entries = eliminated(entries, order[done], left);
        done += 1;
    }
    let mut ordered = [[false; N]; N];
    let mut row = 0;
    while row < N {
        let mut column = 0;
        while column < N {
            ordered[row][column] = row == column || entries[order[row]][order[column]];
            column += 1;
        }
        row += 1;
    }
    ordered
}

/// Some places of a row.
struct Line<const N: usize> {
    places: [usize; N],
    count: usize,
}

impl<const N: usize> Line<N> {
    /// Those filled from one column up to another; none of a row that is not there.
    const fn of<const M: usize>(
        filled: &[[bool; N]; M],
        row: usize,
        (from, to): (usize, usize),
    ) -> Self {
        let mut line = Self {
            places: [0; N],
            count: 0,
        };
        let mut column = from;
        while row < M && column < to && column < N {
            if filled[row][column] {
                line.places[line.count] = column;
                line.count += 1;
            }
            column += 1;
        }
        line
    }

    /// Below the diagonal.
    const fn lower(filled: &[[bool; N]; N], row: usize) -> Self {
        Self::of(filled, row, (0, row))
    }

    /// Above the diagonal.
    const fn upper(filled: &[[bool; N]; N], row: usize) -> Self {
        Self::of(filled, row, (row + 1, N))
    }
}

/// Multiplications with an addition that a pattern costs: to split, and to solve once.
pub const fn operations<P: Pattern<M, N>, const M: usize, const N: usize>() -> (usize, usize) {
    let (mut split, mut solve) = (0, M);
    let mut row = 0;
    while row < N {
        let lower = Line::lower(&P::FILLED, row);
        let mut place = 0;
        while place < lower.count {
            split += 1 + Line::upper(&P::FILLED, lower.places[place]).count;
            place += 1;
        }
        solve += lower.count + Line::upper(&P::FILLED, row).count;
        row += 1;
    }
    while row < M {
        solve += Line::of(&P::KNOWN, row, (0, N)).count;
        row += 1;
    }
    (split, solve)
}

/// Writes something out for every place of a pattern, the place known when it is compiled.
macro_rules! each_place {
    ($place:ident => $each:expr) => {
        each_place!($place => $each;
            0 1 2 3 4 5 6 7 8 9 10 11 12 13 14 15 16 17 18 19 20 21 22 23)
    };
    ($place:ident => $each:expr; $($number:literal)+) => {
        $({
            const $place: usize = $number;
            if $place < N {
                $each;
            }
        })+
    };
}

/// The same from the last place to the first.
macro_rules! each_place_back {
    ($place:ident => $each:expr) => {
        each_place!($place => $each;
            23 22 21 20 19 18 17 16 15 14 13 12 11 10 9 8 7 6 5 4 3 2 1 0)
    };
}

/// `diagonal - M` split into triangular factors.
#[derive(Debug, Clone)]
pub struct SparseFactors<P, R, const M: usize, const N: usize> {
    /// Rows of both factors in the order of elimination; the lower one has ones on its
    /// diagonal.
    rows: [[R; N]; N],
    /// One over each diagonal entry of the upper factor.
    inverse: [R; N],
    diagonal: f64,
    pattern: PhantomData<P>,
}

impl<P: Pattern<M, N>, R: Real, const M: usize, const N: usize> SparseFactors<P, R, M, N> {
    const FITS: () = assert!(N <= MOST && M - N <= N, "the pattern is too large");

    /// Splits `diagonal - M`, the matrix given by its columns.
    ///
    /// A diagonal entry that vanishes gives factors that are not finite, and so do the
    /// solutions made from them: the caller has to look at those.
    #[inline(never)]
    pub fn of_shifted(columns: &[[R; M]; N], diagonal: f64) -> Self {
        let () = Self::FITS;
        let mut factors = Self {
            rows: [[R::splat(0.0); N]; N],
            inverse: [R::splat(0.0); N],
            diagonal,
            pattern: PhantomData,
        };
        each_place!(ROW => factors.take_row::<ROW>(columns));
        factors
    }

    /// The vector that `diagonal - M` maps to `right`, the matrix given once more.
    #[inline(never)]
    pub fn solve(&self, columns: &[[R; M]; N], right: &[R; M]) -> [R; M] {
        let mut ordered = P::ORDER.map(|unknown| right[unknown]);
        each_place!(ROW => self.forward::<ROW>(&mut ordered));
        each_place_back!(ROW => self.back::<ROW>(&mut ordered));
        let mut solution = *right;
        for (place, unknown) in P::ORDER.into_iter().enumerate() {
            solution[unknown] = ordered[place];
        }
        each_place!(TOTAL => self.total::<TOTAL>(columns, &mut solution));
        solution
    }

    fn take_row<const ROW: usize>(&mut self, columns: &[[R; M]; N]) {
        let line = const { Line::of(&P::FILLED, ROW, (0, N)) };
        for place in &line.places[..line.count] {
            self.rows[ROW][*place] = -columns[P::ORDER[*place]][P::ORDER[ROW]];
        }
        self.rows[ROW][ROW] = self.rows[ROW][ROW] + self.diagonal;
        each_place!(PIVOT => if const { is_lower(&P::FILLED, ROW, PIVOT) } {
            self.eliminate::<ROW, PIVOT>();
        });
        self.inverse[ROW] = R::splat(1.0) / self.rows[ROW][ROW];
    }

    fn eliminate<const ROW: usize, const PIVOT: usize>(&mut self) {
        let right = const { Line::upper(&P::FILLED, PIVOT) };
        let factor = self.rows[ROW][PIVOT] * self.inverse[PIVOT];
        self.rows[ROW][PIVOT] = factor;
        for place in &right.places[..right.count] {
            let less = self.rows[PIVOT][*place] * factor;
            self.rows[ROW][*place] -= less;
        }
    }

    fn forward<const ROW: usize>(&self, ordered: &mut [R; N]) {
        let line = const { Line::lower(&P::FILLED, ROW) };
        for place in &line.places[..line.count] {
            let less = self.rows[ROW][*place] * ordered[*place];
            ordered[ROW] -= less;
        }
    }

    fn back<const ROW: usize>(&self, ordered: &mut [R; N]) {
        let line = const { Line::upper(&P::FILLED, ROW) };
        for place in &line.places[..line.count] {
            let less = self.rows[ROW][*place] * ordered[*place];
            ordered[ROW] -= less;
        }
        ordered[ROW] = ordered[ROW] * self.inverse[ROW];
    }

    fn total<const TOTAL: usize>(&self, columns: &[[R; M]; N], solution: &mut [R; M]) {
        if N + TOTAL < M {
            let line = const { Line::of(&P::KNOWN, N + TOTAL, (0, N)) };
            let mut sum = solution[N + TOTAL];
            for place in &line.places[..line.count] {
                sum += columns[*place][N + TOTAL] * solution[*place];
            }
            solution[N + TOTAL] = sum / self.diagonal;
        }
    }
}

/// Whether a place below the diagonal is filled.
const fn is_lower<const N: usize>(filled: &[[bool; N]; N], row: usize, column: usize) -> bool {
    row < N && column < row && filled[row][column]
}

#[cfg(test)]
mod tests {
    use super::super::linear;
    use super::*;

    /// An arrow: every unknown with itself and with the first; and a total of two.
    struct Arrow;

    impl Pattern<5, 4> for Arrow {
        const KNOWN: [[bool; 4]; 5] = [
            [true, true, true, true],
            [true, true, false, false],
            [true, false, true, false],
            [true, false, false, true],
            [true, false, true, false],
        ];
    }

    #[test]
    fn the_head_of_an_arrow_goes_late_and_nothing_fills() {
        assert_eq!(Arrow::ORDER, [1, 2, 0, 3]);
        let count = |rows: &[[bool; 4]]| rows.as_flattened().iter().filter(|place| **place).count();
        assert_eq!(count(&Arrow::FILLED), count(&Arrow::KNOWN[..4]));
        // three divisions by pivots with a subtraction each; six entries beside the diagonal,
        // five on it, two in the total
        assert_eq!(operations::<Arrow, 5, 4>(), (6, 13));
    }

    #[test]
    fn it_solves_what_the_dense_factors_solve() {
        let columns = [
            [-4.0, 1.0, -0.5, 2.0, 3.0],
            [0.5, -3.0, 0.0, 0.0, 0.0],
            [1.5, 0.0, -2.0, 0.0, -1.0],
            [-1.0, 0.0, 0.0, -5.0, 0.0],
        ];
        let right = [1.0, -2.0, 3.0, 0.5, 7.0];
        let mut dense = [[0.0; 5]; 5];
        for (place, column) in dense.iter_mut().enumerate() {
            if let Some(given) = columns.get(place) {
                *column = given.map(|entry: f64| -entry);
            }
            column[place] += 2.0;
        }
        let expected = linear::LuFactors::new(dense).solve(&right);
        let factors = SparseFactors::<Arrow, f64, 5, 4>::of_shifted(&columns, 2.0);
        for (value, expected) in factors.solve(&columns, &right).into_iter().zip(expected) {
            assert!((value - expected).abs() < 1e-14, "{value} {expected}");
        }
    }
}
