//! The steps and their order.

use core::cmp::Reverse;
use std::collections::BTreeMap;

use super::cuts::cuts;
use super::step::{BuildStep, Drafts, Pieces, Stage, Wait, at};
use super::waits::{in_a_row, waits};
use crate::attention::Attention;
use crate::calculators::screws::fields as screws;
use crate::cutting;
use crate::job::{Change, Item, ItemId, Job, Kept, Reckoned, Step};
use crate::sheet::{Bench, Choice};
use crate::to_buy::{InTheWay, Source, ToBuy, to_buy};

/// All steps, in their order.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct BuildOrder {
    /// The steps.
    pub steps: Vec<BuildStep>,
}

impl BuildOrder {
    /// The place of the step to be done next: the first that is not done and waits for nothing.
    #[must_use]
    pub fn next(&self) -> Option<usize> {
        self.steps.iter().position(|step| !step.is_done && step.waits_for.is_empty())
    }
}

/// All that is to be done for a job, in order. `attention` is that of the job as it is.
#[must_use]
pub fn build_order(
    job: &Job,
    reckoned: &Reckoned,
    bench: &Bench,
    attention: &Attention,
) -> BuildOrder {
    let mut all = Drafts::new();
    let to_buy = to_buy(job, reckoned, bench);
    let ticked = job.all_ticked();
    before_the_saw(job, &to_buy, &ticked, &mut all);
    let cut_on_boards = cuts(job, reckoned, &mut all);
    gates(job, &mut all);
    for (rank, (id, kept)) in job.kept().into_iter().enumerate() {
        reckoning(reckoned, &ticked, (rank, id, kept), &mut all);
    }
    let mut steps: Vec<BuildStep> = all.into_values().collect();
    waits(job, reckoned, attention, &cut_on_boards, &mut steps);
    let length = |it: &Pieces| reckoned.part(it.part).and_then(|it| it.length.clone().ok());
    for step in &mut steps {
        step.pieces.sort_by_cached_key(|it| Reverse(length(it)));
    }
    BuildOrder { steps: in_a_row(steps) }
}

/// Planning, buying and drying.
fn before_the_saw(job: &Job, to_buy: &ToBuy, ticked: &BTreeMap<String, u32>, all: &mut Drafts) {
    let plan = |it: &&InTheWay| matches!(it, InTheWay::NoPlan | InTheWay::Plan(_));
    if to_buy.in_the_way.iter().any(|it| plan(&it)) {
        at(all, Stage::Plan, None, "plan".to_owned()).is_done = ticked.contains_key("plan");
    }
    if !to_buy.lines.is_empty() {
        let step = at(all, Stage::Buy, None, "buy".to_owned());
        step.to_buy = to_buy.lines.iter().filter(|line| !line.is_done()).cloned().collect();
        step.is_begun = to_buy.lines.iter().any(|line| line.bought > 0);
        step.is_done = step.to_buy.is_empty();
    }
    for (id, item) in job.items() {
        if let Item::RackBoard(board) = item
            && board.wet
            && is_wanted(job, id)
        {
            at(all, Stage::Dry, None, format!("dry/{:09}", id.0)).about = Some(id);
        }
    }
}

/// Whether a board of the rack is still to be cut by the plan in use; without a plan, any may be.
fn is_wanted(job: &Job, id: ItemId) -> bool {
    let Some((kept, states)) = job.find_cut_plan(false).and_then(|plan| job.cut_plan(plan)) else {
        return true;
    };
    kept.plan.boards.iter().zip(states).any(|(cut, state)| match cut.source {
        cutting::Source::Scrap(at) => {
            let item = kept.labels.scraps.get(at).and_then(|label| label.item);
            item == Some(id) && !state.is_cut()
        }
        cutting::Source::Board(_) => false,
    })
}

/// Sizes that are taken on the real thing.
fn gates(job: &Job, all: &mut Drafts) {
    for (rank, (id, measure)) in job.measures().into_iter().enumerate() {
        if measure.wait {
            let step = at(all, Stage::DryFit, None, format!("measure/{rank:09}/{}", id.0));
            step.about = Some(id);
            step.is_done = measure.as_cut.is_some();
        }
    }
}

/// Questions about screws that are answered by drilling.
const HOLES: [&Choice; 5] =
    [&screws::PILOT, &screws::PLACING, &screws::POCKET, &screws::TOE, &screws::CORNER];

/// Which work a kept reckoning is about; `None` for what is only thought about.
fn stage_of(kept: &Kept) -> Option<Stage> {
    let asks = |question: &Choice| {
        kept.entries.iter().any(|(id, text)| id == screws::QUESTION.id && text == question.id)
    };
    Some(match kept.slug.as_str() {
        "curve" | "angles" => Stage::Shape,
        "dowel" => Stage::Holes,
        "screws" if HOLES.into_iter().any(asks) => Stage::Holes,
        "screws" if asks(&screws::HOLD) || asks(&screws::BUY) => return None,
        "frame" => Stage::Frames,
        "top" | "spacing" | "screws" => Stage::Top,
        "finish" => Stage::Finish,
        _ => return None,
    })
}

fn reckoning(
    reckoned: &Reckoned,
    ticked: &BTreeMap<String, u32>,
    (rank, id, kept): (usize, ItemId, &Kept),
    all: &mut Drafts,
) {
    let Some(stage) = stage_of(kept) else { return };
    // In the order of the list, and told apart by their id.
    let step = at(all, stage, None, format!("kept/{rank:09}/{}", id.0));
    step.about = Some(id);
    step.is_done = ticked.contains_key(&tick_of(id));
    let answer = reckoned.kept(id).and_then(|sheet| sheet.answer.as_ref());
    match answer {
        Some(answer) => step.cautions.clone_from(&answer.cautions),
        None => step.waits_for.push(Wait::Refused(id)),
    }
}

/// The name of the tick of what is about an item: it does not change with the order of a list.
fn tick_of(id: ItemId) -> String {
    format!("done/{}", id.0)
}

impl BuildStep {
    /// The step by which it is ticked off, or its tick is taken back where it has one of its own.
    /// `None` where it is done elsewhere: at the boards, at the size that is measured, piece by piece.
    #[must_use]
    pub fn ticking(&self, job: &Job, reckoned: &Reckoned, bench: &Bench) -> Option<Step> {
        match (self.stage, self.about) {
            (stage, _) if stage.is_final_cut() => {
                job.cutting_pieces(reckoned, bench, &self.to_cut())
            }
            (Stage::DryFit, _) => None,
            (Stage::Buy, _) => buying(job, reckoned, bench),
            (Stage::Dry, Some(id)) => {
                let Some(Item::RackBoard(board)) = job.item(id) else { return None };
                let mut dry = board.clone();
                dry.wet = false;
                let change = job.replacing(id, Item::RackBoard(dry));
                Some(Step::new(format!("{} is dry", board.name), vec![change]))
            }
            (_, about) => {
                let key = about.map_or_else(|| self.key.clone(), tick_of);
                let count = if self.is_done { 0 } else { self.count.max(1) };
                let words = if self.is_done { "not done" } else { "done" };
                let name = about.and_then(|id| job.item(id)).map_or("a step", Item::name);
                let change = job.ticking(0, &[(key, count)]);
                Some(Step::new(format!("{name}: {words}"), vec![change]))
            }
        }
    }
}

/// Everything is bought: the boards, and the rest.
fn buying(job: &Job, reckoned: &Reckoned, bench: &Bench) -> Option<Step> {
    let list = to_buy(job, reckoned, bench);
    let boards = job.find_cut_plan(false).and_then(|id| job.buying(id, None));
    let mut changes: Vec<Change> = boards.map_or_else(Vec::new, |step| step.changes);
    let goods: Vec<(String, u32)> = list
        .lines
        .iter()
        .filter(|line| !line.is_done())
        .filter_map(|line| match &line.source {
            Source::Goods(key) => Some((key.clone(), line.wanted.saturating_sub(line.on_hand))),
            Source::Boards(..) => None,
        })
        .collect();
    if !goods.is_empty() {
        let added = changes.iter().filter(|change| change.before.is_none()).count();
        changes.push(job.ticking(u64::try_from(added).unwrap_or(0), &goods));
    }
    (!changes.is_empty()).then(|| Step::new("all bought", changes))
}
