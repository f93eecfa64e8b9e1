//! Among plans of equal money: the fewest boards cut, then the longest single offcut.
//!
//! The fewest boards are found by the same board-mix enumeration on a copy of the model in which every board costs
//! its price times a large number plus one, scraps one. The longest offcut is then looked for over all mixes that
//! tie: an offcut is one more part, as long as possible, and whether it still fits is one more question to bin
//! completion. Both are exact where they finish, and say so.

use std::rc::Rc;

use crate::budget::Meter;
use crate::completion::{Answer, BinType, complete};
use crate::greedy::Patterns;
use crate::mix::{Mixed, Mixer};
use crate::model::{Form, Model, Pattern};
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
pub(crate) fn break_ties(solver: &mut Solver<'_>, kerf: i64, meter: &mut Meter<'_>) -> Ties {
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
    let plain = |form: &Form| matches!(form.bins.as_slice(), [_]);
    let simple = model.stocks.iter().all(|stock| stock.out.is_none())
        && model.stocks.iter().all(|s| matches!(s.forms.as_slice(), [only] if plain(only)));
    if simple {
        let present = money + solver.best.len() as i64;
        let list_until = meter.work().saturating_add(STEPS_ALL);
        let (mixes, complete) = mixer.list(present, present + 1, MOST_TIES, list_until, meter);
        let mut exact = complete;
        let stop_at = meter.work().saturating_add(STEPS_ALL);
        for (_, mix) in mixes {
            exact &= longest_offcut(&tied, &mix, kerf, &mut solver.best, stop_at, meter);
        }
        ties.longest_offcut = ties.fewest_boards && exact;
    }
    ties
}

/// How many real boards.
fn boards(model: &Model, patterns: &[Rc<Pattern>]) -> usize {
    patterns.iter().filter(|pattern| model.stocks[pattern.stock].out.is_none()).count()
}

/// The longest piece that the plan leaves.
fn offcut_of(model: &Model, patterns: &[Rc<Pattern>], kerf: i64) -> i64 {
    patterns
        .iter()
        .map(|pattern| {
            let bin = pattern.form.bins[0];
            let ways = &model.kinds[bin.kind].ways;
            let load: i64 =
                pattern.fill[0].iter().map(|&(way, n)| ways[way].weight * i64::from(n)).sum();
            bin.cap - kerf - load
        })
        .max()
        .unwrap_or(0)
        .max(0)
}

/// Looks for a plan with these boards and a longer offcut; `false` when some question stayed open.
fn longest_offcut(
    model: &Model,
    mix: &[u32],
    kerf: i64,
    best: &mut Patterns,
    stop_at: u64,
    meter: &mut Meter<'_>,
) -> bool {
    let bin_of = |stock: usize| model.stocks[stock].forms[0].bins[0];
    let used: Vec<usize> = (0..mix.len()).filter(|&stock| mix[stock] > 0).collect();
    let weights = |item: usize| {
        let all = model.kinds.iter().flat_map(|kind| kind.ways.iter());
        all.filter(|way| way.item == item).map(|way| way.weight).min().unwrap_or(0)
    };
    let load: i64 = (0..model.items.len())
        .map(|item| weights(item) * i64::from(model.items[item].demand))
        .sum();
    let room: i64 = used.iter().map(|&s| bin_of(s).cap * i64::from(mix[s])).sum();
    let mut exact = true;
    let demands = model.demands();
    for &stock in &used {
        let bin = bin_of(stock);
        let mut low = offcut_of(model, best, kerf);
        let mut high = (room - load - kerf).min(bin.cap - kerf);
        while low < high {
            if meter.work() > stop_at {
                return false;
            }
            let length = low + (high - low + 1) / 2;
            let mut types: Vec<BinType> = Vec::new();
            for &other in &used {
                let other_bin = bin_of(other);
                types.push(BinType {
                    kind: other_bin.kind,
                    cap: other_bin.cap,
                    count: mix[other] - u32::from(other == stock),
                });
            }
            let short = bin.cap - length - kerf;
            types.push(BinType { kind: bin.kind, cap: short, count: 1 });
            match complete(model, &types, &demands, &[], STEPS_EACH, meter) {
                Answer::Fits(made) => {
                    types.retain(|bin| bin.count > 0);
                    types.sort_by_key(|bin| (bin.cap, bin.kind));
                    let mut patterns = Vec::new();
                    let mut open: Vec<(usize, u32)> =
                        used.iter().map(|&s| (s, mix[s] - u32::from(s == stock))).collect();
                    for (number, fill) in made {
                        let cap = types[number].cap;
                        let home = open
                            .iter_mut()
                            .find(|entry| entry.1 > 0 && bin_of(entry.0).cap == cap)
                            .map(|entry| {
                                entry.1 -= 1;
                                entry.0
                            })
                            .unwrap_or(stock);
                        let form = Rc::clone(&model.stocks[home].forms[0]);
                        patterns.push(Rc::new(model.pattern(home, form, vec![fill])));
                    }
                    patterns.retain(|pattern| !pattern.counts.is_empty());
                    if patterns.len() == best.len() {
                        *best = patterns;
                    }
                    low = length;
                }
                Answer::Fails => high = length - 1,
                Answer::Unknown => {
                    exact = false;
                    high = length - 1;
                }
            }
        }
    }
    exact
}
