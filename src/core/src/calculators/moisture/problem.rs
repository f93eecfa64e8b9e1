//! Why wood cannot be dried or wetted as asked.

use crate::measure::text::{decimal, exact_text};
use crate::measure::{Length, Number, OutOfRange, Rounding};
use crate::say;
use crate::sheet::{self, Problems, Sentence, WayOut};

/// A question about moisture that has no answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Problem {
    /// Drier than the formula for ordinary softwood goes.
    BelowFormula {
        /// Field of the moisture.
        field: &'static str,
    },
    /// Between the wettest that the formula goes to and wet.
    BetweenFormula {
        /// Field of the moisture.
        field: &'static str,
    },
    /// Only the coefficient from 6 to 14 % is known of this wood.
    NoFigureOutside,
    /// Only the flat-sawn figure is known of this wood.
    NoQuarterFigure,
    /// Boards would press on each other later.
    GapCloses {
        /// Gap of today that is just enough.
        least_now: Length,
    },
    /// Even boards laid tight gap more than wanted.
    OpensFurther {
        /// What tight boards gap later.
        least_later: Length,
    },
    /// Driest above wettest.
    WrongWayRound {
        /// As asked.
        driest: Number,
        /// As asked.
        wettest: Number,
    },
    /// A number grew beyond the limits.
    TooLarge,
}

impl Problem {
    /// All of them as one refusal; there is always at least one.
    pub(super) fn all(problems: Vec<Problem>) -> Problems<Problem> {
        Problems::unless_none(problems).err().unwrap_or_else(|| Problem::TooLarge.into())
    }
}

impl From<OutOfRange> for Problem {
    fn from(_: OutOfRange) -> Problem {
        Problem::TooLarge
    }
}

impl sheet::Problem for Problem {
    fn code(&self) -> &'static str {
        match self {
            Problem::BelowFormula { .. } => "below-formula",
            Problem::BetweenFormula { .. } => "between-formula",
            Problem::NoFigureOutside => "no-figure-outside",
            Problem::NoQuarterFigure => "no-quarter-figure",
            Problem::GapCloses { .. } => "gap-closes",
            Problem::OpensFurther { .. } => "opens-further",
            Problem::WrongWayRound { .. } => "wrong-way-round",
            Problem::TooLarge => "too-large",
        }
    }

    fn field(&self) -> &'static str {
        match self {
            Problem::BelowFormula { field } | Problem::BetweenFormula { field } => field,
            Problem::NoFigureOutside => "wood",
            Problem::NoQuarterFigure => "grain",
            Problem::GapCloses { .. } => "gap_now",
            Problem::OpensFurther { .. } => "gap_later",
            Problem::WrongWayRound { .. } => "driest",
            Problem::TooLarge => "width",
        }
    }

    fn sentence(&self) -> Sentence {
        match self {
            Problem::BelowFormula { .. } => {
                say!["The formula for ordinary softwood stands from 8 to 19 %, not below."]
            }
            Problem::BetweenFormula { .. } => {
                say![
                    "The formula for ordinary softwood stands from 8 to 19 %, and for wet wood at 28 %."
                ]
            }
            Problem::NoFigureOutside => {
                say!["Of this wood only the figure from 6 to 14 % is known."]
            }
            Problem::NoQuarterFigure => say!["Of this wood only the flat-sawn figure is known."],
            Problem::GapCloses { least_now } => say![
                "The gap would close, and the boards press on each other. They swell by up to ",
                (*least_now, Rounding::Up),
                "."
            ],
            Problem::OpensFurther { least_later } => {
                say!["Even boards laid tight today gap ", (*least_later, Rounding::Up), " later."]
            }
            Problem::WrongWayRound { driest, wettest } => say![format!(
                "The driest, {} %, is above the wettest, {} %.",
                decimal(*driest, 1),
                decimal(*wettest, 1)
            )],
            Problem::TooLarge => say!["This is too large or too fine to work out exactly."],
        }
    }

    fn way_out(&self) -> Option<WayOut> {
        match self {
            Problem::BelowFormula { field } => {
                WayOut::set_id(say!["Use 8 %, or choose the species."], field, "8".to_owned())
            }
            Problem::BetweenFormula { field } => WayOut::set_id(
                say!["Take it as wet: 28 %. Or choose the species."],
                field,
                "28".to_owned(),
            ),
            Problem::NoFigureOutside => WayOut::set_id(
                say!["Keep both moistures from 6 to 14 %, or reckon with ordinary softwood."],
                "wood",
                "softwood".to_owned(),
            ),
            Problem::NoQuarterFigure => WayOut::set_id(
                say!["Reckon with flat-sawn, which moves more."],
                "grain",
                "flat".to_owned(),
            ),
            Problem::GapCloses { least_now } => WayOut::set_id(
                say!["Leave ", (*least_now, Rounding::Up), " or more today."],
                "gap_now",
                exact_text(*least_now),
            ),
            Problem::OpensFurther { least_later } => WayOut::set_id(
                say!["Lay them tight, and take ", (*least_later, Rounding::Up), "."],
                "gap_later",
                exact_text(*least_later),
            ),
            Problem::WrongWayRound { driest, wettest } => Some(WayOut {
                sentence: say!["Change them round."],
                set: vec![("driest", wettest.to_string()), ("wettest", driest.to_string())],
            }),
            Problem::TooLarge => WayOut::advice(say!["Use smaller numbers or plainer fractions."]),
        }
    }
}
