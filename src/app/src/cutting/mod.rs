//! The cut planner on the page: what to buy, and which part comes from which board.
//!
//! [`heard`] checks what the planner answers, [`search`] is the state of one question. Both are pure. What draws them
//! exists for the browser alone.

pub mod heard;
pub mod search;
#[cfg(test)]
mod tests;

use reckoner_core::sheet::{Entries, Field};

/// The texts of a form that were typed, by field, to be kept with a plan.
#[must_use]
pub fn typed(fields: &[Field], entries: &Entries) -> Vec<(String, String)> {
    let text = |field: &Field| Some((field.id.to_owned(), entries.text(field.id)?.to_owned()));
    fields.iter().filter_map(text).collect()
}

#[cfg(target_arch = "wasm32")]
pub(crate) mod buying;
#[cfg(target_arch = "wasm32")]
pub(crate) mod compare;
#[cfg(target_arch = "wasm32")]
pub(crate) mod found;
#[cfg(target_arch = "wasm32")]
pub(crate) mod hook;
#[cfg(target_arch = "wasm32")]
pub(crate) mod on_hand;
#[cfg(target_arch = "wasm32")]
mod quick;
#[cfg(target_arch = "wasm32")]
pub(crate) mod report;

#[cfg(target_arch = "wasm32")]
pub(crate) use quick::page;
