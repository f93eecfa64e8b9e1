//! The cut planner on the page: what to buy, and which part comes from which board.
//!
//! [`heard`] checks what the planner answers, [`search`] is the state of one question. Both are pure. What draws them
//! exists for the browser alone.

pub mod heard;
pub mod search;
#[cfg(test)]
mod tests;

#[cfg(target_arch = "wasm32")]
pub(crate) mod compare;
#[cfg(target_arch = "wasm32")]
pub(crate) mod found;
#[cfg(target_arch = "wasm32")]
pub(crate) mod hook;
#[cfg(target_arch = "wasm32")]
mod quick;
#[cfg(target_arch = "wasm32")]
pub(crate) mod report;

#[cfg(target_arch = "wasm32")]
pub(crate) use quick::page;
