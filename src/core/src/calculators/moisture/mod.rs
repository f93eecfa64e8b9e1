//! Moisture: what a board measures wet and dry, which gap to leave today, how far it swings over
//! the year, and how wet wood gets in some air.
//!
//! *"It is wet: how wide will it be? Do I gap the boards or butt them? Will a 1/8 in gap close in
//! a wet summer? How dry does wood get in this shed?"*
//!
//! Four questions, one module each: [`board`], [`gap`], [`swing`] and [`air`]. How much wood moves
//! is in [`movement`]; single boards differ, so the least and the most are given beside the
//! likely figure wherever the sources allow it.
//!
//! # Source
//!
//! Ordinary softwood lumber: FPL-RP-489. Species: USDA FPL Wood Handbook, Tables 13-5 and 4-3 and
//! Equation 4-9. Air: Wood Handbook Equations 4-5 and 4-6, and FPL-RN-0268.

pub mod air;
pub mod board;
mod drawing;
mod fields;
pub mod gap;
pub mod movement;
mod question;
mod sheet;
pub mod swing;
#[cfg(test)]
mod tests;
mod weather;
mod woods;

pub use sheet::CALCULATOR;
