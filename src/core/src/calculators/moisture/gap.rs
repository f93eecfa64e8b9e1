//! Boards side by side: the gap of today and the gap of later, and the width of the whole top.
//!
//! Each board is held at its own middle, so the middles stay where they are and every gap opens by
//! what one board loses.

use super::fields::{FIND_LATER, GAP_TODAY, GAP_WANTED, KNOWN};
use super::movement::{Moistures, Spread, Wood, spread};
use crate::calculators::wet_gaps;
use crate::measure::{Length, OutOfRange};
use crate::sheet::Refused;
use crate::tables::shrinkage::Across;

/// Which gap is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// The gap left today; the gap later is wanted.
    Today(Length),
    /// The gap wanted later; the gap to leave today is wanted.
    Later(Length),
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// One board, as measured today.
    pub width: Length,
    /// How many boards, at least two.
    pub boards: u32,
    /// The gap that is known.
    pub known: Known,
    /// The wood.
    pub wood: Wood,
    /// Moisture today and later.
    pub moistures: Moistures,
}

/// What the gaps and the whole top measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Gap today.
    pub gap_now: Length,
    /// Likely gap later.
    pub gap_later: Length,
    /// Gaps later of boards that move least and of those that move most, where known. Below zero:
    /// those boards would press on each other.
    pub gap_ends: Option<(Length, Length)>,
    /// One board later.
    pub width_later: Length,
    /// Edge to edge of the whole, today.
    pub top_now: Length,
    /// Edge to edge of the whole, later.
    pub top_later: Length,
    /// Edge to edge later, were it one glued panel free to move.
    pub panel_later: Length,
    /// How the width was found.
    pub spread: Spread,
}

/// Opens or closes the gaps.
///
/// # Errors
///
/// Those of [`spread`], and
/// - `gap-closes`: the boards would press on each other later; names the mark of the tape that is
///   enough today.
/// - `opens-further`: even boards laid tight today gap more than wanted later; lays them tight.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let spread = spread(input.wood, Across::Width, input.moistures)?;
    let width_later = spread.later(input.width)?;
    let lost = (input.width - width_later)?;
    let (gap_now, gap_later) = match input.known {
        Known::Today(gap) => (gap, (gap + lost)?),
        Known::Later(gap) => ((gap - lost)?, gap),
    };
    if gap_later.is_negative() {
        return Err(wet_gaps::closes(&GAP_TODAY, "gap-closes", -lost).into());
    }
    if gap_now.is_negative() {
        let today = (&KNOWN, FIND_LATER);
        let refusal =
            wet_gaps::opens_further(&GAP_WANTED, "opens-further", lost, today, &GAP_TODAY);
        return Err(refusal.into());
    }
    let ends = spread.ends_later(input.width)?;
    let later = |width: Length| -> Result<Length, OutOfRange> { gap_now + (input.width - width)? };
    let gap_ends =
        ends.map(|(least, most)| Ok::<_, OutOfRange>((later(least)?, later(most)?))).transpose()?;
    let pitch = (input.width + gap_now)?;
    let between = (pitch * input.boards.saturating_sub(1))?;
    Ok(Answer {
        gap_now,
        gap_later,
        gap_ends,
        width_later,
        top_now: (between + input.width)?,
        top_later: (between + width_later)?,
        panel_later: (width_later * input.boards)?,
        spread,
    })
}
