//! Board-mix enumeration: which boards to buy, cheapest first, each choice decided exactly.
//!
//! A *mix* says how many of each paid board are bought; scraps are always all there. Mixes are listed by rising cost from the
//! lower bound on. A mix is refuted at once by any worth (see [`crate::bounds`]) of which its boards do not hold enough; this
//! is where the duals of the linear programme do most of their work. What remains is decided by bin completion. The first mix
//! that works is the cheapest plan, and the failures before it are the proof. When a mix fails, every mix that it could replace
//! board by board fails too, so failures are kept and such mixes are skipped. Our own method.

use std::rc::Rc;

use crate::bounds::Worth;
use crate::budget::Meter;
use crate::columns::{Columns, Relaxed, Rest};
use crate::completion::BinWorth;
use crate::greedy::Patterns;
use crate::model::{Form, Model};
use crate::rows::{Packed, Rows, Shape, deal};

/// Worths that bin completion budgets with, at most.
const MOST_WORTHS: usize = 4;
/// Mixes listed at a time, at most.
const MOST_LISTED: usize = 20_000;
/// Failed mixes remembered, at most.
const MOST_FAILED: usize = 3_000;

/// What going through the mixes came to.
pub(crate) enum Mixed {
    /// A mix that works, and a cost below which every mix fails. When the two meet it is the cheapest.
    Found(Patterns, i64),
    /// No mix cheaper than the target works.
    NoneCheaper,
    /// Stopped; every mix cheaper than this cost fails.
    Undecided(i64),
}

/// Steps for planning a rest of few boards: for each choice of boards, and for all of them.
const STEPS_EACH: u64 = 1_000_000;
const STEPS_ALL: u64 = 4_000_000;

/// Plans what is left, of a few boards, for less than `enough`; `relaxed` is its solved programme.
pub(crate) fn few_boards(
    columns: &Columns<'_>,
    rest: &Rest,
    relaxed: &Relaxed,
    enough: i64,
    meter: &mut Meter<'_>,
) -> Mixed {
    let reduced = rest.reduce(columns.model);
    let mut mixer = Mixer::new(&reduced, Rc::clone(&columns.shape));
    for worth in relaxed.worth.iter().chain(&relaxed.worths) {
        mixer.cut(worth);
        mixer.budget_with(worth);
    }
    mixer.run(relaxed.bound, enough, STEPS_EACH, STEPS_ALL, meter)
}

/// A cut: the mix's boards must hold at least `needed` of this worth.
struct Cut {
    of_stock: Vec<i64>,
    of_form: Vec<Vec<i64>>,
    /// For each place in the list of paid stocks: the most worth for the money from there on, as (worth, cost).
    best_from: Vec<(i64, i64)>,
    /// What the free boards hold at most.
    free: i64,
    needed: i64,
}

/// Goes through mixes; remembers failures over several calls.
pub(crate) struct Mixer<'m> {
    model: &'m Model,
    /// Paid stocks, dearest first.
    paid: Vec<usize>,
    /// The most that paid stocks from each on can cost.
    spendable: Vec<i64>,
    free: Vec<(usize, u32)>,
    cuts: Vec<Cut>,
    failed: Vec<Vec<u32>>,
    /// A mix not wanted, nor any with the same boards and more.
    excluded: Option<Vec<u32>>,
    worths: Vec<BinWorth>,
    rows: Rows<'m>,
}

impl<'m> Mixer<'m> {
    pub(crate) fn new(model: &'m Model, shape: Rc<Shape>) -> Self {
        let paid = model.paid();
        let free = (0..model.stocks.len())
            .filter(|&s| model.stocks[s].cost == 0)
            .map(|s| (s, model.stocks[s].limit.unwrap_or(0)))
            .collect();
        let spendable = (0..paid.len())
            .map(|at| {
                paid[at..]
                    .iter()
                    .map(|&s| match model.stocks[s].limit {
                        Some(limit) => model.stocks[s].cost.saturating_mul(i64::from(limit)),
                        None => i64::MAX,
                    })
                    .fold(0, i64::saturating_add)
            })
            .collect();
        Self {
            model,
            paid,
            spendable,
            free,
            cuts: Vec::new(),
            failed: Vec::new(),
            excluded: None,
            worths: Vec::new(),
            rows: Rows::new(model, shape),
        }
    }

    /// Leaves this mix out, and every mix that holds it.
    pub(crate) fn exclude(&mut self, mix: Vec<u32>) {
        self.excluded = Some(mix);
    }

    /// Adds a worth for bin completion to budget with; the latest few are kept.
    pub(crate) fn budget_with(&mut self, worth: &Worth) {
        if self.worths.len() >= MOST_WORTHS {
            self.worths.remove(0);
        }
        self.worths.push(BinWorth { of_item: worth.of_item.clone(), of_bin: worth.of_bin.clone() });
    }

    /// Adds a worth to refute mixes with.
    pub(crate) fn cut(&mut self, worth: &Worth) {
        let held: i64 = self
            .free
            .iter()
            .map(|&(stock, count)| worth.of_stock[stock].saturating_mul(i64::from(count)))
            .fold(0, i64::saturating_add);
        if worth.needed > held {
            let mut best_from = vec![(0, 1); self.paid.len()];
            let mut best = (0, 1);
            for (&stock, from) in self.paid.iter().zip(&mut best_from).rev() {
                let own = (worth.of_stock[stock], self.model.stocks[stock].cost);
                if i128::from(own.0) * i128::from(best.1) > i128::from(best.0) * i128::from(own.1) {
                    best = own;
                }
                *from = best;
            }
            self.cuts.push(Cut {
                best_from,
                of_stock: worth.of_stock.clone(),
                of_form: worth.of_form.clone(),
                free: held,
                needed: worth.needed - held,
            });
        }
    }

    /// Goes through all mixes that cost at least `from` and less than `target`, with about `steps_each` steps
    /// for each mix and `steps_all` for all of them.
    pub(crate) fn run(
        &mut self,
        from: i64,
        target: i64,
        steps_each: u64,
        steps_all: u64,
        meter: &mut Meter<'_>,
    ) -> Mixed {
        let stop_at = meter.work().saturating_add(steps_all);
        let step = self
            .paid
            .iter()
            .fold(0, |step, &s| crate::knapsack::gcd(step, self.model.stocks[s].cost));
        if step == 0 {
            // Scraps only: one mix, which costs nothing.
            return match self.decide(&vec![0; self.model.stocks.len()], steps_each, meter) {
                Decision::Works(patterns) => Mixed::Found(patterns, 0),
                Decision::Fails => Mixed::NoneCheaper,
                Decision::Unknown => Mixed::Undecided(0),
            };
        }
        let everything = self.spendable.first().copied().unwrap_or(0);
        let target = target.min(everything.saturating_add(1));
        let mut from = (from.max(0) + step - 1) / step * step;
        // Mixes are listed for a span of costs at a time, then decided, cheapest first.
        let mut span = step;
        let mut undecided: Option<i64> = None;
        while from < target {
            let to = from.saturating_add(span).min(target);
            let (mut mixes, all) = self.list(from, to, MOST_LISTED, stop_at, meter);
            if !all && meter.going() && meter.work() <= stop_at {
                if span > step {
                    span = (span / 2 / step * step).max(step);
                    continue;
                }
                // Too many of one cost to keep: those of this span stay open, and dearer ones are not looked at.
                undecided = undecided.or(Some(from));
            }
            // Of equal cost, those with dearer boards come first, as they were listed.
            mixes.sort_by_key(|mix| mix.0);
            for (cost, mix) in mixes {
                if !meter.going() || meter.work() > stop_at {
                    return Mixed::Undecided(undecided.unwrap_or(cost));
                }
                match self.decide(&mix, steps_each, meter) {
                    Decision::Works(patterns) => {
                        return Mixed::Found(patterns, undecided.unwrap_or(cost));
                    }
                    Decision::Fails => {
                        if self.failed.len() < MOST_FAILED {
                            self.failed.push(mix);
                        }
                    }
                    Decision::Unknown => undecided = undecided.or(Some(cost)),
                }
            }
            if !all {
                undecided = undecided.or(Some(from));
                break;
            }
            from = to;
            span = span.saturating_mul(2);
        }
        match undecided {
            Some(cost) => Mixed::Undecided(cost),
            None => Mixed::NoneCheaper,
        }
    }

    /// All mixes that cost at least `from` and less than `to` and that no cut and no failure refutes, each with its cost: at
    /// most `most`, and whether these are all.
    pub(crate) fn list(
        &mut self,
        from: i64,
        to: i64,
        most: usize,
        stop_at: u64,
        meter: &mut Meter<'_>,
    ) -> (Vec<(i64, Vec<u32>)>, bool) {
        let mut walk = Walk {
            mix: vec![0; self.model.stocks.len()],
            held: vec![0; self.cuts.len()],
            from,
            most,
            stop_at,
            listed: Vec::new(),
        };
        let all = self.walk(&mut walk, 0, 0, to - 1, meter);
        (walk.listed, all)
    }

    /// Chooses counts from paid stock `at` on, with `spent` on those before it and `money` left at most. `false` when
    /// stopped.
    fn walk(
        &self,
        walk: &mut Walk,
        at: usize,
        spent: i64,
        money: i64,
        meter: &mut Meter<'_>,
    ) -> bool {
        if !meter.tick(20 + self.cuts.len() as u64) || meter.work() > walk.stop_at {
            return false;
        }
        let cheapest = self.paid.last().map_or(i64::MAX, |&stock| self.model.stocks[stock].cost);
        let Some(&stock) = self.paid.get(at).filter(|_| money >= cheapest) else {
            return self.leaf(walk, spent);
        };
        if spent.saturating_add(self.spendable[at]) < walk.from {
            return true;
        }
        for (cut, &held) in self.cuts.iter().zip(&walk.held) {
            let short = i128::from(cut.needed) - i128::from(held);
            let (worth, cost) = cut.best_from[at];
            let reachable = i128::from(worth) * i128::from(money) >= short * i128::from(cost);
            if short > 0 && !reachable {
                return true;
            }
        }
        let cost = self.model.stocks[stock].cost;
        let afford = u32::try_from(money / cost).unwrap_or(u32::MAX);
        let most = afford.min(self.model.stocks[stock].limit.unwrap_or(u32::MAX));
        let before = walk.held.clone();
        for count in (0..=most).rev() {
            walk.mix[stock] = count;
            for (cut, (held, base)) in self.cuts.iter().zip(walk.held.iter_mut().zip(&before)) {
                *held = base + cut.of_stock[stock] * i64::from(count);
            }
            let paid = cost * i64::from(count);
            if !self.walk(walk, at + 1, spent + paid, money - paid, meter) {
                return false;
            }
        }
        walk.mix[stock] = 0;
        walk.held = before;
        true
    }

    fn leaf(&self, walk: &mut Walk, spent: i64) -> bool {
        let refuted = self.cuts.iter().zip(&walk.held).any(|(cut, &held)| held < cut.needed);
        let unwanted = self
            .excluded
            .as_ref()
            .is_some_and(|mix| self.paid.iter().all(|&stock| walk.mix[stock] >= mix[stock]));
        if spent < walk.from || refuted || unwanted || self.is_dominated(&walk.mix) {
            return true;
        }
        if walk.listed.len() >= walk.most {
            return false;
        }
        walk.listed.push((spent, walk.mix.clone()));
        true
    }

    /// Whether a failed mix has, for every board of this one, a board of its own that can replace it.
    fn is_dominated(&self, mix: &[u32]) -> bool {
        let mut spare = Vec::new();
        self.rows.shape.replacers.is_useful
            && self
                .failed
                .iter()
                .any(|failed| self.rows.shape.replacers.hold(mix, failed, &mut spare))
    }

    /// Decides one mix exactly, over all choices of forms.
    pub(crate) fn decide(&mut self, mix: &[u32], steps: u64, meter: &mut Meter<'_>) -> Decision {
        let mut boards: Vec<(usize, u32)> = self.free.clone();
        boards.extend(self.paid.iter().map(|&s| (s, mix[s])).filter(|board| board.1 > 0));
        boards.retain(|board| board.1 > 0);
        // A scrap held in more copies than there are parts needs no more than that.
        let total: u32 = self.model.items.iter().fold(0, |sum, i| sum.saturating_add(i.demand));
        for board in &mut boards {
            board.1 = board.1.min(total);
        }
        let hopes = self
            .cuts
            .iter()
            .map(|cut| {
                let held = |board: &(usize, u32)| cut.of_stock[board.0] * i64::from(board.1);
                boards.iter().map(held).fold(0, i64::saturating_add)
            })
            .collect();
        let mut demands = self.model.demands();
        let mut reach = vec![0; self.rows.shape.slots()];
        for &(stock, count) in &boards {
            if let Some(item) = self.model.stocks[stock].out {
                demands[item] = demands[item].saturating_sub(count);
            }
            for (sum, &most) in reach.iter_mut().zip(self.rows.shape.of_stock(stock)) {
                *sum += most * count;
            }
        }
        let mut choice = FormChoice {
            boards,
            demands,
            reach,
            steps,
            chosen: Vec::new(),
            hopes,
            stop_at: meter.work().saturating_add(steps),
            unknown: false,
        };
        let found = self.choose_forms(0, 0, 0, &mut choice, meter);
        match found {
            Some(patterns) => Decision::Works(patterns),
            None if choice.unknown => Decision::Unknown,
            None => Decision::Fails,
        }
    }

    fn choose_forms(
        &mut self,
        at: usize,
        done: u32,
        form: usize,
        choice: &mut FormChoice,
        meter: &mut Meter<'_>,
    ) -> Option<Patterns> {
        if meter.work() > choice.stop_at || !meter.tick(50 + self.cuts.len() as u64) {
            choice.unknown = true;
            return None;
        }
        let short = |(cut, hope): (&Cut, &i64)| *hope < cut.needed + cut.free;
        if self.cuts.iter().zip(&choice.hopes).any(short) {
            return None;
        }
        if self.rows.is_refuted(&choice.reach, &choice.demands, meter) {
            return None;
        }
        let Some(&(stock, count)) = choice.boards.get(at) else {
            return self.pack(choice, meter);
        };
        if done == count {
            return self.choose_forms(at + 1, 0, 0, choice, meter);
        }
        let forms = &self.model.stocks[stock].forms;
        if let [only] = forms.as_slice() {
            choice.chosen.push((stock, Rc::clone(only), count));
            let found = self.choose_forms(at + 1, 0, 0, choice, meter);
            choice.chosen.pop();
            return found;
        }
        for number in form..forms.len() {
            let form = Rc::clone(&self.model.stocks[stock].forms[number]);
            choice.chosen.push((stock, form, 1));
            let (hopes, reach) = (choice.hopes.clone(), choice.reach.clone());
            self.rows.shape.choose(stock, number, &mut choice.reach);
            for (cut, hope) in self.cuts.iter().zip(&mut choice.hopes) {
                *hope -= cut.of_stock[stock] - cut.of_form[stock][number];
            }
            let found = self.choose_forms(at, done + 1, number, choice, meter);
            (choice.hopes, choice.reach) = (hopes, reach);
            choice.chosen.pop();
            if found.is_some() || choice.unknown {
                return found;
            }
        }
        None
    }

    fn pack(&mut self, choice: &mut FormChoice, meter: &mut Meter<'_>) -> Option<Patterns> {
        let fills =
            match self.rows.pack(&choice.reach, &choice.demands, &self.worths, choice.steps, meter)
            {
                Packed::Fits(fills) => fills,
                Packed::Fails(_) => return None,
                Packed::Unknown => {
                    choice.unknown = true;
                    return None;
                }
            };
        Some(deal(self.model, &choice.chosen, fills))
    }
}

/// What is known of one mix.
pub(crate) enum Decision {
    Works(Patterns),
    Fails,
    Unknown,
}

struct Walk {
    mix: Vec<u32>,
    /// For each cut: what the boards chosen so far hold.
    held: Vec<i64>,
    /// Cheaper mixes are left out.
    from: i64,
    /// Most mixes listed.
    most: usize,
    stop_at: u64,
    listed: Vec<(i64, Vec<u32>)>,
}

struct FormChoice {
    /// Stocks and how many of each.
    boards: Vec<(usize, u32)>,
    /// For deciding one choice.
    steps: u64,
    chosen: Vec<(usize, Rc<Form>, u32)>,
    /// How many of each item are to be cut.
    demands: Vec<u32>,
    /// For each cut: what the forms chosen and the boards still open can hold at most.
    hopes: Vec<i64>,
    /// For each slot of the shape: how many bins so long the forms chosen and the boards still open can give.
    reach: Vec<u32>,
    stop_at: u64,
    unknown: bool,
}
