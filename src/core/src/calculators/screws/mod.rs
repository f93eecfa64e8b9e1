//! Screws and holes: how long, which bits, how far from the ends, at which angle, whether two of
//! them meet, what one holds, and how many to buy.
//!
//! One question at a time, each a module of its own with a pure `reckon`. Lengths are exact;
//! angles, and loads from empirical formulas, are floats.
//!
//! | question | rule |
//! | --- | --- |
//! | [`length`] | longest = both thicknesses - margin - what the head is sunk |
//! | [`pilot`] | 70 % of the tabulated root in softwood, 90 % in hardwood; never above the root |
//! | [`placing`] | distances in diameters of the shank |
//! | [`angled`] | start = exit ÷ tan A from the end; depth = P cos A, sideways P sin A |
//! | [`corner`] | shortest way between two axes, against their sizes |
//! | [`hold`] | withdrawal per inch of thread; yield modes for side load |
//! | [`buy`] | counts and spares |

pub mod angled;
mod at_hand;
pub mod buy;
pub mod corner;
mod fastener;
// A table: a field in two lines.
#[rustfmt::skip]
pub(crate) mod fields;
pub mod hold;
pub mod length;
pub mod pilot;
pub mod placing;
mod sheet;
#[cfg(test)]
mod tests;
mod wood;

pub use sheet::CALCULATOR;
pub use wood::Wood;

use crate::measure::Length;

/// Least way into the receiver that is called a hold at all: 3/8 in. Common practice, no source.
pub const LEAST_INTO: Length = Length::sixty_fourths(24);
