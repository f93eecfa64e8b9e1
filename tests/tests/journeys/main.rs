//! Journeys through the built app: what a person does, in a real browser.

mod all_jobs;
mod calculators;
mod campaign;
mod device;
mod film;
mod handing_on;
mod javascript;
mod job;
mod job_kept;
mod job_made;
mod kept;
mod kept_together;
mod keyboard;
mod offline;
mod pages;
mod paper;
mod parts;
mod planner;
mod privacy;
mod recovery;
mod removed;
mod start;
mod state;
mod steady;
mod typing;
mod update;
