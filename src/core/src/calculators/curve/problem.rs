//! Curves that cannot be drawn or cut as asked.

use super::{Board, MOST_MARKS};
use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A curve that cannot be drawn or cut as asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// More than a half circle: the chord is no longer its widest place.
    RiseOverHalf {
        /// Half the chord: the rise of a half circle.
        half: Length,
        /// The field of the rise.
        field: &'static str,
    },
    /// An S-curve of two arcs would run back on itself.
    TooSteep {
        /// Along the board.
        run: Length,
        /// Across it.
        offset: Length,
    },
    /// More than [`MOST_MARKS`] marks.
    TooManyMarks {
        /// From mark to mark.
        step: Length,
        /// The smallest step that is allowed.
        least: Length,
    },
    /// The board has too little wood left.
    BoardTooNarrow {
        /// The board.
        board: Board,
        /// What the curve takes off.
        rise: Length,
        /// What is left; negative when the curve leaves the board.
        left: Length,
    },
    /// The rounds do not fit on the edge.
    EdgeTooShort {
        /// The edge.
        edge: Length,
        /// What the rounds take of it.
        needed: Length,
        /// The largest radius that fits.
        largest: Length,
    },
    /// A number grew beyond the limits.
    TooLarge,
}

impl From<OutOfRange> for Problem {
    fn from(_: OutOfRange) -> Problem {
        Problem::TooLarge
    }
}

impl sheet::Problem for Problem {
    fn code(&self) -> &'static str {
        match self {
            Problem::RiseOverHalf { .. } => "rise-over-half",
            Problem::TooSteep { .. } => "too-steep",
            Problem::TooManyMarks { .. } => "too-many-marks",
            Problem::BoardTooNarrow { .. } => "board-too-narrow",
            Problem::EdgeTooShort { .. } => "edge-too-short",
            Problem::TooLarge => "too-large",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::RiseOverHalf { field, .. } => field,
            Problem::TooSteep { .. } => "offset",
            Problem::TooManyMarks { .. } => "step",
            Problem::BoardTooNarrow { .. } => "board",
            Problem::EdgeTooShort { .. } => "radius",
            Problem::TooLarge => "mode",
        }
    }

    fn sentence(&self) -> Sentence {
        match *self {
            Problem::RiseOverHalf { half, .. } => say![
                "A rise over ",
                half,
                " is more than a half circle. Measure across the widest place."
            ],
            Problem::TooSteep { run, offset } => say![
                "An offset of ",
                offset,
                " is more than the run of ",
                run,
                ". The two arcs would run back on themselves."
            ],
            Problem::TooManyMarks { step, .. } => {
                say!["A mark every ", step, " is more than ", MOST_MARKS, " marks."]
            }
            Problem::BoardTooNarrow { board, rise, left } if left.is_positive() => say![
                "A board of ",
                board.width,
                " less ",
                rise,
                " for the curve leaves ",
                left,
                ". You want ",
                board.keep,
                "."
            ],
            Problem::BoardTooNarrow { board, rise, .. } => say![
                "The curve takes ",
                rise,
                " off, and the board is only ",
                board.width,
                " wide."
            ],
            Problem::EdgeTooShort { edge, needed, .. } => {
                say!["The round takes ", needed, " of the edge, which is only ", edge, " long."]
            }
            Problem::TooLarge => {
                say!["These numbers are too large or too fine to reckon with."]
            }
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match *self {
            Problem::RiseOverHalf { half, field } => {
                WayOut::set_id(say!["Use a rise of ", half, " or less."], field, exact_text(half))
            }
            Problem::TooSteep { run, .. } => WayOut::set_id(
                say!["Use an offset of ", run, " or less."],
                "offset",
                exact_text(run),
            ),
            Problem::TooManyMarks { least, .. } => WayOut::set_id(
                say!["Use a step of ", (least, Rounding::Up), " or more."],
                "step",
                exact_text(least),
            ),
            Problem::BoardTooNarrow { board, rise, .. } => {
                let needed = (rise + board.keep).ok()?;
                if board.keep.is_positive() {
                    let words = say!["Use a board of ", (needed, Rounding::Up), " or more."];
                    WayOut::set_id(words, "board", exact_text(needed))
                } else {
                    WayOut::advice(say!["Use a board of more than ", needed, "."])
                }
            }
            Problem::EdgeTooShort { largest, .. } if largest.is_positive() => WayOut::set_id(
                say!["Use a radius of ", (largest, Rounding::Down), " or less."],
                "radius",
                exact_text(largest),
            ),
            Problem::EdgeTooShort { .. } => WayOut::advice(say!["Use a longer edge."]),
            Problem::TooLarge => {
                WayOut::advice(say!["Use a length that a tape can show, and a larger rise."])
            }
        }
    }
}
