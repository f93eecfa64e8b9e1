//! The steps and their order.

use core::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use super::cuts::cuts;
use super::waits::{in_a_row, waits};
use crate::attention::Attention;
use crate::calculators::screws::fields as screws;
use crate::cutting;
use crate::job::{Change, Dimension, Item, ItemId, Job, Kept, PartSizes, Reckoned, Step};
use crate::measure::Length;
use crate::sheet::{Act, Bench, Caution, Choice};
use crate::to_buy::{InTheWay, Line, Source, ToBuy, to_buy};

/// What kind of work a step is, in the order of the work; a step that waits for one of a later kind comes after it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// The boards are planned.
    Plan,
    /// Everything is bought.
    Buy,
    /// Wet boards dry.
    Dry,
    /// Blocks are crosscut that are ripped then.
    Rough,
    /// Whole boards are resawn.
    Resaw,
    /// Boards are ripped.
    Rip,
    /// Strips are resawn.
    ResawStrips,
    /// Blocks are ripped into parts that are as long as they are.
    RipBlocks,
    /// Parts are cut to length by a stop.
    Crosscut,
    /// Curves and angles.
    Shape,
    /// Holes.
    Holes,
    /// The parts are put together dry, and measured.
    DryFit,
    /// Parts whose size was measured are cut to length.
    CrosscutMeasured,
    /// Frames are put together for good.
    Frames,
    /// The top and what lies on the frames.
    Top,
    /// Oil, stain or paint.
    Finish,
}

impl Stage {
    /// Whether a piece that comes out of it is cut: each is in one such step.
    #[must_use]
    pub fn is_final_cut(self) -> bool {
        matches!(self, Stage::RipBlocks | Stage::Crosscut | Stage::CrosscutMeasured)
    }

    /// Whether its setting is the length of what is cut by it.
    #[must_use]
    pub fn is_crosscut(self) -> bool {
        matches!(self, Stage::Rough | Stage::Crosscut | Stage::CrosscutMeasured)
    }
}

/// Pieces of a part in a step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pieces {
    /// The part.
    pub part: ItemId,
    /// Which of its pieces, counted from 0.
    pub pieces: Vec<usize>,
    /// The board of the plan in use that they come from, by its number; `None` where it is not known.
    pub board: Option<u32>,
    /// They are cut already.
    pub is_cut: bool,
}

/// What a step waits for.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Wait {
    /// Another step, by its place.
    Step(usize),
    /// The plan of the boards draws this part at another size.
    Plan(ItemId),
    /// A size that must be taken on the real thing.
    Measure(ItemId),
    /// Something of it wants looking at.
    Look(ItemId),
    /// A reckoning that cannot answer.
    Refused(ItemId),
}

/// One step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BuildStep {
    /// Its name, as long as it is the same step; also of its tick, where it has one of its own.
    pub key: String,
    /// What kind of work.
    pub stage: Stage,
    /// Fence or stop to near tooth, of a cut.
    pub setting: Option<Length>,
    /// The reckoning, size or board that it is about, where it is about one.
    pub about: Option<ItemId>,
    /// The pieces, the longest first.
    pub pieces: Vec<Pieces>,
    /// How many strips, layers or blocks come out of it, where these are no pieces yet.
    pub count: u32,
    /// The usual danger, the worst first.
    pub cautions: Vec<Caution>,
    /// What it waits for; empty where it can be done.
    pub waits_for: Vec<Wait>,
    /// What is still to buy, where it is about that.
    pub to_buy: Vec<Line>,
    /// Of what is to buy, some is bought.
    pub is_begun: bool,
    /// It is done.
    pub is_done: bool,
}

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

/// The steps before they wait for each other: by stage, largest setting first, then by rank or name.
pub(super) type Drafts = BTreeMap<(Stage, Reverse<Option<Length>>, String), BuildStep>;

/// The step of a stage at a setting, begun anew where there is none yet.
pub(super) fn at(
    all: &mut Drafts,
    stage: Stage,
    setting: Option<Length>,
    key: String,
) -> &mut BuildStep {
    all.entry((stage, Reverse(setting), key)).or_insert_with_key(|(stage, setting, key)| {
        BuildStep {
            key: key.clone(),
            stage: *stage,
            setting: setting.0,
            about: None,
            pieces: Vec::new(),
            count: 0,
            cautions: Vec::new(),
            waits_for: Vec::new(),
            to_buy: Vec::new(),
            is_begun: false,
            is_done: false,
        }
    })
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
    /// The pieces that are still to cut, with their parts.
    #[must_use]
    pub fn to_cut(&self) -> Vec<(ItemId, usize)> {
        let open = self.pieces.iter().filter(|it| !it.is_cut);
        open.flat_map(|it| it.pieces.iter().map(|index| (it.part, *index))).collect()
    }

    /// What is said of its dangers beside its tick: all that can take fingers, or else the first.
    #[must_use]
    pub fn worst_cautions(&self) -> Vec<Caution> {
        let mut all = self.cautions.clone();
        if all.iter().any(|it| it.can_take_fingers()) {
            all.retain(|it| it.can_take_fingers());
        } else {
            all.truncate(1);
        }
        all
    }

    /// Its parts, each once.
    #[must_use]
    pub fn parts(&self) -> BTreeSet<ItemId> {
        crate::order::set_of(self.pieces.iter().map(|it| it.part))
    }

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

/// The dangers of a cut for a piece of these sizes: narrow or short along the fence, short at the stop, thin between the
/// fence and the blade.
pub(super) fn cautions(stage: Stage, setting: Option<Length>, sizes: &PartSizes) -> Vec<Caution> {
    let is_under = |size: Option<Length>, most| size.is_some_and(|size| size < most);
    let of = |dimension| sizes.wanted(dimension);
    let is_along =
        matches!(stage, Stage::Resaw | Stage::ResawStrips | Stage::Rip | Stage::RipBlocks);
    let mut acts = vec![if is_along { Act::Rip } else { Act::SawAtStop }];
    if matches!(stage, Stage::Resaw | Stage::ResawStrips) {
        acts.push(Act::SawDeep);
    }
    if is_along && is_under(setting, Caution::THIN) {
        acts.push(Act::RipThinAtFence);
    }
    let is_small = if is_along {
        is_under(of(Dimension::Width), Caution::NARROW)
            || is_under(of(Dimension::Length), Caution::SHORT)
    } else {
        is_under(setting.or(of(Dimension::Length)), Caution::SHORT)
    };
    if is_small {
        acts.push(Act::SawSmall);
    }
    Caution::of(&acts)
}
