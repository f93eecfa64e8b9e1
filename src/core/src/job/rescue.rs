//! Rescue: something is cut and is not the size wanted. What else could give way?
//!
//! Any measure with a size of its own that the formula needs, directly or through others, may float:
//! the rescue finds the size of it at which the formula wants exactly what was cut. The size is
//! found from the formulas (two trial values give the slope, a third checks it, exactly), so a
//! formula that is not straight in that measure is not offered rather than guessed.

use super::moved::{Means, Moved, MovedPart, is_cut, moved, moved_parts};
use super::{Dimension, Item, ItemId, Job, Measure, MeasureKind, Reckoned, Step, Written};
use crate::measure::text::{Quantity, exact_text};
use crate::measure::{Length, Number, OutOfRange};
use crate::sheet::Bench;

/// Most measures that are tried in a rescue: more is no choice, and would keep the user waiting.
pub const MOST_FLOATS: usize = 60;

/// What was cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// A measure with a size as cut.
    Measure(ItemId),
    /// One of the sizes of a piece of a part.
    Piece(ItemId, Dimension),
}

impl Cut {
    /// The measure or the part.
    #[must_use]
    pub fn id(self) -> ItemId {
        match self {
            Cut::Measure(id) | Cut::Piece(id, _) => id,
        }
    }

    /// The formula of the size that was wanted.
    fn formula(self, job: &Job) -> Option<&str> {
        match (self, job.item(self.id())?) {
            (Cut::Measure(_), Item::Measure(Measure { written: Written::Formula(text), .. })) => {
                Some(text)
            }
            (Cut::Piece(_, of), Item::Part(part)) => Some(match of {
                Dimension::Thickness => &part.thickness,
                Dimension::Width => &part.width,
                Dimension::Length => &part.length,
            }),
            _ => None,
        }
    }

    /// The size that is wanted of it.
    fn wanted(self, reckoned: &Reckoned) -> Option<Length> {
        match self {
            Cut::Measure(id) => match reckoned.measure(id)?.planned {
                Ok(Quantity::Length(length)) => Some(length),
                _ => None,
            },
            Cut::Piece(id, of) => reckoned.part(id)?.wanted(of),
        }
    }
}

/// Something that is cut and is not the size wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// What was cut.
    pub cut: Cut,
    /// What it came to.
    pub as_cut: Length,
    /// What is wanted of it now.
    pub wanted: Length,
}

/// One way out of the trouble: a measure takes another size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Rescue {
    /// The measure that gives way.
    pub floats: ItemId,
    /// Its size now.
    pub from: Length,
    /// The size that takes up the error.
    pub to: Length,
    /// Everything that moves with it.
    pub moves: Vec<Moved>,
    /// The parts with pieces cut that want another size then.
    pub parts: Vec<MovedPart>,
}

impl Rescue {
    /// How many cut measures and parts must be cut again for it, not counting the one in trouble.
    #[must_use]
    pub fn recuts(&self) -> usize {
        let measures = self.moves.iter().filter(|it| it.means == Means::Recut).count();
        measures.saturating_add(self.parts.len())
    }
}

/// The ways out, cheapest first: fewest parts cut again, then least moved. Measures in `fixed`
/// stay as they are.
#[must_use]
pub fn rescues(job: &Job, bench: &Bench, trouble: &Trouble, fixed: &[ItemId]) -> Vec<Rescue> {
    let before = Reckoned::of(job, bench);
    let mut rescues: Vec<Rescue> = may_float(job, &before, trouble)
        .into_iter()
        .filter(|id| !fixed.contains(id))
        .filter_map(|id| rescue_by(job, bench, trouble, id, &before))
        .collect();
    let effort = |rescue: &Rescue| (rescue.recuts(), rescue.moves.len(), rescue.floats);
    crate::order::sort_by(&mut rescues, |a, b| effort(a).cmp(&effort(b)));
    rescues
}

/// The measures that the size wanted needs and that have a free size of their own.
#[must_use]
pub fn may_float(job: &Job, reckoned: &Reckoned, trouble: &Trouble) -> Vec<ItemId> {
    let Some(text) = trouble.cut.formula(job) else { return Vec::new() };
    let needed = reckoned.all_needed_for(text).into_iter();
    let free = needed.filter(|id| *id != trouble.cut.id() && is_free(job, reckoned, *id));
    free.take(MOST_FLOATS).collect()
}

/// A length that nobody cut and that no formula gives.
fn is_free(job: &Job, reckoned: &Reckoned, id: ItemId) -> bool {
    let Some(Item::Measure(measure)) = job.item(id) else { return false };
    let has_formula = reckoned.needs(id).is_some_and(|needs| !needs.is_empty());
    !is_cut(measure) && measure.kind == MeasureKind::Length && !has_formula
}

/// The size at which `floats` takes up the error, if it has a size of its own that is not cut.
fn rescue_by(
    job: &Job,
    bench: &Bench,
    trouble: &Trouble,
    floats: ItemId,
    before: &Reckoned,
) -> Option<Rescue> {
    let Some(Item::Measure(measure)) = job.item(floats) else { return None };
    let from = before.measure(floats)?.length()?;
    let wanted_at = |size: Length| -> Option<(Length, Reckoned, Job)> {
        let trial = with_size(job, floats, measure, size)?;
        let reckoned = before.after(&trial, bench);
        Some((trouble.cut.wanted(&reckoned)?, reckoned, trial))
    };
    let to = solve(from, trouble, |size| wanted_at(size).map(|(wanted, ..)| wanted))?;
    let (wanted, after, trial) = wanted_at(to)?;
    if wanted != trouble.as_cut || !to.is_positive() {
        return None;
    }
    let itself = trouble.cut.id();
    let moves = moved(&trial, before, &after).into_iter().filter(|it| it.id != itself).collect();
    let parts = moved_parts(&trial, before, &after);
    let parts = parts.into_iter().filter(|it| it.done > 0 && it.id != itself).collect();
    Some(Rescue { floats, from, to, moves, parts })
}

/// Where a straight line through two trials meets the size as cut.
fn solve(
    from: Length,
    trouble: &Trouble,
    wanted_at: impl Fn(Length) -> Option<Length>,
) -> Option<Length> {
    let line = || -> Result<Option<Length>, OutOfRange> {
        let one = Length::inches(Number::ONE);
        let Some(there) = wanted_at((from + one)?) else { return Ok(None) };
        let slope = (there - trouble.wanted)?;
        if slope.is_zero() {
            return Ok(None);
        }
        let steps = ((trouble.as_cut - trouble.wanted)? / slope)?;
        (from + (one * steps)?).map(Some)
    };
    line().ok().flatten()
}

fn with_size(job: &Job, id: ItemId, measure: &Measure, size: Length) -> Option<Job> {
    let mut trial = job.clone();
    trial.make(&giving_way(job, id, measure, size)).ok()?;
    Some(trial)
}

/// The step that gives a measure the size that takes up the error.
#[must_use]
pub fn giving_way(job: &Job, id: ItemId, measure: &Measure, size: Length) -> Step {
    let written = Written::Formula(exact_text(size));
    let change = job.replacing(id, Item::Measure(Measure { written, ..measure.clone() }));
    Step::new(format!("let {} give way", measure.name), vec![change])
}
