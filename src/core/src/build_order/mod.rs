//! The build order: all that is to be done for a job, step by step, in the order in which a builder
//! does it. Worked out from the job each time; what is stored is the ticks, which are those of the
//! pieces, of the boards and of what is bought.
//!
//! The order of the [`Stage`]s is common practice, no source. Cuts at one setting are one step, the
//! largest setting first. A step waits for what it takes: boards that are not bought, strips that are
//! not ripped, a size that is still to be measured, a piece that wants looking at.

mod cuts;
mod order;
mod picture;
mod step;
#[cfg(test)]
mod tests;
mod waits;
mod words;

pub use order::{BuildOrder, build_order};
pub use picture::picture;
pub use step::{BuildStep, Pieces, Stage, Wait};
