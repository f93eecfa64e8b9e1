//! Journeys through the built app: what a person does, in a real browser.

mod start;
