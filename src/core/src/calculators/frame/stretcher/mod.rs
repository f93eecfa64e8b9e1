//! The block that holds a stretcher at its height, whichever way up the frame is put together.

mod sheet;

pub(super) use sheet::work;

use super::Problem;
use crate::measure::Length;
use crate::sheet::Problems;

/// Which line of the stretcher a height is meant for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Its lower edge.
    LowerEdge,
    /// The middle of its width.
    Middle,
    /// Its upper edge.
    UpperEdge,
}

/// What to reckon the block from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// Floor to top of leg.
    pub leg_length: Length,
    /// Top of leg down to the upper edge of the apron.
    pub apron_down: Length,
    /// Upper to lower edge of the apron; zero without one.
    pub apron_width: Length,
    /// Upper to lower edge of the stretcher.
    pub stretcher_width: Length,
    /// Floor to the line of the stretcher that is meant.
    pub height: Length,
    /// The line that is meant.
    pub line: Line,
}

/// Where the stretcher lies.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Block under the stretcher with the frame on its feet: floor to lower edge.
    pub floor_block: Length,
    /// Block between apron and stretcher, either way up: lower edge to upper edge.
    pub apron_block: Length,
    /// Floor to the upper edge.
    pub upper_edge: Length,
    /// Top of leg to the upper edge, for marking legs from their tops.
    pub from_leg_top: Length,
}

/// The block under a stretcher.
///
/// Floor block + stretcher + apron block + apron + its drop = length of the leg.
///
/// # Errors
///
/// An apron that does not fit on the leg; a stretcher below the floor or into the apron.
///
/// # Source
///
/// Arithmetic.
pub fn reckon(input: &Input) -> Result<Answer, Problems<Problem>> {
    let Input { leg_length, apron_down, apron_width, stretcher_width, height, line } = *input;
    let above_line = match line {
        Line::LowerEdge => Length::ZERO,
        Line::Middle => (stretcher_width / 2)?,
        Line::UpperEdge => stretcher_width,
    };
    let apron_edge = ((leg_length - apron_down)? - apron_width)?;
    let floor_block = (height - above_line)?;
    let upper_edge = (floor_block + stretcher_width)?;
    let apron_block = (apron_edge - upper_edge)?;
    if apron_edge < stretcher_width {
        let most = (leg_length - stretcher_width)?;
        return Err(Problem::NoRoomForStretcher { left: apron_edge, stretcher_width, most }.into());
    }
    if floor_block.is_negative() {
        return Err(Problem::StretcherBelowFloor { height, least: above_line }.into());
    }
    if apron_block.is_negative() {
        return Err(Problem::StretcherInApron { height, most: (height + apron_block)? }.into());
    }
    let from_leg_top = (leg_length - upper_edge)?;
    Ok(Answer { floor_block, apron_block, upper_edge, from_leg_top })
}
