//! The job book: jobs as lists of sizes, parts and what is on the rack.
//!
//! [`book`] is a job with its history and what an edit does to it; [`forms`] turns each kind of
//! item into a form of texts and back. Both are pure. The pages stand in `pages`, and
//! `platform::shelf` keeps the jobs in the browser's database.

pub mod book;
pub mod forms;
pub mod reminder;

#[cfg(target_arch = "wasm32")]
mod hook;
#[cfg(target_arch = "wasm32")]
mod pages;

#[cfg(target_arch = "wasm32")]
pub(crate) use pages::page;
