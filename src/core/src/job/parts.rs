//! The sizes of the parts, worked out.

use super::{Dimension, Dimensions, ItemId, Part, Piece};
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
    /// How many of the pieces that are wanted are ticked off.
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

impl Part {
    /// The part with one piece more; `None` where its count is a formula, or cannot grow.
    #[must_use]
    pub fn one_more(&self) -> Option<Part> {
        self.with_count(self.counted()?.checked_add(1)?)
    }

    /// The part with one piece fewer; `None` where its count is a formula, it is the last, or it was touched by
    /// the saw: what is cut is not forgotten.
    #[must_use]
    pub fn one_fewer(&self) -> Option<Part> {
        self.with_count(self.counted()?.checked_sub(1)?)
    }

    /// The part with so many pieces; `None` where its count is a formula, there can be no such number, or what is cut
    /// would be forgotten.
    fn with_count(&self, count: u32) -> Option<Part> {
        let is_fewer = count < self.counted()?;
        let mut beyond = self.pieces.iter().skip(count as usize);
        let is_touched = is_fewer && beyond.any(|it| !it.is_untouched());
        let is_good = (1..=MOST_PIECES).contains(&count) && !is_touched;
        is_good.then(|| Part { quantity: count.to_string(), ..self.clone() })
    }

    /// The part with these pieces, beyond the `wanted` first, counted to what is wanted; `None` where its count is a
    /// formula, or cannot grow so far.
    #[must_use]
    pub fn with_more(&self, wanted: u32, pieces: &[usize]) -> Option<Part> {
        let more = u32::try_from(pieces.len()).ok()?;
        let count = self.counted()?.checked_add(more).filter(|count| *count <= MOST_PIECES)?;
        let mut new = Part { quantity: count.to_string(), ..self.clone() };
        new.pieces.truncate(wanted as usize);
        let rest = (wanted as usize..self.pieces.len()).filter(|index| !pieces.contains(index));
        for (at, index) in (wanted as usize..).zip(pieces.iter().copied().chain(rest)) {
            new = new.with_piece(at, self.piece(index));
        }
        Some(new.without_last_untouched())
    }

    /// The part with no piece in its list after the last that was touched.
    #[must_use]
    pub fn without_last_untouched(mut self) -> Part {
        while self.pieces.last().is_some_and(Piece::is_untouched) {
            self.pieces.pop();
        }
        self
    }

    /// How many, where that is a plain number.
    fn counted(&self) -> Option<u32> {
        self.quantity.trim().parse().ok()
    }
}

/// Most pieces of one part.
pub const MOST_PIECES: u32 = 1_000;

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
    let quantity = read(0).and_then(|formula| quantity(formula, part, unit, names));
    let wanted = quantity.as_ref().map_or(usize::MAX, |count| *count as usize);
    let done = part.pieces.iter().take(wanted).filter(|piece| piece.is_cut()).count();
    PartSizes {
        id,
        quantity,
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::YardBoard;

    #[test]
    fn a_length_at_the_yard_is_counted_up_from_one_and_down_to_one() {
        let of =
            |now: Option<u32>| YardBoard { quantity: now, ..YardBoard::new("2x4", [""; 3], 0) };
        let more = |now| of(now).one_more().map(|it| it.quantity);
        let fewer = |now| of(now).one_fewer().map(|it| it.quantity);
        // As many as wanted becomes the first that is counted, and there is none to take from it.
        assert_eq!(
            [more(None), more(Some(1)), more(Some(u32::MAX))],
            [Some(Some(1)), Some(Some(2)), None]
        );
        assert_eq!(
            [fewer(None), fewer(Some(0)), fewer(Some(1)), fewer(Some(2))],
            [None, None, None, Some(Some(1))]
        );
    }

    #[test]
    fn a_count_goes_up_and_down_and_never_below_what_is_cut() {
        let slats = |count: &str| Part::new("slat", count, ["3/4", "3 1/2", "48"]);
        let of = |part: Option<Part>| part.map(|it| it.quantity);
        assert_eq!(of(slats("7").one_more()), Some("8".to_owned()));
        assert_eq!(of(slats("7").one_fewer()), Some("6".to_owned()));
        assert_eq!(of(slats("1").one_fewer()), None);
        assert_eq!(of(slats("1000").one_more()), None);
        // A formula is the person's own.
        assert_eq!(of(slats("boards + 1").one_more()), None);
        let cut = slats("3").with_piece(2, Piece::cut(Dimensions::default()));
        assert_eq!(of(cut.one_fewer()), None);
        // The third is cut, so three at the least; and no more than there can be.
        let all = [0, 2, 3, 12, 1_000, 1_001].map(|count| of(cut.with_count(count)));
        let wanted = [None, None, Some("3"), Some("12"), Some("1000"), None];
        assert_eq!(all, wanted.map(|it| it.map(str::to_owned)));
        assert_eq!(of(slats("boards + 1").with_count(4)), None);
        assert_eq!(of(cut.one_more().and_then(|it| it.one_fewer())), Some("3".to_owned()));
    }
}
