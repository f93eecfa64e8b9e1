//! The block under a rail, which sets how far it lies back from the face of its leg.

mod sheet;

pub(super) use sheet::work;

use super::fields::{BLOCK, RAIL_THICKNESS, SET_BACK};
use crate::measure::Length;
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// How the frame lies on the bench while it is put together, and what is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lay {
    /// Outside faces on the bench; the rail lies this far back from them.
    OutsideDown(Length),
    /// Inside faces on the bench; the rail lies this far back from the outside faces.
    InsideDown(Length),
    /// The rail in the middle of the leg.
    Centred,
    /// A block of this thickness is at hand: where does it put the rail?
    Block(Length),
}

/// What to reckon a spacer block from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The leg, from its outside face to its inside face.
    pub leg: Length,
    /// The rail, measured the same way.
    pub rail: Length,
    /// How the frame lies.
    pub lay: Lay,
}

/// The blocks for both ways to lay the frame, and where the rail ends up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Block for the outside faces down: bench to rail. The set-back is the same.
    pub outside_down: Length,
    /// Block for the inside faces down: bench to rail. It is also how far the rail lies back
    /// from the inside face.
    pub inside_down: Length,
    /// Block that centres the rail, either way up.
    pub centred: Length,
}

/// The block under a rail.
///
/// Outside faces down, the block is the set-back. Inside faces down, it is leg - rail - set-back.
/// Centred, it is half of leg - rail. For a block at hand, the answer takes it as the one for
/// outside faces down; turned over, the two blocks change places.
///
/// # Errors
///
/// - `rail-thicker-than-leg`.
/// - `set-back-too-deep`, `block-too-thick`: the rail would be pushed out of the leg.
/// - [`Refused::OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Arithmetic; worked by hand as case J3 in `tests/reference/frame.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let Input { leg, rail, lay } = *input;
    let free = (leg - rail)?;
    if free.is_negative() {
        Err(Refusal::at(
            &RAIL_THICKNESS,
            "rail-thicker-than-leg",
            say!["A rail of ", rail, " is thicker than the leg of ", leg, "."],
            WayOut::at_most("Use a rail of ", leg, " or less.", &RAIL_THICKNESS),
        ))?;
    }
    let centred = (free / 2)?;
    let outside_down = match lay {
        Lay::OutsideDown(set_back) | Lay::InsideDown(set_back) if set_back > free => {
            Err(Refusal::at(
                &SET_BACK,
                "set-back-too-deep",
                say!["Set back ", set_back, ", the rail stands out behind the leg."],
                WayOut::at_most("Set it back ", free, " or less.", &SET_BACK),
            ))?
        }
        Lay::Block(block) if block > free => Err(Refusal::at(
            &BLOCK,
            "block-too-thick",
            say!["A block of ", block, " lifts the rail out of the leg."],
            WayOut::at_most("Use a block of ", free, " or less.", &BLOCK),
        ))?,
        Lay::OutsideDown(set_back) | Lay::InsideDown(set_back) => set_back,
        Lay::Block(block) => block,
        Lay::Centred => centred,
    };
    Ok(Answer { outside_down, inside_down: (free - outside_down)?, centred })
}
