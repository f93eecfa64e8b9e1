//! The pure core: exact measures, the calculators and their drawings. No browser, no clock, no
//! storage, no randomness.
//!
//! Read in this order: [`measure`] (lengths and what people write).

pub mod measure;
