//! The planner against published optima, brute force, and the laws every plan must keep.

mod bad_input;
mod brute_force;
mod checker;
mod families;
mod job_book;
mod laws;
mod modes;
mod quick_lists;
mod random;
mod report;
mod rip_jobs;
mod rips;
mod support;
mod ticking;
mod ties;
