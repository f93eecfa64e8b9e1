//! Cuts among plans of equal money, as many boards and as few settings: a search for fewer, and how many there must be.
//!
//! From a plan, one board at a time is divided otherwise, or a strip or a layer is left out, and all parts are packed again;
//! what ranks better is kept (a descent; our own method). It proves nothing. [`least`] does, where a plan reaches it.

use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use reckoner_core::cutting::{CutKind, Job};

use crate::budget::Meter;
use crate::completion::Reach;
use crate::greedy::Patterns;
use crate::model::{Bin, Form, Make, Model, Pattern};
use crate::realise;
use crate::rows::{Packed, Rows, Shape, deal};
use crate::settings::Setting;

/// Steps for packing once.
const STEPS_EACH: u64 = 200_000;

/// How a plan ranks; less is better. Cost, boards, settings that not every plan has, cuts, the longest offcut.
pub(crate) type Rank = (i64, usize, usize, u64, Reverse<i64>);

/// Ranks plans of a model by the core's count.
pub(crate) struct Judge<'a> {
    pub(crate) job: &'a Job,
    pub(crate) model: &'a Model,
    /// Settings that every plan of the whole job has.
    pub(crate) base: &'a BTreeSet<Setting>,
}

impl Judge<'_> {
    /// Last of all plans where the core knows of no such plan.
    pub(crate) fn rank(&self, patterns: &[Rc<Pattern>]) -> Rank {
        let plan = realise::plan(self.job, &[(self.model, patterns)]);
        let effort = plan.effort(self.job);
        let known = effort.map(|it| (it.settings.difference(self.base).count(), it.cuts));
        let known = known.unwrap_or((usize::MAX, u64::MAX));
        let offcut = plan.offcuts(self.job).first().map_or(0, |offcut| offcut.length);
        (plan.cost_cents, plan.boards.len(), known.0, known.1, Reverse(offcut))
    }

    /// Takes the plan where it ranks better.
    pub(crate) fn take(&self, best: &mut Patterns, made: Patterns, meter: &mut Meter<'_>) -> bool {
        let parts: u64 = self.model.items.iter().map(|item| u64::from(item.demand)).sum();
        meter.tick(200 * (parts + made.len() as u64));
        let is_better = self.rank(&made) < self.rank(best);
        if is_better {
            *best = made;
        }
        is_better
    }
}

/// A form without its rows that no part is cut from.
pub(crate) fn used(pattern: &Pattern) -> Form {
    let form = &pattern.form;
    let rows: BTreeSet<(usize, usize)> = form
        .bins
        .iter()
        .zip(&pattern.fill)
        .filter(|(_, fill)| !fill.is_empty())
        .map(|(bin, _)| (bin.piece, bin.layer))
        .collect();
    let is_used = |bin: &&Bin| rows.contains(&(bin.piece, bin.layer));
    Form { bins: form.bins.iter().filter(is_used).copied().collect(), make: form.make.clone() }
}

/// Looks for a plan that ranks better from `best` on, until `stop_at`.
pub(crate) fn descend(
    judge: &Judge<'_>,
    shape: &Rc<Shape>,
    best: &mut Patterns,
    stop_at: u64,
    meter: &mut Meter<'_>,
) {
    let model = judge.model;
    let mut rows = Rows::new(model, Rc::clone(shape));
    let demands = model.demands();
    'better: loop {
        let chosen: Vec<(usize, Rc<Form>)> =
            best.iter().map(|pattern| (pattern.stock, Rc::new(used(pattern)))).collect();
        let reaches: Vec<Vec<u32>> =
            chosen.iter().map(|(_, form)| shape.reach_of(&form.bins)).collect();
        let mut all = vec![0; shape.slots()];
        for own in &reaches {
            for (sum, own) in all.iter_mut().zip(own) {
                *sum += own;
            }
        }
        for (at, (stock, form)) in chosen.iter().enumerate() {
            // What is alike was tried before.
            if chosen[..at].contains(&(*stock, Rc::clone(form))) {
                continue;
            }
            let others = &model.stocks[*stock].forms;
            for other in shorter(form).into_iter().map(Rc::new).chain(others.iter().cloned()) {
                let steps = 100 + (other.bins.len() * shape.slots()) as u64;
                if meter.work() > stop_at || !meter.tick(steps) {
                    return;
                }
                let mut reach = shape.reach_of(&other.bins);
                for (reach, (all, own)) in reach.iter_mut().zip(all.iter().zip(&reaches[at])) {
                    *reach += all - own;
                }
                if rows.is_refuted(&reach, &demands, meter) {
                    continue;
                }
                let Packed::Fits(fills) = rows.pack(&reach, &demands, &[], STEPS_EACH, meter)
                else {
                    continue;
                };
                let mut forms: Vec<(usize, Rc<Form>, u32)> =
                    chosen.iter().map(|(stock, form)| (*stock, Rc::clone(form), 1)).collect();
                forms[at].1 = other;
                if judge.take(best, deal(model, &forms, fills), meter) {
                    continue 'better;
                }
            }
        }
        return;
    }
}

/// The form without each of its rows in turn.
fn shorter(form: &Form) -> Vec<Form> {
    let rows: BTreeSet<(usize, usize)> =
        form.bins.iter().map(|bin| (bin.piece, bin.layer)).collect();
    let without = |row: &(usize, usize)| {
        let stays = |bin: &&Bin| (bin.piece, bin.layer) != *row;
        Form { bins: form.bins.iter().filter(stays).copied().collect(), make: form.make.clone() }
    };
    rows.iter().map(without).collect()
}

/// No plan of the model that cuts `boards` boards has fewer cuts. `forced`: the settings that every plan of the model has.
///
/// Every part takes one, unless it can end where its board ends; every board whose left end is not clear takes one; and
/// strips of a width that some parts must be ripped to take one each.
pub(crate) fn least(job: &Job, model: &Model, forced: &BTreeSet<Setting>, boards: usize) -> u64 {
    let boards = boards as u64;
    let parts: u64 = model.items.iter().map(|item| u64::from(item.demand)).sum();
    let rip = job.saw.rip.as_ref();
    let has_far_edge = rip.is_some_and(|rip| rip.far_edge > 0);
    let demands = model.demands();
    let mut may_end: BTreeMap<(usize, i64), bool> = BTreeMap::new();
    let (mut ends, mut is_one_row, mut has_blocks) = (false, true, false);
    let mut trims = 1;
    // For each width the most that one strip of it holds.
    let mut of_width: BTreeMap<i64, i64> = BTreeMap::new();
    for stock in &model.stocks {
        let Some(view) = job.stock().nth(stock.number) else { return 0 };
        let segments = view.segments(job.saw.kerf);
        trims = trims.min(u64::from(segments.first().is_some_and(|first| first.0 > 0)));
        for form in &stock.forms {
            let rows: BTreeSet<(usize, usize)> =
                form.bins.iter().map(|bin| (bin.piece, bin.layer)).collect();
            is_one_row &= rows.len() <= 1;
            match &form.make {
                Make::Blocks(_) => has_blocks = true,
                Make::Crosscut | Make::Strips(_, false) => {}
                Make::Strips(makes, true) => {
                    for (piece, make) in makes.iter().enumerate() {
                        let own = form.bins.iter().filter(|bin| bin.piece == piece);
                        let room: i64 = own.map(|bin| bin.cap).sum();
                        let most = of_width.entry(make.width).or_insert(0);
                        *most = room.max(*most);
                    }
                }
            }
            for bin in &form.bins {
                let is_last =
                    segments.get(bin.segment).is_some_and(|segment| segment.1 == view.length);
                ends |= is_last
                    && *may_end.entry((bin.kind, bin.cap)).or_insert_with(|| {
                        Reach::new(model, bin.kind, bin.cap, &demands)
                            .is_none_or(|reach| reach.most(0, bin.cap) == bin.cap)
                    });
            }
        }
    }
    // A block at the end of its board, or the fence in it, may leave parts that need no cut of their own.
    ends |= has_blocks;
    let without = match (ends, is_one_row) {
        (false, _) => 0,
        (true, true) => boards.min(parts),
        (true, false) => parts,
    };
    let mut strips = 0;
    for (width, load) in only_widths(model) {
        // A width that some plan does without takes no strip of it there.
        let is_forced = !has_blocks && forced.contains(&(CutKind::Rip, width));
        let most = of_width.get(&width).copied().filter(|most| is_forced && *most > 0);
        if let Some(most) = most {
            strips += u64::try_from((load + most - 1) / most).unwrap_or(0);
        }
    }
    let cleaned = u64::from(strips > 0 && rip.is_some_and(|rip| rip.near_edge > 0));
    let left = if has_far_edge { 0 } else { boards };
    (parts - without) + trims * boards + strips.saturating_sub(left) + cleaned
}

/// For each width: what the items weigh at least that are only ever cut from ripped strips of it.
fn only_widths(model: &Model) -> BTreeMap<i64, i64> {
    // For each item the one width of all its ways so far, if any, and its least weight.
    let mut of_item: Vec<Option<(Option<i64>, i64)>> = vec![None; model.items.len()];
    for form in model.stocks.iter().flat_map(|stock| &stock.forms) {
        for bin in &form.bins {
            let width = match &form.make {
                Make::Strips(makes, true) => Some(makes[bin.piece].width),
                _ => None,
            };
            for way in model.kinds[bin.kind].ways.iter().filter(|way| way.weight <= bin.cap) {
                let known = of_item[way.item].get_or_insert((width, way.weight));
                known.0 = known.0.filter(|known| Some(*known) == width);
                known.1 = known.1.min(way.weight);
            }
        }
    }
    let mut loads = BTreeMap::new();
    for (item, known) in model.items.iter().zip(of_item) {
        if let Some((Some(width), weight)) = known {
            *loads.entry(width).or_insert(0) += weight * i64::from(item.demand);
        }
    }
    loads
}
