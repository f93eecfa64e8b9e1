//! Rescue: a part is cut and is not the size wanted. What else could give way?
//!
//! A cut part is in trouble when its size as cut is not the size that its formula wants. Any
//! measure with a size of its own that the formula needs, directly or through others, may float:
//! the rescue finds the size of it at which the formula wants exactly what was cut. The size is
//! found from the formulas (two trial values give the slope, a third checks it, exactly), so a
//! formula that is not straight in that measure is not offered rather than guessed.

use super::moved::{Means, Moved, is_cut, moved};
use super::{Item, ItemId, Job, Measure, MeasureKind, Reckoned, Written};
use crate::measure::text::{Quantity, exact_text};
use crate::measure::{Length, Number, OutOfRange};
use crate::sheet::Bench;

/// A cut part that is not the size wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Trouble {
    /// The measure.
    pub id: ItemId,
    /// What was cut.
    pub as_cut: Length,
    /// What the formula wants now.
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
    /// How many cut parts must be cut again for it, not counting the one in trouble.
    pub recuts: usize,
}

/// The cut parts whose size as cut is not the size wanted.
#[must_use]
pub fn troubles(job: &Job, reckoned: &Reckoned) -> Vec<Trouble> {
    job.measures()
        .into_iter()
        .filter_map(|(id, measure)| {
            let state = reckoned.measure(id)?;
            measure.as_cut.as_ref()?;
            match (&state.as_cut, &state.planned) {
                (Some(Ok(Quantity::Length(as_cut))), Ok(Quantity::Length(wanted)))
                    if as_cut != wanted =>
                {
                    // A size that is its own plan has no formula to disagree with.
                    let has_formula = !reckoned.needs(id)?.is_empty();
                    has_formula.then_some(Trouble { id, as_cut: *as_cut, wanted: *wanted })
                }
                _ => None,
            }
        })
        .collect()
}

/// The ways out, cheapest first: fewest parts cut again, then least moved. Measures in `fixed`
/// stay as they are.
#[must_use]
pub fn rescues(job: &Job, bench: &Bench, trouble: &Trouble, fixed: &[ItemId]) -> Vec<Rescue> {
    let before = Reckoned::of(job, bench);
    let Some(Item::Measure(measure)) = job.item(trouble.id) else { return Vec::new() };
    let Written::Formula(text) = &measure.written else { return Vec::new() };
    let mut rescues: Vec<Rescue> = before
        .all_needed_for(text)
        .into_iter()
        .filter(|id| !fixed.contains(id) && *id != trouble.id)
        .filter_map(|id| rescue_by(job, bench, trouble, id, &before))
        .collect();
    rescues.sort_by_key(|rescue| (rescue.recuts, rescue.moves.len(), rescue.floats));
    rescues
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
    if is_cut(measure) || measure.kind != MeasureKind::Length || !before.needs(floats)?.is_empty() {
        return None;
    }
    let from = before.measure(floats)?.length()?;
    let wanted_at = |size: Length| -> Option<(Length, Reckoned, Job)> {
        let trial = with_size(job, floats, measure, size)?;
        let reckoned = Reckoned::of(&trial, bench);
        match reckoned.measure(trouble.id)?.planned {
            Ok(Quantity::Length(length)) => Some((length, reckoned, trial)),
            _ => None,
        }
    };
    let to = solve(from, trouble, |size| wanted_at(size).map(|(wanted, ..)| wanted))?;
    let (wanted, after, trial) = wanted_at(to)?;
    if wanted != trouble.as_cut || !to.is_positive() {
        return None;
    }
    let moves: Vec<Moved> =
        moved(&trial, before, &after).into_iter().filter(|m| m.id != trouble.id).collect();
    let recuts = moves.iter().filter(|m| m.means == Means::Recut).count();
    Some(Rescue { floats, from, to, moves, recuts })
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
