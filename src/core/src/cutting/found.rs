//! What a search for plans came to. The search itself is no part of the core; these are the words in which it answers.

use super::{Certificate, CutProblem, Plan};

/// How plans of equal money are ranked, and what of it is proved of a plan; what is not proved is the best that was found.
///
/// Boards come first: one more has to be carried, squared and looked over for knots before anything is set. Then what
/// [`Effort`](super::Effort) counts, and the offcut last: wood that is kept is worth less than an hour saved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Ties {
    /// No plan as cheap cuts fewer boards and scraps.
    pub fewest_boards: bool,
    /// Of those with as few boards, none has fewer settings of fence and stop.
    pub fewest_settings: bool,
    /// Of those with as few settings, none has fewer cuts.
    pub fewest_cuts: bool,
    /// Of those with as few cuts, none leaves a longer single offcut.
    pub longest_offcut: bool,
}

/// What the search that a plan came from proved of it; kept with the plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Backing {
    /// The search ended with its proof: no plan costs less, or none cuts more from the rack.
    pub is_proved: bool,
    /// [`check_certificate`](super::check_certificate) worked the whole bound out again; else parts of it only the search
    /// vouches for.
    pub is_checked: bool,
    /// What of its rank among plans of equal money is proved; `None` where the search did not end by itself.
    pub ties: Option<Ties>,
    /// The plan was taken in place of the one that was found, which costs so much, in cents.
    pub in_place_of: Option<i64>,
}

/// What the planner found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outcome {
    /// The best plan found.
    pub plan: Plan,
    /// No plan costs less, in cents.
    pub bound_cents: i64,
    /// The plan is proved cheapest: its cost equals the bound.
    pub proved: bool,
    /// What of its rank among plans of equal money is proved.
    pub ties: Ties,
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
