//! The cut planner: what to buy, and which part comes from which board, with a proof.

mod bounds;
mod budget;
mod build;
mod columns;
mod completion;
mod dive;
mod forms;
mod greedy;
mod knapsack;
mod mix;
mod model;
mod modes;
mod planner;
mod price;
mod realise;
mod simplex;
mod solve;
mod ties;

pub use budget::Progress;
pub use modes::{
    Done, DoneProblem, NextRun, SingleBoard, boards_to_cover, compare_single_boards,
    next_store_run, replan_from, what_it_can_become, with_spares,
};
pub use planner::{Listener, Outcome, RackOutcome, plan_job, plan_rack};
