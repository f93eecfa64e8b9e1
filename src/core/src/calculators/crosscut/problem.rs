//! Why parts cannot be cut as asked.

use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A board that gives no such part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// Nothing is left between the trims.
    TrimsTakeTheBoard {
        /// The board.
        board: Length,
        /// Shortest board for one part.
        least_board: Length,
    },
    /// The part is longer than what is left between the trims.
    PartTooLong {
        /// The part.
        part: Length,
        /// What is left.
        longest: Length,
        /// Shortest board for one part.
        least_board: Length,
    },
    /// The part is longer than every stretch between the knots.
    NoClearPlace {
        /// The part.
        part: Length,
        /// Longest clear stretch.
        longest: Length,
    },
    /// More parts than are listed.
    TooManyParts {
        /// Most that are listed.
        most: u32,
        /// Shortest part that gives no more.
        least_part: Length,
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
            Problem::TrimsTakeTheBoard { .. } => "trims-take-the-board",
            Problem::PartTooLong { .. } => "part-too-long",
            Problem::NoClearPlace { .. } => "no-clear-place",
            Problem::TooManyParts { .. } => "too-many-parts",
            Problem::TooLarge => "too-large",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::TrimsTakeTheBoard { .. } | Problem::TooLarge => "board",
            Problem::NoClearPlace { .. } => "knots",
            Problem::PartTooLong { .. } | Problem::TooManyParts { .. } => "part",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::TrimsTakeTheBoard { board, .. } => {
                say!["The trims take the whole board of ", *board, "."]
            }
            Problem::PartTooLong { part, longest, .. } => say![
                "A part of ",
                *part,
                " does not fit: ",
                (*longest, Rounding::Down),
                " is left between the trims."
            ],
            Problem::NoClearPlace { part, longest } => say![
                "No place is clear of knots for ",
                *part,
                ". The longest is ",
                (*longest, Rounding::Down),
                "."
            ],
            Problem::TooManyParts { most, .. } => {
                say!["That is more than ", *most, " parts from one board."]
            }
            Problem::TooLarge => say!["This is too large or too fine to work out exactly."],
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match self {
            Problem::TrimsTakeTheBoard { least_board, .. }
            | Problem::PartTooLong { least_board, .. } => WayOut::set(
                say!["One part needs a board of ", (*least_board, Rounding::Up), "."],
                "board",
                exact_text(*least_board),
            ),
            Problem::NoClearPlace { longest, .. } if longest.is_positive() => WayOut::set(
                say!["Cut parts of ", (*longest, Rounding::Down), " instead."],
                "part",
                exact_text(*longest),
            ),
            Problem::NoClearPlace { .. } => WayOut::advice(say!["Take another board."]),
            Problem::TooManyParts { least_part, .. } => WayOut::set(
                say!["Parts of ", (*least_part, Rounding::Up), " or longer can be listed."],
                "part",
                exact_text(*least_part),
            ),
            Problem::TooLarge => WayOut::advice(say!["Use smaller numbers or plainer fractions."]),
        }
    }
}
