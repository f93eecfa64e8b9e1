//! How many boards side by side cover a width, with some to spare.

use super::fields::WASTE;
use crate::measure::{Length, Number, OutOfRange};
use crate::say;
use crate::sheet::{Refusal, Refused, WayOut};

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Input {
    /// The width to cover.
    pub width: Length,
    /// Actual width of one board.
    pub board: Length,
    /// Gap between two boards.
    pub gap: Length,
    /// Waste in percent of what is bought: under 100.
    pub waste: Number,
}

/// How many.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Answer {
    /// Boards laid side by side, before waste, exactly.
    pub laid: Number,
    /// Boards that are seen when laid: `laid` rounded up.
    pub rows: u32,
    /// Boards to buy.
    pub buy: u32,
}

/// Counts the boards: (width + gap) ÷ (board + gap) ÷ (1 - waste), rounded up at the end only.
///
/// # Errors
///
/// - `all-waste`: 100 % waste or more.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
///
/// # Source
///
/// Army Engineer EN01136, lesson 5; with no gap it is the rule of that self-test.
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let hundred = Number::whole(100);
    if input.waste >= hundred {
        return Err(Refusal::at(
            &WASTE,
            "all-waste",
            say!["With all of it waste, no number of boards is enough."],
            WayOut::set(say!["15 % is usual."], &WASTE, "15".to_owned()),
        )
        .into());
    }
    let laid = ((input.width + input.gap)? / (input.board + input.gap)?)?;
    let kept = ((hundred - input.waste)? / hundred)?;
    let rows = whole(laid)?;
    let buy = whole((laid / kept)?)?;
    Ok(Answer { laid, rows, buy })
}

fn whole(number: Number) -> Result<u32, OutOfRange> {
    u32::try_from(number.ceil()).map_err(|_| OutOfRange)
}
