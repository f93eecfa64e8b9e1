//! The block that holds a stretcher at its height, whichever way up the frame is put together.

mod sheet;

pub(super) use sheet::work;

use super::fields::{APRON_DOWN, APRON_WIDTH, HEIGHT, LEG_LENGTH};
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

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
/// - `no-room-for-stretcher`: it does not fit on the leg under the apron.
/// - `stretcher-below-floor`, `stretcher-in-apron`: at this height.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
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
        Err(no_room(input, apron_edge)?)?;
    }
    if floor_block.is_negative() {
        Err(Refusal::at(
            &HEIGHT,
            "stretcher-below-floor",
            say!["At ", height, " the stretcher reaches below the floor."],
            WayOut::at_least("Lowest is ", above_line, ", on the floor.", &HEIGHT),
        ))?;
    }
    if apron_block.is_negative() {
        let most = (height + apron_block)?;
        Err(Refusal::at(
            &HEIGHT,
            "stretcher-in-apron",
            say!["At ", height, " the stretcher runs into the apron."],
            WayOut::at_most("Highest is ", most, ", right under the apron.", &HEIGHT),
        ))?;
    }
    let from_leg_top = (leg_length - upper_edge)?;
    Ok(Answer { floor_block, apron_block, upper_edge, from_leg_top })
}

/// The leg ends `left` below the apron, which is less than the stretcher.
fn no_room(input: &Input, left: Length) -> Result<Refusal, OutOfRange> {
    let stretcher = input.stretcher_width;
    let sentence = if left.is_negative() {
        say!["The apron reaches ", left.abs(), " below the foot of the leg."]
    } else {
        say!["Under the apron is only ", left, ", and the stretcher is ", stretcher, " wide."]
    };
    let without_apron = (input.leg_length - stretcher)?;
    let way_out = if without_apron.is_positive() {
        Some(WayOut {
            sentence: say!["Without an apron there is room."],
            set: vec![(APRON_WIDTH.id, "0".into()), (APRON_DOWN.id, "0".into())],
        })
    } else {
        let words = "The leg must be longer than apron and stretcher, ";
        WayOut::advice(say![words, stretcher, " at least."])
    };
    Ok(Refusal::at(&LEG_LENGTH, "no-room-for-stretcher", sentence, way_out))
}
