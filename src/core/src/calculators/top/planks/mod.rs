//! Planks and gaps that fill a top, solved for any one of them.

mod sheet;

pub(super) use sheet::work;

use super::Problem;
use crate::measure::{Length, OutOfRange};
use crate::sheet::Problems;

/// What is wanted, and what is known for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Find {
    /// The gap that fills the top.
    Gap {
        /// Width of the top, across the planks.
        top: Length,
    },
    /// One width to rip every plank to.
    RipAll {
        /// Width of the top, across the planks.
        top: Length,
        /// Between two planks.
        gap: Length,
    },
    /// One width to rip the outer two planks to; the others stay.
    RipOuter {
        /// Width of the top, across the planks.
        top: Length,
        /// Between two planks.
        gap: Length,
    },
    /// The width of the top.
    Top {
        /// Between two planks.
        gap: Length,
    },
}

/// What to reckon the planks from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Width of each plank as measured, from the left.
    pub widths: Vec<Length>,
    /// What is wanted.
    pub find: Find,
}

/// Planks that fill the top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Width of each plank as it is laid, from the left.
    pub widths: Vec<Length>,
    /// Between two planks.
    pub gap: Length,
    /// Width of the top.
    pub top: Length,
    /// Left edge of each plank, from the left edge of the top.
    pub left_edges: Vec<Length>,
    /// All gaps together: the spacers laid side by side.
    pub gaps_together: Length,
    /// When the gap is no whole 32nd: the spacers just below and above it, and the tops they
    /// make.
    pub spacers: Option<[Spacer; 2]>,
}

/// A spacer on a mark of the tape.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spacer {
    /// Its thickness.
    pub thickness: Length,
    /// Width of the top that it makes.
    pub top: Length,
}

/// Planks and gaps that fill a top.
///
/// Top = planks + (planks - 1) × gap. For the outer two, what the others and the gaps leave is
/// shared by two. Nothing is rounded; a spacer on a mark and what it makes stand beside the
/// exact gap.
///
/// # Errors
///
/// Planks wider than the top, gaps that leave nothing, a plank narrower than what is wanted of it,
/// fewer planks than the question needs.
///
/// # Source
///
/// Arithmetic; worked by hand as case T1 in `tests/reference/top.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Problems<Problem>> {
    let (Some(&first), Some(&last)) = (input.widths.first(), input.widths.last()) else {
        return Err(Problem::NoPlanks.into());
    };
    let n = u32::try_from(input.widths.len()).map_err(|_| Problem::OutOfRange)?;
    let planks = sum(&input.widths)?;
    let n_gaps = n.saturating_sub(1);
    let (widths, gap) = match input.find {
        Find::Top { gap } => (input.widths.clone(), gap),
        Find::Gap { .. } | Find::RipOuter { .. } if n_gaps == 0 => {
            return Err(Problem::OnePlank { width: first }.into());
        }
        Find::Gap { top } => {
            if planks > top {
                return Err(Problem::PlanksOverfill { planks, top }.into());
            }
            (input.widths.clone(), ((top - planks)? / n_gaps)?)
        }
        Find::RipAll { top, gap } => {
            let width = ((top - (gap * n_gaps)?)? / n)?;
            let have = input.widths.iter().copied().fold(first, Length::min);
            if !width.is_positive() {
                return Err(Problem::GapsFillTop { top, without_gaps: true }.into());
            }
            if width > have {
                let free = (top - (have * n)?)?;
                let gap = if n_gaps == 0 { None } else { Some((free / n_gaps)?) };
                return Err(Problem::PlankTooNarrow { wanted: width, have, gap }.into());
            }
            (vec![width; input.widths.len()], gap)
        }
        Find::RipOuter { top, gap } => {
            let middle = ((planks - first)? - last)?;
            let width = (((top - (gap * n_gaps)?)? - middle)? / 2)?;
            let have = first.min(last);
            if !width.is_positive() {
                return Err(Problem::GapsFillTop { top, without_gaps: top > middle }.into());
            }
            if width > have {
                let free = ((top - middle)? - (have * 2)?)?;
                let gap = Some((free / n_gaps)?);
                return Err(Problem::PlankTooNarrow { wanted: width, have, gap }.into());
            }
            let mut widths = input.widths.clone();
            for outer in [0, input.widths.len().saturating_sub(1)] {
                if let Some(plank) = widths.get_mut(outer) {
                    *plank = width;
                }
            }
            (widths, gap)
        }
    };
    let gaps_together = (gap * n_gaps)?;
    let laid = sum(&widths)?;
    let mut left_edges = Vec::with_capacity(widths.len());
    let mut edge = Length::ZERO;
    for width in &widths {
        left_edges.push(edge);
        edge = ((edge + *width)? + gap)?;
    }
    let spacers = if n_gaps > 0 { spacers(gap, n_gaps, laid)? } else { None };
    Ok(Answer { widths, gap, top: (laid + gaps_together)?, left_edges, gaps_together, spacers })
}

fn sum(lengths: &[Length]) -> Result<Length, OutOfRange> {
    lengths.iter().try_fold(Length::ZERO, |sum, length| sum + *length)
}

/// The spacers on the 32nds around a gap that lies on none.
fn spacers(gap: Length, n_gaps: u32, planks: Length) -> Result<Option<[Spacer; 2]>, OutOfRange> {
    let mark = Length::sixty_fourths(2);
    let marks = (gap / mark)?;
    if marks.is_whole() {
        return Ok(None);
    }
    let spacer = |count: i128| {
        let thickness = (mark * crate::measure::Number::ratio(count, 1)?)?;
        Ok(Spacer { thickness, top: (planks + (thickness * n_gaps)?)? })
    };
    Ok(Some([spacer(marks.floor())?, spacer(marks.ceil())?]))
}
