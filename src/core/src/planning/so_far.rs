//! How far a job is: boards bought and cut, pieces cut, money spent and to come.

use crate::cutting::Source;
use crate::job::cut_labels::Money;
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
    /// Spent on boards of the plan, and what the rest of it costs, in hundredths; `None` without a plan or prices.
    pub money: Option<(i64, i64)>,
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
    let plan = job.find_cut_plan(false).or_else(|| job.find_cut_plan(true));
    let Some((plan, states)) = plan.and_then(|id| job.cut_plan(id)) else { return all };
    let (mut spent, mut to_come) = (0_i64, 0_i64);
    for (cut, state) in plan.plan.boards.iter().zip(&states) {
        let price = match cut.source {
            Source::Board(at) => plan.asked.boards.get(at).map(|board| board.price_cents),
            Source::Scrap(_) => None,
        };
        let board = match (state, price) {
            (BoardState::Cut | BoardState::Different { .. }, _) => Board::Cut,
            (BoardState::ToCut, Some(_)) => Board::ToBuy,
            _ => Board::OnHand,
        };
        let sum = if board == Board::ToBuy { &mut to_come } else { &mut spent };
        *sum = sum.saturating_add(price.unwrap_or(0));
        all.boards.push(board);
    }
    all.money = (plan.labels.money == Money::Cents).then_some((spent, to_come));
    all
}
