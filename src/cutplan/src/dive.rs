//! Diving: plans from the linear programme, by rounding up one pattern at a time.
//!
//! After each rounding the relaxation of what is left is solved again, with new patterns for what is left, so the patterns stay
//! good to the end. When a dive fails it starts again from its early choices with the pattern it chose there forbidden (Harvey
//! and Ginsberg, "Limited discrepancy search", IJCAI 1995; for column generation: Sadykov, Vanderbeck, Pessoa, Tahiri and
//! Uchoa, "Primal heuristics for branch and price: the assets of diving methods", INFORMS Journal on Computing 31, 2019; from
//! memory). Few boards left are finished exactly. A dive proves nothing by itself; a plan as cheap as the bound needs no more
//! proof.

use std::rc::Rc;

use crate::budget::Meter;
use crate::columns::{Columns, Rest};
use crate::greedy::{Patterns, part_by_part};
use crate::mix::{Mixed, few_boards};
use crate::model::Pattern;

/// A pattern used this much is taken at once together with the one rounded up.
const NEARLY_ONE: f64 = 0.85;
/// Early choices that may be made differently.
const DEEPEST_CHANGE: usize = 8;
/// The rest is finished exactly when the programme says that it takes about so many boards.
const FEW_BOARDS: f64 = 7.5;

/// How far later dives stray from the programme's own order, at most, as a part of each share.
const JITTER: f64 = 0.35;

/// A dive in progress.
pub(crate) struct Dive<'d, 'm, 'c> {
    pub(crate) columns: &'d mut Columns<'m>,
    pub(crate) meter: &'d mut Meter<'c>,
    /// Plans must cost less than this.
    pub(crate) target: i64,
    /// A plan at this cost is as good as can be.
    pub(crate) bound: i64,
    pub(crate) stop_at: u64,
    pub(crate) found: Option<Patterns>,
    /// Which dive this is; each but the first strays in its own way.
    pub(crate) number: u64,
}

impl Dive<'_, '_, '_> {
    /// Dives from the solved relaxation `levels`, with at most `changes` early choices made differently.
    pub(crate) fn run(&mut self, levels: &[(Rc<Pattern>, f64)], changes: usize) {
        self.columns.trim();
        let rest = Rest::of(self.columns.model);
        self.go(rest, Vec::new(), 0, levels.to_vec(), 0, changes);
    }

    /// A number from 0 to 1 made of the pattern and the dive's number: the same each time, but unlike another's.
    fn jitter(&self, pattern: &Pattern) -> f64 {
        if self.number == 0 {
            return 0.0;
        }
        let mut mixed = self.number.wrapping_mul(0x9e37_79b9_7f4a_7c15);
        for &(item, count) in &pattern.counts {
            mixed =
                (mixed ^ (item as u64 * 64 + u64::from(count))).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            mixed ^= mixed >> 29;
        }
        (mixed >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn over(&self) -> bool {
        !self.meter.going() || self.meter.work() > self.stop_at || self.target <= self.bound
    }

    fn offer(&mut self, patterns: Patterns) {
        let cost = self.columns.model.cost(&patterns);
        if cost < self.target {
            self.target = cost;
            for pattern in &patterns {
                self.columns.add(Rc::clone(pattern));
            }
            self.found = Some(patterns);
        }
    }

    fn go(
        &mut self,
        rest: Rest,
        fixed: Patterns,
        cost: i64,
        levels: Vec<(Rc<Pattern>, f64)>,
        depth: usize,
        mut changes: usize,
    ) {
        let mut forbidden: Vec<Rc<Pattern>> = Vec::new();
        loop {
            if self.over() {
                return;
            }
            let (mut rest, mut fixed, mut cost) = (rest.clone(), fixed.clone(), cost);
            let Some(chosen) = self.round(&mut rest, &mut fixed, &mut cost, &levels, &forbidden)
            else {
                return;
            };
            self.below(rest, fixed, cost, depth, changes);
            if changes == 0 || depth >= DEEPEST_CHANGE {
                return;
            }
            changes -= 1;
            forbidden.push(chosen);
        }
    }

    /// Fixes what the programme uses whole and rounds up the most used of the others, which is returned.
    fn round(
        &self,
        rest: &mut Rest,
        fixed: &mut Patterns,
        cost: &mut i64,
        levels: &[(Rc<Pattern>, f64)],
        forbidden: &[Rc<Pattern>],
    ) -> Option<Rc<Pattern>> {
        let model = self.columns.model;
        let mut fix = |pattern: &Rc<Pattern>, rest: &mut Rest| {
            let fits = rest.has(pattern);
            if fits {
                rest.take(pattern);
                fixed.push(Rc::clone(pattern));
                *cost += model.stocks[pattern.stock].cost;
            }
            fits
        };
        let mut parts: Vec<(f64, &Rc<Pattern>)> = Vec::with_capacity(levels.len());
        for (pattern, level) in levels {
            if forbidden.contains(pattern) {
                continue;
            }
            let whole = (level + 1e-6).floor();
            let mut count = whole;
            while count >= 1.0 && fix(pattern, rest) {
                count -= 1.0;
            }
            let share = level - whole;
            parts.push((share + JITTER * self.jitter(pattern) * share, pattern));
        }
        parts.sort_by(|a, b| b.0.total_cmp(&a.0));
        let mut chosen = None;
        for (share, pattern) in parts {
            if share < 1e-6 || (chosen.is_some() && share < NEARLY_ONE) {
                break;
            }
            if fix(pattern, rest) && chosen.is_none() {
                chosen = Some(Rc::clone(pattern));
            }
        }
        // Everything whole: nothing can be done differently here, but the fixed part stands.
        chosen.or_else(|| fixed.last().cloned())
    }

    fn below(&mut self, rest: Rest, fixed: Patterns, cost: i64, depth: usize, changes: usize) {
        let model = self.columns.model;
        let mut whole = fixed.clone();
        whole.extend(part_by_part(model, &rest, 0, true));
        self.meter.tick(rest.left.iter().map(|&left| u64::from(left)).sum::<u64>() * 50);
        self.offer(whole);
        if rest.is_done() || self.over() {
            return;
        }
        let enough = self.target - cost;
        let relaxed = self.columns.relax(&rest, enough, self.meter);
        if relaxed.bound >= enough || relaxed.levels.is_empty() {
            return;
        }
        let boards: f64 = relaxed.levels.iter().map(|entry| entry.1).sum();
        if boards < FEW_BOARDS && model.all_listed() {
            match few_boards(self.columns, &rest, &relaxed, enough, self.meter) {
                Mixed::Found(patterns, _) => {
                    let mut whole = fixed;
                    whole.extend(patterns);
                    self.offer(whole);
                    return;
                }
                Mixed::NoneCheaper => return,
                Mixed::Undecided(_) => {}
            }
        }
        self.go(rest, fixed, cost, relaxed.levels, depth + 1, changes);
    }
}
