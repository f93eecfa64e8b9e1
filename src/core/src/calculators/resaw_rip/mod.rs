//! Resaw and rip: where the fence and the blade go to make a section, strips, or a guided cut.
//!
//! Three questions share the saw: [`section`] squares up or resizes a section, [`strips`] rips a
//! board or a blank into strips, and [`guide`] sets the guide of a hand-held circular saw.
//!
//! The fence is always measured **fence to near tooth**, which is the width of the piece between
//! fence and blade. Nothing is rounded on the way, but for an equal split, where the fence is set
//! on a mark of the tape, downwards.

mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
pub mod guide;
pub mod lean;
mod nearest;
mod refused;
pub mod saw;
pub mod section;
mod sheet;
pub mod strips;

#[cfg(test)]
mod tests;

pub use sheet::CALCULATOR;

use crate::sheet::Refused;

/// One of the three questions.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Input {
    /// Square up or resize a section.
    Section(section::Input),
    /// Strips from a board or a blank.
    Strips(strips::Input),
    /// Guide of a hand-held circular saw.
    Guide(guide::Input),
}

/// The answer to one of the three questions.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Answer {
    /// Fence and blade for each cut of a section.
    Section(section::Answer),
    /// Fence list, strips and leftover.
    Strips(strips::Answer),
    /// Where the guide goes.
    Guide(guide::Answer),
}

/// Answers whichever question was asked.
///
/// # Errors
///
/// All refusals of that question, see [`section::reckon`], [`strips::reckon`] and
/// [`guide::reckon`].
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    match input {
        Input::Section(input) => section::reckon(input).map(Answer::Section),
        Input::Strips(input) => strips::reckon(input).map(Answer::Strips),
        Input::Guide(input) => guide::reckon(input).map(Answer::Guide),
    }
}
