//! What can be wrong with a cutting job, as text.

use reckoner_core::cutting::CutProblem;
use serde::{Deserialize, Serialize};

use super::{CutTextProblem, MOST_CUT_LINES, short, text};

/// The losses that a job can name.
const LOSSES: [&str; 10] = [
    "end trim",
    "crosscut kerf",
    "rip kerf",
    "edge clean-up",
    "least strip width",
    "resaw kerf",
    "face clean-up",
    "least layer thickness",
    "greatest resaw width",
    "loss",
];

#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub(super) enum ProblemV1 {
    NoParts,
    NoBoards,
    SameId(String),
    UnknownSection { id: String, section: String },
    LengthNotPositive(String),
    LengthTooLarge(String),
    PriceNotPositive(String),
    PriceTooLarge(String),
    TooManyParts(u64),
    LossOutOfRange(String),
    KnotOutside(String),
    NothingUsable(String),
    PartFitsNowhere { id: String, length: i64, longest_clear: Option<i64> },
    NotEnoughBoards { left_out: Vec<(String, u32)>, proved: bool },
}

impl From<&CutProblem> for ProblemV1 {
    fn from(problem: &CutProblem) -> ProblemV1 {
        match problem.clone() {
            CutProblem::NoParts => ProblemV1::NoParts,
            CutProblem::NoBoards => ProblemV1::NoBoards,
            CutProblem::SameId { id } => ProblemV1::SameId(id),
            CutProblem::UnknownSection { id, section } => ProblemV1::UnknownSection { id, section },
            CutProblem::LengthNotPositive { id } => ProblemV1::LengthNotPositive(id),
            CutProblem::LengthTooLarge { id } => ProblemV1::LengthTooLarge(id),
            CutProblem::PriceNotPositive { id } => ProblemV1::PriceNotPositive(id),
            CutProblem::PriceTooLarge { id } => ProblemV1::PriceTooLarge(id),
            CutProblem::TooManyParts { wanted } => ProblemV1::TooManyParts(wanted),
            CutProblem::LossOutOfRange { what } => ProblemV1::LossOutOfRange(what.to_owned()),
            CutProblem::KnotOutside { id } => ProblemV1::KnotOutside(id),
            CutProblem::NothingUsable { id } => ProblemV1::NothingUsable(id),
            CutProblem::PartFitsNowhere { id, length, longest_clear } => {
                ProblemV1::PartFitsNowhere { id, length, longest_clear }
            }
            CutProblem::NotEnoughBoards { left_out, proved } => {
                ProblemV1::NotEnoughBoards { left_out, proved }
            }
        }
    }
}

impl ProblemV1 {
    pub(super) fn problem(self) -> Result<CutProblem, CutTextProblem> {
        Ok(match self {
            ProblemV1::NoParts => CutProblem::NoParts,
            ProblemV1::NoBoards => CutProblem::NoBoards,
            ProblemV1::SameId(id) => CutProblem::SameId { id: text(id)? },
            ProblemV1::UnknownSection { id, section } => {
                CutProblem::UnknownSection { id: text(id)?, section: text(section)? }
            }
            ProblemV1::LengthNotPositive(id) => CutProblem::LengthNotPositive { id: text(id)? },
            ProblemV1::LengthTooLarge(id) => CutProblem::LengthTooLarge { id: text(id)? },
            ProblemV1::PriceNotPositive(id) => CutProblem::PriceNotPositive { id: text(id)? },
            ProblemV1::PriceTooLarge(id) => CutProblem::PriceTooLarge { id: text(id)? },
            ProblemV1::TooManyParts(wanted) => CutProblem::TooManyParts { wanted },
            ProblemV1::LossOutOfRange(what) => CutProblem::LossOutOfRange {
                what: LOSSES.into_iter().find(|loss| *loss == what).unwrap_or("loss"),
            },
            ProblemV1::KnotOutside(id) => CutProblem::KnotOutside { id: text(id)? },
            ProblemV1::NothingUsable(id) => CutProblem::NothingUsable { id: text(id)? },
            ProblemV1::PartFitsNowhere { id, length, longest_clear } => {
                CutProblem::PartFitsNowhere { id: text(id)?, length, longest_clear }
            }
            ProblemV1::NotEnoughBoards { left_out, proved } => {
                short(&left_out, MOST_CUT_LINES, "parts left out")?;
                let left = |(id, quantity)| Ok((text(id)?, quantity));
                let left_out = left_out.into_iter().map(left).collect::<Result<_, _>>()?;
                CutProblem::NotEnoughBoards { left_out, proved }
            }
        })
    }
}
