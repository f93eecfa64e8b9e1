//! The pure core: exact measures, the calculators and their drawings. No browser, no clock, no
//! storage, no randomness.
//!
//! Read in this order: [`measure`] (lengths and what people write), [`sheet`] (what a calculator
//! asks and answers), [`drawing`], [`tables`] (published data), [`calculators`], [`cutting`].

pub mod calculators;
pub mod cutting;
pub mod drawing;
pub mod job;
pub mod measure;
mod order;
pub mod paper;
pub mod sheet;
pub mod tables;
