//! What moved when a measure changed: the difference of a job worked out before and after.

use std::collections::BTreeSet;

use super::{Dimension, Item, ItemId, Job, Measure, Reckoned};
use crate::measure::Length;
use crate::measure::text::Quantity;

/// A measure that is not what it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Moved {
    /// The measure.
    pub id: ItemId,
    /// Before. `None` when it had no value.
    pub old: Option<Quantity>,
    /// After. `None` when it has none now.
    pub new: Option<Quantity>,
    /// By how much, signed, when both are lengths.
    pub by: Option<Length>,
    /// What that means at the bench.
    pub means: Means,
}

/// What a changed measure means at the bench.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Means {
    /// The part is cut and now wants another size: recut it, or find a rescue.
    Recut,
    /// Pieces that have this size by name are cut: they are what they were.
    PiecesCut,
    /// Not cut yet: only the number is another one.
    NewNumber,
    /// It is new, and is what the tape says.
    AsCut,
    /// It has no value any more.
    Lost,
}

/// What a measure comes to for the bench: what a cut part is against what it is wanted to be.
///
/// A part that is cut keeps its size whatever the formula says, so it has not "moved" when the
/// value in use stays; it has moved when the size wanted of it did.
fn wanted(reckoned: &Reckoned, id: ItemId) -> Option<Quantity> {
    reckoned.measure(id)?.planned.as_ref().ok().copied()
}

/// The measures whose value differs, in the order of the list; the one that was edited first.
#[must_use]
pub fn moved(job: &Job, before: &Reckoned, after: &Reckoned) -> Vec<Moved> {
    let mut all = Vec::new();
    let cut_at = sizes_cut_at(job, after);
    for (id, measure) in job.measures() {
        let is_new = before.measure(id).is_none();
        let cut = is_cut(measure) && !is_new;
        let value = |reckoned: &Reckoned| {
            if cut { wanted(reckoned, id) } else { reckoned.measure(id).and_then(|m| m.in_use()) }
        };
        let (old, new) = (value(before), value(after));
        if old == new {
            continue;
        }
        let by = match (old, new) {
            (Some(Quantity::Length(old)), Some(Quantity::Length(new))) => (new - old).ok(),
            _ => None,
        };
        let means = match new {
            None => Means::Lost,
            Some(_) if is_new && is_cut(measure) => Means::AsCut,
            Some(_) if cut => Means::Recut,
            Some(_) if cut_at.contains(&id) => Means::PiecesCut,
            Some(_) => Means::NewNumber,
        };
        all.push(Moved { id, old, new, by, means });
    }
    all
}

/// The sizes that parts have by name of which pieces are cut.
fn sizes_cut_at(job: &Job, reckoned: &Reckoned) -> BTreeSet<ItemId> {
    let mut all = BTreeSet::new();
    for (id, _) in job.parts() {
        if reckoned.part(id).is_some_and(|it| it.done > 0) {
            all.extend(reckoned.needs(id).into_iter().flatten());
        }
    }
    all
}

/// A part that wants another size than before.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MovedPart {
    /// The part.
    pub id: ItemId,
    /// Its thickness, width and length before and after, where they differ.
    pub sides: Vec<(&'static str, Length, Length)>,
    /// How many pieces of it are cut already: they are cut again, or find a rescue.
    pub done: u32,
}

/// The parts whose sizes differ, in the order of the list. A part without a size before or after
/// is left out: its own row says why.
#[must_use]
pub fn moved_parts(job: &Job, before: &Reckoned, after: &Reckoned) -> Vec<MovedPart> {
    let mut all = Vec::new();
    for (id, _) in job.parts() {
        let (Some(old), Some(new)) = (before.part(id), after.part(id)) else { continue };
        let sides = [
            ("thickness", &old.thickness, &new.thickness),
            ("width", &old.width, &new.width),
            ("length", &old.length, &new.length),
        ];
        let sides = sides.into_iter().filter_map(|(side, old, new)| match (old, new) {
            (Ok(old), Ok(new)) if old != new => Some((side, *old, *new)),
            _ => None,
        });
        let sides: Vec<_> = sides.collect();
        if !sides.is_empty() {
            all.push(MovedPart { id, sides, done: new.done });
        }
    }
    all
}

/// Whether the real part is there: marked as cut, or measured.
#[must_use]
pub fn is_cut(measure: &Measure) -> bool {
    measure.is_cut || measure.as_cut.is_some()
}

/// One thing that must match others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Member {
    /// A measure.
    Measure(ItemId),
    /// A piece of a part that is cut, counted from 0.
    Cut(ItemId, usize),
    /// The pieces of a part that are still to cut.
    ToCut(ItemId),
}

/// A group of measures and pieces that must be alike and are not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mismatch {
    /// The [`Match`](super::Match).
    pub group: ItemId,
    /// The smallest of them.
    pub least: (Member, Length),
    /// The largest of them.
    pub most: (Member, Length),
    /// How far apart these two are.
    pub apart: Length,
    /// How far they may drift.
    pub drift: Length,
}

/// What of an item must match, with its length: of a part each piece that is cut, and what the others are planned at.
fn lengths_of(job: &Job, reckoned: &Reckoned, id: ItemId) -> Vec<(Member, Length)> {
    let Some(Item::Part(part)) = job.item(id) else {
        let length = reckoned.measure(id).and_then(|it| it.length());
        return length.map(|length| (Member::Measure(id), length)).into_iter().collect();
    };
    let Some(sizes) = reckoned.part(id) else { return Vec::new() };
    let count = sizes.quantity.as_ref().map_or(0, |count| *count);
    let most = usize::try_from(count).unwrap_or(usize::MAX);
    let cut = part.pieces.iter().enumerate().take(most).filter(|(_, piece)| piece.is_cut());
    let lengths = cut.filter_map(|(index, piece)| {
        Some((Member::Cut(id, index), piece.size(Dimension::Length, reckoned)?.ok()?))
    });
    let to_cut = sizes.wanted(Dimension::Length).filter(|_| sizes.done < count);
    lengths.chain(to_cut.map(|length| (Member::ToCut(id), length))).collect()
}

/// The groups whose measures in use and pieces are farther apart than they may be.
#[must_use]
pub fn mismatches(job: &Job, reckoned: &Reckoned) -> Vec<Mismatch> {
    let mut all = Vec::new();
    for (group, item) in job.items() {
        let Item::Match(members) = item else { continue };
        let drift = match members.drift.trim() {
            "" => Length::ZERO,
            text => reckoned.length_of(text).unwrap_or(Length::ZERO),
        };
        let lengths = members.measures.iter().flat_map(|id| lengths_of(job, reckoned, *id));
        let lengths: Vec<_> = lengths.collect();
        let least = lengths.iter().min_by_key(|(_, length)| *length);
        let most = lengths.iter().max_by_key(|(_, length)| *length);
        if let (Some(least), Some(most)) = (least, most)
            && let Ok(apart) = most.1 - least.1
            && apart > drift
        {
            all.push(Mismatch { group, least: *least, most: *most, apart, drift });
        }
    }
    all
}
