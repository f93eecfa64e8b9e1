//! The facts, found.

use super::unread::unread;
use crate::job::make_parts::{Behind, behind};
use crate::job::moved::{Mismatch, is_cut, mismatches};
use crate::job::own_size::size_of;
use crate::job::{
    Dimension, Item, ItemId, Job, Measure, MeasureKind, Part, PartSizes, Piece, Reckoned,
};
use crate::measure::text::Quantity;
use crate::measure::{Length, Tape};
use crate::order::sort_by;
use crate::planning::no_longer_fits;
use crate::sheet::{Bench, Sentence};

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

    fn add(&mut self, fact: Fact, is_left: bool) {
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

/// Everything in a job that wants looking at.
#[must_use]
pub fn attention(job: &Job, reckoned: &Reckoned, bench: &Bench) -> Attention {
    let mut found = Attention::default();
    let close = close_enough(job, reckoned, bench.tape);
    for (id, part) in job.parts() {
        if let Some(sizes) = reckoned.part(id) {
            Pieces { id, part, sizes, reckoned, close, found: &mut found }.look();
        }
    }
    for (id, measure) in job.measures() {
        look_at_size(id, measure, (job, reckoned), close, &mut found);
    }
    for mismatch in mismatches(job, reckoned) {
        let left = match job.item(mismatch.group) {
            Some(Item::Match(group)) => group.left,
            _ => None,
        };
        let is_left = left == Some(mismatch.apart);
        found.add(Fact::Apart(mismatch), is_left);
    }
    if let Some((plan, changes)) = no_longer_fits(job, reckoned, bench) {
        found.facts.push(Fact::Plan { plan, changes });
    }
    for (kept, behind) in behind(job, reckoned, bench) {
        let is_left = matches!(job.item(kept), Some(Item::Kept(kept)) if behind.is_left(kept));
        found.add(Fact::Behind { kept, behind }, is_left);
    }
    unread(job, reckoned, bench, &mut found);
    for (kept, _) in job.kept() {
        let refused = reckoned.kept(kept).filter(|sheet| sheet.answer.is_none());
        if let Some(refusal) = refused.and_then(|sheet| sheet.refusals.first()) {
            found.facts.push(Fact::Refused { kept, why: refusal.sentence.clone() });
        }
    }
    let to_measure = job.measures().into_iter().filter(|(_, it)| it.is_to_measure());
    found.facts.extend(to_measure.map(|(size, _)| Fact::ToMeasure { size }));
    found
}

/// How far something may be off and count as right: what the job says, else half a mark of the
/// tape, which is as near as anybody can cut to it.
#[must_use]
pub fn close_enough(job: &Job, reckoned: &Reckoned, tape: Tape) -> Length {
    let said = job.items().find_map(|(_, item)| match item {
        Item::CloseEnough(it) => reckoned.on_tape(&it.size).ok(),
        _ => None,
    });
    let half = || (tape.graduation() / 2).unwrap_or(Length::ZERO);
    said.filter(|size| !size.is_negative()).unwrap_or_else(half)
}

/// Signed; `None` where it is close enough.
fn off(is: Length, wanted: Length, close: Length) -> Option<Length> {
    (is - wanted).ok().filter(|by| by.abs() > close)
}

/// Whether somebody said that a piece stays as it is.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stays {
    No,
    AsItIs,
    WithShim,
}

/// The pieces of one part.
struct Pieces<'a> {
    id: ItemId,
    part: &'a Part,
    sizes: &'a PartSizes,
    reckoned: &'a Reckoned,
    close: Length,
    found: &'a mut Attention,
}

impl Pieces<'_> {
    fn look(&mut self) {
        let most = self.sizes.quantity.as_ref().map_or(usize::MAX, |count| *count as usize);
        let mut not_recorded = Vec::new();
        // In how they are off, so that alike ones are told once.
        let mut all: Vec<(Stays, Fact)> = Vec::new();
        let part = self.part;
        for (index, piece) in part.pieces.iter().enumerate().take(most) {
            if !piece.is_cut() {
                continue;
            }
            for of in Dimension::ALL {
                match piece.size(of, self.reckoned) {
                    Some(Ok(is)) => self.compare(index, piece, (of, is), &mut all),
                    // It says itself that it cannot be read.
                    Some(Err(_)) => {}
                    None if not_recorded.last() == Some(&index) => {}
                    None => not_recorded.push(index),
                }
            }
        }
        sort_by(&mut all, |a, b| order(&a.1).cmp(&order(&b.1)));
        for (stays, fact) in all {
            self.found.add(fact, stays != Stays::No);
        }
        if !not_recorded.is_empty() {
            let fact = Fact::NotRecorded { part: self.id, pieces: not_recorded };
            self.found.facts.push(fact);
        }
        let beyond = part.pieces.iter().enumerate().skip(most);
        let pieces: Vec<usize> =
            beyond.filter(|(_, piece)| piece.is_cut()).map(|(index, _)| index).collect();
        if !pieces.is_empty() {
            self.found.facts.push(Fact::NotWanted { part: self.id, pieces });
        }
    }

    fn compare(
        &self,
        index: usize,
        piece: &Piece,
        (of, is): (Dimension, Length),
        all: &mut Vec<(Stays, Fact)>,
    ) {
        let Some(wanted) = self.sizes.wanted(of) else { return };
        let Some(by) = off(is, wanted, self.close) else { return };
        let stays = match piece.left(of) == Some(by) {
            true if piece.has_shim(of) => Stays::WithShim,
            true => Stays::AsItIs,
            false => Stays::No,
        };
        let alike = all.iter_mut().find_map(|(known_stays, fact)| match fact {
            Fact::Off { pieces, of: known, is: known_is, .. }
                if (*known_stays, *known, *known_is) == (stays, of, is) =>
            {
                Some(pieces)
            }
            _ => None,
        });
        match alike {
            Some(pieces) => pieces.push(index),
            None => {
                let fact = Fact::Off { part: self.id, pieces: vec![index], of, is, wanted };
                all.push((stays, fact));
            }
        }
    }
}

/// The first piece first, of one piece the length last.
fn order(fact: &Fact) -> Option<(usize, Dimension)> {
    match fact {
        Fact::Off { pieces, of, .. } => Some((*pieces.first()?, *of)),
        _ => None,
    }
}

/// Whether a fact is that of the piece whose own size this is.
fn is_of_piece(
    job: &Job,
    reckoned: &Reckoned,
    fact: &Fact,
    (own, at, instead_of): (ItemId, Length, Length),
) -> bool {
    let Fact::Off { part, pieces, of, is, wanted } = fact else { return false };
    let is_so = pieces.len() == 1 && (*is, *wanted) == (at, instead_of);
    let of_all = || size_of(job, reckoned, *part, *of);
    is_so && of_all().is_some_and(|id| reckoned.needs(own).is_some_and(|it| it.contains(&id)))
}

fn look_at_size(
    id: ItemId,
    measure: &Measure,
    (job, reckoned): (&Job, &Reckoned),
    close: Length,
    found: &mut Attention,
) {
    let Some(state) = reckoned.measure(id).filter(|_| is_cut(measure)) else { return };
    if measure.kind != MeasureKind::Length {
        return;
    }
    // A size that is its own plan has no formula to disagree with.
    let has_formula = reckoned.needs(id).is_some_and(|needs| !needs.is_empty());
    match (&state.as_cut, &state.planned) {
        (None, _) => found.facts.push(Fact::SizeNotRecorded { size: id }),
        (Some(Ok(Quantity::Length(is))), Ok(Quantity::Length(wanted))) if has_formula => {
            if let Some(by) = off(*is, *wanted, close) {
                let is_left = measure.left == Some(by);
                // The own size of one piece says no more than the piece.
                let mut told = found.facts.iter().chain(&found.left);
                let is_of_piece =
                    |fact: &Fact| is_of_piece(job, reckoned, fact, (id, *is, *wanted));
                if !is_left || !told.any(is_of_piece) {
                    found.add(Fact::SizeOff { size: id, is: *is, wanted: *wanted }, is_left);
                }
            }
        }
        _ => {}
    }
}
