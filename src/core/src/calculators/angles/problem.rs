//! Angles that cannot be cut as asked.

use crate::measure::text::exact_text;
use crate::measure::{Length, OutOfRange};
use crate::say;
use crate::sheet::{self, Sentence, WayOut};

/// Angles that cannot be cut as asked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Problem {
    /// A leg that is said to lean two ways leans neither way.
    Upright,
    /// The end of a butted side would run out to a feather edge.
    FeatherEdge {
        /// Degrees out of square through the board.
        tilt: f64,
    },
    /// The leaning sides meet before the board ends.
    SidesMeet {
        /// Across the wider end.
        across: Length,
        /// What the lean of both sides takes off it.
        taken: Length,
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
            Problem::Upright => "upright",
            Problem::FeatherEdge { .. } => "feather-edge",
            Problem::SidesMeet { .. } => "sides-meet",
            Problem::TooLarge => "too-large",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::Upright => "rake",
            Problem::FeatherEdge { .. } => "joint",
            Problem::SidesMeet { .. } => "across",
            Problem::TooLarge => "mode",
        }
    }

    fn sentence(&self) -> Sentence {
        match *self {
            Problem::Upright => say!["With both at 0 the leg stands upright and leans nowhere."],
            Problem::FeatherEdge { tilt } => {
                say![format!("This end would be cut {tilt:.0}° out of square, to a feather edge.")]
            }
            Problem::SidesMeet { across, taken } => say![
                "The lean takes ",
                taken,
                " off a width of ",
                across,
                ": the sides meet before the boards end."
            ],
            Problem::TooLarge => say!["These numbers are too large or too fine to reckon with."],
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match *self {
            Problem::Upright => WayOut::advice(say!["Give one of the two angles."]),
            Problem::FeatherEdge { .. } => {
                WayOut::set_id(say!["Mitre the ends."], "joint", "mitred".to_owned())
            }
            Problem::SidesMeet { taken, .. } => {
                let enough = (taken + Length::sixty_fourths(64)).ok()?;
                let whole = Length::of_inch(enough.in_inches().ceil(), 1).ok()?;
                WayOut::set_id(
                    say!["Use narrower boards, or ", whole, " across or more."],
                    "across",
                    exact_text(whole),
                )
            }
            Problem::TooLarge => WayOut::advice(say!["Use lengths that a tape can show."]),
        }
    }
}
