//! Why lumber cannot be reckoned as asked.

use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A question about lumber that has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// The standard has no such thickness.
    NoSuchThickness {
        /// As asked.
        nominal: Length,
        /// The nearest one it has.
        nearest: Length,
    },
    /// The standard has no such width.
    NoSuchWidth {
        /// As asked.
        nominal: Length,
        /// The nearest one it has.
        nearest: Length,
    },
    /// More water than the wood can hold.
    TooWet {
        /// Most it can hold, in whole percent.
        most: u32,
    },
    /// Everything bought would be waste.
    AllWaste,
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
            Problem::NoSuchThickness { .. } => "no-such-thickness",
            Problem::NoSuchWidth { .. } => "no-such-width",
            Problem::TooWet { .. } => "too-wet",
            Problem::AllWaste => "all-waste",
            Problem::TooLarge => "too-large",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::NoSuchThickness { .. } => "nominal_thickness",
            Problem::NoSuchWidth { .. } => "nominal_width",
            Problem::TooWet { .. } => "moisture",
            Problem::AllWaste => "waste",
            Problem::TooLarge => "section",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::NoSuchThickness { nominal, .. } => {
                say!["The standard has no nominal thickness of ", *nominal, "."]
            }
            Problem::NoSuchWidth { nominal, .. } => {
                say!["The standard has no nominal width of ", *nominal, "."]
            }
            Problem::TooWet { most } => {
                say![format!("This wood cannot hold more than {most} % of water.")]
            }
            Problem::AllWaste => say!["With all of it waste, no number of boards is enough."],
            Problem::TooLarge => say!["This is too large or too fine to work out."],
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        let nearest = |field, nearest: Length| {
            let sentence = say!["The nearest is ", nearest, ". Or measure the board."];
            WayOut::set_id(sentence, field, exact_text(nearest))
        };
        match self {
            Problem::NoSuchThickness { nearest: size, .. } => nearest("nominal_thickness", *size),
            Problem::NoSuchWidth { nearest: size, .. } => nearest("nominal_width", *size),
            Problem::TooWet { most } => {
                WayOut::set_id(say![format!("Use {most} % or less.")], "moisture", most.to_string())
            }
            Problem::AllWaste => WayOut::set_id(say!["15 % is usual."], "waste", "15".to_owned()),
            Problem::TooLarge => WayOut::advice(say!["Use smaller numbers or plainer fractions."]),
        }
    }
}
