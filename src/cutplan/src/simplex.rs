//! A small revised simplex for the restricted master problem of column generation.
//!
//! Minimise cost * x with one row per item (patterns times x cover the demand) and one row per limited board
//! (patterns times x stay within the limit). Rows are few (under about 400), columns arrive one at a
//! time, and a starting basis is known, so a dense explicit inverse with periodic refactoring is enough
//! (Dantzig and Orchard-Hays, "The product form for the inverse in the simplex method", Mathematical Tables and Other Aids to
//! Computation 8, 1954; Chvatal, "Linear Programming", 1983, chapters 7 and 13; from memory).
//!
//! **Why not a crate.** The pure-Rust LP crates that compile to wasm were weighed. The best kept of them
//! (a fork of an older simplex with branch and bound) has no public way to add a column to a solved model, so
//! every pricing round would start again or work on the dual by adding rows; its page says it may cycle or
//! lose precision. An interior-point crate gives no basis and costs about ten times the code size. This
//! file is shorter than the glue would be, and nothing it computes is ever trusted: duals are rounded to whole
//! numbers and priced again exactly before they prove anything, and plans are checked in whole numbers.

use crate::inverse::inverted;

/// Reduced costs above minus this are taken as zero, relative to the largest cost.
const TINY: f64 = 1e-9;
/// Pivots smaller than this are refused.
const LEAST_PIVOT: f64 = 1e-8;
/// Pivots between two refactorings.
const REFACTOR_EVERY: usize = 120;
/// Pivots without progress after which the leaving row is chosen by Bland's rule.
const STALLED: usize = 400;

/// The master problem.
pub(crate) struct Master {
    rows: usize,
    right: Vec<f64>,
    costs: Vec<f64>,
    columns: Vec<Vec<(usize, f64)>>,
    basis: Vec<usize>,
    in_basis: Vec<bool>,
    inverse: Vec<f64>,
    level: Vec<f64>,
    since_refactor: usize,
    scale: f64,
    /// Steps done, for the meter.
    pub(crate) steps: u64,
}

impl Master {
    /// `cover` holds demand and the cost of leaving one out for each item; `limits` one entry per limited board.
    /// The first columns are: leave one of item i out; too much of item i; unused of limit r.
    pub(crate) fn new(cover: &[(f64, f64)], limits: &[f64]) -> Self {
        let rows = cover.len() + limits.len();
        let mut master = Self {
            rows,
            right: cover.iter().map(|c| c.0).chain(limits.iter().copied()).collect(),
            costs: Vec::new(),
            columns: Vec::new(),
            basis: Vec::new(),
            in_basis: Vec::new(),
            inverse: vec![0.0; rows * rows],
            level: Vec::new(),
            since_refactor: 0,
            scale: 1.0,
            steps: 0,
        };
        for (row, &(_, skip)) in cover.iter().enumerate() {
            master.add(skip, vec![(row, 1.0)]);
        }
        for row in 0..cover.len() {
            master.add(0.0, vec![(row, -1.0)]);
        }
        for row in cover.len()..rows {
            master.add(0.0, vec![(row, 1.0)]);
        }
        master.scale = 1.0;
        for row in 0..rows {
            let column = if row < cover.len() { row } else { row + cover.len() };
            master.basis.push(column);
            master.in_basis[column] = true;
            master.inverse[row * rows + row] = 1.0;
        }
        master.level.clone_from(&master.right);
        master
    }

    /// How many columns [`Master::new`] made.
    pub(crate) fn own_columns(items: usize, limits: usize) -> usize {
        2 * items + limits
    }

    /// Adds a column and returns its number.
    pub(crate) fn add(&mut self, cost: f64, entries: Vec<(usize, f64)>) -> usize {
        self.costs.push(cost);
        self.columns.push(entries);
        self.in_basis.push(false);
        self.columns.len() - 1
    }

    /// Sets the size of costs against which tolerances are measured.
    pub(crate) fn set_scale(&mut self, scale: f64) {
        self.scale = scale.max(1e-6);
    }

    /// Dual values: items first, then limits (zero or less).
    pub(crate) fn duals(&mut self) -> Vec<f64> {
        let mut duals = vec![0.0; self.rows];
        for row in 0..self.rows {
            let cost = self.costs[self.basis[row]];
            if cost != 0.0 {
                let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
                for (dual, entry) in duals.iter_mut().zip(line) {
                    *dual += cost * entry;
                }
            }
        }
        self.steps += (self.rows * self.rows / 2) as u64;
        duals
    }

    /// The value of the present solution.
    pub(crate) fn value(&self) -> f64 {
        self.basis.iter().zip(&self.level).map(|(&column, level)| self.costs[column] * level).sum()
    }

    /// The columns in the solution with their levels.
    pub(crate) fn solution(&self) -> Vec<(usize, f64)> {
        let mut used: Vec<(usize, f64)> = self
            .basis
            .iter()
            .copied()
            .zip(self.level.iter().copied())
            .filter(|entry| entry.1 > 1e-9)
            .collect();
        used.sort_by_key(|entry| entry.0);
        used
    }

    /// Pivots until no known column improves, at most `most` times; `false` when it gave up.
    pub(crate) fn solve(&mut self, most: usize) -> bool {
        let mut idle = 0;
        for _ in 0..most {
            let duals = self.duals();
            let Some(entering) = self.entering(&duals, idle > STALLED) else {
                return true;
            };
            match self.pivot_in(entering, idle > STALLED) {
                Some(gain) if gain > 1e-12 * self.scale => idle = 0,
                Some(_) => idle += 1,
                None => return false,
            }
            if idle > 8 * STALLED {
                return false;
            }
        }
        false
    }

    fn entering(&mut self, duals: &[f64], first: bool) -> Option<usize> {
        let mut best = -TINY * self.scale * 10.0;
        let mut found = None;
        for (number, column) in self.columns.iter().enumerate() {
            if self.in_basis[number] {
                continue;
            }
            let priced: f64 = column.iter().map(|&(row, entry)| duals[row] * entry).sum();
            let reduced = self.costs[number] - priced;
            if reduced < best {
                found = Some(number);
                if first {
                    break;
                }
                best = reduced;
            }
        }
        self.steps += 6 * self.columns.len() as u64;
        found
    }

    /// Brings a column into the basis; the improvement, or `None` when no pivot is safe.
    fn pivot_in(&mut self, entering: usize, bland: bool) -> Option<f64> {
        let rows = self.rows;
        let mut direction = vec![0.0; rows];
        for &(at, entry) in &self.columns[entering] {
            for (row, cell) in direction.iter_mut().enumerate() {
                *cell += self.inverse[row * rows + at] * entry;
            }
        }
        let mut least = f64::INFINITY;
        for (row, &slope) in direction.iter().enumerate() {
            if slope > LEAST_PIVOT {
                least = least.min(self.level[row].max(0.0) / slope);
            }
        }
        if !least.is_finite() {
            return None;
        }
        // Among rows that block first, the largest pivot is the steadiest.
        let mut leaving: Option<usize> = None;
        for (row, &slope) in direction.iter().enumerate() {
            if slope > LEAST_PIVOT && self.level[row].max(0.0) / slope <= least + 1e-10 {
                let better = leaving.is_none_or(|old| {
                    if bland { self.basis[row] < self.basis[old] } else { slope > direction[old] }
                });
                if better {
                    leaving = Some(row);
                }
            }
        }
        let leaving = leaving?;
        let before = self.value();
        let pivot = direction[leaving];
        let (start, end) = (leaving * rows, (leaving + 1) * rows);
        for cell in &mut self.inverse[start..end] {
            *cell /= pivot;
        }
        self.level[leaving] = self.level[leaving].max(0.0) / pivot;
        let line: Vec<f64> = self.inverse[start..end].to_vec();
        let step = self.level[leaving];
        for (row, &factor) in direction.iter().enumerate() {
            if row == leaving || factor.abs() < 1e-14 {
                continue;
            }
            for (cell, &other) in self.inverse[row * rows..(row + 1) * rows].iter_mut().zip(&line) {
                *cell -= factor * other;
            }
            self.level[row] -= factor * step;
            if self.level[row] < 0.0 && self.level[row] > -1e-9 {
                self.level[row] = 0.0;
            }
        }
        self.steps += (rows * rows) as u64;
        self.in_basis[self.basis[leaving]] = false;
        self.in_basis[entering] = true;
        self.basis[leaving] = entering;
        self.since_refactor += 1;
        if self.since_refactor >= REFACTOR_EVERY {
            self.refactor();
        }
        Some(before - self.value())
    }

    /// Works the inverse out again from the basis.
    fn refactor(&mut self) {
        let rows = self.rows;
        self.since_refactor = 0;
        let mut matrix = vec![0.0; rows * rows];
        for (at, &column) in self.basis.iter().enumerate() {
            for &(row, entry) in &self.columns[column] {
                matrix[row * rows + at] = entry;
            }
        }
        let Some(inverse) = inverted(&mut matrix, rows) else { return };
        self.steps += (rows * rows * rows) as u64;
        for row in 0..rows {
            let line = &inverse[row * rows..(row + 1) * rows];
            let level: f64 = line.iter().zip(&self.right).map(|(a, b)| a * b).sum();
            self.level[row] = if level < 0.0 && level > -1e-7 { 0.0 } else { level };
        }
        self.inverse = inverse;
    }
}

#[cfg(test)]
mod tests {
    use super::Master;

    /// Gilmore and Gomory's kind of master, small enough to solve by hand: two items, demands 3 and 2, one
    /// board kind at cost 1 with patterns (2,0), (1,1), (0,2): value 2.5.
    #[test]
    fn covers_at_the_least_cost() {
        let mut master = Master::new(&[(3.0, 9.0), (2.0, 9.0)], &[]);
        for (a, b) in [(2.0, 0.0), (1.0, 1.0), (0.0, 2.0)] {
            master.add(1.0, vec![(0, a), (1, b)]);
        }
        assert!(master.solve(100));
        assert!((master.value() - 2.5).abs() < 1e-9);
        let duals = master.duals();
        assert!((duals[0] * 3.0 + duals[1] * 2.0 - 2.5).abs() < 1e-9);
    }

    /// With only one board allowed the rest is left out.
    #[test]
    fn keeps_limits() {
        let mut master = Master::new(&[(3.0, 9.0)], &[1.0]);
        master.add(1.0, vec![(0, 2.0), (1, 1.0)]);
        assert!(master.solve(100));
        assert!((master.value() - 10.0).abs() < 1e-9);
    }
}
