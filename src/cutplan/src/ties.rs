//! Among plans of equal money: the fewest boards cut, then the longest single offcut.
//!
//! The fewest boards are found by the same board-mix enumeration on a copy of the model in which every board costs
//! its price times a large number plus one, scraps one. The longest offcut is then looked for over all mixes that
//! tie: an offcut is one more part, as long as possible, and whether it still fits is one more question to bin
//! completion. Both are exact where they finish, and say so.

use std::rc::Rc;

use reckoner_core::cutting::Job;

use crate::budget::Meter;
use crate::completion::{Answer, BinType, complete};
use crate::greedy::Patterns;
use crate::mix::{Mixed, Mixer};
use crate::model::{Model, Pattern};
use crate::rows::Shape;
use crate::solve::Solver;

/// Steps for deciding one mix, and for all of a kind.
const STEPS_EACH: u64 = 2_000_000;
const STEPS_ALL: u64 = 60_000_000;
/// Mixes that tie, at most.
const MOST_TIES: usize = 40;

/// What is known about the ties.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Ties {
    pub(crate) fewest_boards: bool,
    pub(crate) longest_offcut: bool,
}

/// Improves the ties of a model whose cost is proved.
pub(crate) fn break_ties(job: &Job, solver: &mut Solver<'_>, meter: &mut Meter<'_>) -> Ties {
    let model = solver.model;
    if !solver.is_proved() || !model.all_listed() || solver.best.is_empty() {
        return Ties::default();
    }
    let total: i64 = model.items.iter().map(|item| i64::from(item.demand)).sum();
    let factor = total + 1;
    let mut tied = model.clone();
    for stock in &mut tied.stocks {
        stock.cost = stock.cost * factor + i64::from(stock.out.is_none());
    }
    let mut mixer = Mixer::new(&tied, Rc::new(Shape::new(&tied)));
    for worth in solver.worths.iter().rev().take(16) {
        mixer.cut(worth);
    }
    let money = solver.cost * factor;
    let mut ties = Ties::default();
    loop {
        let present = money + boards(model, &solver.best) as i64;
        match mixer.run(money + 1, present, STEPS_EACH, STEPS_ALL, meter) {
            Mixed::Found(patterns, _) if boards(model, &patterns) < boards(model, &solver.best) => {
                solver.best = patterns;
                continue;
            }
            Mixed::NoneCheaper => ties.fewest_boards = true,
            Mixed::Found(..) | Mixed::Undecided(_) => {}
        }
        break;
    }
    // Where a board can be divided in one way only: cut to length, with knots or without.
    let simple = model.stocks.iter().all(|stock| stock.out.is_none() && stock.forms.len() == 1);
    if simple {
        let present = money + solver.best.len() as i64;
        let list_until = meter.work().saturating_add(STEPS_ALL);
        let (mixes, complete) = mixer.list(present, present + 1, MOST_TIES, list_until, meter);
        let mut exact = complete;
        let stop_at = meter.work().saturating_add(STEPS_ALL);
        for (_, mix) in mixes {
            let question = Question::new(&tied, &mix, job);
            exact &= question.longest_offcut(&mut solver.best, stop_at, meter);
        }
        ties.longest_offcut = ties.fewest_boards && exact;
    }
    ties
}

/// How many real boards.
fn boards(model: &Model, patterns: &[Rc<Pattern>]) -> usize {
    patterns.iter().filter(|pattern| model.stocks[pattern.stock].out.is_none()).count()
}

/// The longest offcut of plans with certain boards.
struct Question<'a> {
    model: &'a Model,
    /// The boards: stock and how many.
    boards: Vec<(usize, u32)>,
    kerf: i64,
    /// For each stock the longest stretch that is too short for every part.
    idle: Vec<i64>,
}

/// A bin of one of the boards made shorter by an offcut: stock, its bin, and the room that stays.
type Short = (usize, usize, i64);

impl<'a> Question<'a> {
    fn new(model: &'a Model, mix: &[u32], job: &Job) -> Self {
        let kerf = job.saw.kerf;
        let idle = model.stocks.iter().map(|stock| {
            let segments = job.stock().nth(stock.number).map(|view| view.segments(kerf));
            let has_bin =
                |number: usize| stock.forms[0].bins.iter().any(|bin| bin.segment == number);
            let lengths = segments.into_iter().flatten().enumerate();
            lengths.filter(|(number, _)| !has_bin(*number)).map(|(_, (a, b))| b - a).max()
        });
        Self {
            model,
            boards: (0..mix.len()).filter(|&s| mix[s] > 0).map(|s| (s, mix[s])).collect(),
            kerf,
            idle: idle.map(|longest| longest.unwrap_or(0)).collect(),
        }
    }

    /// The longest piece that a plan leaves.
    fn offcut_of(&self, patterns: &[Rc<Pattern>]) -> i64 {
        let of_bin = |pattern: &Pattern, number: usize| {
            let bin = pattern.form.bins[number];
            let ways = &self.model.kinds[bin.kind].ways;
            let load: i64 = pattern.fill[number]
                .iter()
                .map(|&(way, count)| ways[way].weight * i64::from(count))
                .sum();
            bin.cap - self.kerf - load
        };
        let of_board = |pattern: &Rc<Pattern>| {
            let bins = 0..pattern.form.bins.len();
            bins.map(|number| of_bin(pattern, number)).fold(self.idle[pattern.stock], i64::max)
        };
        patterns.iter().map(of_board).max().unwrap_or(0).max(0)
    }

    /// The room and the load of all bins together, each with a kerf for each part.
    fn room_and_load(&self) -> (i64, i64) {
        let model = self.model;
        let weight = |item: usize| {
            let all = model.kinds.iter().flat_map(|kind| kind.ways.iter());
            all.filter(|way| way.item == item).map(|way| way.weight).min().unwrap_or(0)
        };
        let items = model.items.iter().enumerate();
        let load = items.map(|(at, item)| weight(at) * i64::from(item.demand)).sum();
        let rooms = self.boards.iter().map(|&(stock, count)| {
            let bins = &model.stocks[stock].forms[0].bins;
            bins.iter().map(|bin| bin.cap).sum::<i64>() * i64::from(count)
        });
        (rooms.sum(), load)
    }

    /// Looks for a plan with these boards and a longer offcut; `false` when some question stayed open.
    fn longest_offcut(&self, best: &mut Patterns, stop_at: u64, meter: &mut Meter<'_>) -> bool {
        let (room, load) = self.room_and_load();
        let mut exact = true;
        // A stretch that no part fits is an offcut as it is, if only the rest goes into the other stretches.
        let idle = self.boards.iter().map(|&(stock, _)| self.idle[stock]).max().unwrap_or(0);
        if idle > self.offcut_of(best) {
            exact &= self.ask(None, best, meter).is_some();
        }
        for &(stock, _) in &self.boards {
            for (number, bin) in self.model.stocks[stock].forms[0].bins.iter().enumerate() {
                let mut low = self.offcut_of(best);
                let mut high = (room - load - self.kerf).min(bin.cap - self.kerf);
                while low < high {
                    if meter.work() > stop_at {
                        return false;
                    }
                    let length = low + (high - low + 1) / 2;
                    let short = (stock, number, bin.cap - length - self.kerf);
                    match self.ask(Some(short), best, meter) {
                        Some(true) => low = length,
                        Some(false) => high = length - 1,
                        None => {
                            exact = false;
                            high = length - 1;
                        }
                    }
                }
            }
        }
        exact
    }

    /// Whether all parts go into these boards, one of them shortened; the plan becomes the best one then.
    fn ask(
        &self,
        short: Option<Short>,
        best: &mut Patterns,
        meter: &mut Meter<'_>,
    ) -> Option<bool> {
        let mut types: Vec<BinType> = Vec::new();
        for &(stock, count) in &self.boards {
            for (number, bin) in self.model.stocks[stock].forms[0].bins.iter().enumerate() {
                let is_short = short.is_some_and(|(s, n, _)| (s, n) == (stock, number));
                let count = count - u32::from(is_short);
                types.push(BinType { kind: bin.kind, cap: bin.cap, count });
            }
        }
        if let Some((stock, number, cap)) = short {
            let kind = self.model.stocks[stock].forms[0].bins[number].kind;
            types.push(BinType { kind, cap, count: 1 });
        }
        let demands = self.model.demands();
        match complete(self.model, &types, &demands, &[], STEPS_EACH, meter) {
            Answer::Fits(made) => {
                types.retain(|bin| bin.count > 0);
                types.sort_by_key(|bin| (bin.cap, bin.kind));
                let fills = made.into_iter().map(|(at, fill)| (types[at], fill)).collect();
                let patterns = self.put_together(short, fills);
                if patterns.len() == best.len() {
                    *best = patterns;
                }
                Some(true)
            }
            Answer::Fails => Some(false),
            Answer::Unknown => None,
        }
    }

    /// Gives each bin of each board a fill that was made for its room.
    fn put_together(
        &self,
        short: Option<Short>,
        mut fills: Vec<(BinType, Vec<(usize, u32)>)>,
    ) -> Patterns {
        let mut patterns = Vec::new();
        for &(stock, count) in &self.boards {
            let form = &self.model.stocks[stock].forms[0];
            for board in 0..count {
                // The first board of its kind is the one that leaves the offcut.
                let short = short.filter(|(at, _, _)| *at == stock && board == 0);
                let mut fill = Vec::with_capacity(form.bins.len());
                for (number, bin) in form.bins.iter().enumerate() {
                    let cap = short.filter(|short| short.1 == number).map_or(bin.cap, |s| s.2);
                    let at = fills.iter().position(|(t, _)| (t.kind, t.cap) == (bin.kind, cap));
                    fill.push(at.map_or_else(Vec::new, |at| fills.remove(at).1));
                }
                patterns.push(Rc::new(self.model.pattern(stock, Rc::clone(form), fill)));
            }
        }
        patterns.retain(|pattern| !pattern.counts.is_empty());
        patterns
    }
}
