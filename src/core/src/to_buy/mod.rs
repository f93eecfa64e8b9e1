//! Everything to buy for a job, as one list: the boards of the plan in use, and what its kept
//! reckonings take beside boards: screws, dowel rod, finish. Worked out each time, never stored; what
//! is stored is the ticks.
//!
//! Screws are counted by the reckoning that says so, pieces × places and its own share for spares (1 in
//! 10 unless it is changed there; common practice, no source). What is on hand of the same screw is
//! taken off. A dowel that is a part of the job is bought with the boards, and not again.

mod list;
#[cfg(test)]
pub(crate) mod tests;
mod words;

pub use list::{InTheWay, Line, Money, Source, ToBuy, to_buy};
