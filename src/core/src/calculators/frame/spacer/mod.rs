//! The block under a rail, which sets how far it lies back from the face of its leg.

mod sheet;

pub(super) use sheet::work;

use super::Problem;
use crate::measure::Length;
use crate::sheet::Problems;

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
/// A rail thicker than the leg, and a set-back or a block that would push the rail out of it.
///
/// # Source
///
/// Arithmetic; worked by hand as case J3 in `tests/reference/frame.rs`.
pub fn reckon(input: &Input) -> Result<Answer, Problems<Problem>> {
    let Input { leg, rail, lay } = *input;
    let free = (leg - rail)?;
    if free.is_negative() {
        return Err(Problem::RailThickerThanLeg { rail, leg }.into());
    }
    let centred = (free / 2)?;
    let outside_down = match lay {
        Lay::OutsideDown(set_back) | Lay::InsideDown(set_back) if set_back > free => {
            return Err(Problem::SetBackTooDeep { set_back, most: free }.into());
        }
        Lay::Block(block) if block > free => {
            return Err(Problem::BlockTooThick { block, most: free }.into());
        }
        Lay::OutsideDown(set_back) | Lay::InsideDown(set_back) => set_back,
        Lay::Block(block) => block,
        Lay::Centred => centred,
    };
    Ok(Answer { outside_down, inside_down: (free - outside_down)?, centred })
}
