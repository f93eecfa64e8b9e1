//! How far a job is: boards bought and cut, pieces cut. What it costs is said by [`to_buy`](crate::to_buy).

use crate::cutting::Source;
use crate::job::{BoardState, Job, Reckoned, part_sizes};

/// How far one board of the plan in use is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Board {
    /// Still at the yard.
    ToBuy,
    /// On the rack.
    OnHand,
    /// Cut.
    Cut,
}

/// How far a job is.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SoFar {
    /// The boards of the plan in use, in its order; empty without a plan.
    pub boards: Vec<Board>,
    /// Pieces that are cut.
    pub pieces_cut: u32,
    /// All pieces.
    pub pieces: u32,
}

impl SoFar {
    /// How many boards are so far.
    #[must_use]
    pub fn count(&self, wanted: Board) -> usize {
        self.boards.iter().filter(|board| **board == wanted).count()
    }
}

/// How far a job is, by the plan in use and the pieces ticked off.
#[must_use]
pub fn so_far(job: &Job, reckoned: &Reckoned) -> SoFar {
    let mut all = SoFar::default();
    for part in part_sizes(job, reckoned) {
        let count = part.quantity.unwrap_or(0);
        all.pieces = all.pieces.saturating_add(count);
        all.pieces_cut = all.pieces_cut.saturating_add(part.done.min(count));
    }
    let plan = job.plan_in_use().and_then(|id| job.cut_plan(id));
    let Some((plan, states)) = plan else { return all };
    let boards = plan.plan.boards.iter().zip(&states).map(|(cut, state)| match state {
        BoardState::Cut | BoardState::Different { .. } => Board::Cut,
        BoardState::ToCut if matches!(cut.source, Source::Board(_)) => Board::ToBuy,
        _ => Board::OnHand,
    });
    all.boards = boards.collect();
    all
}
