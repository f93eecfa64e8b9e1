//! Crosscut: how many equal parts come off a board, where the cuts go, what is left.
//!
//! *"How many 17 1/2 pieces are in an eight-footer after I trim the checked ends? Does the seventh
//! block fit? Which parts around that knot? How many boards do I buy?"*
//!
//! With usable length U = board - both trims, part p and kerf k, a clear board gives
//! floor((U + k) ÷ (p + k)) parts: the last part needs no kerf when it ends the board. Knots are
//! kept out by laying the parts from the left end, each as far left as it fits clear of them;
//! for equal parts no other way gives more.
//!
//! # Source
//!
//! Arithmetic. Trimming checked ends is common practice, no source.

mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
mod sheet;
#[cfg(test)]
mod tests;

pub use sheet::CALCULATOR;

use crate::measure::{Length, Number, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{Refusal, Refused, Span, WayOut};
use fields::{BOARD, KNOTS, PART};

/// Most parts from one board that are listed.
const MOST_PARTS: u32 = 200;

/// What is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// The board, end to end, as measured.
    pub board: Length,
    /// Cut off each end, the cut included.
    pub trim: Length,
    /// One part.
    pub part: Length,
    /// Width of the saw cut.
    pub kerf: Length,
    /// Places from the left end that no part may hold.
    pub knots: Vec<Span>,
    /// How many parts the job needs.
    pub wanted: u32,
}

/// What one board gives.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answer {
    /// The parts, from the left end of the board.
    pub parts: Vec<Span>,
    /// Cut ends between the trims, from the left end of the board.
    pub usable: Span,
    /// What is left between the last cut and the right trim.
    pub leftover: Length,
    /// Pieces that fall out between parts because of a knot.
    pub passed_over: Vec<Span>,
    /// Shortest board, trims included, that gives one part more when it is clear.
    pub for_one_more: Length,
    /// How many such boards the job needs.
    pub boards: u32,
}

/// Lays the parts along the board.
///
/// # Errors
///
/// - `trims-take-the-board`: nothing is left between the trims.
/// - `part-too-long`: longer than what is left; names the board that would do.
/// - `no-clear-place`: it would fit, but not between the knots.
/// - `too-many-parts`: more than can be listed.
/// - [`Refused::OutOfRange`]: a number beyond the limits.
///
/// # Examples
///
/// ```
/// # use reckoner_core::{calculators::crosscut, measure::{length, Length}};
/// let answer = crosscut::reckon(&crosscut::Input {
///     board: length("96")?, trim: length("1/2")?, part: length("17 1/2")?, kerf: length("1/8")?,
///     knots: Vec::new(), wanted: 10,
/// }).map_err(|_| "refused")?;
/// assert_eq!(answer.parts.len(), 5);
/// assert_eq!(answer.leftover, length("6 7/8")?);
/// assert_eq!(answer.boards, 2);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reckon(input: &Input) -> Result<Answer, Refused> {
    let usable = Span { from: input.trim, to: (input.board - input.trim)? };
    let room = (usable.to - usable.from)?;
    let longer_board = |least: Length| {
        let words = say!["One piece needs a board of ", (least, Rounding::Up), "."];
        WayOut::set(words, &BOARD, (least, Rounding::Up))
    };
    let least_board = (input.part + (input.trim * 2)?)?;
    if !room.is_positive() {
        Err(Refusal::at(
            &BOARD,
            "trims-take-the-board",
            say!["The trims take the whole board of ", input.board, "."],
            longer_board(least_board),
        ))?;
    }
    if input.part > room {
        let room = (room, Rounding::Down);
        Err(Refusal::at(
            &PART,
            "part-too-long",
            say!["A piece of ", input.part, " does not fit: ", room, " is left between the trims."],
            longer_board(least_board),
        ))?;
    }
    let pitch = (input.part + input.kerf)?;
    let at_most = ((room + input.kerf)? / pitch)?;
    if at_most >= Number::whole(i64::from(MOST_PARTS) + 1) {
        let least = (room / MOST_PARTS)?;
        Err(Refusal::at(
            &PART,
            "too-many-parts",
            say!["That is more than ", MOST_PARTS, " pieces from one board."],
            WayOut::set(
                say!["Pieces of ", (least, Rounding::Up), " or longer can be listed."],
                &PART,
                (least, Rounding::Up),
            ),
        ))?;
    }
    let parts = lay(input, usable)?;
    let Some(last) = parts.last() else {
        return Err(no_clear_place(input.part, clear(input, usable)?).into());
    };
    let leftover = ((usable.to - last.to)? - input.kerf)?.max(Length::ZERO);
    let passed_over = passed_over(input, usable, &parts)?;
    let n_parts = u32::try_from(parts.len()).map_err(|_| OutOfRange)?;
    let one_more = ((pitch * n_parts)? + input.part)?;
    let for_one_more = (one_more + (input.trim * 2)?)?;
    let boards = input.wanted.div_ceil(n_parts);
    Ok(Answer { parts, usable, leftover, passed_over, for_one_more, boards })
}

fn no_clear_place(part: Length, longest: Length) -> Refusal {
    let shown = (longest, Rounding::Down);
    let way_out = if longest.is_positive() {
        let words = say!["Cut pieces of ", shown, " instead."];
        WayOut::set(words, &PART, shown)
    } else {
        WayOut::advice(say!["Take another board."])
    };
    let words = say!["No place is clear of knots for ", part, ". The longest is ", shown, "."];
    Refusal::at(&KNOTS, "no-clear-place", words, way_out)
}

/// Each part as far left as it fits clear of the knots.
fn lay(input: &Input, usable: Span) -> Result<Vec<Span>, OutOfRange> {
    let mut knots = input.knots.clone();
    crate::order::sort(&mut knots);
    let mut parts = Vec::new();
    let mut from = usable.from;
    loop {
        // Knots are in order of their nearer end, so one pass moves the part past all of them.
        for knot in &knots {
            if knot.from < (from + input.part)? && from < knot.to {
                from = knot.to;
            }
        }
        let to = (from + input.part)?;
        if to > usable.to {
            return Ok(parts);
        }
        parts.push(Span { from, to });
        from = (to + input.kerf)?;
    }
}

/// Longest stretch between the trims that is clear of knots.
fn clear(input: &Input, usable: Span) -> Result<Length, OutOfRange> {
    let mut knots = input.knots.clone();
    crate::order::sort(&mut knots);
    let (mut longest, mut from) = (Length::ZERO, usable.from);
    for knot in knots {
        longest = longest.max((knot.from.min(usable.to) - from)?);
        from = from.max(knot.to);
    }
    Ok(longest.max((usable.to - from)?))
}

/// What falls out before a part that had to move on for a knot, one kerf off at each cut end.
fn passed_over(input: &Input, usable: Span, parts: &[Span]) -> Result<Vec<Span>, OutOfRange> {
    let mut pieces = Vec::new();
    let mut from = usable.from;
    for part in parts {
        let to = (part.from - input.kerf)?;
        if to > from {
            pieces.push(Span { from, to });
        }
        from = (part.to + input.kerf)?;
    }
    Ok(pieces)
}
