//! Rescue: a part is cut and is not the size wanted. What else could give way?
//!
//! A cut part is in trouble when its size as cut is not the size that its formula wants. Any
//! measure with a size of its own that the formula needs, directly or through others, may float:
//! the rescue finds the size of it at which the formula wants exactly what was cut. The size is
//! found from the formulas (two trial values give the slope, a third checks it, exactly), so a
//! formula that is not straight in that measure is not offered rather than guessed.

use super::moved::{Means, Moved, MovedPart, is_cut, moved, moved_parts};
use super::{Item, ItemId, Job, Measure, MeasureKind, Reckoned, Written};
use crate::measure::text::{Quantity, exact_text};
use crate::measure::{Length, Number, OutOfRange, Tape};
use crate::sheet::Bench;

/// Most measures that are tried in a rescue: more is no choice, and would keep the user waiting.
pub const MOST_FLOATS: usize = 60;

/// What was cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// A measure with a size as cut.
    Measure(ItemId),
    /// A piece of a part, counted from 0.
    Piece(ItemId, usize),
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
            (Cut::Piece(..), Item::Part(part)) => Some(&part.length),
            _ => None,
        }
    }

    /// The size that is wanted of it.
    fn wanted(self, job: &Job, reckoned: &Reckoned) -> Option<Length> {
        match (self, job.item(self.id())?) {
            (Cut::Measure(id), _) => match reckoned.measure(id)?.planned {
                Ok(Quantity::Length(length)) => Some(length),
                _ => None,
            },
            (Cut::Piece(..), Item::Part(part)) => reckoned.length_of(&part.length).ok(),
            (Cut::Piece(..), _) => None,
        }
    }
}

/// A cut part that is not the size wanted.
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

/// By how much a cut part is off, signed: below zero when it is too short.
#[must_use]
pub fn off_by(as_cut: Length, wanted: Length) -> Option<Length> {
    (as_cut - wanted).ok()
}

/// The cut parts whose size as cut is not the size wanted: measures that are off either way, and
/// pieces that are too short. A piece that is too long is trimmed.
///
/// What is within half a mark of the tape was cut to the mark: it is not off.
#[must_use]
pub fn troubles(job: &Job, reckoned: &Reckoned, tape: Tape) -> Vec<Trouble> {
    let mut all = Vec::new();
    for (id, measure) in job.measures() {
        let Some(state) = reckoned.measure(id).filter(|_| measure.as_cut.is_some()) else {
            continue;
        };
        let (Some(Ok(Quantity::Length(as_cut))), Ok(Quantity::Length(wanted))) =
            (&state.as_cut, &state.planned)
        else {
            continue;
        };
        // A size that is its own plan has no formula to disagree with.
        let has_formula = reckoned.needs(id).is_some_and(|needs| !needs.is_empty());
        if has_formula && differ(*as_cut, *wanted, tape) {
            all.push(Trouble { cut: Cut::Measure(id), as_cut: *as_cut, wanted: *wanted });
        }
    }
    for (id, part) in job.parts() {
        if part.pieces.iter().all(|piece| piece.as_cut.is_none()) {
            continue;
        }
        let Some(Ok(wanted)) = reckoned.part(id).map(|sizes| sizes.length.clone()) else {
            continue;
        };
        for (index, piece) in part.pieces.iter().enumerate() {
            let as_cut = piece.as_cut.as_ref().and_then(|text| reckoned.length_of(text).ok());
            if let Some(as_cut) = as_cut.filter(|it| *it < wanted && differ(*it, wanted, tape)) {
                all.push(Trouble { cut: Cut::Piece(id, index), as_cut, wanted });
            }
        }
    }
    all
}

/// Whether two sizes differ by more than half a mark of the tape.
fn differ(a: Length, b: Length, tape: Tape) -> bool {
    (a - b).and_then(|by| by.abs() * 2).is_ok_and(|twice| twice > tape.graduation())
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
        Some((trouble.cut.wanted(&trial, &reckoned)?, reckoned, trial))
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
    let written = Written::Formula(exact_text(size));
    let step = super::Step::new(
        "",
        vec![job.replacing(id, Item::Measure(Measure { written, ..measure.clone() }))],
    );
    trial.make(&step).ok()?;
    Some(trial)
}
