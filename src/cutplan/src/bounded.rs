//! A small simplex for linear programmes whose variables have lower and upper bounds that change from node to node of a tree,
//! and whose columns arrive one at a time.
//!
//! Minimise cost * x where each row's activity and each column stay within bounds. A change of bounds leaves the reduced costs
//! as they are, so the dual method goes on from the parent's basis (Lemke, "The dual method of solving the linear programming
//! problem", Naval Research Logistics Quarterly 1, 1954); new columns leave the levels as they are, so the primal method goes
//! on from there. The leaving row is the one with the largest violation for the length of its row of the inverse (Forrest and
//! Goldfarb, "Steepest-edge simplex algorithms for linear programming", Mathematical Programming 57, 1992; lengths worked out
//! anew each time; from memory). The inverse is dense and explicit: rows are under about 200. Like [`crate::simplex`], which
//! serves jobs without a tree, nothing it computes is trusted.

use crate::inverse::inverted;

/// Violations and reduced costs smaller than this are taken as zero.
const TINY: f64 = 1e-7;
/// Pivots smaller than this are refused.
const LEAST_PIVOT: f64 = 1e-7;
/// Pivots between two refactorings.
const REFACTOR_EVERY: usize = 100;
/// Pivots of one solve, at most.
const MOST_PIVOTS: usize = 4_000;

/// Where a variable stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Place {
    Basic,
    Lower,
    Upper,
}

/// What solving came to.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Solved {
    /// No known column improves.
    Optimal,
    /// No levels within the bounds: what to add to the rows' duals, as often as wanted, to see it, and how much the value
    /// rises each time.
    Infeasible(Vec<f64>, f64),
    /// Given up.
    Lost,
}

/// A basis to come back to.
#[derive(Debug, Clone)]
pub(crate) struct Basis {
    basis: Vec<usize>,
    upper: Vec<usize>,
}

/// The programme. Its variables are the activities of the first rows, then columns and the activities of later rows as they
/// were added.
pub(crate) struct Bounded {
    rows: usize,
    /// The variable of each row's activity.
    activity: Vec<usize>,
    columns: Vec<Vec<(usize, f64)>>,
    costs: Vec<f64>,
    low: Vec<f64>,
    high: Vec<f64>,
    place: Vec<Place>,
    basis: Vec<usize>,
    inverse: Vec<f64>,
    level: Vec<f64>,
    reduced: Vec<f64>,
    since_refactor: usize,
    /// Steps done, for the meter.
    pub(crate) steps: u64,
}

impl Bounded {
    /// One row for each pair of bounds of its activity.
    pub(crate) fn new(bounds: &[(f64, f64)]) -> Self {
        let rows = bounds.len();
        let mut inverse = vec![0.0; rows * rows];
        for row in 0..rows {
            inverse[row * rows + row] = -1.0;
        }
        Self {
            rows,
            activity: (0..rows).collect(),
            columns: (0..rows).map(|row| vec![(row, -1.0)]).collect(),
            costs: vec![0.0; rows],
            low: bounds.iter().map(|bound| bound.0).collect(),
            high: bounds.iter().map(|bound| bound.1).collect(),
            place: vec![Place::Basic; rows],
            basis: (0..rows).collect(),
            inverse,
            level: vec![0.0; rows],
            reduced: vec![0.0; rows],
            since_refactor: 0,
            steps: 0,
        }
    }

    /// Adds a column of level zero or more; its variable.
    pub(crate) fn add(&mut self, cost: f64, entries: Vec<(usize, f64)>) -> usize {
        self.reduced.push(cost);
        self.costs.push(cost);
        self.columns.push(entries);
        self.low.push(0.0);
        self.high.push(f64::INFINITY);
        self.place.push(Place::Lower);
        self.columns.len() - 1
    }

    /// Adds a row over some columns; the variable of its activity, which has no bounds yet.
    pub(crate) fn add_row(&mut self, entries: &[(usize, f64)]) -> usize {
        let (old, rows) = (self.rows, self.rows + 1);
        let levels = self.levels();
        let mut inverse = vec![0.0; rows * rows];
        for row in 0..old {
            let line = &self.inverse[row * old..(row + 1) * old];
            inverse[row * rows..row * rows + old].copy_from_slice(line);
        }
        let mut level = 0.0;
        let (above, last) = inverse.split_at_mut(old * rows);
        for &(variable, entry) in entries {
            self.columns[variable].push((old, entry));
            level += entry * levels[variable];
            if let Some(row) = self.basis.iter().position(|&basic| basic == variable) {
                let line = &above[row * rows..(row + 1) * rows];
                for (cell, &other) in last.iter_mut().zip(line) {
                    *cell += entry * other;
                }
            }
        }
        last[old] = -1.0;
        let variable = self.columns.len();
        self.rows = rows;
        self.inverse = inverse;
        self.columns.push(vec![(old, -1.0)]);
        self.costs.push(0.0);
        self.low.push(f64::NEG_INFINITY);
        self.high.push(f64::INFINITY);
        self.place.push(Place::Basic);
        self.reduced.push(0.0);
        self.basis.push(variable);
        self.level.push(level);
        self.activity.push(variable);
        variable
    }

    /// The row of which this variable is the activity.
    pub(crate) fn row_of_activity(&self, variable: usize) -> usize {
        self.columns[variable][0].0
    }

    pub(crate) fn bounds(&self, variable: usize) -> (f64, f64) {
        (self.low[variable], self.high[variable])
    }

    /// Sets bounds; the levels are put right by the next [`Bounded::solve`].
    pub(crate) fn set_bounds(&mut self, variable: usize, low: f64, high: f64) {
        self.low[variable] = low;
        self.high[variable] = high;
    }

    /// The present basis.
    pub(crate) fn basis(&self) -> Basis {
        let upper = (0..self.place.len()).filter(|&at| self.place[at] == Place::Upper);
        Basis { basis: self.basis.clone(), upper: upper.collect() }
    }

    /// Goes back to a basis.
    pub(crate) fn restore(&mut self, basis: &Basis) {
        self.place.fill(Place::Lower);
        for &variable in &basis.upper {
            if self.high[variable].is_finite() {
                self.place[variable] = Place::Upper;
            }
        }
        for &variable in &basis.basis {
            self.place[variable] = Place::Basic;
        }
        self.basis.clone_from(&basis.basis);
        // Rows that were added later.
        for &variable in &self.activity[self.basis.len()..] {
            self.place[variable] = Place::Basic;
            self.basis.push(variable);
        }
        self.refactor();
    }

    /// What a unit of each row's activity is worth.
    pub(crate) fn duals(&self) -> Vec<f64> {
        let mut duals = vec![0.0; self.rows];
        for (row, &variable) in self.basis.iter().enumerate() {
            let cost = self.costs[variable];
            if cost != 0.0 {
                let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
                for (dual, entry) in duals.iter_mut().zip(line) {
                    *dual += cost * entry;
                }
            }
        }
        duals
    }

    /// The level of every variable.
    pub(crate) fn levels(&self) -> Vec<f64> {
        let mut levels: Vec<f64> = (0..self.place.len()).map(|at| self.resting(at)).collect();
        for (&variable, &level) in self.basis.iter().zip(&self.level) {
            levels[variable] = level;
        }
        levels
    }

    pub(crate) fn value(&self) -> f64 {
        self.levels().iter().zip(&self.costs).map(|(level, cost)| level * cost).sum()
    }

    fn resting(&self, variable: usize) -> f64 {
        match self.place[variable] {
            Place::Basic => 0.0,
            Place::Upper => self.high[variable],
            Place::Lower if self.low[variable].is_finite() => self.low[variable],
            Place::Lower => 0.0,
        }
    }

    /// Works the levels of the basis out from what rests at its bounds.
    fn set_levels(&mut self) {
        let mut right = vec![0.0; self.rows];
        for variable in 0..self.place.len() {
            let resting = self.resting(variable);
            if self.place[variable] != Place::Basic && resting != 0.0 {
                for &(row, entry) in &self.columns[variable] {
                    right[row] -= entry * resting;
                }
            }
        }
        for row in 0..self.rows {
            let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
            self.level[row] = line.iter().zip(&right).map(|(a, b)| a * b).sum();
        }
        self.steps += (self.rows * self.rows) as u64;
    }

    fn set_reduced(&mut self) {
        let duals = self.duals();
        for variable in 0..self.place.len() {
            let entries = &self.columns[variable];
            let priced: f64 = entries.iter().map(|&(row, entry)| duals[row] * entry).sum();
            self.reduced[variable] = match self.place[variable] {
                Place::Basic => 0.0,
                Place::Lower | Place::Upper => self.costs[variable] - priced,
            };
        }
        self.steps += (self.rows * self.rows + 8 * self.place.len()) as u64;
    }

    /// Dual pivots until all levels are within bounds, then primal ones until nothing improves.
    pub(crate) fn solve(&mut self) -> Solved {
        self.set_reduced();
        // What bounds of both sides allow is put on the side that its reduced cost wants.
        for variable in 0..self.place.len() {
            let wants_low = self.reduced[variable] >= 0.0;
            if self.place[variable] == Place::Upper && wants_low && self.low[variable].is_finite() {
                self.place[variable] = Place::Lower;
            } else if self.place[variable] == Place::Lower
                && !wants_low
                && self.high[variable].is_finite()
            {
                self.place[variable] = Place::Upper;
            }
        }
        self.set_levels();
        for _ in 0..MOST_PIVOTS {
            let Some(row) = self.leaving() else {
                return self.primal();
            };
            match self.dual_pivot(row) {
                Ok(true) => {}
                Ok(false) => return Solved::Lost,
                Err(ray) => return Solved::Infeasible(ray, self.violation(row)),
            }
        }
        Solved::Lost
    }

    /// What the value rises to, at least, under other bounds of one variable, by a few dual pivots; then everything is as
    /// before. Infinite when there are no levels within the bounds.
    pub(crate) fn probe(&mut self, variable: usize, low: f64, high: f64, most: usize) -> f64 {
        let before = (
            (self.low[variable], self.high[variable]),
            self.place.clone(),
            self.basis.clone(),
            self.inverse.clone(),
            self.level.clone(),
            self.reduced.clone(),
            self.since_refactor,
        );
        (self.low[variable], self.high[variable]) = (low, high);
        if self.place[variable] == Place::Upper && self.reduced[variable] >= 0.0 {
            self.place[variable] = Place::Lower;
        }
        self.set_levels();
        let mut is_lost = false;
        for _ in 0..most {
            let Some(row) = self.leaving() else {
                break;
            };
            match self.dual_pivot(row) {
                Ok(true) => {}
                Ok(false) => break,
                Err(_) => {
                    is_lost = true;
                    break;
                }
            }
        }
        let value = if is_lost { f64::INFINITY } else { self.value() };
        let bounds;
        (
            bounds,
            self.place,
            self.basis,
            self.inverse,
            self.level,
            self.reduced,
            self.since_refactor,
        ) = before;
        (self.low[variable], self.high[variable]) = bounds;
        value
    }

    /// Primal pivots alone: after columns were added.
    pub(crate) fn primal(&mut self) -> Solved {
        self.set_reduced();
        for _ in 0..MOST_PIVOTS {
            let Some(entering) = self.entering() else {
                return Solved::Optimal;
            };
            if !self.primal_pivot(entering) {
                return Solved::Lost;
            }
        }
        Solved::Lost
    }

    /// By how much the level of the row's variable is beyond its bounds; negative within them.
    fn violation(&self, row: usize) -> f64 {
        let (variable, level) = (self.basis[row], self.level[row]);
        (self.low[variable] - level).max(level - self.high[variable])
    }

    fn leaving(&mut self) -> Option<usize> {
        let mut found = None;
        let mut worst = 0.0;
        for row in 0..self.rows {
            let over = self.violation(row);
            if over > TINY {
                let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
                let length: f64 = line.iter().map(|entry| entry * entry).sum();
                let weight = over * over / length.max(1e-12);
                if weight > worst {
                    worst = weight;
                    found = Some(row);
                }
            }
        }
        found
    }

    /// The row of the inverse times every column at rest.
    fn row_of(&mut self, row: usize) -> Vec<f64> {
        let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
        let cell = |variable: usize| -> f64 {
            match self.place[variable] {
                Place::Basic => 0.0,
                Place::Lower | Place::Upper => {
                    self.columns[variable].iter().map(|&(at, entry)| line[at] * entry).sum()
                }
            }
        };
        let cells = (0..self.place.len()).map(cell).collect();
        self.steps += 8 * self.place.len() as u64;
        cells
    }

    /// `Ok(false)` when no pivot is safe; a ray when nothing can bring the row's level within its bounds.
    fn dual_pivot(&mut self, row: usize) -> Result<bool, Vec<f64>> {
        let leaving = self.basis[row];
        let is_low = self.level[row] < self.low[leaving];
        let goal = if is_low { self.low[leaving] } else { self.high[leaving] };
        let cells = self.row_of(row);
        // Which side each may move to bring the level nearer, and at which rise of the dual it would turn.
        let side = if is_low { -1.0 } else { 1.0 };
        let blocks = |variable: usize| -> Option<(f64, f64)> {
            let cell = cells[variable] * side;
            let fixed = self.low[variable] >= self.high[variable];
            let moves = match self.place[variable] {
                Place::Basic => false,
                Place::Lower => cell > LEAST_PIVOT,
                Place::Upper => cell < -LEAST_PIVOT,
            };
            (moves && !fixed).then(|| (self.reduced[variable].abs(), cell.abs()))
        };
        let mut least = f64::INFINITY;
        for variable in 0..self.place.len() {
            if let Some((reduced, cell)) = blocks(variable) {
                least = least.min((reduced + 1e-9) / cell);
            }
        }
        if !least.is_finite() {
            let line = &self.inverse[row * self.rows..(row + 1) * self.rows];
            return Err(line.iter().map(|entry| entry * side).collect());
        }
        let mut entering = None;
        let mut largest = 0.0;
        for variable in 0..self.place.len() {
            if let Some((reduced, cell)) = blocks(variable)
                && reduced / cell <= least
                && cell > largest
            {
                largest = cell;
                entering = Some(variable);
            }
        }
        let Some(entering) = entering else {
            return Ok(false);
        };
        let direction = self.direction(entering);
        if direction[row].abs() < LEAST_PIVOT {
            return Ok(false);
        }
        let step = (self.level[row] - goal) / direction[row];
        let rests = if is_low { Place::Lower } else { Place::Upper };
        self.exchange(row, entering, &direction, step, rests, &cells);
        Ok(true)
    }

    fn entering(&mut self) -> Option<usize> {
        let mut worst = TINY;
        let mut found = None;
        for variable in 0..self.place.len() {
            let gain = match self.place[variable] {
                Place::Basic => continue,
                Place::Lower if self.low[variable].is_infinite() => self.reduced[variable].abs(),
                Place::Lower => -self.reduced[variable],
                Place::Upper => self.reduced[variable],
            };
            if gain > worst && self.low[variable] < self.high[variable] {
                worst = gain;
                found = Some(variable);
            }
        }
        found
    }

    fn primal_pivot(&mut self, entering: usize) -> bool {
        let direction = self.direction(entering);
        let rises = match self.place[entering] {
            Place::Upper => false,
            Place::Basic | Place::Lower => self.reduced[entering] < 0.0,
        };
        let sign = if rises { 1.0 } else { -1.0 };
        let room = |row: usize| -> Option<(f64, f64)> {
            let slope = direction[row] * sign;
            let variable = self.basis[row];
            let room = if slope > LEAST_PIVOT {
                self.level[row] - self.low[variable]
            } else if slope < -LEAST_PIVOT {
                self.high[variable] - self.level[row]
            } else {
                return None;
            };
            room.is_finite().then(|| (room.max(0.0), slope.abs()))
        };
        let mut least = f64::INFINITY;
        for row in 0..self.rows {
            if let Some((room, slope)) = room(row) {
                least = least.min((room + 1e-9) / slope);
            }
        }
        let across = self.high[entering] - self.low[entering];
        if across <= least {
            // From one bound to the other, without a change of the basis.
            for (level, slope) in self.level.iter_mut().zip(&direction) {
                *level -= sign * across * slope;
            }
            self.place[entering] = if rises { Place::Upper } else { Place::Lower };
            return across.is_finite();
        }
        let mut leaving = None;
        let mut largest = 0.0;
        for row in 0..self.rows {
            if let Some((room, slope)) = room(row)
                && room / slope <= least
                && slope > largest
            {
                largest = slope;
                leaving = Some((row, room / slope));
            }
        }
        let Some((row, step)) = leaving else {
            return false;
        };
        let rests = if direction[row] * sign > 0.0 { Place::Lower } else { Place::Upper };
        let cells = self.row_of(row);
        self.exchange(row, entering, &direction, sign * step, rests, &cells);
        true
    }

    /// The column in terms of the basis.
    fn direction(&mut self, variable: usize) -> Vec<f64> {
        let mut direction = vec![0.0; self.rows];
        for &(at, entry) in &self.columns[variable] {
            for (row, cell) in direction.iter_mut().enumerate() {
                *cell += self.inverse[row * self.rows + at] * entry;
            }
        }
        self.steps += (self.rows * self.columns[variable].len()) as u64;
        direction
    }

    /// `entering` moves by `step` and takes the place of the row's variable, which rests at `rests`.
    fn exchange(
        &mut self,
        row: usize,
        entering: usize,
        direction: &[f64],
        step: f64,
        rests: Place,
        cells: &[f64],
    ) {
        let rows = self.rows;
        let (leaving, pivot) = (self.basis[row], direction[row]);
        let from = self.resting(entering);
        for (level, slope) in self.level.iter_mut().zip(direction) {
            *level -= step * slope;
        }
        let turn = self.reduced[entering] / pivot;
        for (reduced, cell) in self.reduced.iter_mut().zip(cells) {
            *reduced -= turn * cell;
        }
        self.reduced[leaving] = -turn;
        self.reduced[entering] = 0.0;
        self.place[leaving] = rests;
        self.place[entering] = Place::Basic;
        self.basis[row] = entering;
        self.level[row] = from + step;
        let (start, end) = (row * rows, (row + 1) * rows);
        for cell in &mut self.inverse[start..end] {
            *cell /= pivot;
        }
        let line: Vec<f64> = self.inverse[start..end].to_vec();
        for (at, &factor) in direction.iter().enumerate() {
            if at != row && factor.abs() > 1e-14 {
                let cells = &mut self.inverse[at * rows..(at + 1) * rows];
                for (cell, &other) in cells.iter_mut().zip(&line) {
                    *cell -= factor * other;
                }
            }
        }
        self.steps += (rows * rows / 2) as u64;
        self.since_refactor += 1;
        if self.since_refactor >= REFACTOR_EVERY {
            self.refactor();
        }
    }

    /// Works the inverse out again from the basis, by Gauss-Jordan elimination with row exchange; then levels and reduced
    /// costs.
    fn refactor(&mut self) {
        let rows = self.rows;
        self.since_refactor = 0;
        let mut matrix = vec![0.0; rows * rows];
        for (at, &variable) in self.basis.iter().enumerate() {
            for &(row, entry) in &self.columns[variable] {
                matrix[row * rows + at] = entry;
            }
        }
        if let Some(inverse) = inverted(&mut matrix, rows) {
            self.inverse = inverse;
        }
        self.steps += (rows * rows * rows / 4) as u64;
        self.set_levels();
        self.set_reduced();
    }
}
