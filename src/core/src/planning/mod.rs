//! From the job to a plan and back: what is wanted of the planner, and what its plan means in the shop.
//!
//! [`wanted`] makes a cutting job of the parts, the rack and the yard; [`quick_list`] makes one of a list of lengths.
//! [`report`] reads a plan as the builder sees it. A plan that is kept in the job is ticked off in steps of the job
//! ([`Job::buying`](crate::job::Job::buying), [`Job::cutting`](crate::job::Job::cutting)); [`since`] says what changed
//! since it was made, [`assumed_of`] what it was made with that is ours, [`plan_of_today`] what is still to do of it, and [`list_rest`] what is left of a quick list.

pub mod demo;
mod ours;
pub mod quick_list;
pub mod report;
mod rest;
mod since;
pub mod so_far;
pub(crate) mod ticking;
mod today;
pub mod wanted;

pub use ours::{assumed_of, confirming_options, examples_left, line_of_money};
pub use rest::{RestProblem, list_rest};
pub use since::{no_longer_fits, since};
pub use today::plan_of_today;
pub use wanted::CAME_OUT_DIFFERENT;
