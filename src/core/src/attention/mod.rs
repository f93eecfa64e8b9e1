//! What wants looking at in a job: worked out from it each time, never stored.
//!
//! A plan can change for free; a cut cannot. So whatever was cut is compared with what is wanted of
//! it now, and a [`Fact`] leaves the list only because it is no more, or because somebody said to
//! leave it as it is: a step of the job, kept in it, and taken back like any other. Each fact has its
//! [`ways`] out. What no job can know of itself, that the device does not keep it, comes in as data
//! ([`NotKept`]).

mod cost;
mod fact;
mod facts;
mod looks;
mod named;
mod shims;
mod spoiled;
#[cfg(test)]
mod tests;
mod unread;
mod ways;
mod words;

pub use cost::cost;
pub use fact::{Attention, Fact, NotKept};
pub use facts::{attention, close_enough};
pub use looks::Looks;
pub use shims::thickest_shim;
pub use spoiled::{length_left, most_left, spoiling};
pub use ways::{Does, MOST_RESCUES, Outcome, Way, cutting_again, looking_again, outcome, ways};
pub use words::refused;
