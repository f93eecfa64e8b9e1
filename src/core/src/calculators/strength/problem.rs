//! Why a beam cannot be checked as asked.

use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange, Rounding, Tape};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// A beam or a load that cannot be checked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// A load stands beyond an end.
    LoadOffTheSpan {
        /// Where it stands, from the left support.
        at: Length,
        /// The span.
        span: Length,
    },
    /// Nothing lies on it.
    NoLoad,
    /// It bends more than a tenth of its span: the formula no longer holds.
    BendsTooFar {
        /// Depth, or diameter, that keeps both limits.
        least_depth: Length,
        /// Whether it is a round rail.
        is_round: bool,
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
            Problem::LoadOffTheSpan { .. } => "load-off-the-span",
            Problem::NoLoad => "no-load",
            Problem::BendsTooFar { .. } => "bends-too-far",
            Problem::TooLarge => "too-large",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::LoadOffTheSpan { .. } | Problem::NoLoad => "places",
            Problem::BendsTooFar { is_round: true, .. } => "diameter",
            Problem::BendsTooFar { is_round: false, .. } => "depth",
            Problem::TooLarge => "span",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::LoadOffTheSpan { at, span } => {
                say!["A load stands at ", *at, ", off the span of ", *span, "."]
            }
            Problem::NoLoad => say!["Nothing lies on it. Say where the loads stand."],
            Problem::BendsTooFar { .. } => {
                say![
                    "It would bend more than a tenth of its span: no sag can be told, and do not build it."
                ]
            }
            Problem::TooLarge => say!["This is too large or too fine to work out."],
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match self {
            Problem::LoadOffTheSpan { span, .. } => {
                WayOut::advice(say!["Places run from 0 at the left support to ", *span, "."])
            }
            Problem::NoLoad => WayOut::advice(say!["One load at 12 is written 12."]),
            Problem::BendsTooFar { least_depth, is_round } => {
                // To the next sixteenth up, so that what is set is a size one can cut.
                let depth = Tape::SIXTEENTHS
                    .read(*least_depth, Rounding::Up)
                    .map_or(*least_depth, |reading| reading.mark);
                let (field, words) = if *is_round {
                    ("diameter", "A diameter of ")
                } else {
                    ("depth", "A depth of ")
                };
                let sentence =
                    say![words, (depth, Rounding::Up), " is enough. Or put in a middle support."];
                WayOut::set_id(sentence, field, exact_text(depth))
            }
            Problem::TooLarge => WayOut::advice(say!["Use sizes of a bench, not of a bridge."]),
        }
    }
}
