//! The cut planner: what to buy, and which part comes from which board, with a proof.
//!
//! The problem is stated in [`reckoner_core::cutting`], where plans and bounds are also checked by code that knows nothing
//! of this search. Here is only the search. `README.md` of this crate tells how fast it is.
//!
//! # How a job is solved
//!
//! Each file names in its first lines whom it follows; how the methods go together is our own.
//!
//! 1. `build`: parts that share no board are planned apart. A board that may be ripped becomes a choice of *forms*, each a
//!    list of bins; from then on straight and ripped boards are the same thing (`model`, `forms`).
//! 2. `greedy`: quick plans. `bounds`: quick bounds from lengths and dual feasible functions.
//! 3. `columns`, `price`, `knapsack`, `simplex`: the linear programme over all patterns by column generation. Its duals,
//!    rounded to whole numbers, give a bound that the core's checker works out again from the job alone.
//! 4. `mix`, `rows`, `completion`: boards to buy, cheapest first, each choice decided exactly by bin completion. The duals
//!    of step 3 throw out most choices at once, and most fills of the others.
//! 5. `branch`, `staged`, `bounded`, where boards can be divided in several ways: branch and price on how they are divided.
//!    `again`: better plans by planning a few boards of the best plan again.
//! 6. `dive`: better plans for jobs with many boards.
//! 7. `ties`, `settings`, `cuts`: among the cheapest, the order that the core states at [`Ties`](reckoner_core::cutting::Ties).
//!
//! Steps 4 to 6 take turns with four times the steps each round, until the cost is proved or the caller stops.
//!
//! # What is proved
//!
//! A plan is *proved cheapest* when its cost equals a lower bound in whole numbers. Floating point appears only in the
//! two simplexes, whose results are never trusted: see `simplex` for why they are our own. A search that runs out of steps says
//! "unknown", which never counts as a refusal. Where a board may be divided in too many ways to list them, steps 4 and 5 are
//! left out and the gap is told as it is.
//!
//! # How it runs
//!
//! No clock, no threads, no randomness, no hash order: work is counted in steps, the caller's listener sees every few
//! million of them and may stop the search. The same job with the same budget gives the same plan. Indexing is used freely
//! inside: every index here is made by the code that uses it, none comes from the user.

mod again;
mod bounded;
mod bounds;
mod branch;
mod budget;
mod build;
mod columns;
mod completion;
mod cuts;
mod dive;
mod forms;
mod greedy;
mod inverse;
mod knapsack;
mod mix;
mod model;
mod modes;
mod planner;
mod price;
mod realise;
mod replace;
mod rows;
mod settings;
mod simplex;
mod solve;
mod staged;
mod ties;

pub use budget::Progress;
pub use modes::{boards_to_cover, compare_single_boards, next_store_run, what_it_can_become};
pub use planner::{Listener, plan_job, plan_rack};
// What the search answers, spare parts, and going on from boards already cut stand in the core, where the page can
// use them too.
pub use reckoner_core::cutting::{
    Done, DoneProblem, NextRun, Outcome, RackOutcome, SingleBoard, replan_from, with_spares,
};
