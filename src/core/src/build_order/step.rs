//! A step: what kind of work, on which pieces, with which dangers, and what it waits for.

use core::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

use crate::job::{Dimension, Item, ItemId, Job, OnOurs, PartSizes, Reckoned};
use crate::measure::Length;
use crate::order::set_of;
use crate::sheet::{Act, Caution};
use crate::to_buy::Line;

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

    /// Whether its figure rests on an example of ours: the size that its pieces are cut to, or its reckoning.
    #[must_use]
    pub fn is_on_ours(&self, job: &Job, reckoned: &Reckoned, on_ours: &OnOurs) -> bool {
        let is_crosscut = self.stage.is_crosscut();
        let is = |it: &Pieces| match job.item(it.part) {
            Some(Item::Part(part)) if is_crosscut => on_ours.has_size(reckoned, &part.length),
            Some(Item::Part(part)) => {
                [&part.thickness, &part.width].iter().any(|it| on_ours.has_size(reckoned, it))
            }
            _ => false,
        };
        match (self.setting, self.about) {
            (Some(_), _) => self.pieces.iter().any(is),
            (None, Some(id)) => on_ours.has(id),
            (None, None) => false,
        }
    }

    /// Its parts, each once.
    #[must_use]
    pub fn parts(&self) -> BTreeSet<ItemId> {
        set_of(self.pieces.iter().map(|it| it.part))
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

/// Which steps a step needs done, by their names.
pub(super) type Needs = BTreeMap<String, BTreeSet<String>>;

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
