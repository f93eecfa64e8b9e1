//! Which screw holes to slot, and by how much, so that the wood can move.

mod sheet;

pub(super) use sheet::work;

use super::Change;
use crate::measure::{Length, OutOfRange};

/// What to reckon slots from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Distance of each loose screw from the fixed one, across the grain, either side.
    pub from_fixed: Vec<Length>,
    /// Hole that a screw just slips through.
    pub hole: Length,
    /// How much the wood changes.
    pub change: Change,
}

/// One loose screw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// Distance from the fixed screw.
    pub from_fixed: Length,
    /// How far its hole moves towards the fixed screw; below zero away from it.
    pub moves_in: Length,
    /// The slot, end to end.
    pub length: Length,
}

/// The slots.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Each loose screw.
    pub slots: Vec<Slot>,
    /// How loose the farthest one must be.
    pub most: Length,
}

/// Slots for screws that hold a plank or a top across its grain.
///
/// One screw is tight. A hole at a distance from it moves by distance × shrinkage, so it is
/// longer by that. When the wood shrinks, the hole moves in and the screw stays: the slot goes
/// outward from the screw. When it swells, inward.
///
/// # Errors
///
/// [`OutOfRange`]: sizes beyond exact keeping.
///
/// # Source
///
/// Geometry, with the shrinkage of [`Change`]; worked by hand as case T4 in
/// `tests/reference/top.rs`.
pub fn reckon(input: &Input) -> Result<Answer, OutOfRange> {
    let factor = input.change.factor()?;
    let mut slots = Vec::with_capacity(input.from_fixed.len());
    let mut most = Length::ZERO;
    for &from_fixed in &input.from_fixed {
        let moves_in = (from_fixed - (from_fixed * factor)?)?;
        most = most.max(moves_in.abs());
        slots.push(Slot { from_fixed, moves_in, length: (input.hole + moves_in.abs())? });
    }
    Ok(Answer { slots, most })
}
