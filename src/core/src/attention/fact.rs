//! What a fact is.

use crate::job::make_parts::Behind;
use crate::job::moved::Mismatch;
use crate::job::{Dimension, ItemId};
use crate::measure::Length;
use crate::sheet::Sentence;

/// Why the device does not keep a job as it stands on the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotKept {
    /// Its storage does not take it: full, forbidden, shut. Why, in words without a full stop.
    Refused(String),
    /// What is stored of it cannot be read, so nothing is put on top of it. Why, in a sentence.
    Unreadable(String),
    /// It was taken off the device, and can be put back.
    TakenOff,
    /// It was deleted for good.
    Deleted,
}

/// Something that wants looking at. Pieces are counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fact {
    /// Pieces that are cut and are not the size wanted now, alike in what they are.
    Off {
        /// The part.
        part: ItemId,
        /// Which of its pieces.
        pieces: Vec<usize>,
        /// Which of their sizes.
        of: Dimension,
        /// What it is.
        is: Length,
        /// What is wanted of it.
        wanted: Length,
    },
    /// Pieces that are cut, and nobody knows at which sizes.
    NotRecorded {
        /// The part.
        part: ItemId,
        /// Which of its pieces.
        pieces: Vec<usize>,
    },
    /// Pieces that are cut, of a part of which fewer are wanted now.
    NotWanted {
        /// The part.
        part: ItemId,
        /// Which of its pieces.
        pieces: Vec<usize>,
    },
    /// A size that is cut and is not what its formula wants now.
    SizeOff {
        /// The measure.
        size: ItemId,
        /// What it is.
        is: Length,
        /// What is wanted of it.
        wanted: Length,
    },
    /// A size that is said to be cut, and nobody knows at what.
    SizeNotRecorded {
        /// The measure.
        size: ItemId,
    },
    /// Sizes that must match and do not.
    Apart(Mismatch),
    /// The plan in use no longer fits the job.
    Plan {
        /// The plan.
        plan: ItemId,
        /// What changed since it was made.
        changes: Vec<Sentence>,
    },
    /// A text that cannot be read or worked out: a name is gone, a size needs itself.
    Unread {
        /// The measure or part.
        item: ItemId,
        /// Which piece of the part, where it is what the tape says.
        piece: Option<usize>,
        /// Which of its texts, in the words of its form.
        what: &'static str,
        /// Why.
        why: String,
    },
    /// A kept reckoning that has no answer.
    Refused {
        /// The reckoning.
        kept: ItemId,
        /// Why.
        why: Sentence,
    },
    /// The parts that were made of a kept reckoning are not those that it makes now.
    Behind {
        /// The reckoning.
        kept: ItemId,
        /// In what.
        behind: Behind,
    },
    /// A size that must be taken on the real thing, before parts that need it are cut.
    ToMeasure {
        /// The measure.
        size: ItemId,
    },
    /// The device does not keep the job: it is on the page alone.
    NotKept(NotKept),
}

/// The facts of a job.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Attention {
    /// What wants looking at.
    pub facts: Vec<Fact>,
    /// What somebody said to leave as it is.
    pub left: Vec<Fact>,
}

impl Attention {
    /// The same on a device that does not keep the job. That comes first: all of it can be lost.
    #[must_use]
    pub fn not_kept(mut self, why: NotKept) -> Attention {
        self.facts.insert(0, Fact::NotKept(why));
        self
    }

    pub(super) fn add(&mut self, fact: Fact, is_left: bool) {
        if is_left { self.left.push(fact) } else { self.facts.push(fact) }
    }
}

impl Fact {
    /// The item that it is about; `None` where that is the job itself.
    #[must_use]
    pub fn item(&self) -> Option<ItemId> {
        Some(match self {
            Fact::Off { part, .. }
            | Fact::NotRecorded { part, .. }
            | Fact::NotWanted { part, .. } => *part,
            Fact::SizeOff { size, .. }
            | Fact::SizeNotRecorded { size }
            | Fact::ToMeasure { size } => *size,
            Fact::Apart(mismatch) => mismatch.group,
            Fact::Plan { plan, .. } => *plan,
            Fact::Unread { item, .. } => *item,
            Fact::Refused { kept, .. } | Fact::Behind { kept, .. } => *kept,
            Fact::NotKept(_) => return None,
        })
    }

    /// The fact as far as it is about one piece of its part; `None` where it is not.
    #[must_use]
    pub fn of_piece(&self, id: ItemId, index: usize) -> Option<Fact> {
        let mut fact = self.clone();
        match &mut fact {
            Fact::Off { part, pieces, .. }
            | Fact::NotRecorded { part, pieces }
            | Fact::NotWanted { part, pieces } => {
                pieces.retain(|piece| *piece == index);
                (*part == id && !pieces.is_empty()).then_some(fact)
            }
            Fact::Unread { item, piece, .. } => {
                (*item == id && *piece == Some(index)).then_some(fact)
            }
            _ => None,
        }
    }
}
