//! Journeys through the built app: what a person does, in a real browser.

mod javascript;
mod offline;
mod privacy;
mod recovery;
mod start;
mod update;
