//! What a search for plans came to. The search itself is no part of the core; these are the words in which it answers.

use super::{Certificate, CutProblem, Plan};

/// What the planner found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outcome {
    /// The best plan found.
    pub plan: Plan,
    /// No plan costs less, in cents.
    pub bound_cents: i64,
    /// The plan is proved cheapest: its cost equals the bound.
    pub proved: bool,
    /// No plan as cheap cuts fewer boards and scraps.
    pub fewest_boards: bool,
    /// No plan as cheap with as few boards leaves a longer single offcut. Only looked for where boards are cut to length
    /// and not ripped.
    pub longest_offcut: bool,
    /// What proves the bound, one for each group of parts that shares no boards with the others.
    pub certificates: Vec<Certificate>,
    /// Steps the search took.
    pub work: u64,
    /// The listener stopped the search.
    pub stopped: bool,
}

/// What the planner found for a job to be cut from the rack only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RackOutcome {
    /// The best plan found; it says which parts are left out.
    pub plan: Plan,
    /// No plan cuts more parts of the best priority, nor, with as many of these, more of the next, and so on.
    pub proved: bool,
    /// Steps the search took.
    pub work: u64,
    /// The listener stopped the search.
    pub stopped: bool,
}

/// What buying boards of a single kind comes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SingleBoard {
    /// By its place in [`Job::boards`](super::Job::boards).
    pub board: usize,
    /// The best plan with only these boards (and the scraps), or why there is none.
    pub outcome: Result<Outcome, CutProblem>,
}

/// The next cheapest store run.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NextRun {
    /// A plan that buys other boards.
    pub plan: Plan,
    /// No plan that buys other boards costs less than this, in cents.
    pub bound_cents: i64,
}
