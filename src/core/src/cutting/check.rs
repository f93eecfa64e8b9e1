//! The checker: says whether a plan keeps every rule of the problem. It shares no code with the search.

use super::check_rips::{check_crosscut_first, check_rip_first};
use super::plan::{CutBoard, Layout, Plan, Source};
use super::problem::{Job, StockView};
use super::rows::{Fault, check_along, part_of};

/// What a plan may do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct CheckOptions {
    /// Planned from the rack only: parts may be left out, if the plan says so.
    pub may_leave_out: bool,
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
