//! Among plans of equal money: the order that the core states at [`Ties`], from the first of its ranks to the last.
//!
//! The fewest boards are found by the same board-mix enumeration on a copy of the model in which every board costs its price
//! times a large number plus one, scraps one. For fewer settings the same is asked of models in which less may be set
//! ([`crate::settings`]). Fewer cuts are looked for from the best plan and from other choices of boards that tie
//! ([`crate::cuts`]). Then the longest offcut: an offcut is one more part, as long as possible, and whether it still fits is
//! one more question to bin completion; over all choices of boards that tie where each can be divided in one way only, as those
//! that are cut to length, else for the strips of the plan. What is exact where it finishes says so. Our own method.

use std::collections::BTreeSet;
use std::rc::Rc;

use reckoner_core::cutting::{Job, Ties};

use crate::budget::Meter;
use crate::completion::{Answer, BinType, complete};
use crate::cuts::{Judge, descend, least, used};
use crate::greedy::Patterns;
use crate::mix::{Decision, Mixed, Mixer};
use crate::model::{Form, Model, Pattern};
use crate::rows::Shape;
use crate::settings::{Restricted, Setting, choices, possible_and_forced};
use crate::solve::Solver;

/// Steps for deciding one mix, and for all of a kind.
const STEPS_EACH: u64 = 2_000_000;
const STEPS_ALL: u64 = 60_000_000;
/// Mixes that tie, at most.
const MOST_TIES: usize = 40;
/// Choices of settings that are tried, at most, and the steps for each and for all.
const MOST_CHOICES: usize = 64;
const STEPS_CHOICE: u64 = 10_000_000;
/// Mixes that tie from which fewer cuts are looked for, at most.
const MOST_STARTS: usize = 6;

/// Improves the ties of plans whose cost is proved, and says what is proved of them.
pub(crate) fn break_ties(job: &Job, solvers: &mut [Solver<'_>], meter: &mut Meter<'_>) -> Ties {
    let mut ties = Ties {
        fewest_boards: true,
        fewest_settings: true,
        fewest_cuts: true,
        longest_offcut: true,
    };
    let mut tied = Vec::new();
    for solver in solvers.iter_mut() {
        if !solver.is_proved() || !solver.model.all_listed() || solver.best.is_empty() {
            ties = Ties::default();
            continue;
        }
        let mut own = Tied::new(solver);
        ties.fewest_boards &= own.fewest_boards(solver, meter);
        let is_rack = solver.model.stocks.iter().any(|stock| stock.out.is_some());
        if is_rack {
            ties = Ties::default();
        } else {
            tied.push((own, solver));
        }
    }
    let settings: Vec<_> =
        tied.iter().map(|(_, solver)| possible_and_forced(job, solver.model)).collect();
    let base: BTreeSet<Setting> = settings.iter().flat_map(|all| all.1.iter().copied()).collect();
    let mut with_more = 0;
    for ((own, solver), (possible, _)) in tied.iter_mut().zip(&settings) {
        let judge = Judge { job, model: solver.model, base: &base };
        ties.fewest_settings &= own.fewest_settings(solver, &judge, possible, meter);
        with_more += usize::from(judge.rank(&solver.best).2 > 0);
    }
    // What two groups have beside what every plan has may be the same in both: that is not looked into.
    ties.fewest_settings &= ties.fewest_boards && with_more <= 1;
    ties.fewest_cuts &= ties.fewest_settings;
    ties.longest_offcut &= ties.fewest_settings;
    for ((own, solver), (_, forced)) in tied.iter_mut().zip(&settings) {
        let judge = Judge { job, model: solver.model, base: &base };
        let forms = || solver.model.stocks.iter().flat_map(|stock| &stock.forms);
        let is_simple = solver.model.stocks.iter().all(|stock| stock.forms.len() == 1);
        let has_rows = forms().any(|form| form.bins.iter().any(|bin| bin.piece + bin.layer > 0));
        if !is_simple || has_rows {
            own.fewer_cuts(solver, &judge, meter);
        }
        ties.longest_offcut &= own.longest_offcut(solver, &judge, is_simple, meter);
        let (_, boards, _, cuts, _) = judge.rank(&solver.best);
        ties.fewest_cuts &= cuts <= least(job, solver.model, forced, boards);
    }
    ties.longest_offcut &= ties.fewest_cuts;
    ties
}

/// A model in which the boards cut count beside their money.
struct Tied {
    model: Model,
    shape: Rc<Shape>,
    factor: i64,
}

impl Tied {
    fn new(solver: &Solver<'_>) -> Self {
        let mut model = solver.model.clone();
        let total: i64 = model.items.iter().map(|item| i64::from(item.demand)).sum();
        let factor = total + 1;
        for stock in &mut model.stocks {
            stock.cost = stock.cost * factor + i64::from(stock.out.is_none());
        }
        let shape = Rc::new(Shape::new(&model));
        Self { model, shape, factor }
    }

    /// What the solver's best plan costs here.
    fn present(&self, solver: &Solver<'_>) -> i64 {
        solver.cost * self.factor + boards(solver.model, &solver.best) as i64
    }

    fn mixer(&self, solver: &Solver<'_>) -> Mixer<'_> {
        let mut mixer = Mixer::new(&self.model, Rc::clone(&self.shape));
        for worth in solver.worths.iter().rev().take(16) {
            mixer.cut(worth);
        }
        mixer
    }

    /// Looks for as cheap a plan with fewer boards; whether there is none.
    fn fewest_boards(&mut self, solver: &mut Solver<'_>, meter: &mut Meter<'_>) -> bool {
        let mut mixer = self.mixer(solver);
        let least = solver.cost * self.factor + 1;
        loop {
            match mixer.run(least, self.present(solver), STEPS_EACH, STEPS_ALL, meter) {
                Mixed::Found(patterns, _)
                    if boards(solver.model, &patterns) < boards(solver.model, &solver.best) =>
                {
                    solver.best = patterns;
                }
                Mixed::NoneCheaper => return true,
                Mixed::Found(..) | Mixed::Undecided(_) => return false,
            }
        }
    }

    /// Looks for a plan with fewer settings beside those that every plan has; whether there is none.
    fn fewest_settings(
        &mut self,
        solver: &mut Solver<'_>,
        judge: &Judge<'_>,
        possible: &BTreeSet<Setting>,
        meter: &mut Meter<'_>,
    ) -> bool {
        let free: Vec<Setting> = possible.difference(judge.base).copied().collect();
        let stop_at = meter.work().saturating_add(STEPS_ALL);
        'fewer: loop {
            let more = judge.rank(&solver.best).2;
            if more == 0 {
                return true;
            }
            let Some(choices) = choices(&free, more - 1, MOST_CHOICES) else { return false };
            let mut is_proved = true;
            for choice in choices {
                if meter.work() > stop_at {
                    return false;
                }
                let allowed = judge.base.union(&choice).copied().collect();
                meter
                    .tick(50 * self.model.stocks.iter().map(|s| s.forms.len() as u64).sum::<u64>());
                let Some(less) = Restricted::new(judge.job, &self.model, &allowed) else {
                    continue;
                };
                let mut mixer = Mixer::new(&less.model, Rc::new(Shape::new(&less.model)));
                for worth in solver.worths.iter().rev().take(16) {
                    mixer.cut(&less.worth(worth));
                }
                let (from, to) = (solver.cost * self.factor + 1, self.present(solver) + 1);
                match mixer.run(from, to, STEPS_EACH, STEPS_CHOICE, meter) {
                    Mixed::NoneCheaper => {}
                    Mixed::Undecided(_) => is_proved = false,
                    Mixed::Found(patterns, _) => {
                        let whole =
                            patterns.iter().map(|it| less.widen(solver.model, it)).collect();
                        if judge.take(&mut solver.best, whole, meter) {
                            continue 'fewer;
                        }
                        is_proved = false;
                    }
                }
            }
            return is_proved;
        }
    }

    /// Looks for a plan with fewer cuts.
    fn fewer_cuts(&mut self, solver: &mut Solver<'_>, judge: &Judge<'_>, meter: &mut Meter<'_>) {
        let stop_at = meter.work().saturating_add(STEPS_ALL / 2);
        descend(judge, &self.shape, &mut solver.best, stop_at, meter);
        let present = self.present(solver);
        let mut mixer = self.mixer(solver);
        let (mixes, _) = mixer.list(present, present + 1, MOST_STARTS, stop_at, meter);
        for (_, mix) in mixes {
            if meter.work() > stop_at {
                return;
            }
            if let Decision::Works(mut other) = mixer.decide(&mix, STEPS_EACH, meter) {
                descend(judge, &self.shape, &mut other, stop_at, meter);
                judge.take(&mut solver.best, other, meter);
            }
        }
    }

    /// Looks for a plan with a longer offcut; whether there is none.
    fn longest_offcut(
        &mut self,
        solver: &mut Solver<'_>,
        judge: &Judge<'_>,
        is_simple: bool,
        meter: &mut Meter<'_>,
    ) -> bool {
        let stop_at = meter.work().saturating_add(STEPS_ALL);
        if !is_simple {
            let question = Question::of_plan(judge, &solver.best);
            question.longest_offcut(&mut solver.best, stop_at - STEPS_ALL / 2, meter);
            return false;
        }
        let present = self.present(solver);
        let mut mixer = self.mixer(solver);
        let (mixes, complete) = mixer.list(present, present + 1, MOST_TIES, stop_at, meter);
        let mut exact = complete;
        let stop_at = meter.work().saturating_add(STEPS_ALL);
        for (_, mix) in mixes {
            let question = Question::of_mix(judge, &mix);
            exact &= question.longest_offcut(&mut solver.best, stop_at, meter);
        }
        exact
    }
}

/// How many real boards.
fn boards(model: &Model, patterns: &[Rc<Pattern>]) -> usize {
    patterns.iter().filter(|pattern| model.stocks[pattern.stock].out.is_none()).count()
}

/// The longest offcut of plans with certain boards, divided in a certain way.
struct Question<'a> {
    judge: &'a Judge<'a>,
    /// The boards: stock, how it is divided, and how many.
    boards: Vec<(usize, Rc<Form>, u32)>,
    /// The longest stretch of these that is too short for every part.
    idle: i64,
}

/// A bin of one of the boards made shorter by an offcut: its board, its bin, and the room that stays.
type Short = (usize, usize, i64);

impl<'a> Question<'a> {
    /// Boards that can be divided in one way only.
    fn of_mix(judge: &'a Judge<'a>, mix: &[u32]) -> Self {
        let (job, stocks) = (judge.job, &judge.model.stocks);
        let boards: Vec<(usize, Rc<Form>, u32)> = (0..mix.len())
            .filter(|&stock| mix[stock] > 0)
            .map(|stock| (stock, Rc::clone(&stocks[stock].forms[0]), mix[stock]))
            .collect();
        let idle = boards.iter().filter_map(|(stock, form, _)| {
            let view = job.stock().nth(stocks[*stock].number)?;
            let has_bin = |number: usize| form.bins.iter().any(|bin| bin.segment == number);
            let lengths = view.segments(job.saw.kerf).into_iter().enumerate();
            lengths.filter(|(number, _)| !has_bin(*number)).map(|(_, (a, b))| b - a).max()
        });
        let idle = idle.max().unwrap_or(0);
        Self { judge, boards, idle }
    }

    /// The boards of a plan, divided as they are.
    fn of_plan(judge: &'a Judge<'a>, patterns: &[Rc<Pattern>]) -> Self {
        let mut boards: Vec<(usize, Rc<Form>, u32)> = Vec::new();
        for pattern in patterns {
            let form = used(pattern);
            match boards.iter_mut().find(|known| known.0 == pattern.stock && *known.1 == form) {
                Some(known) => known.2 += 1,
                None => boards.push((pattern.stock, Rc::new(form), 1)),
            }
        }
        Self { judge, boards, idle: 0 }
    }

    /// The longest piece that a plan leaves.
    fn offcut_of(&self, patterns: &[Rc<Pattern>]) -> i64 {
        self.judge.rank(patterns).4.0
    }

    /// The room and the load of all bins together, each with a kerf for each part.
    fn room_and_load(&self) -> (i64, i64) {
        let model = self.judge.model;
        let weight = |item: usize| {
            let all = model.kinds.iter().flat_map(|kind| kind.ways.iter());
            all.filter(|way| way.item == item).map(|way| way.weight).min().unwrap_or(0)
        };
        let items = model.items.iter().enumerate();
        let load = items.map(|(at, item)| weight(at) * i64::from(item.demand)).sum();
        let rooms = self.boards.iter().map(|(_, form, count)| {
            form.bins.iter().map(|bin| bin.cap).sum::<i64>() * i64::from(*count)
        });
        (rooms.sum(), load)
    }

    /// Looks for a plan with these boards and a longer offcut; `false` when some question stayed open.
    fn longest_offcut(&self, best: &mut Patterns, stop_at: u64, meter: &mut Meter<'_>) -> bool {
        let kerf = self.judge.job.saw.kerf;
        let (room, load) = self.room_and_load();
        let mut exact = true;
        // A stretch that no part fits is an offcut as it is, if only the rest goes into the other stretches.
        if self.idle > self.offcut_of(best) {
            exact &= self.ask(None, best, meter).is_some();
        }
        for (board, (_, form, _)) in self.boards.iter().enumerate() {
            for (number, bin) in form.bins.iter().enumerate() {
                let mut low = self.offcut_of(best);
                let mut high = (room - load - kerf).min(bin.cap - kerf);
                while low < high {
                    if meter.work() > stop_at || !meter.going() {
                        return false;
                    }
                    let length = low + (high - low + 1) / 2;
                    let short = (board, number, bin.cap - length - kerf);
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

    /// Whether all parts go into these boards, one of them shortened; the plan becomes the best one then. `None` also where it
    /// would rank no better for its cuts.
    fn ask(
        &self,
        short: Option<Short>,
        best: &mut Patterns,
        meter: &mut Meter<'_>,
    ) -> Option<bool> {
        let model = self.judge.model;
        let mut types: Vec<BinType> = Vec::new();
        for (board, (_, form, count)) in self.boards.iter().enumerate() {
            for (number, bin) in form.bins.iter().enumerate() {
                let is_short = short.is_some_and(|(b, n, _)| (b, n) == (board, number));
                let count = count - u32::from(is_short);
                types.push(BinType { kind: bin.kind, cap: bin.cap, count });
                if let Some((_, _, cap)) = short.filter(|_| is_short) {
                    types.push(BinType { kind: bin.kind, cap, count: 1 });
                }
            }
        }
        match complete(model, &types, &model.demands(), &[], STEPS_EACH, meter) {
            Answer::Fits(made) => {
                types.retain(|bin| bin.count > 0);
                types.sort_by_key(|bin| (bin.cap, bin.kind));
                let fills = made.into_iter().map(|(at, fill)| (types[at], fill)).collect();
                let patterns = self.put_together(short, fills);
                self.judge.take(best, patterns, meter).then_some(true)
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
        for (at, (stock, form, count)) in self.boards.iter().enumerate() {
            for board in 0..*count {
                // The first board of its kind is the one that leaves the offcut.
                let short = short.filter(|short| short.0 == at && board == 0);
                let mut fill = Vec::with_capacity(form.bins.len());
                for (number, bin) in form.bins.iter().enumerate() {
                    let cap = short.filter(|short| short.1 == number).map_or(bin.cap, |s| s.2);
                    let at = fills.iter().position(|(t, _)| (t.kind, t.cap) == (bin.kind, cap));
                    fill.push(at.map_or_else(Vec::new, |at| fills.remove(at).1));
                }
                patterns.push(Rc::new(self.judge.model.pattern(*stock, Rc::clone(form), fill)));
            }
        }
        patterns.retain(|pattern| !pattern.counts.is_empty());
        patterns
    }
}
