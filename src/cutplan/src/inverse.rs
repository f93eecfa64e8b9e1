//! The inverse of a basis, for both programmes: a square matrix in one list, row after row. Gauss-Jordan elimination with row
//! exchange (Press, Flannery, Teukolsky and Vetterling, "Numerical Recipes", 1986, section 2.1; from memory).

/// Pivots smaller than this count as none.
const LEAST: f64 = 1e-11;

/// By Gauss-Jordan elimination with row exchange; `None` for a matrix that has no inverse. The matrix is used up.
pub(crate) fn inverted(matrix: &mut [f64], rows: usize) -> Option<Vec<f64>> {
    let mut inverse = vec![0.0; rows * rows];
    for row in 0..rows {
        inverse[row * rows + row] = 1.0;
    }
    for at in 0..rows {
        let pivot_row = (at..rows)
            .max_by(|&a, &b| matrix[a * rows + at].abs().total_cmp(&matrix[b * rows + at].abs()))
            .filter(|&row| matrix[row * rows + at].abs() > LEAST)?;
        if pivot_row != at {
            for cell in 0..rows {
                matrix.swap(pivot_row * rows + cell, at * rows + cell);
                inverse.swap(pivot_row * rows + cell, at * rows + cell);
            }
        }
        let pivot = matrix[at * rows + at];
        for cell in 0..rows {
            matrix[at * rows + cell] /= pivot;
            inverse[at * rows + cell] /= pivot;
        }
        let line = matrix[at * rows..(at + 1) * rows].to_vec();
        let other = inverse[at * rows..(at + 1) * rows].to_vec();
        for row in (0..rows).filter(|&row| row != at) {
            let factor = matrix[row * rows + at];
            if factor != 0.0 {
                for cell in 0..rows {
                    matrix[row * rows + cell] -= factor * line[cell];
                    inverse[row * rows + cell] -= factor * other[cell];
                }
            }
        }
    }
    Some(inverse)
}
