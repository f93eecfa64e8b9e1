//! The top: planks and gaps, overhang, how it moves when it dries, which holes to slot, and
//! whether a load at its end lifts the other end.
//!
//! One question at a time, each a module of its own with a pure `reckon`. All lengths are exact;
//! shrinkage is exact too, because its formula is. Widths and the base are meant **as measured on
//! the real part**.
//!
//! | question | rule |
//! | --- | --- |
//! | [`planks`] | top = planks + (planks - 1) × gap, solved for the gap, the planks or the top |
//! | [`overhang`] | overhang = (top - base) ÷ 2, along and across |
//! | [`season`] | each plank shrinks about its own middle; gaps open by what it loses |
//! | [`slot`] | a hole moves by its distance from the fixed screw × shrinkage |
//! | [`tip`] | load × how far beyond the legs, against weight × half the leg spacing |

// A table: a field in two lines.
#[rustfmt::skip]
pub(crate) mod fields;
mod moisture;
pub mod overhang;
pub mod planks;
pub mod season;
mod sheet;
pub mod slot;
#[cfg(test)]
mod tests;
pub mod tip;

pub use moisture::Change;
pub use sheet::CALCULATOR;
