//! The cut planner: what to buy, and which part comes from which board, with a proof.

mod bounds;
mod budget;
mod build;
mod columns;
mod completion;
mod forms;
mod greedy;
mod knapsack;
mod mix;
mod model;
mod planner;
mod price;
mod realise;
mod simplex;
mod solve;

pub use budget::Progress;
pub use planner::{Outcome, plan_job};
