//! Exact measures: the one place for units, rounding and the text of a length.
//!
//! A [`Length`] is a rational number of inches and never rounds. [`text`] reads what people
//! write and prints it back. A [`Tape`] says how the user's tape is marked; reading a length on
//! it gives the nearest [mark and what is left over](Reading). An [`Angle`] and what comes of it are
//! floats; [`Length::near`] brings such a length back to a tape.

mod angle;
mod length;
pub mod limits;
mod number;
mod tape;
pub mod text;
mod unit;

pub use angle::Angle;
pub use length::{Area, Length};
pub use number::{Number, OutOfRange};
pub use tape::{Fineness, Lean, Reading, Rounding, Tape};
pub use text::{TextProblem, length};
pub use unit::{Partner, Unit};
