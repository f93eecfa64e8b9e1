//! The job book: jobs as lists of sizes, parts and what is on the rack.
//!
//! [`book`] is a job with its history and what an edit does to it; [`forms`] turns each kind of
//! item into a form of texts and back; [`notes`] is what was typed and is not in the job yet;
//! [`incoming`] sets jobs that come in together against those that are here. They are pure. The pages stand in `pages`; `hook` and `kept_form` keep a job and a form, and
//! `platform::shelf` has the jobs in the browser's database.

pub mod book;
pub mod forms;
pub mod incoming;
pub mod notes;
pub mod reminder;

#[cfg(target_arch = "wasm32")]
pub(crate) mod hook;
#[cfg(target_arch = "wasm32")]
mod kept_form;
#[cfg(target_arch = "wasm32")]
mod pages;
#[cfg(target_arch = "wasm32")]
mod record;

#[cfg(target_arch = "wasm32")]
pub(crate) use pages::{page, page_of_shelf};
