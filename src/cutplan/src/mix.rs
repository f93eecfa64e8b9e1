//! Board-mix enumeration: which boards to buy, cheapest first, each choice decided exactly.
//!
//! A *mix* says how many of each paid board are bought; scraps are always all there. Mixes are listed by rising cost
//! from the lower bound on. A mix is refuted at once by any worth (see [`crate::bounds`]) of which its boards do
//! not hold enough; this is where the duals of the linear programme do most of their work. What remains is decided
//! by bin completion. The first mix that works is the cheapest plan, and the failures before it are the proof. When a
//! mix fails, every mix that it could replace board by board fails too, so failures are kept and such mixes are
//! skipped.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use crate::bounds::Worth;
use crate::budget::Meter;
use crate::completion::{Answer, BinType, BinWorth, complete};
use crate::greedy::Patterns;
use crate::knapsack::Fill;
use crate::model::{Form, Model};

/// Worths that bin completion budgets with, at most.
const MOST_WORTHS: usize = 4;
/// Failed mixes remembered, at most.
const MOST_FAILED: usize = 3_000;
/// Refuted questions remembered, at most.
const MOST_REFUTED: usize = 20_000;

/// What going through the mixes came to.
pub(crate) enum Mixed {
    /// A mix that works, and a cost below which every mix fails. When the two meet it is the cheapest.
    Found(Patterns, i64),
    /// No mix cheaper than the target works.
    NoneCheaper,
    /// Stopped; every mix cheaper than this cost fails.
    Undecided(i64),
}

/// A cut: the mix's boards must hold at least `needed` of this worth.
struct Cut {
    of_stock: Vec<i64>,
    of_form: Vec<Vec<i64>>,
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
    /// Bins and demands that were refuted.
    refuted: BTreeSet<(Vec<BinType>, Vec<u32>)>,
    /// For each stock, the paid stocks that can replace it whatever it holds.
    replaced_by: Vec<Vec<bool>>,
}

impl<'m> Mixer<'m> {
    pub(crate) fn new(model: &'m Model) -> Self {
        let mut paid: Vec<usize> =
            (0..model.stocks.len()).filter(|&s| model.stocks[s].cost > 0).collect();
        paid.sort_by_key(|&stock| (std::cmp::Reverse(model.stocks[stock].cost), stock));
        let free = (0..model.stocks.len())
            .filter(|&s| model.stocks[s].cost == 0)
            .map(|s| (s, model.stocks[s].limit.unwrap_or(0)))
            .collect();
        let single = |stock: usize| match model.stocks[stock].forms.as_slice() {
            [form] => match form.bins.as_slice() {
                [bin] => Some((bin.kind, bin.cap)),
                _ => None,
            },
            _ => None,
        };
        let replaced_by = (0..model.stocks.len())
            .map(|a| {
                (0..model.stocks.len())
                    .map(|b| {
                        a == b
                            || matches!((single(a), single(b)),
                                (Some((ka, ca)), Some((kb, cb))) if ka == kb && ca <= cb)
                    })
                    .collect()
            })
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
            refuted: BTreeSet::new(),
            replaced_by,
        }
    }

    /// Leaves this mix out, and every mix that holds it.
    pub(crate) fn exclude(&mut self, mix: Vec<u32>) {
        self.excluded = Some(mix);
    }

    /// Adds a worth for bin completion to budget with; the latest few are kept.
    pub(crate) fn budget_with(&mut self, worth: &Worth) {
        let mut of_bin = BTreeMap::new();
        for (stock, forms) in self.model.stocks.iter().zip(&worth.of_form) {
            if let ([form], [most]) = (stock.forms.as_slice(), forms.as_slice())
                && let [bin] = form.bins.as_slice()
            {
                of_bin.insert((bin.kind, bin.cap), *most);
            }
        }
        if self.worths.len() >= MOST_WORTHS {
            self.worths.remove(0);
        }
        self.worths.push(BinWorth { of_item: worth.of_item.clone(), of_bin });
    }

    /// Adds a worth to refute mixes with.
    pub(crate) fn cut(&mut self, worth: &Worth) {
        let held: i64 = self
            .free
            .iter()
            .map(|&(stock, count)| worth.of_stock[stock].saturating_mul(i64::from(count)))
            .fold(0, i64::saturating_add);
        if worth.needed > held {
            self.cuts.push(Cut {
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
        let mut cost = (from.max(0) + step - 1) / step * step;
        let mut undecided: Option<i64> = None;
        while cost < target {
            let mut walk = Walk {
                mix: vec![0; self.model.stocks.len()],
                held: vec![0; self.cuts.len()],
                steps_each,
                stop_at,
                found: None,
                unknown: false,
                listed: None,
            };
            let fine = self.walk(&mut walk, 0, cost, meter);
            if let Some(patterns) = walk.found {
                return Mixed::Found(patterns, undecided.unwrap_or(cost));
            }
            if !fine || walk.unknown {
                undecided = undecided.or(Some(cost));
            }
            if !fine {
                break;
            }
            cost += step;
        }
        match undecided {
            Some(cost) => Mixed::Undecided(cost),
            None => Mixed::NoneCheaper,
        }
    }

    /// All mixes of exactly that cost that no cut and no failure refutes, at most `most`, and whether these are all.
    pub(crate) fn list(
        &mut self,
        cost: i64,
        most: usize,
        steps: u64,
        meter: &mut Meter<'_>,
    ) -> (Vec<Vec<u32>>, bool) {
        let mut walk = Walk {
            mix: vec![0; self.model.stocks.len()],
            held: vec![0; self.cuts.len()],
            steps_each: 0,
            stop_at: meter.work().saturating_add(steps),
            found: None,
            unknown: false,
            listed: Some((Vec::new(), most)),
        };
        let fine = self.walk(&mut walk, 0, cost, meter);
        let listed = walk.listed.map_or_else(Vec::new, |listed| listed.0);
        (listed, fine)
    }

    /// Chooses counts from paid stock `at` on that use up `money` exactly. `false` when stopped.
    fn walk(&mut self, walk: &mut Walk, at: usize, money: i64, meter: &mut Meter<'_>) -> bool {
        if !meter.tick(20 + self.cuts.len() as u64) || meter.work() > walk.stop_at {
            return false;
        }
        if money == 0 {
            return self.leaf(walk, meter);
        }
        let Some(&stock) = self.paid.get(at) else {
            return true;
        };
        if money > self.spendable[at] {
            return true;
        }
        for (cut, &held) in self.cuts.iter().zip(&walk.held) {
            let short = i128::from(cut.needed) - i128::from(held);
            let reachable = self.paid[at..].iter().any(|&s| {
                i128::from(cut.of_stock[s]) * i128::from(money)
                    >= short * i128::from(self.model.stocks[s].cost)
            });
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
            let fine = self.walk(walk, at + 1, money - cost * i64::from(count), meter);
            if !fine || walk.found.is_some() {
                return fine;
            }
        }
        walk.mix[stock] = 0;
        walk.held = before;
        true
    }

    fn leaf(&mut self, walk: &mut Walk, meter: &mut Meter<'_>) -> bool {
        let refuted = self.cuts.iter().zip(&walk.held).any(|(cut, &held)| held < cut.needed);
        let unwanted = self
            .excluded
            .as_ref()
            .is_some_and(|mix| self.paid.iter().all(|&stock| walk.mix[stock] >= mix[stock]));
        if refuted || unwanted || self.is_dominated(&walk.mix) {
            return true;
        }
        if let Some((list, most)) = &mut walk.listed {
            if list.len() >= *most {
                return false;
            }
            list.push(walk.mix.clone());
            return true;
        }
        match self.decide(&walk.mix, walk.steps_each, meter) {
            Decision::Works(patterns) => walk.found = Some(patterns),
            Decision::Fails => {
                if self.failed.len() < MOST_FAILED {
                    self.failed.push(walk.mix.clone());
                }
            }
            Decision::Unknown => walk.unknown = true,
        }
        meter.going() && meter.work() <= walk.stop_at
    }

    /// Whether a failed mix has, for every board of this one, a board of its own that can replace it.
    fn is_dominated(&self, mix: &[u32]) -> bool {
        self.failed.iter().any(|failed| {
            let mut spare = failed.clone();
            // Longest boards first, each replaced by the shortest that can: exact, since lengths are a chain.
            let mut order: Vec<usize> = (0..mix.len()).filter(|&s| mix[s] > 0).collect();
            order.sort_by_key(|&s| self.replaced_by[s].iter().filter(|yes| **yes).count());
            order.iter().all(|&stock| {
                let mut need = mix[stock];
                let mut options: Vec<usize> =
                    (0..mix.len()).filter(|&b| self.replaced_by[stock][b]).collect();
                options.sort_by_key(|&b| {
                    std::cmp::Reverse(self.replaced_by[b].iter().filter(|yes| **yes).count())
                });
                for other in options {
                    let take = need.min(spare[other]);
                    spare[other] -= take;
                    need -= take;
                }
                need == 0
            })
        })
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
        let mut choice = FormChoice {
            boards,
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
            let hopes = choice.hopes.clone();
            for (cut, hope) in self.cuts.iter().zip(&mut choice.hopes) {
                *hope -= cut.of_stock[stock] - cut.of_form[stock][number];
            }
            let found = self.choose_forms(at, done + 1, number, choice, meter);
            choice.hopes = hopes;
            choice.chosen.pop();
            if found.is_some() || choice.unknown {
                return found;
            }
        }
        None
    }

    fn pack(&mut self, choice: &mut FormChoice, meter: &mut Meter<'_>) -> Option<Patterns> {
        let mut types: BTreeMap<(usize, i64), u32> = BTreeMap::new();
        let mut demands = self.model.demands();
        for (stock, form, count) in &choice.chosen {
            if let Some(item) = self.model.stocks[*stock].out {
                demands[item] = demands[item].saturating_sub(*count);
                continue;
            }
            for bin in &form.bins {
                *types.entry((bin.kind, bin.cap)).or_insert(0) += count;
            }
        }
        let types: Vec<BinType> =
            types.into_iter().map(|((kind, cap), count)| BinType { kind, cap, count }).collect();
        let question = (types, demands);
        if self.refuted.contains(&question) {
            return None;
        }
        match complete(self.model, &question.0, &question.1, &self.worths, choice.steps, meter) {
            Answer::Fails => {
                if self.refuted.len() < MOST_REFUTED {
                    self.refuted.insert(question);
                }
                None
            }
            Answer::Unknown => {
                choice.unknown = true;
                None
            }
            Answer::Fits(made) => {
                let mut sorted: Vec<BinType> = question.0;
                sorted.sort_by_key(|bin| (bin.cap, bin.kind));
                let mut fills: BTreeMap<(usize, i64), Vec<Fill>> = BTreeMap::new();
                for (number, fill) in made {
                    let bin = sorted[number];
                    fills.entry((bin.kind, bin.cap)).or_default().push(fill);
                }
                let mut patterns = Vec::new();
                for (stock, form, count) in &choice.chosen {
                    for _ in 0..*count {
                        if self.model.stocks[*stock].out.is_some() {
                            let fill = vec![vec![(0, 1)]];
                            let pattern = self.model.pattern(*stock, Rc::clone(form), fill);
                            patterns.push(Rc::new(pattern));
                            continue;
                        }
                        let fill = form.bins.iter().map(|bin| {
                            let list = fills.get_mut(&(bin.kind, bin.cap));
                            list.and_then(Vec::pop).unwrap_or_default()
                        });
                        let fill = fill.collect();
                        let pattern = self.model.pattern(*stock, Rc::clone(form), fill);
                        if !pattern.counts.is_empty() {
                            patterns.push(Rc::new(pattern));
                        }
                    }
                }
                Some(patterns)
            }
        }
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
    held: Vec<i64>,
    steps_each: u64,
    stop_at: u64,
    found: Option<Patterns>,
    unknown: bool,
    /// Mixes are listed, not decided: the list and its greatest length.
    listed: Option<(Vec<Vec<u32>>, usize)>,
}

struct FormChoice {
    /// Stocks and how many of each.
    boards: Vec<(usize, u32)>,
    /// For deciding one choice.
    steps: u64,
    chosen: Vec<(usize, Rc<Form>, u32)>,
    /// For each cut: what the forms chosen and the boards still open can hold at most.
    hopes: Vec<i64>,
    stop_at: u64,
    unknown: bool,
}
