//! [`CutPlan`]: a plan kept in the job, and [`CutTicks`]: what has been bought and cut of it.

use super::ItemId;
use super::cut_labels::Labels;
use crate::cutting::{self, Backing, Plan};
use crate::measure::Unit;
use crate::sheet::Entries;

/// A plan with all that it was made from. It does not change when it is ticked off.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutPlan {
    /// What the user calls it.
    pub title: String,
    /// It comes from a quick list, not from the parts of the job.
    pub is_list: bool,
    /// Field ids and texts of the form that it was made with.
    pub entries: Vec<(String, String)>,
    /// What was asked of the planner.
    pub asked: cutting::Job,
    /// The names behind it.
    pub labels: Labels,
    /// How many pieces of each part were wanted, without spares.
    pub pieces: Vec<u32>,
    /// The plan.
    pub plan: Plan,
    /// No plan costs less.
    pub bound_cents: i64,
    /// What the search proved of it; `None` in a job of before that was kept.
    pub backing: Option<Backing>,
    /// What boards cost that were bought by the plans before this one, in hundredths of money.
    pub paid_cents: i64,
}

impl CutPlan {
    /// The form that it was made with, with bare numbers in the unit of the job.
    #[must_use]
    pub fn as_entries(&self, unit: Unit) -> Entries {
        let mut entries = Entries::from_pairs(self.entries.iter().cloned());
        entries.set_unit(Some(unit));
        entries
    }
}

/// What has been bought and cut of a plan.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CutTicks {
    /// The [`CutPlan`].
    pub plan: ItemId,
    /// One for each board of the plan.
    pub boards: Vec<BoardState>,
}

/// How far one board of a plan is.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub enum BoardState {
    /// On the rack from the beginning, or still at the yard.
    #[default]
    ToCut,
    /// Bought and whole; on the rack as this item, where the plan is not a quick list's.
    Bought(Option<ItemId>),
    /// Begun: it is off the rack, and so many pieces of some parts are cut from it, by their place in the cutting job.
    Begun(Vec<(usize, u32)>),
    /// Cut as planned.
    Cut,
    /// Cut, and something came out different.
    Different {
        /// What is good all the same: part by its place in the cutting job, and how many.
        good: Vec<(usize, u32)>,
        /// Lengths left of a board of a quick list, as measured; those of the job are on the rack.
        left: Vec<String>,
    },
}

impl BoardState {
    /// Whether the board is cut up.
    #[must_use]
    pub fn is_cut(&self) -> bool {
        matches!(self, BoardState::Cut | BoardState::Different { .. })
    }

    /// How many pieces of a part are cut from it while it is not cut up yet.
    #[must_use]
    pub fn begun_of(&self, part: usize) -> u32 {
        match self {
            BoardState::Begun(cut) => {
                cut.iter().find(|(known, _)| *known == part).map_or(0, |(_, count)| *count)
            }
            _ => 0,
        }
    }
}
