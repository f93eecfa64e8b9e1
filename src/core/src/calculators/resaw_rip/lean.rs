//! What a blade that does not stand square leaves on the sawn face.
//!
//! # Rule
//!
//! The lean is the gap at the tip of the blade beside a square, with the blade at full reach. So the
//! cut wanders off by lean ÷ reach of its way up. A cut in one pass leaves a face that is out of
//! square by that over its whole depth. From both edges, with the same face to the fence, both cuts
//! wander the same way and meet in the middle: a ridge there on one of the two pieces and a hollow in
//! the other, half a depth high.
//!
//! # Source
//!
//! Plane geometry, worked by hand in `tests.rs`.

use super::fields::LEAN;
use super::saw::{Saw, Sweep};
use crate::measure::Length;
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// A blade that leans by more than a sixteenth of its reach is tilted, not a little off.
const MOST: u32 = 16;

/// What is left on the face of one cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Left {
    /// Over this much of the depth the cut wanders off: the whole of it, or half.
    pub over: Length,
    /// By so much.
    pub by: Length,
    /// A ridge in the middle; else the whole face is out of square.
    pub is_ridge: bool,
}

/// What a lean leaves on this face; none where a core is sawn by hand.
///
/// # Errors
///
/// `tilted`, beside the lean, where it is more than a sixteenth of the reach.
pub fn left(sweep: &Sweep, lean: Length, saw: &Saw) -> Result<Option<Left>, Refused> {
    let most = (saw.reach / MOST)?;
    if lean > most {
        Err(Refusal::at(
            &LEAN,
            "blade-tilted",
            say![
                "A gap of ",
                lean,
                " over ",
                saw.reach,
                " is a tilted blade. Set it square first."
            ],
            WayOut::at_most("It can be ", most, " or less here.", &LEAN),
        ))?;
    }
    if lean.is_zero() || sweep.core.is_positive() {
        return Ok(None);
    }
    let is_ridge = sweep.sides == 2;
    let over = if is_ridge { (sweep.depth / 2)? } else { sweep.depth };
    Ok(Some(Left { over, by: (over * (lean / saw.reach)?)?, is_ridge }))
}
