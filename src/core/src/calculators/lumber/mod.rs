//! Lumber: what a board measures, how much wood it is, what it costs and weighs, how many to buy.
//!
//! *"What does a 2×10 really measure, and why is this one wider? How many board feet is that, and
//! do I use 2 or 1 1/2? What is it for each foot? Can I lift it? How many boards for this width?"*
//!
//! Four questions, one module each: [`size`], [`amount`], [`weight`] and [`cover`]. Board feet
//! count the nominal size; everything that is cut or lifted goes by the actual size, and what the
//! tape says on the real board comes before any table.
//!
//! # Source
//!
//! Sizes: PS 20-20 Table 3. Board measure: PS 20-20 2.2 and NAVEDTRA 14069. Weight: USDA FPL Wood
//! Handbook, FPL-GTR-282 (2021), Equations 4-3 and 4-11 to 4-14.

pub mod amount;
pub mod cover;
mod drawing;
// A table: a field in two lines.
#[rustfmt::skip]
mod fields;
mod question;
mod sheet;
pub mod size;
#[cfg(test)]
mod tests;
pub mod weight;

pub use sheet::CALCULATOR;
