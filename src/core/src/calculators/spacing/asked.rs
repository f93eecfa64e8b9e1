//! What is to be spaced, and what is in the way.

use crate::measure::{Length, Tape};
use crate::sheet::Span;

/// Most zones to keep out of.
pub const MOST_ZONES: usize = 12;

/// What is to be spaced, and what is in the way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Length of the board, or of the opening between two posts.
    pub length: Length,
    /// What is wanted.
    pub wish: Wish,
    /// Where the first mark or slat stands.
    pub left: End,
    /// Where the last mark or slat stands.
    pub right: End,
    /// Where nothing may stand, from the left end.
    pub keep_out: Vec<Span>,
    /// No two marks may stand closer than this, and no two slats leave less between them.
    pub least_gap: Option<Length>,
    /// For the error of stepping off the gap as this tape shows it.
    pub tape: Tape,
}

/// What is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wish {
    /// So many marks.
    Count(u32),
    /// As few marks as keep every gap at or under this.
    NoGapOver(Length),
    /// This step, set off from both ends.
    Step(Length),
    /// As many slats as bring the gap nearest to this; where zones make the gaps uneven, the
    /// middle one by size.
    SlatsNear {
        /// Width of one slat.
        width: Length,
        /// The gap aimed at.
        gap: Length,
    },
    /// So many slats.
    Slats {
        /// Width of one slat.
        width: Length,
        /// How many.
        count: u32,
    },
}

impl Wish {
    /// Width of a slat.
    #[must_use]
    pub fn slat_width(self) -> Option<Length> {
        match self {
            Wish::SlatsNear { width, .. } | Wish::Slats { width, .. } => Some(width),
            Wish::Count(_) | Wish::NoGapOver(_) | Wish::Step(_) => None,
        }
    }
}

/// Where the first or the last stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// So far from the end: a mark itself, or the outer edge of a slat.
    At(Length),
    /// A gap like the others away. For a fixed step, one step.
    LikeTheGaps,
}
