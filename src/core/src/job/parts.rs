//! The sizes of the parts, worked out.

use super::{ItemId, Job, Part, Reckoned};
use crate::measure::Length;
use crate::measure::text::{TextProblem, parse};

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

/// Most pieces of one part.
pub const MOST_PIECES: usize = 1_000;

/// The parts of a job in the order of the list.
#[must_use]
pub fn part_sizes(job: &Job, reckoned: &Reckoned) -> Vec<PartSizes> {
    job.parts().into_iter().map(|(id, part)| sizes_of(id, part, job, reckoned)).collect()
}

/// The sizes of one part.
#[must_use]
pub fn sizes_of(id: ItemId, part: &Part, job: &Job, reckoned: &Reckoned) -> PartSizes {
    let mut waits_for: Vec<ItemId> = [&part.thickness, &part.width, &part.length]
        .into_iter()
        .flat_map(|text| reckoned.all_needed_for(text))
        .filter(|need| matches!(job.item(*need), Some(super::Item::Measure(m)) if m.wait && m.as_cut.is_none()))
        .collect();
    waits_for.sort_unstable();
    waits_for.dedup();
    let done = part.pieces.iter().filter(|piece| piece.done).count();
    PartSizes {
        id,
        quantity: quantity(&part.quantity, reckoned),
        thickness: reckoned.length_of(&part.thickness),
        width: reckoned.length_of(&part.width),
        length: reckoned.length_of(&part.length),
        waits_for,
        done: u32::try_from(done).unwrap_or(u32::MAX),
    }
}

fn quantity(text: &str, reckoned: &Reckoned) -> Result<u32, TextProblem> {
    let formula = parse(text, reckoned)?;
    let number = formula.number(reckoned.unit(), reckoned)?;
    let whole = number.is_whole().then(|| u32::try_from(number.numer()).ok()).flatten();
    whole.filter(|n| (1..=MOST_PIECES as u32).contains(n)).ok_or(TextProblem {
        at: 0..text.len(),
        kind: crate::measure::text::TextProblemKind::NotACount(MOST_PIECES as u32),
    })
}
