//! Cutting parts from boards: the problem, the plan, the price, and the checker that trusts nobody.
//!
//! # The problem, stated once
//!
//! All sizes are whole numbers of one common unit (see [`scale`]); all prices are whole cents. There is no
//! rounding and no floating point anywhere in this module.
//!
//! **Given** parts (length, quantity, section), boards the yard sells (length, price, perhaps a limit on
//! how many there are), scraps on hand (free, limited) and the saw's habits.
//!
//! **Along the length.** Positions are measured from the board's *left end*.
//! 1. A board of length `L` with end trims `a` (left) and `b` (right) can be used from `a` to `L - b`. A trim
//!    includes the width of its own cut: a 1/2 in trim costs 1/2 in, not 1/2 in and a kerf.
//! 2. A knot zone from `p` to `q` goes through the whole width and thickness. No part may touch its inside.
//!    The saw has to pass through a zone, so a zone keeps at least one kerf clear from its start: it blocks
//!    `p` to `max(q, p + kerf)`. A zone that only touches the usable length at an end is simply cut off with
//!    that end. What is left between zones is a *segment*.
//! 3. Between two neighbouring parts of a segment there is at least one kerf. No cut is needed after a
//!    part that ends exactly at the end of its segment; a rest shorter than the kerf is sawn to dust.
//!    So parts `l1..ln` fit a segment of length `s` exactly when `l1 + .. + ln + (n - 1) * kerf <= s`.
//! 4. Unless ripping is allowed, a part is cut only from a board of its own section.
//!
//! **Across the width** ([`RipRules`]). A part narrower than the board, of the same wood, may be ripped from
//! it when neither the job nor the part forbids it. The grain runs along the length, unless the part's
//! grain is free: then it may also lie turned by a quarter, its length across the board.
//! 5. *Rip first*: edge clean-ups (which include their own cut) come off the width; the rest is ripped into
//!    strips with at least one rip kerf between them. Every part of a strip is exactly as wide as the strip.
//!    Then each strip is crosscut by rules 1 to 3.
//! 6. A strip thicker than its parts may be *resawn* into layers in the same way, by thickness: face
//!    clean-ups, resaw kerf, every part of a layer exactly as thick as the layer. The strip is ripped before
//!    it is resawn. A strip may also be as wide as the whole board: then nothing is ripped and no edge is
//!    cleaned; and a layer as thick as the whole board is not resawn.
//! 7. *Crosscut first* (only where the job allows it): the board is crosscut by rules 1 to 3 into blocks, and
//!    each block is ripped into parts exactly as long as the block. A block is never resawn.
//! 8. No strip narrower, no layer thinner, no resaw taller, and no board or block that is ripped or resawn
//!    shorter than the limits the saw's rules give.
//!
//! **Wanted**: every part cut once, for the least money. "Money" counts whole boards bought; scraps are free. How plans of
//! equal money are ranked stands at [`Ties`].
//!
//! # What counts as proof
//!
//! [`Certificate`] is a lower bound that [`check_certificate`] works out again from the job alone. A plan is
//! *proved cheapest* only when such a bound, or a search that finished, equals the plan's cost.

mod certificate;
mod check;
mod check_rips;
mod cuts;
mod done;
mod found;
mod knapsack;
mod plan;
mod problem;
mod rows;
pub mod scale;

pub use certificate::{
    Certificate, CertificateFault, Claim, check_certificate, next_attainable_cost,
};
pub use check::{CheckOptions, check_plan};
pub(crate) use cuts::in_cutting_order;
pub use cuts::{Cut, CutKind, Effort, Piece};
pub use done::{Done, DoneProblem, refined, replan_from, with_spares};
pub use found::{Backing, NextRun, Outcome, RackOutcome, SingleBoard, Ties};
pub use plan::{Block, CutBoard, Layer, Layout, LeftOut, Offcut, Placed, Plan, Source, Strip};
pub(crate) use plan::{across, run};
pub use problem::{
    Board, CrossSize, CutProblem, Ends, Job, KnotZone, LARGEST_PRICE_CENTS, LARGEST_QUANTITY,
    LARGEST_UNITS, Part, ResawRules, RipRules, SawRules, Scrap, Section, StockView, Units,
};
pub use rows::Fault;
