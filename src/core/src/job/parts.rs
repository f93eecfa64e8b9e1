//! The sizes of the parts, worked out.

use super::{Dimension, Dimensions, ItemId, Job, Part, Reckoned};
use crate::measure::text::{Formula, Names, TextProblem, TextProblemKind};
use crate::measure::{Length, Unit};

/// A part with its sizes worked out, or what is in the way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartSizes {
    /// The [`Part`].
    pub id: ItemId,
    /// How many.
    pub quantity: Result<u32, TextProblem>,
    /// Thickness.
    pub thickness: Result<Length, TextProblem>,
    /// Width.
    pub width: Result<Length, TextProblem>,
    /// Length, along the grain.
    pub length: Result<Length, TextProblem>,
    /// Measures that must be taken on the real thing before this part can be cut.
    pub waits_for: Vec<ItemId>,
    /// How many pieces are ticked off.
    pub done: u32,
}

impl PartSizes {
    /// One of its sizes as it is wanted now.
    #[must_use]
    pub fn wanted(&self, of: Dimension) -> Option<Length> {
        let size = match of {
            Dimension::Thickness => &self.thickness,
            Dimension::Width => &self.width,
            Dimension::Length => &self.length,
        };
        size.as_ref().ok().copied()
    }

    /// What a piece that is ticked now is cut at.
    #[must_use]
    pub fn all_wanted(&self) -> Dimensions<Option<Length>> {
        Dimensions::of(|of| self.wanted(of))
    }
}

/// Most pieces of one part.
pub const MOST_PIECES: u32 = 1_000;

/// The parts of a job in the order of the list.
#[must_use]
pub fn part_sizes(job: &Job, reckoned: &Reckoned) -> Vec<PartSizes> {
    job.parts().into_iter().filter_map(|(id, _)| reckoned.part(id).cloned()).collect()
}

/// The sizes of a part from its texts as read: quantity, thickness, width, length.
pub(super) fn sizes(
    id: ItemId,
    part: &Part,
    texts: &[Result<Formula, TextProblem>],
    unit: Unit,
    names: &dyn Names,
) -> PartSizes {
    let read = |at: usize| match texts.get(at) {
        Some(Ok(formula)) => Ok(formula),
        Some(Err(problem)) => Err(problem.clone()),
        None => Err(TextProblem { at: 0..0, kind: TextProblemKind::Empty }),
    };
    let length = |at: usize| read(at)?.length(unit, names);
    let done = part.pieces.iter().filter(|piece| piece.is_cut()).count();
    PartSizes {
        id,
        quantity: read(0).and_then(|formula| quantity(formula, part, unit, names)),
        thickness: length(1),
        width: length(2),
        length: length(3),
        waits_for: Vec::new(),
        done: u32::try_from(done).unwrap_or(u32::MAX),
    }
}

fn quantity(
    formula: &Formula,
    part: &Part,
    unit: Unit,
    names: &dyn Names,
) -> Result<u32, TextProblem> {
    let number = formula.number(unit, names)?;
    let whole = number.is_whole().then(|| u32::try_from(number.numer()).ok()).flatten();
    whole.filter(|n| (1..=MOST_PIECES).contains(n)).ok_or(TextProblem {
        at: 0..part.quantity.len(),
        kind: TextProblemKind::NotACount(MOST_PIECES),
    })
}
