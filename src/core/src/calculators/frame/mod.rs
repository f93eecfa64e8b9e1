//! Joining a frame: the rail between the legs, the blocks that hold it in place, the joints, and
//! whether the frame is square.
//!
//! One question at a time, each a module of its own with a pure `reckon`. All lengths are exact,
//! and every size is meant **as measured on the real part**: a leg that came out 1/16 thin moves
//! the rail, not the plan.
//!
//! | question | rule |
//! | --- | --- |
//! | [`rail`] | overall = left leg + leg to leg + right leg; the joints are added to the cut |
//! | [`spacer`] | block under the rail when the frame is clamped up flat on the bench |
//! | [`stretcher`] | block that holds the lower rail at its height |
//! | [`support`] | cross pieces between the front and the back rail |
//! | [`tenon`] | two tenons that come into one leg from neighbouring faces |
//! | [`lap`] | half-lap of two thicknesses, flush at the show face |
//! | [`square`] | the diagonal, and which way to push when two of them differ |

// A table: a field in two lines.
#[rustfmt::skip]
pub(crate) mod fields;
pub mod lap;
pub mod rail;
mod sheet;
pub mod spacer;
pub mod square;
pub mod stretcher;
pub mod support;
pub mod tenon;
#[cfg(test)]
mod tests;

pub use sheet::CALCULATOR;

use crate::measure::Length;

/// How much deeper than its tenon a mortise is cut, so that the shoulder closes: 1/8 in.
/// Common practice, no source.
pub const MORTISE_EXTRA: Length = Length::sixty_fourths(8);
