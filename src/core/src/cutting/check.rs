//! The checker: says whether a plan keeps every rule of the problem. It shares no code with the search.

use super::check_rips::{check_crosscut_first, check_rip_first};
use super::plan::{CutBoard, Layout, Placed, Plan, Source};
use super::problem::{Job, Part, StockView, Units};

/// What a plan may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CheckOptions {
    /// Planned from the rack only: parts may be left out, if the plan says so.
    pub may_leave_out: bool,
}

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

/// Says whether the plan keeps every rule of [`super`].
///
/// # Errors
/// The first broken rule found.
pub fn check_plan(job: &Job, plan: &Plan, options: CheckOptions) -> Result<(), Fault> {
    let stock: Vec<StockView<'_>> = job.stock().collect();
    let mut used = vec![0_u64; stock.len()];
    let mut cut = vec![0_u64; job.parts.len()];
    for (number, board) in plan.boards.iter().enumerate() {
        let place = match board.source {
            Source::Board(at) if at < job.boards.len() => at,
            Source::Scrap(at) if at < job.scraps.len() => job.boards.len() + at,
            _ => return Err(Fault::NotInJob { board: number }),
        };
        let (Some(view), Some(count)) = (stock.get(place), used.get_mut(place)) else {
            return Err(Fault::NotInJob { board: number });
        };
        *count += 1;
        if view.limit.is_some_and(|limit| *count > u64::from(limit)) {
            return Err(Fault::OverLimit { id: view.id.to_owned() });
        }
        check_board(job, number, board, *view)?;
        let placed = board.placed();
        if placed.is_empty() {
            return Err(Fault::NothingCut { board: number });
        }
        for piece in placed {
            *cut.get_mut(piece.part).ok_or(Fault::NotInJob { board: number })? += 1;
        }
    }
    if !options.may_leave_out && !plan.left_out.is_empty() {
        return Err(Fault::LeftOut);
    }
    for left in &plan.left_out {
        *cut.get_mut(left.part).ok_or(Fault::LeftOut)? += u64::from(left.quantity);
    }
    for (part, planned) in job.parts.iter().zip(cut) {
        if planned != u64::from(part.quantity) {
            return Err(Fault::WrongCount {
                part: part.id.clone(),
                wanted: u64::from(part.quantity),
                planned,
            });
        }
    }
    match plan.price(job) {
        Some(actual_cents) if actual_cents == plan.cost_cents => Ok(()),
        Some(actual_cents) => Err(Fault::WrongCost { actual_cents }),
        None => Err(Fault::NotInJob { board: 0 }),
    }
}

fn check_board(job: &Job, board: usize, cut: &CutBoard, view: StockView<'_>) -> Result<(), Fault> {
    match &cut.layout {
        Layout::Crosscut(parts) => {
            let mut spans = Vec::with_capacity(parts.len());
            for piece in parts {
                let part = part_of(job, board, piece)?;
                if piece.turned {
                    return Err(Fault::TurnedGrain { board, part: part.id.clone() });
                }
                if part.section != view.section {
                    return Err(Fault::WrongStock { board, part: part.id.clone() });
                }
                spans.push((piece.at, piece.at + part.length));
            }
            check_along(job, board, view, &spans)
        }
        Layout::RipFirst(strips) => check_rip_first(job, board, strips, view),
        Layout::CrosscutFirst(blocks) => check_crosscut_first(job, board, blocks, view),
    }
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
