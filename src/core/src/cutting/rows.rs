//! What a plan can break, and the checker's rules for one row of pieces.

use super::plan::Placed;
use super::problem::{Job, Part, StockView, Units};

/// The first broken rule found. Boards are numbered by their place in the plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fault {
    /// The plan names a board, scrap or part that the job does not have.
    NotInJob {
        /// The board of the plan.
        board: usize,
    },
    /// More boards or scraps of one kind than there are.
    OverLimit {
        /// The board's or scrap's id.
        id: String,
    },
    /// A board of the plan from which nothing is cut.
    NothingCut {
        /// The board of the plan.
        board: usize,
    },
    /// A part is cut too often or too seldom.
    WrongCount {
        /// The part's id.
        part: String,
        /// How many the job wants.
        wanted: u64,
        /// How many the plan cuts and leaves out together.
        planned: u64,
    },
    /// Parts are left out where all must be cut.
    LeftOut,
    /// A part is cut from stock that it cannot come from: other wood, other section, other thickness.
    WrongStock {
        /// The board of the plan.
        board: usize,
        /// The part's id.
        part: String,
    },
    /// A part is as wide, thick or long as its strip, layer or block is not.
    WrongSize {
        /// The board of the plan.
        board: usize,
        /// The part's id.
        part: String,
    },
    /// A part is turned though its grain matters.
    TurnedGrain {
        /// The board of the plan.
        board: usize,
        /// The part's id.
        part: String,
    },
    /// A piece starts in a trim or clean-up or before the board.
    BeforeStart {
        /// The board of the plan.
        board: usize,
    },
    /// A piece ends in a trim or clean-up or beyond the board.
    PastEnd {
        /// The board of the plan.
        board: usize,
    },
    /// Two neighbouring pieces overlap, or are closer than the kerf, or are not listed in order.
    TooClose {
        /// The board of the plan.
        board: usize,
    },
    /// A piece reaches into a knot zone.
    InKnot {
        /// The board of the plan.
        board: usize,
    },
    /// The job or the part forbids the ripping this needs.
    RipForbidden {
        /// The board of the plan.
        board: usize,
    },
    /// The job or the part forbids the resawing this needs.
    ResawForbidden {
        /// The board of the plan.
        board: usize,
    },
    /// A strip is too narrow, a layer too thin, a strip too wide to resaw, or a board or block too short to rip.
    BeyondSaw {
        /// The board of the plan.
        board: usize,
    },
    /// The plan's cost is not the sum of its boards' prices.
    WrongCost {
        /// What the boards cost.
        actual_cents: i64,
    },
}

/// The part that a placed piece names.
pub(super) fn part_of<'a>(job: &'a Job, board: usize, piece: &Placed) -> Result<&'a Part, Fault> {
    job.parts.get(piece.part).ok_or(Fault::NotInJob { board })
}

/// Rules 1 to 3 for pieces along the board.
pub(super) fn check_along(
    job: &Job,
    board: usize,
    view: StockView<'_>,
    spans: &[(Units, Units)],
) -> Result<(), Fault> {
    let kerf = job.saw.kerf;
    let start = view.trims.left;
    let end = view.length - view.trims.right;
    check_row(board, spans, start, end, kerf)?;
    for zone in view.knots {
        // The saw passes through a zone inside the usable length; a zone at an end goes with that end.
        let inside = zone.from > start && zone.to < end;
        let blocked_to = if inside { zone.to.max(zone.from + kerf) } else { zone.to };
        if spans.iter().any(|&(from, to)| from < blocked_to && to > zone.from) {
            return Err(Fault::InKnot { board });
        }
    }
    Ok(())
}

/// Pieces in order between `start` and `end` with at least `kerf` between neighbours.
pub(super) fn check_row(
    board: usize,
    spans: &[(Units, Units)],
    start: Units,
    end: Units,
    kerf: Units,
) -> Result<(), Fault> {
    let mut free_from = start;
    for (place, &(from, to)) in spans.iter().enumerate() {
        if from < start {
            return Err(Fault::BeforeStart { board });
        }
        if from < free_from {
            return Err(if place == 0 {
                Fault::BeforeStart { board }
            } else {
                Fault::TooClose { board }
            });
        }
        if to > end {
            return Err(Fault::PastEnd { board });
        }
        free_from = to + kerf;
    }
    Ok(())
}
