//! Column generation: the linear programme over all patterns, and the whole-number bound it gives.
//!
//! Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9, 1961, and its part
//! II, Operations Research 11, 1963. The master is solved in floating point; its duals are rounded to whole numbers, priced
//! exactly over all patterns, and only what these whole numbers prove is used (the bound of Farley, "A note on bounding a class
//! of linear programming problems, including cutting stock problems", Operations Research 38, 1990, with whole boards and
//! limits instead of one quotient; see [`crate::bounds`]).

use std::collections::BTreeSet;
use std::rc::Rc;

use crate::bounds::{Worth, cover, cover_in_part};
use crate::budget::Meter;
use crate::model::{Model, Pattern};
use crate::price::{Prices, capacities};
use crate::rows::Shape;
use crate::simplex::Master;

/// Patterns kept, at most.
const MOST_PATTERNS: usize = 16_000;

/// A pattern's stock and counts, to know it again.
type Signature = (usize, Vec<(usize, u32)>);

/// Makes patterns and keeps them.
pub(crate) struct Columns<'m> {
    pub(crate) model: &'m Model,
    pub(crate) capacities: Vec<Vec<i64>>,
    pub(crate) shape: Rc<Shape>,
    pub(crate) pool: Vec<Rc<Pattern>>,
    known: BTreeSet<Signature>,
}

/// A solved relaxation.
pub(crate) struct Relaxed {
    /// Patterns in the solution with their levels.
    pub(crate) levels: Vec<(Rc<Pattern>, f64)>,
    /// No plan for what is left costs less.
    pub(crate) bound: i64,
    /// What proves the bound.
    pub(crate) worth: Option<Worth>,
    /// The value of the linear programme, in cost.
    pub(crate) value: f64,
    /// Worths met on the way, good for refuting choices of boards.
    pub(crate) worths: Vec<Worth>,
    /// No pattern improves any more.
    pub(crate) settled: bool,
}

/// What is left to do.
#[derive(Debug, Clone)]
pub(crate) struct Rest {
    pub(crate) left: Vec<u32>,
    pub(crate) limits: Vec<Option<u32>>,
}

impl Rest {
    pub(crate) fn of(model: &Model) -> Self {
        Self {
            left: model.demands(),
            limits: model.stocks.iter().map(|stock| stock.limit).collect(),
        }
    }

    /// Whether the pattern uses nothing that is not left.
    pub(crate) fn has(&self, pattern: &Pattern) -> bool {
        self.limits[pattern.stock] != Some(0)
            && pattern.counts.iter().all(|&(item, count)| count <= self.left[item])
    }

    /// Takes a pattern that [`Rest::has`].
    pub(crate) fn take(&mut self, pattern: &Pattern) {
        if let Some(limit) = &mut self.limits[pattern.stock] {
            *limit = limit.saturating_sub(1);
        }
        for &(item, count) in &pattern.counts {
            self.left[item] = self.left[item].saturating_sub(count);
        }
    }

    pub(crate) fn is_done(&self) -> bool {
        self.left.iter().all(|&left| left == 0)
    }

    /// The model with only what is left, for bounds.
    pub(crate) fn reduce(&self, model: &Model) -> Model {
        let mut reduced = model.clone();
        for (item, &left) in reduced.items.iter_mut().zip(&self.left) {
            item.demand = left;
        }
        for (stock, &limit) in reduced.stocks.iter_mut().zip(&self.limits) {
            stock.limit = limit;
        }
        reduced
    }
}

impl<'m> Columns<'m> {
    pub(crate) fn new(model: &'m Model) -> Self {
        Self {
            model,
            capacities: capacities(model),
            shape: Rc::new(Shape::new(model)),
            pool: Vec::new(),
            known: BTreeSet::new(),
        }
    }

    /// Keeps a pattern unless it is known.
    pub(crate) fn add(&mut self, pattern: Rc<Pattern>) -> bool {
        let fresh = self.known.insert((pattern.stock, pattern.counts.clone()));
        if fresh {
            self.pool.push(pattern);
        }
        fresh
    }

    /// Forgets the latest patterns when there are so many that memory and time suffer. The oldest, those of the first
    /// relaxation among them, are the most used.
    pub(crate) fn trim(&mut self) {
        if self.pool.len() > MOST_PATTERNS {
            for pattern in self.pool.drain(MOST_PATTERNS / 4..) {
                self.known.remove(&(pattern.stock, pattern.counts.clone()));
            }
        }
    }

    /// Solves the relaxation of what is left, stopping early once the bound reaches `enough`.
    pub(crate) fn relax(&mut self, rest: &Rest, enough: i64, meter: &mut Meter<'_>) -> Relaxed {
        let reduced = rest.reduce(self.model);
        let rows: Vec<usize> = (0..rest.left.len()).filter(|&i| rest.left[i] > 0).collect();
        let mut row_of = vec![usize::MAX; rest.left.len()];
        for (row, &item) in rows.iter().enumerate() {
            row_of[item] = row;
        }
        let total: u32 = rest.left.iter().fold(0, |sum, &left| sum.saturating_add(left));
        let limited: Vec<usize> = (0..rest.limits.len())
            .filter(|&s| rest.limits[s].is_some_and(|limit| limit < total))
            .collect();
        let mut limit_row = vec![usize::MAX; rest.limits.len()];
        for (at, &stock) in limited.iter().enumerate() {
            limit_row[stock] = rows.len() + at;
        }
        let dearest = self.model.stocks.iter().map(|stock| stock.cost).max().unwrap_or(0);
        let unit = dearest.max(1) as f64;
        let cover_rows: Vec<(f64, f64)> = rows
            .iter()
            .map(|&item| {
                let skip = self.model.items[item].skip as f64 / unit;
                (f64::from(rest.left[item]), skip)
            })
            .collect();
        let limit_rows: Vec<f64> =
            limited.iter().map(|&stock| f64::from(rest.limits[stock].unwrap_or(0))).collect();
        let mut master = Master::new(&cover_rows, &limit_rows);
        master.set_scale(1.0);
        let own = Master::own_columns(rows.len(), limited.len());
        let mut used: Vec<Rc<Pattern>> = Vec::new();
        let entries = |pattern: &Pattern| {
            let mut entries: Vec<(usize, f64)> = pattern
                .counts
                .iter()
                .filter(|(item, _)| rest.left[*item] > 0)
                .map(|&(item, count)| (row_of[item], f64::from(count.min(rest.left[item]))))
                .collect();
            if limit_row[pattern.stock] != usize::MAX {
                entries.push((limit_row[pattern.stock], 1.0));
            }
            entries
        };
        for pattern in self.pool.iter().filter(|pattern| rest.has(pattern)) {
            let cost = self.model.stocks[pattern.stock].cost as f64 / unit;
            master.add(cost, entries(pattern));
            used.push(Rc::clone(pattern));
        }
        let mut relaxed = Relaxed {
            levels: Vec::new(),
            bound: 0,
            worth: None,
            value: 0.0,
            worths: Vec::new(),
            settled: false,
        };
        let mut best_in_part = -1;
        let mut rounds = 0;
        loop {
            rounds += 1;
            let steady = master.solve(20_000);
            let going = meter.tick(std::mem::take(&mut master.steps));
            if !steady || !going {
                break;
            }
            let duals = master.duals();
            let value = master.value();
            let grain = (1_u64 << 45) as f64 / (value.abs() + 1.0);
            let mut of_item = vec![0_i64; rest.left.len()];
            for (&item, &dual) in rows.iter().zip(&duals) {
                let worth = (dual.max(0.0) * grain).floor();
                of_item[item] = if worth < 1e15 { worth as i64 } else { 1 << 49 };
            }
            let prices = Prices::new(self.model, &self.capacities, &of_item, &rest.left, meter);
            let mut improved = false;
            for (stock, &limit_row) in limit_row.iter().enumerate() {
                if rest.limits[stock] == Some(0) {
                    continue;
                }
                let cost = self.model.stocks[stock].cost as f64 / unit;
                let limit_dual = match limit_row {
                    usize::MAX => 0.0,
                    row => duals[row],
                };
                let at_least = ((cost - limit_dual + 1e-8) * grain) as i64;
                for pattern in prices.patterns_within(stock, &rest.left, at_least) {
                    // Filled again, a pattern may be worth less than its form promised.
                    if prices.worth_of(&pattern) <= at_least {
                        continue;
                    }
                    let pattern = Rc::new(pattern);
                    if self.add(Rc::clone(&pattern)) {
                        master.add(cost, entries(&pattern));
                        used.push(pattern);
                        improved = true;
                    }
                }
            }
            let worth = Worth::priced(of_item, &prices, &rest.left);
            let in_part = cover_in_part(&reduced, &worth, enough);
            if in_part > best_in_part || !improved {
                best_in_part = best_in_part.max(in_part);
                if rounds % 8 == 0 || !improved || in_part >= enough {
                    relaxed.consider(&reduced, &worth, enough);
                }
            }
            if !improved || rounds % 16 == 0 {
                relaxed.worths.push(worth);
            }
            relaxed.value = value * unit;
            // The bound cannot rise past the value of the programme, rounded up to a price.
            let ceiling = (relaxed.value - 1e-6).ceil();
            if !improved || relaxed.bound >= enough {
                relaxed.settled = !improved;
                break;
            }
            if rounds > 20 && relaxed.bound as f64 >= ceiling && rest_is_fine(&relaxed) {
                relaxed.settled = true;
                break;
            }
        }
        relaxed.levels = master
            .solution()
            .into_iter()
            .filter(|&(column, _)| column >= own)
            .map(|(column, level)| (Rc::clone(&used[column - own]), level))
            .collect();
        if self.model.lossy {
            relaxed.bound = 0;
            relaxed.worth = None;
        }
        relaxed
    }
}

/// Stopping early is fine once something is proved; the levels are nearly right then.
fn rest_is_fine(relaxed: &Relaxed) -> bool {
    relaxed.worth.is_some()
}

impl Relaxed {
    fn consider(&mut self, reduced: &Model, worth: &Worth, enough: i64) {
        let bound = cover(reduced, worth, enough);
        if bound > self.bound || self.worth.is_none() {
            self.bound = bound;
            self.worth = Some(worth.clone());
        }
    }
}
