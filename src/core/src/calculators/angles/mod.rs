//! Angles: a leg that leans one way or two, and the sides of a box that lean.
//!
//! *"How long is a leg splayed 10 degrees so that the top is 17 high? What angle at the top and
//! the foot? It leans two ways: in which direction do I drill? What do I set for a tapered
//! planter, and why do I find two answers for the same one?"*
//!
//! One module for each question, with its own `Input`, `Answer` and `reckon`: a [`leg`] that
//! leans one way, a leg that leans [`two_ways`], and the [`sides`] of a frame or box. There are
//! two settings for the same planter because a board can lie flat on the saw or stand on its
//! edge.
//!
//! Angles and what comes of them are floats; lengths are brought back to the tape by
//! [`Length::near`](crate::measure::Length::near), within 1/8192 in.
//!
//! # Source
//!
//! Geometry. Every closed form is checked in `tests/laws/angles.rs` against boards built from
//! points in space, for 3 to 12 sides. The tilt of a leaning side on edge is asin(sin lean ×
//! sin(180° ÷ sides)): a rule in circulation with a cosine in place of the second sine agrees
//! only for four sides.

mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
pub mod leg;
mod sheet;
pub mod sides;
#[cfg(test)]
mod tests;
pub mod two_ways;

pub use sheet::CALCULATOR;

/// How a piece is presented to the saw.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lay {
    /// A face on the table.
    Flat,
    /// An edge on the table.
    OnEdge,
}
