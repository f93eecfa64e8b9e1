//! Tape: work out a measure, find its line on the tape, and divide it.
//!
//! *"How do I take 3/4 twice and two leg widths off this without a mistake? What is half of an
//! odd sixteenth? The tape has no thirds. The hook is loose: can I start at the 1 in line?"*
//!
//! A length is worked out exactly on a [`Strip`](crate::sheet::Strip). Divided into n parts, the
//! marks run from one end, each worked out from the whole length (i × length ÷ n), because
//! stepping off a rounded part adds its error up. With the tape started at another line than
//! zero ("burn an inch"), the line to read is wanted + start.
//!
//! # Source
//!
//! Arithmetic. Running marks from one end and the offset start are common practice, no source.

mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
mod sheet;
#[cfg(test)]
mod tests;

pub use sheet::CALCULATOR;

use crate::measure::{Length, Rounding, Tape};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};
use fields::STRIP;

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The length wanted.
    pub length: Length,
    /// Into how many equal parts; 1 for undivided.
    pub parts: u32,
    /// The line of the tape that is held at the end of the work; zero for its hook.
    pub start_mark: Length,
    /// The tape in hand, for what stepping off would cost.
    pub tape: Tape,
}

/// Where to read the tape.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// One part.
    pub each: Length,
    /// One part at its nearest line: what stepping off would use.
    pub each_on_tape: Length,
    /// The lines to read on the tape, first to last; the last is the end of the length.
    pub marks: Vec<Length>,
    /// How far off the end lies when one rounded part is stepped off all the way: positive when
    /// it lands beyond the end.
    pub stepping_error: Length,
    /// Exactly the length: the last mark less the start. It closes.
    pub closes_at: Length,
}

/// Finds the lines to read.
///
/// # Errors
///
/// - `not-on-the-tape`: the length is not above zero.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::tape, measure::{length, Length, Tape}};
/// // Three parts of 44: 14 2/3 each, and the marks still end at 44.
/// let answer = tape::reckon(&tape::Input {
///     length: length("44")?, parts: 3, start_mark: Length::ZERO, tape: Tape::SIXTEENTHS,
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.marks, [length("14 2/3")?, length("29 1/3")?, length("44")?]);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    if !input.length.is_positive() {
        Err(Refusal::at(
            &STRIP,
            "not-on-the-tape",
            say!["This comes to ", input.length, ". A tape starts at zero."],
            WayOut::advice(say!["Take the smaller measure from the larger one."]),
        ))?;
    }
    let parts = input.parts.max(1);
    let each = (input.length / parts)?;
    let marks = (1..=parts)
        .map(|i| ((input.length * i)? / parts)? + input.start_mark)
        .collect::<Result<Vec<_>, _>>()?;
    let each_on_tape = input.tape.read(each, Rounding::Nearest)?.mark;
    let stepped = (each_on_tape * parts)?;
    let closes_at = (marks.last().copied().unwrap_or(input.start_mark) - input.start_mark)?;
    Ok(Answer { each, each_on_tape, marks, stepping_error: (stepped - input.length)?, closes_at })
}
