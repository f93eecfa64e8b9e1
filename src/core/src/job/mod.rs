//! The job book: the sizes, parts and calculators of one job as one live thing.
//!
//! A [`Job`] is a set of [`Item`]s, each with an id of its own: measures, parts, kept reckonings,
//! and what is on the rack. A measure is a formula over other names and, from the moment it is
//! cut, the size the tape says on the real part. [`Reckoned`] works everything out; the
//! difference of two of them is [what moved](moved). A part that came out wrong has a
//! [rescue] or is cut again.
//!
//! Every edit is a [`Step`]: what each item was before and is after. A step is undone by turning
//! it round. One that was made from an older state is [merged](Job::rebased) field by field with
//! what changed in between, and refused, naming item and field, where both changed the same thing.
//! So two pages with the same job open never overwrite each other unseen.

pub mod bars;
mod card;
mod circles;
mod conflict;
pub mod cut_labels;
mod cut_plan;
pub mod demo;
mod history;
mod id;
mod item;
pub mod kinds;
mod labels;
mod limits;
mod linked;
pub mod make_parts;
mod merge;
pub mod moved;
mod names;
mod on_ours;
pub mod own_size;
mod parts;
mod piece;
mod pieces;
mod plan_in_use;
mod reckoned;
pub mod rescue;
pub mod sections;
pub mod sketch;
mod step;
#[cfg(test)]
pub(crate) mod tests;
mod ticked;

pub use card::cautions;
pub use conflict::{Clash, Conflict};
pub use cut_plan::{BoardState, CutPlan, CutTicks};
pub use history::{History, MOST_STEPS};
pub use id::ItemId;
pub use item::{
    CloseEnough, Grain, Hand, Item, Kept, Linked, Made, Match, Measure, MeasureKind, Part,
    RackBoard, Round, Saw, Screw, Sketch, Ticked, Written, YardBoard,
};
pub use labels::{Label, MOST_LABELS, TooManyLabels, labels};
pub use limits::{
    MOST_MEASURES, MOST_NAME, MOST_NOTE, MOST_OTHERS, MOST_PARTS, MOST_PIECES_OF_JOB,
};
pub use linked::kind_of;
pub use names::{NameProblem, check_name, check_title, is_same_name, name_key, visible_title};
pub use on_ours::OnOurs;
pub use parts::{MOST_PIECES, PartSizes};
pub use piece::{Dimension, Dimensions, Known, Piece, PieceState, known};
pub use pieces::part_sizes;
pub use reckoned::{MeasureProblem, MeasureState, Reckoned};
pub use step::{Change, Step};

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::measure::Unit;

/// One job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Job {
    /// What the user calls it.
    pub title: String,
    /// The unit of bare numbers in it, whatever the phone is set to.
    pub unit: Unit,
    /// Everything in it, by id.
    items: BTreeMap<ItemId, Arc<Item>>,
    /// The next free id; ids are never used twice.
    next_id: u64,
}

impl Job {
    /// An empty job.
    #[must_use]
    pub fn new(title: impl Into<String>, unit: Unit) -> Job {
        let title = visible_title(&title.into());
        Job { title, unit, items: BTreeMap::new(), next_id: 1 }
    }

    /// A job from stored items, whose names are [visible](Item::with_visible_names). Ids below or at the highest one are never given out again.
    #[must_use]
    pub fn from_items(title: &str, unit: Unit, items: BTreeMap<ItemId, Item>, next_id: u64) -> Job {
        let above = items.keys().next_back().map_or(1, |id| id.0.saturating_add(1));
        let mut shared = BTreeMap::new();
        shared.extend(items.into_iter().map(|(id, item)| (id, Arc::new(item))));
        Job { title: visible_title(title), unit, items: shared, next_id: next_id.max(above) }
    }

    /// Every item with its id, oldest first.
    pub fn items(&self) -> impl Iterator<Item = (ItemId, &Item)> {
        self.items.iter().map(|(id, item)| (*id, &**item))
    }

    /// Every item as it is held: a copy of the job holds the same.
    pub(crate) fn shared(&self) -> impl Iterator<Item = (ItemId, &Arc<Item>)> {
        self.items.iter().map(|(id, item)| (*id, item))
    }

    /// One item.
    #[must_use]
    pub fn item(&self, id: ItemId) -> Option<&Item> {
        self.items.get(&id).map(|item| &**item)
    }

    /// The next free id, for a step that adds something.
    #[must_use]
    pub fn next_id(&self) -> ItemId {
        ItemId(self.next_id)
    }

    /// The measures in the order the user gave them.
    #[must_use]
    pub fn measures(&self) -> Vec<(ItemId, &Measure)> {
        self.ranked(|item| match item {
            Item::Measure(measure) => Some((measure.rank, measure)),
            _ => None,
        })
    }

    /// The parts in the order the user gave them.
    #[must_use]
    pub fn parts(&self) -> Vec<(ItemId, &Part)> {
        self.ranked(|item| match item {
            Item::Part(part) => Some((part.rank, part)),
            _ => None,
        })
    }

    /// The kept reckonings in the order the user gave them.
    #[must_use]
    pub fn kept(&self) -> Vec<(ItemId, &Kept)> {
        self.ranked(|item| match item {
            Item::Kept(kept) => Some((kept.rank, kept)),
            _ => None,
        })
    }

    fn ranked<'a, T>(
        &'a self,
        pick: impl Fn(&'a Item) -> Option<(i64, &'a T)>,
    ) -> Vec<(ItemId, &'a T)> {
        let mut order: Vec<(i64, ItemId)> =
            self.items.iter().filter_map(|(id, item)| Some((pick(item)?.0, *id))).collect();
        crate::order::sort(&mut order);
        let picked = |(_, id): (i64, ItemId)| Some((id, pick(self.items.get(&id)?)?.1));
        order.into_iter().filter_map(picked).collect()
    }
}
