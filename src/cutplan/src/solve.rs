//! One model from first plan to proof: the order in which the methods are tried, which is our own.

use std::rc::Rc;

use crate::again::{Draws, plan_again};
use crate::bounds::{Worth, cover, simple_worths};
use crate::branch::Tree;
use crate::budget::Meter;
use crate::columns::{Columns, Rest};
use crate::dive::Dive;
use crate::greedy::{Patterns, board_by_board, part_by_part};
use crate::mix::{Mixed, Mixer};
use crate::model::{Model, Pattern};
use crate::price::Prices;
use crate::rows::Shape;

/// The tree is used up to so many ways to divide the boards, over all boards.
const MOST_DIVISIONS: usize = 12_000;

/// The exact methods, in the order of their turns in each round.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Turn {
    /// What the tree closes at once needs no better plan first.
    FirstTree,
    Again,
    Tree,
    Mix,
    Dive,
}

const TURNS: [Turn; 5] = [Turn::FirstTree, Turn::Again, Turn::Tree, Turn::Mix, Turn::Dive];

/// How a bound came about.
#[derive(Debug, Clone)]
pub(crate) enum Proof {
    /// By a worth of the items.
    Worth(Vec<i64>),
    /// By a search that finished.
    Search,
}

/// A model being solved.
pub(crate) struct Solver<'m> {
    pub(crate) model: &'m Model,
    columns: Columns<'m>,
    mixer: Mixer<'m>,
    pub(crate) best: Patterns,
    pub(crate) cost: i64,
    pub(crate) bound: i64,
    pub(crate) proof: Proof,
    relaxed: bool,
    pub(crate) worths: Vec<Worth>,
    start: Vec<(Rc<Pattern>, f64)>,
    round: u32,
    /// Whose turn it is in this round, and the work done before it began.
    turn: usize,
    begun_at: u64,
    dives: u64,
    exhausted: bool,
    tree: Option<Tree<'m>>,
    draws: Draws,
}

impl<'m> Solver<'m> {
    pub(crate) fn new(model: &'m Model) -> Self {
        let columns = Columns::new(model);
        Self {
            model,
            mixer: Mixer::new(model, Rc::clone(&columns.shape)),
            columns,
            best: Vec::new(),
            cost: model.cost(&[]),
            bound: 0,
            proof: Proof::Search,
            relaxed: false,
            worths: Vec::new(),
            start: Vec::new(),
            round: 0,
            turn: 0,
            begun_at: 0,
            dives: 0,
            exhausted: false,
            tree: None,
            draws: Draws::new(),
        }
    }

    /// What its bins have to do with each other.
    pub(crate) fn shape(&self) -> Rc<Shape> {
        Rc::clone(&self.columns.shape)
    }

    /// Whether nothing is left to be done about the cost.
    pub(crate) fn is_proved(&self) -> bool {
        self.bound >= self.cost
    }

    /// Whether every part of a job that must be cut whole has a place.
    pub(crate) fn is_complete(&self) -> bool {
        let mut left = self.model.demands();
        for pattern in &self.best {
            for &(item, count) in &pattern.counts {
                left[item] = left[item].saturating_sub(count);
            }
        }
        left.iter().all(|&count| count == 0)
    }

    /// Takes a plan when it is better: cheaper, or as cheap with fewer boards.
    pub(crate) fn offer(&mut self, patterns: Patterns) -> bool {
        let cost = self.model.cost(&patterns);
        let better = (cost, patterns.len()) < (self.cost, self.best.len())
            || (self.best.is_empty() && !patterns.is_empty() && cost <= self.cost);
        if better {
            self.cost = cost;
            self.best = patterns;
        }
        better
    }

    /// Whether it is proved that no plan covers every part.
    pub(crate) fn is_impossible(&self) -> bool {
        self.is_proved() && !self.is_complete()
    }

    fn raise(&mut self, bound: i64, proof: Proof) {
        if bound > self.bound && !self.model.lossy {
            self.bound = bound;
            self.proof = proof;
        }
    }

    /// Quick plans and quick bounds.
    pub(crate) fn begin(&mut self, meter: &mut Meter<'_>) {
        let rest = Rest::of(self.model);
        let parts: u64 = rest.left.iter().map(|&left| u64::from(left)).sum();
        for stock in 0..self.model.stocks.len() {
            for best_fit in [true, false] {
                // The first plan is made whatever happens; more of them only while there is time.
                if !self.best.is_empty() && !meter.tick(parts * parts / 8) {
                    return;
                }
                let made = part_by_part(self.model, &rest, stock, best_fit);
                for pattern in &made {
                    self.columns.add(Rc::clone(pattern));
                }
                self.offer(made);
            }
        }
        // A first bound is told whatever happens.
        for (number, of_item) in simple_worths(self.model).into_iter().enumerate() {
            if number > 0 && !meter.going() {
                return;
            }
            let caps = &self.columns.capacities;
            let prices = Prices::new(self.model, caps, &of_item, &rest.left, meter);
            let worth = Worth::priced(of_item, &prices, &rest.left);
            let bound = cover(self.model, &worth, self.cost);
            self.raise(bound, Proof::Worth(worth.of_item.clone()));
            self.mixer.cut(&worth);
            self.worths.push(worth);
        }
        let before = meter.work();
        for boost in [0, 10, 40, 150] {
            if let Some(made) = board_by_board(&self.columns, rest.clone(), boost, meter) {
                for pattern in &made {
                    self.columns.add(Rc::clone(pattern));
                }
                self.offer(made);
            }
            // Where one such plan is dear, the linear programme is the better use of the time.
            if meter.work() - before > 150_000_000 {
                break;
            }
        }
    }

    /// The linear programme.
    pub(crate) fn relax(&mut self, meter: &mut Meter<'_>) {
        if self.relaxed || self.is_proved() || !meter.going() {
            return;
        }
        let rest = Rest::of(self.model);
        let relaxed = self.columns.relax(&rest, self.cost, meter);
        self.relaxed = true;
        if let Some(worth) = &relaxed.worth {
            self.raise(relaxed.bound, Proof::Worth(worth.of_item.clone()));
            self.mixer.cut(worth);
        }
        for worth in relaxed.worths.iter().rev().take(8) {
            self.mixer.cut(worth);
        }
        for worth in relaxed.worths.iter().rev().take(2) {
            self.mixer.budget_with(worth);
        }
        if let Some(worth) = &relaxed.worth {
            self.mixer.budget_with(worth);
        }
        self.worths.extend(relaxed.worths);
        self.start = relaxed.levels;
    }

    /// The next of the exact methods, each with a share of steps that grows from round to round. `false` when nothing more
    /// can be done.
    pub(crate) fn improve(&mut self, meter: &mut Meter<'_>) -> bool {
        if self.is_proved() || !meter.going() || self.exhausted {
            return false;
        }
        if self.turn == 0 {
            self.begun_at = meter.work();
        }
        let share = 20_000_000_u64 << (2 * self.round.min(12));
        match TURNS[self.turn] {
            Turn::FirstTree if self.is_divided() => self.tree_round(share / 2, meter),
            Turn::Again if self.is_divided() => self.again_round(share * 3, meter),
            Turn::Tree if self.is_divided() => self.tree_round(share * 4, meter),
            Turn::Mix if self.model.all_listed() => self.mix_round(share, meter),
            Turn::Dive => self.dive_round(share * 4, meter),
            _ => {}
        }
        self.turn = (self.turn + 1) % TURNS.len();
        if self.turn == 0 {
            self.round += 1;
            // Nothing left to try: another round would be the same again.
            self.exhausted = meter.work() == self.begun_at;
        }
        !self.is_proved()
    }

    fn dive_round(&mut self, share: u64, meter: &mut Meter<'_>) {
        let stop_at = meter.work().saturating_add(share);
        while meter.going() && meter.work() < stop_at && !self.is_proved() {
            let before = meter.work();
            let mut dive = Dive {
                stop_at,
                target: self.cost,
                bound: self.bound,
                columns: &mut self.columns,
                meter,
                found: None,
                number: self.dives,
            };
            dive.run(&self.start, if self.dives == 0 { 2 } else { 1 });
            self.dives += 1;
            if let Some(found) = dive.found {
                self.offer(found);
            } else if before == meter.work() {
                break;
            }
        }
    }

    /// Whether boards can be divided in several ways that are all listed, and not too many for the tree.
    fn is_divided(&self) -> bool {
        let forms = self.model.stocks.iter().map(|stock| stock.forms.len());
        let is_paid = self.model.stocks.iter().all(|stock| stock.out.is_none());
        let (most, all) = (forms.clone().max().unwrap_or(0), forms.sum::<usize>());
        is_paid && self.model.all_listed() && most > 1 && all <= MOST_DIVISIONS
    }

    /// Better plans from the best one, a few boards at a time.
    fn again_round(&mut self, share: u64, meter: &mut Meter<'_>) {
        let stop_at = meter.work().saturating_add(share);
        while meter.going() && meter.work() < stop_at && !self.is_proved() && self.is_complete() {
            let again = plan_again(&mut self.columns, &self.best, &mut self.draws, meter);
            let Some(found) = again else { continue };
            if self.model.cost(&found) == self.cost && found.len() <= self.best.len() {
                self.best = found;
            } else {
                self.offer(found);
            }
        }
    }

    fn tree_round(&mut self, share: u64, meter: &mut Meter<'_>) {
        let stop_at = meter.work().saturating_add(share);
        let mut tree = self.tree.take().unwrap_or_else(|| {
            Tree::new(self.model, &self.columns.shape, &self.columns.capacities)
        });
        for pattern in &self.best {
            tree.learn(pattern);
        }
        while meter.going() && meter.work() < stop_at && !self.is_proved() {
            let grown = tree.run(self.cost, stop_at - meter.work(), meter);
            self.raise(grown.bound, Proof::Search);
            let Some(found) = grown.found else { break };
            self.offer(found);
        }
        self.tree = Some(tree);
    }

    fn mix_round(&mut self, share: u64, meter: &mut Meter<'_>) {
        let each = share / 4;
        match self.mixer.run(self.bound, self.cost, each, share, meter) {
            Mixed::Found(patterns, bound) => {
                self.raise(bound, Proof::Search);
                self.offer(patterns);
            }
            Mixed::NoneCheaper => self.raise(self.cost, Proof::Search),
            Mixed::Undecided(bound) => self.raise(bound, Proof::Search),
        }
    }
}
