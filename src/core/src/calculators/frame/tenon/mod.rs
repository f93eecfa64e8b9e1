//! Two tenons that come into one leg from neighbouring faces: do they meet?

mod sheet;

pub(super) use sheet::work;

use super::{MORTISE_EXTRA, Problem};
use crate::measure::Length;
use crate::sheet::Problems;

/// Least wood between the bottom of a mortise and the outside of the leg: 1/8 in.
/// Common practice, no source.
pub const LEAST_WALL: Length = Length::sixty_fourths(8);

/// What to check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The leg, square.
    pub leg: Length,
    /// Thickness of both tenons.
    pub thickness: Length,
    /// Outside face of the leg to the nearer cheek of each tenon; `None` when they are centred.
    pub outside_to_cheek: Option<Length>,
    /// Length of the two tenons, shoulder to tip.
    pub lengths: [Length; 2],
}

/// Two tenons that do not meet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Outside face of the leg to the nearer cheek of each tenon.
    pub outside_to_cheek: Length,
    /// Longest that both may be alike and still not meet.
    pub longest_alike: Length,
    /// Longest single tenon, whose mortise leaves [`LEAST_WALL`] on the outside.
    pub longest_alone: Length,
    /// What is left between tip of the shorter one and cheek of the other.
    pub clear: Length,
}

/// Whether two tenons in a square leg meet.
///
/// A tenon that comes in by `a` reaches to `leg - a` from the far outside face. It meets the
/// other one when it reaches into that one's thickness and is reached into itself. Both alike,
/// the longest is leg - outside to cheek - thickness; centred, that is half of leg - thickness.
/// The tenons are taken to be at the same height.
///
/// # Errors
///
/// Tenons that meet, that lie outside the leg, or whose mortise comes out of it.
///
/// # Source
///
/// Geometry; for centred tenons the trade's rule (S - t) / 2.
pub fn reckon(input: &Input) -> Result<Answer, Problems<Problem>> {
    let Input { leg, thickness, lengths: [a, b], .. } = *input;
    let free = (leg - thickness)?;
    let outside_to_cheek = match input.outside_to_cheek {
        Some(distance) => distance,
        None => (free / 2)?,
    };
    if outside_to_cheek > free || free.is_negative() {
        return Err(Problem::TenonOutsideLeg { thickness, leg, most: free }.into());
    }
    let longest_alike = (free - outside_to_cheek)?;
    let longest_alone = ((leg - MORTISE_EXTRA)? - LEAST_WALL)?;
    if !longest_alone.is_positive() {
        return Err(Problem::LegTooThinForTenon { leg }.into());
    }
    let mut problems = Vec::new();
    for (field, tenon) in [("tenon_a", a), ("tenon_b", b)] {
        if tenon > longest_alone {
            problems.push(Problem::MortiseComesOut { field, tenon, most: longest_alone });
        }
    }
    let shorter = a.min(b);
    if shorter > longest_alike {
        let most = longest_alike.min(longest_alone);
        problems.push(Problem::TenonsMeet { by: (shorter - longest_alike)?, most });
    }
    Problems::unless_none(problems)?;
    Ok(Answer { outside_to_cheek, longest_alike, longest_alone, clear: (longest_alike - shorter)? })
}
